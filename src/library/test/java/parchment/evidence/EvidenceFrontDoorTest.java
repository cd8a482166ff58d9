package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Association;
import parchment.evidence.finding.Effect;
import parchment.evidence.finding.Verdict;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.feature.path.Measured;
import parchment.quantity.Unit;

/** Asks as a reader in a cell does, with features of their own: what an answer knows of a feature, and what it never prints. */
class EvidenceFrontDoorTest {
    private static final Pattern MINUS_ZERO = Pattern.compile("(?<![0-9.])-0(\\.0+)?(?![0-9.])");

    /** Returns a feature of the reader's own that reads what was drawn. */
    private static Feature own(String name, Unit unit, KnownTruth.Drawn drawn, DoubleFunction<Measured> read) {
        return Feature.of(name, unit, "what was drawn for the batch", path -> {
            ModelFrames.Reading reading =
                    drawn.measure().readings().get(path.batch().name());
            return reading == null ? Measured.missing("nothing was drawn") : read.apply(reading.value());
        });
    }

    static Evidence ask(KnownTruth.Drawn drawn) {
        return new Question("sweetness", drawn.measure(), List.of(), EvidenceSettings.standard()).ask(drawn.logbook());
    }

    private static Evidence ask(KnownTruth.Drawn drawn, DoubleFunction<Measured> read) {
        return Evidence.of("sweetness", own("my reading", Unit.TEMPERATURE, drawn, read), drawn.logbook());
    }

    /** Returns an answer of which only the first targets were planned. */
    private static Evidence withTargets(int count) {
        KnownTruth truth = new KnownTruth();
        truth.byChance = true;
        KnownTruth.Drawn drawn = truth.draw(1);
        Measure all = drawn.measure();
        Map<String, Double> few = new LinkedHashMap<>();
        all.planned().entrySet().stream().limit(count).forEach(one -> few.put(one.getKey(), one.getValue()));
        Measure measure = new Measure(all.name(), all.unit(), all.reader(), all.readings(), few);
        return new Question("sweetness", measure, List.of(), EvidenceSettings.standard()).ask(drawn.logbook());
    }

    @Test
    void saysWhetherNobodyDrewTheTargetOrTooFewWereDrawn() {
        String behind = ", so whatever moved together with it may stand behind the score.";
        Evidence none = withTargets(0);
        assertEquals(0, none.drawnTargets());
        assertTrue(none.text().contains("Nobody drew the drop temperature by chance" + behind), none.text());
        assertTrue(withTargets(1)
                .text()
                .contains(
                        "The drop temperature was drawn by chance for 1 scored batch only, too few to answer by themselves"
                                + behind));
        Evidence few = withTargets(4);
        assertEquals(4, few.drawnTargets());
        assertTrue(few.effect().isEmpty());
        assertTrue(
                few.text()
                        .contains(
                                "The drop temperature was drawn by chance for 4 scored batches only, too few to answer by themselves"
                                        + behind),
                few.text());
    }

    @Test
    void aNumberThatRoundsToZeroHasNoSign() {
        Unit[] units = {Unit.TEMPERATURE, Unit.SECONDS, Unit.SHARE, Unit.NONE};
        for (long seed = 1; seed <= 4; seed++) {
            KnownTruth truth = new KnownTruth();
            truth.slope = seed % 2 == 0 ? 0 : -0.004;
            truth.days = 10;
            truth.batchesPerDay = 3;
            KnownTruth.Drawn drawn = truth.draw(seed);
            double scale = seed == 3 ? 0.01 : 1;
            Feature feature = own("my number", units[(int) seed - 1], drawn, x -> Measured.of(scale * (x - 205), 0));
            Evidence evidence = Evidence.of("sweetness", feature, drawn.logbook());
            List<String> texts = new ArrayList<>(List.of(
                    evidence.text(),
                    evidence.toString(),
                    evidence.html()
                            .orElseThrow()
                            .replaceAll("<svg.*?</svg>", "")
                            .replaceAll("<style.*?</style>", ""),
                    evidence.association().toString(),
                    evidence.bests().map(Bests::toString).orElse(""),
                    evidence.at(0).words()));
            // Words of the picture, not its coordinates.
            Matcher words =
                    Pattern.compile("<text[^>]*>([^<]*)").matcher(evidence.svg().orElse(""));
            while (words.find()) {
                texts.add(words.group(1));
            }
            for (String text : texts) {
                Matcher found = MINUS_ZERO.matcher(text);
                assertFalse(found.find(), () -> text.substring(Math.max(0, found.start() - 80), found.end()));
            }
        }
    }

    /** The plan in the logbook is one of the built-in drop temperature; a reader's feature of that name has none. */
    @Test
    void aReadersOwnFeatureOfTheSameNameIsNotTakenForThePlannedOne() {
        KnownTruth truth = new KnownTruth();
        truth.byChance = true;
        KnownTruth.Drawn drawn = truth.draw(3);
        Evidence planned = Evidence.of("sweetness", Features.dropTemperature(), drawn.logbook());
        assertTrue(planned.claim() instanceof Effect, planned.toString());
        Feature same = own(
                Features.dropTemperature().name(), Unit.TEMPERATURE, drawn, x -> Measured.of(x, truth.measureError));
        Evidence asked = Evidence.of("sweetness", same, drawn.logbook());
        assertEquals("drop temperature", asked.feature());
        assertTrue(asked.effect().isEmpty(), asked.toString());
        assertTrue(asked.claim() instanceof Association);
        assertTrue(asked.verdict() != Verdict.STRONG);
        // It is not compared with the built-in one of its name either, which would be told as something that moved
        // along.
        assertTrue(asked.movedTogether().companions().stream()
                .noneMatch(companion -> companion.name().equals("drop temperature")));
    }

    @Test
    void whetherTheErrorOfAMeasureIsKnownDecidesWhatIsSaidOfIt() {
        KnownTruth.Drawn drawn = new KnownTruth().draw(1);
        Evidence written = ask(drawn, Measured::written);
        assertTrue(Double.isNaN(written.reliability().orElseThrow().value()));
        assertTrue(
                written.text().contains("The measure's own error is not known, so the slope is not corrected for it."),
                written.text());
        Evidence exact = ask(drawn, Measured::exact);
        assertEquals(1, exact.reliability().orElseThrow().value());
        assertTrue(exact.text().contains("Reliability 1.00: 0 % of the spread inside lots"), exact.text());
        assertEquals(
                written.association().slope().estimate(),
                exact.association().slope().estimate(),
                1e-12);
        Evidence coarse = ask(drawn, x -> Measured.of(x, 1.5));
        assertTrue(coarse.text().contains("The slope above is corrected for it"), coarse.text());
        assertTrue(coarse.association().slope().estimate()
                > exact.association().slope().estimate());
        Evidence nothing = ask(drawn, x -> Measured.of(x, 4));
        assertEquals(Verdict.CANNOT_TELL, nothing.verdict());
    }
}
