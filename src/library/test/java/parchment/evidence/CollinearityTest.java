package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Verdict;
import parchment.feature.Features;
import parchment.feature.kind.Role;

/** Holds which measures stop an answer because they moved as one with the feature, and which do not. */
class CollinearityTest {
    private static final KnownTruth.Drawn DRAWN = new KnownTruth().draw(1);
    private static final FittedScores FITTED = FittedScores.of(KnownTruth.material(DRAWN), ModelForm.STANDARD);

    /** Returns a measure that moved with the drop by this correlation in each lot's batches, as exactly as a draw can be made to. */
    static CollinearFeatures.Other other(String name, double correlation, Role role) {
        ModelFrame material = FITTED.design().material();
        double[] within = material.within();
        Random random = new Random(5);
        double[] noise = material.changed(batch -> batch.withMeasure(random.nextGaussian(), Double.NaN))
                .within();
        double product = 0;
        double own = 0;
        for (int i = 0; i < within.length; i++) {
            product += within[i] * noise[i];
            own += within[i] * within[i];
        }
        double square = 0;
        for (int i = 0; i < within.length; i++) {
            noise[i] -= product / own * within[i];
            square += noise[i] * noise[i];
        }
        Map<String, Double> values = new LinkedHashMap<>();
        for (TastedBatch batch : material.batches()) {
            int i = batch.position();
            values.put(
                    batch.name(),
                    correlation * within[i] / Math.sqrt(own)
                            + Math.sqrt(1 - correlation * correlation) * noise[i] / Math.sqrt(square));
        }
        return new CollinearFeatures.Other(name, values, "", role);
    }

    private static List<String> twins(CollinearFeatures.Other... others) {
        return Collinearity.of("drop temperature", FITTED, List.of(others)).stream()
                .map(Collinearity.Twin::name)
                .toList();
    }

    @Test
    void aControlOrACalendarFactThatMovedAsOneStopsTheAnswerEitherWayRound() {
        assertEquals(List.of("gas"), twins(other("gas", 1, Role.CONTROL)));
        assertEquals(List.of("gas"), twins(other("gas", -1, Role.CONTROL)));
        assertEquals(List.of("room"), twins(other("room", 0.99, Role.CALENDAR)));
    }

    @Test
    void whatFollowsFromTheFeatureDoesNot() {
        assertEquals(List.of(), twins(other("mass loss", -1, Role.FOLLOWS)));
    }

    @Test
    void theBoundIsAnInflationOfTen() {
        // 1 / (1 - 0.9) = 10, so a correlation a little beyond the root of 0.9 is beyond it; draws weigh days, so not
        // to the digit.
        assertEquals(List.of("gas"), twins(other("gas", -0.965, Role.CONTROL)));
        assertEquals(List.of(), twins(other("gas", -0.93, Role.CONTROL)));
        assertEquals(List.of(), twins(other("gas", -0.6, Role.CONTROL)));
    }

    @Test
    void theClosestIsNamedFirst() {
        assertEquals(
                List.of("air", "gas"), twins(other("gas", 0.97, Role.CONTROL), other("air", 0.9999, Role.CONTROL)));
    }

    @Test
    void aControlKnownOfHalfTheBatchesCountsAndOfFewerDoesNot() {
        Map<String, Double> half =
                new LinkedHashMap<>(other("gas", 1, Role.CONTROL).values());
        List<String> names = List.copyOf(half.keySet());
        names.subList(0, 40).forEach(half::remove);
        assertEquals(List.of("gas"), twins(new CollinearFeatures.Other("gas", half, "", Role.CONTROL)));
        half.remove(names.get(40));
        assertEquals(List.of(), twins(new CollinearFeatures.Other("gas", half, "", Role.CONTROL)));
    }

    /** The place in the day stands in the model, and the model drops it without a word: the answer must not. */
    @Test
    void aColumnOfTheModelThatTheFeatureFollowsExactlyStopsTheAnswerToo() {
        ModelFrame material = FITTED.design()
                .material()
                .changed(batch -> batch.withMeasure(200 + 2.0 * batch.batchOfTheDay(), Double.NaN));
        FittedScores fitted = FittedScores.of(material, ModelForm.STANDARD);
        assertEquals(
                List.of(new Collinearity.Twin("batch of the day", Double.POSITIVE_INFINITY)),
                Collinearity.of("oven temperature", fitted, List.of()));
        assertTrue(
                fitted.words()
                        .contains(
                                "Batch of the day follows exactly from other terms of the model, so it is not in it and nothing is"
                                        + " taken out for it."),
                fitted.words().toString());
        assertEquals(List.of(), Collinearity.of("batch of the day", fitted, List.of()));
    }

    @Test
    void massAndDateStopTheAnswerAndAreNamed() {
        ModelFrame byMass =
                FITTED.design().material().changed(batch -> batch.withMeasure(-30 * batch.mass(), Double.NaN));
        assertEquals(
                "green mass",
                Collinearity.of("airflow", FittedScores.of(byMass, ModelForm.STANDARD), List.of())
                        .get(0)
                        .name());
        ModelFrame byDate = FITTED.design()
                .material()
                .changed(batch -> batch.withMeasure(batch.day().toEpochDay(), Double.NaN));
        assertEquals(
                "the calendar",
                Collinearity.of("age", FittedScores.of(byDate, ModelForm.STANDARD), List.of())
                        .get(0)
                        .name());
    }

    @Test
    void columnsOfTheModelThatMakeItUpTogetherAreNamedTogether() {
        ModelFrame both = FITTED.design()
                .material()
                .changed(batch -> batch.withMeasure(10 * batch.mass() + batch.batchOfTheDay(), Double.NaN));
        assertEquals(
                List.of("batch of the day", "green mass"),
                Collinearity.of("airflow", FittedScores.of(both, ModelForm.STANDARD), List.of()).stream()
                        .map(Collinearity.Twin::name)
                        .toList());
    }

    @Test
    void featuresSayWhatTheyAre() {
        assertEquals(Role.CONTROL, Features.gasInDevelopment().role());
        assertEquals(Role.CONTROL, Features.airflowInDevelopment().role());
        assertEquals(Role.CONTROL, Features.chargeTemperature().role());
        assertEquals(Role.CONTROL, Features.greenMass().role());
        assertEquals(Role.CALENDAR, Features.roomTemperature().role());
        assertEquals(Role.CALENDAR, Features.batchOfTheDay().role());
        assertEquals(Role.CALENDAR, Features.greenTemperature().role());
        assertEquals(Role.FOLLOWS, Features.massLoss().role());
        assertEquals(Role.FOLLOWS, Features.riseAfterFirstCrack().role());
        assertEquals(Role.FOLLOWS, Features.dropTime().role());
        assertEquals(Role.FOLLOWS, Features.lastGasCutBeforeDrop().role());
        assertEquals(Role.FOLLOWS, Features.wholeBeanColour().role());
    }

    @Test
    void inLockstepTheAnswerNamesTheGasAndSaysWhatWouldTell() {
        KnownTruth.Drawn drawn = ConfoundingStudy.lockstep(0.15, 0).draw(3);
        Evidence evidence = new Question("sweetness", drawn.measure(), drawn.others(), EvidenceSettings.standard())
                .ask(drawn.logbook());
        assertEquals(Verdict.CANNOT_TELL, evidence.verdict());
        assertTrue(
                evidence.reasons()
                        .get(0)
                        .startsWith(
                                "inside lots the drop temperature cannot be told from gas in development: they moved together"),
                evidence.reasons().toString());
        assertTrue(
                evidence.text()
                        .contains(
                                "What would tell: batches in which the drop temperature is moved and whatever moved with it is"
                                        + " not; more batches like these cannot tell the two apart, however many."),
                evidence.text());
        assertFalse(evidence.text().contains("000000.0"), evidence.text());
    }

    @Test
    void itsSeparableTwinIsAnswered() {
        assertEquals(1, ConfoundingStudy.run(ConfoundingStudy.twin(), 1, 20).rightSignWithoutZero());
    }
}
