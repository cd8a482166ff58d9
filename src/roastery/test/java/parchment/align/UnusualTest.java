package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.written.BatchConditions;
import parchment.phase.Phases;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;

class UnusualTest {
    private static List<Batch> withLateOpening() {
        List<Batch> batches = new ArrayList<>(InventedRoasts.batches("b", 29, 500, "A", 0, 7));
        batches.add(InventedRoasts.roast("late", 500, InventedRoasts.USUAL_OPENING + 120, 99)
                .lot("A")
                .roastedAt(InventedRoasts.at(9, 2))
                .build());
        return batches;
    }

    @Test
    void aLateOpeningOfTheAirIsFoundAndNamed() {
        Unusual unusual = Unusual.of(InventedRoasts.logbook(withLateOpening()));
        Unusual.Found found = unusual.find("late").orElseThrow();
        String reasons = String.join("; ", found.reasons());
        assertTrue(
                reasons.matches(
                        ".*the air was opened (1 min 5\\d s|2 min|2 min \\d s) late \\(at 7:0\\d, usually at .*"),
                reasons);
        // Between 300 and 420 s it took heat up at the slower constant: from 146 °C, 120 s against 120 s / 1.3 for the
        // same rise.
        Matcher slower =
                Pattern.compile("(\\d+) s slower between (\\d+) and (\\d+) °C").matcher(reasons);
        assertTrue(slower.find(), reasons);
        assertEquals(27.7, Double.parseDouble(slower.group(1)), 8);
        assertTrue(Math.abs(Double.parseDouble(slower.group(2)) - 146) < 10, reasons);
        assertTrue(Math.abs(Double.parseDouble(slower.group(3)) - 170) < 12, reasons);
        assertEquals("late", unusual.list().get(0).batch().name());
        assertTrue(found.comparedWith().startsWith("29 others: lot A"), found.comparedWith());
        assertTrue(found.depth() > 0 && found.depth() < 0.55, "depth " + found.depth());
    }

    @Test
    void batchesThatOnlyWanderAreNotCalledUnusual() {
        Unusual unusual = Unusual.of(InventedRoasts.logbook(InventedRoasts.batches("b", 60, 500, "A", 0, 11)));
        assertTrue(unusual.list().size() <= 3, unusual.list().toString());
    }

    @Test
    void anOpeningThatNeverCameIsNamed() {
        List<Batch> batches = new ArrayList<>(InventedRoasts.batches("b", 29, 500, "A", 0, 7));
        batches.add(InventedRoasts.roast("never", 500, 9999, 99)
                .lot("A")
                .roastedAt(InventedRoasts.at(9, 2))
                .build());
        String reasons = Unusual.of(InventedRoasts.logbook(batches))
                .find("never")
                .orElseThrow()
                .toString();
        assertTrue(reasons.contains("the air was opened at no time (usually at "), reasons);
    }

    @Test
    void tooFewBatchesCannotTell() {
        Unusual unusual = Unusual.of(InventedRoasts.logbook(InventedRoasts.batches("b", 6, 500, "A", 0, 7)));
        assertTrue(unusual.list().isEmpty());
        assertEquals(
                "Cannot tell which batches are unusual: no 10 batches with a bean temperature are of one probe",
                unusual.toString());
        assertTrue(unusual.text().contains("Too few batches to say what is usual (10 are needed)"), unusual.text());
    }

    @Test
    void theFirstSentencesSayWhichBatchStandsApartMost() {
        InShort words = ShortSentences.keptBy(
                Unusual.of(InventedRoasts.logbook(withLateOpening())).inShort());
        assertTrue(
                words.found()
                        .matches(
                                "\\d of 30 batches stand apart, most of all batch late of .*\\.|1 of 30 batches stands apart:"
                                        + " batch late of .*\\."),
                words.found());
        assertTrue(words.howSure().startsWith("It was "), words.howSure());
        assertTrue(words.howSure().endsWith(", held against its lot's others on the same probe."), words.howSure());
        InShort none = ShortSentences.keptBy(
                Unusual.of(InventedRoasts.logbook(InventedRoasts.batches("b", 12, 500, "A", 0, 7)))
                        .inShort());
        assertEquals("None of 12 batches stands apart from those that it was held against.", none.found());
        assertEquals("Each was held against its lot's others on the same probe.", none.howSure());
        assertEquals(
                new InShort(
                        "Which batches are unusual cannot be told.",
                        "No 10 batches with a bean temperature are of one probe.",
                        "Ask again when more are roasted."),
                ShortSentences.keptBy(Unusual.of(InventedRoasts.logbook(InventedRoasts.batches("b", 6, 500, "A", 0, 7)))
                        .inShort()));
    }

    /** Batches without a lot, or of several small lots, are not held against their lot's others. */
    @Test
    void theFirstSentencesSayAgainstWhatEachWasHeldAndCountTheRest() {
        List<Batch> nameless = InventedRoasts.batches("b", 12, 500, "A", 0, 7).stream()
                .map(batch -> batch.toBuilder().lot("").build())
                .toList();
        assertEquals(
                "Each was held against others without a lot on the same probe.",
                held(nameless).howSure());
        List<Batch> small = new ArrayList<>(InventedRoasts.batches("a", 6, 500, "A", 0, 7));
        small.addAll(InventedRoasts.batches("b", 6, 500, "B", 6, 8));
        assertEquals(
                "Each was held against others of several lots on the same probe.",
                held(small).howSure());
        List<Batch> both = new ArrayList<>(InventedRoasts.batches("a", 12, 500, "A", 0, 7));
        both.addAll(InventedRoasts.batches("s", 6, 500, "C", 12, 8));
        both.addAll(InventedRoasts.batches("t", 6, 500, "D", 18, 9));
        assertEquals(
                "Each was held against others on the same probe, of its own lot where that has 10 batches.",
                held(both).howSure());
        List<Batch> one = new ArrayList<>(InventedRoasts.batches("a", 12, 500, "A", 0, 7));
        one.addAll(InventedRoasts.batches("b", 4, 500, "B", 12, 8));
        assertEquals(
                "None of 12 batches stands apart from those that it was held against. 4 more batches could not be held against"
                        + " any.",
                held(one).found());
    }

    private static InShort held(List<Batch> batches) {
        return ShortSentences.keptBy(Unusual.of(InventedRoasts.logbook(batches)).inShort());
    }

    @Test
    void saysLengthsOfTimeInWords() {
        assertEquals("24 s", Stretches.length(-24));
        assertEquals("2 min", Stretches.length(120));
        assertEquals("2 min 5 s", Stretches.length(125));
    }

    /** The short version of the table in docs/measurements/drift.md. */
    @Test
    void findsWhatWasPlanted() {
        UnusualStudy.Count count = UnusualStudy.counted("steady-hand", 1);
        assertEquals(80, count.ordinary());
        count.found().forEach((plant, found) -> assertTrue(found, plant + " was not found"));
        assertTrue(count.byReadings() <= 1, count.byReadings() + " ordinary batches are listed for a reading");
        assertTrue(count.listed() <= 8, count.listed() + " ordinary batches are listed");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "7 | CELSIUS | the bean temperature read about 7 °C higher than usual all the way (turning point, yellowing, first crack start, drop): the probe may have been off",
                "-7 | CELSIUS | the bean temperature read about 7 °C lower than usual all the way (turning point, yellowing, first crack start, drop): the probe may have been off",
                "7 | FAHRENHEIT | the bean temperature read about 13 °F higher than usual all the way (turning point, yellowing, first crack start, drop): the probe may have been off",
            })
    void saysWhichWayTheProbeWasOff(double off, TemperatureUnit reader, String sentence) {
        assertTrue(
                reasons(UnusualStudy.probe(marked(), off), reader).contains(sentence),
                () -> "" + reasons(UnusualStudy.probe(marked(), off), reader));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "45 | CELSIUS | the charge temperature was written 45 °C hotter than the curve bears out: it may be a slip of the pen",
                "-45 | CELSIUS | the charge temperature was written 45 °C colder than the curve bears out: it may be a slip of the pen",
                "45 | FAHRENHEIT | the charge temperature was written 81 °F hotter than the curve bears out: it may be a slip of the pen",
            })
    void saysWhichWayTheChargeWasMiswritten(double off, TemperatureUnit reader, String sentence) {
        assertEquals(List.of(sentence), reasons(UnusualStudy.charge(marked(), off), reader));
    }

    private static Batch marked() {
        return marked("judged", 500, 100, 30);
    }

    /** A roast with written marks at the times at which the beans passed 150 and 195 °C, give or take, and a written charge. */
    private static Batch marked(String name, double constant, long seed, int day) {
        Batch bare = InventedRoasts.roast(name, constant, InventedRoasts.USUAL_OPENING, seed)
                .lot("A")
                .roastedAt(InventedRoasts.at(day, 0))
                .build();
        FirstPassages climb = FirstPassages.of(Phases.of(bare)).orElseThrow();
        double wander = seed % 7 - 3;
        return bare.toBuilder()
                .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(Math.rint(climb.passage(150) + wander)))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(Math.rint(climb.passage(195) - wander)))
                .conditions(new BatchConditions(
                        Optional.of(Mass.kilograms(2)),
                        Optional.empty(),
                        Optional.of(Temperature.celsius(180 + seed % 3)),
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.empty()))
                .build();
    }

    private static List<String> reasons(Batch judged, TemperatureUnit reader) {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            batches.add(marked("b" + i, 490 + i % 5 * 5, i, i));
        }
        batches.add(judged);
        return Unusual.of(InventedRoasts.logbook(batches).in(reader))
                .find("judged")
                .map(Unusual.Found::reasons)
                .orElse(List.of());
    }
}
