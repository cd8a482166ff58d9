package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Holds which facts are named, what the model did with each, and which stand in for a feature. */
class FactsTest {
    private static ModelFrame material() {
        List<TastedBatch> batches = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            double measure = 200 + i % 5 + 0.3 * (i % 3);
            batches.add(new TastedBatch(
                    i,
                    "B" + i,
                    "Lot " + i % 2,
                    "Lot " + i % 2,
                    i % 5 < 2 ? "Ana" : "Ben",
                    LocalDate.of(2031, 1, 1).plusDays(i / 4),
                    1 + i % 4,
                    5 + 0.1 * (i % 3),
                    20 + i % 7,
                    measure,
                    0.3,
                    new TastedBatch.Today(measure, "Lot " + i % 2, "", 0)));
        }
        return new ModelFrame(batches, List.of(), List.of(), List.of());
    }

    private static List<String> handled(Facts facts) {
        return facts.facts().stream()
                .map(fact -> fact.name() + ": " + fact.handled())
                .toList();
    }

    @Test
    void eachFactSaysWhetherTheModelHoldsIt() {
        assertEquals(
                List.of(
                        "lot and probe period: IN_THE_MODEL",
                        "date and season: IN_THE_MODEL",
                        "operator: IN_ANOTHER_LOOK",
                        "batch of the day: IN_THE_MODEL",
                        "green mass: IN_THE_MODEL",
                        "room temperature: IN_ANOTHER_LOOK"),
                handled(Facts.of("drop temperature", material())));
    }

    @Test
    void aColumnThatTheFitDroppedIsNotSaidToBeInTheModel() {
        Facts facts = Facts.of("drop temperature", material()).leavingOut(List.of("batch of the day"));
        assertEquals("batch of the day: LEFT_OUT", handled(facts).get(3));
        assertEquals("green mass: IN_THE_MODEL", handled(facts).get(4));
    }

    @Test
    void batchesOfWhichAFactIsNotWrittenAreNotCountedAndAFactThatDoesNotVaryIsNotListed() {
        ModelFrame some = material()
                .changed(batch -> new TastedBatch(
                        batch.position(),
                        batch.name(),
                        batch.lot(),
                        "Lot 0",
                        batch.position() < 10 ? "" : batch.operator(),
                        batch.day(),
                        batch.batchOfTheDay(),
                        5,
                        batch.position() < 30 ? batch.room() : Double.NaN,
                        batch.measure(),
                        batch.error(),
                        batch.today()));
        Facts facts = Facts.of("drop temperature", some);
        assertEquals(
                List.of("date and season 40", "operator 30", "batch of the day 40", "room temperature 30"),
                facts.facts().stream()
                        .map(fact -> fact.name() + " " + fact.batches())
                        .toList());
    }

    @Test
    void theTableSaysTheShareInPercentAndWhatTheModelDid() {
        String text = Facts.of(List.of(new Facts.Fact("operator", 0.42, Facts.Handled.LEFT_OUT, 40)))
                .table("drop temperature")
                .text();
        assertTrue(text.contains("What moved together with the drop temperature"), text);
        assertTrue(text.contains("42"), text);
        assertTrue(text.contains("no: other terms determine it"), text);
    }

    /** The calendar explains a feature that follows it: the straight line over the date stands among the columns. */
    @Test
    void theDateExplainsAFeatureThatFollowsIt() {
        ModelFrame drifting =
                material().changed(batch -> batch.withMeasure(batch.day().toEpochDay(), Double.NaN));
        assertEquals(1, Facts.of("age", drifting).facts().get(1).explains(), 1e-9);
    }

    @Test
    void aFeatureIsNoFactBesideItself() {
        assertEquals(5, Facts.of("green mass", material()).facts().size());
    }

    private static Facts with(double explains, Facts.Handled handled) {
        return Facts.of(List.of(new Facts.Fact("operator", explains, handled, 40)));
    }

    @Test
    void aFactOutsideTheModelStandsInFromEightTenthsOn() {
        assertEquals(1, with(0.80, Facts.Handled.IN_ANOTHER_LOOK).standIns().size());
        assertEquals(0, with(0.79, Facts.Handled.IN_ANOTHER_LOOK).standIns().size());
        assertEquals(1, with(0.80, Facts.Handled.LEFT_OUT).standIns().size());
        assertEquals(0, with(0.99, Facts.Handled.IN_THE_MODEL).standIns().size());
    }

    @Test
    void aFactIsWorthASentenceFromThreeTenthsOn() {
        assertEquals(1, with(0.30, Facts.Handled.IN_THE_MODEL).notable().size());
        assertEquals(0, with(0.29, Facts.Handled.IN_THE_MODEL).notable().size());
    }

    /** Adjusted R squared by hand: two operators with means 200.5 and 203 of equally spread values. */
    @Test
    void theShareIsTheAdjustedRSquared() {
        ModelFrame material = material();
        Facts.Fact operator = Facts.of("drop temperature", material).facts().get(2);
        double all = 0;
        double left = 0;
        double mean = material.center();
        for (String name : List.of("Ana", "Ben")) {
            double own = material.batches().stream()
                    .filter(batch -> batch.operator().equals(name))
                    .mapToDouble(TastedBatch::measure)
                    .average()
                    .orElseThrow();
            for (TastedBatch batch : material.batches()) {
                if (batch.operator().equals(name)) {
                    all += (batch.measure() - mean) * (batch.measure() - mean);
                    left += (batch.measure() - own) * (batch.measure() - own);
                }
            }
        }
        assertEquals(1 - left / 38 / (all / 39), operator.explains(), 1e-9);
        assertEquals(40, operator.batches());
    }

    @Test
    void saysInOneSentence() {
        assertEquals(
                "1 fact beside the feature: operator explains 80 % of its spread.",
                with(0.8, Facts.Handled.IN_THE_MODEL).toString());
        assertEquals(
                "No fact beside the feature varies in this logbook.",
                Facts.of(List.of()).toString());
    }
}
