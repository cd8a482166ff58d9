package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Gathers small folders of recordings whose charges, scales and names are known. The temperatures are common practice, no source. */
class RecordedChargesTest {
    @TempDir
    Path temporary;

    private Path old() {
        return temporary.resolve("old");
    }

    private void write(String name, String text) throws IOException {
        Path file = old().resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }

    /** A roast that is charged at second 0. */
    private static double bean(double second) {
        return second < 0 ? 200 : 95 + 105 * Math.exp(-second / 20.0) + 115 * second / 600.0;
    }

    private static String roast(String head, int from, int to, int charged, IntToDoubleFunction written) {
        StringBuilder text = new StringBuilder(head + "\n");
        for (int second = from; second <= to; second += 2) {
            text.append(String.format(Locale.ROOT, "%d;%.1f;\n", second, written.applyAsDouble(second - charged)));
        }
        return text.toString();
    }

    private List<Double> zeros(Gather gather) {
        return gather.gathering().curves().stream().map(GatheredBatch::zero).toList();
    }

    private List<String> open(Gather gather) {
        return gather.gathering().questions().open().stream()
                .map(GatherQuestions.Open::question)
                .toList();
    }

    private List<String> leftOut(Gather gather) {
        return gather.gathering().questions().leftOut();
    }

    @Test
    void theZeroOfAClockThatCountsFromTheChargeIsKept() throws IOException {
        // The probe answers 6 s late: by the fall alone the charge would be that much later.
        write("a.csv", roast("seconds;beans;words", -60, 660, 6, RecordedChargesTest::bean));
        Gather gather = Gather.of(old());
        assertEquals(List.of(0.0), zeros(gather));
        assertEquals(List.of(), open(gather));
        assertTrue(
                gather.text()
                        .contains(
                                "The times of 1 recording of style a count from the charge, because they are negative before it,"
                                        + " so second 0 is the charge: yes (style.a.zero-is-charge)"),
                gather.text());
        assertEquals(6, zeros(gather.answer("style.a.zero-is-charge", "no")).get(0), 4);
        assertTrue(zeros(gather.answer("style.a.zero-is-charge", "no")).get(0) > 0);
    }

    @Test
    void aZeroThatTheFallContradictsIsAskedAbout() throws IOException {
        write("a.csv", roast("Zeit seit Füllen [s];beans;words", 0, 760, 100, RecordedChargesTest::bean));
        Gather gather = Gather.of(old());
        assertEquals(100, zeros(gather).get(0), 4);
        assertEquals(1, open(gather).size());
        assertTrue(
                open(gather)
                        .get(0)
                        .matches(
                                "1 recording of style a, such as 'a.csv', counts from a second 0 where the bean temperature"
                                        + " does not fall; it falls at 1:\\d\\d. Is the charge at the fall or at second 0\\? \\(fall or zero\\)"),
                open(gather).get(0));
        assertEquals(List.of(0.0), zeros(gather.answer("style.a.zero-or-fall", "zero")));
    }

    @Test
    void aChargeThatIsTypedNinetySecondsLateMakesOneBatchAndIsAskedAbout() throws IOException {
        write(
                "a.csv",
                roast("seconds;beans;words", 0, 760, 100, RecordedChargesTest::bean)
                        .replaceFirst("\n190;([0-9.]+);\n", "\n190;$1;charge\n"));
        Gather gather = Gather.of(old());
        assertEquals(1, zeros(gather).size());
        assertEquals(100, zeros(gather).get(0), 4);
        assertTrue(
                open(gather)
                        .get(0)
                        .matches(
                                "1 charge of style a was typed more than 30 s away from where the bean temperature falls, such as"
                                        + " in 'a.csv' at 3:10, [89]\\d s after the fall. Is the charge at the fall or where it was typed\\?"
                                        + " \\(fall or typed\\)"),
                open(gather).get(0));
        assertEquals(List.of(190.0), zeros(gather.answer("style.a.typed-or-fall", "typed")));
    }

    private static double fahrenheit(double celsius) {
        return celsius * 9 / 5 + 32;
    }

    private void roastInFahrenheit(String name) throws IOException {
        write(name, roast("seconds;beans;words", 0, 700, 40, second -> fahrenheit(bean(second))));
    }

    private List<String> units(Gather gather) {
        return gather.gathering().curves().stream()
                .map(curve -> curve.recording().orElseThrow().meanings().get(1).unit())
                .toList();
    }

    @Test
    void aRoastThatWasBrokenOffIsInTheScaleOfTheOthersInItsFolder() throws IOException {
        roastInFahrenheit("a.csv");
        // It begins after the fall and ends at 257 °F, which could be °C.
        write("b.csv", roast("seconds;beans;words", 0, 240, -60, second -> Math.min(257, fahrenheit(bean(second)))));
        Gather gather = Gather.of(old());
        assertEquals(List.of("°F", "°F"), units(gather));
        assertEquals(40, zeros(gather).get(0), 4, "the charge is found in °F as in °C");
        String said = gather.text() + open(gather);
        assertTrue(
                said.contains("'b.csv': its bean temperature goes up to")
                        && said.contains("only, without a unit; 1 recording with the same headings is in °F"),
                said);
        assertEquals(List.of("°F", "°C"), units(gather.answer("file.b.temperature-unit", "°C")));
    }

    @Test
    void oneWholeRoastInCelsiusBesideOthersInFahrenheitIsAskedAboutAndThreeAreNot() throws IOException {
        roastInFahrenheit("a.csv");
        write("b.csv", roast("seconds;beans;words", 0, 700, 40, RecordedChargesTest::bean));
        Gather one = Gather.of(old());
        assertEquals(List.of("°F", "°F"), units(one));
        assertTrue(
                open(one).get(0).endsWith("it could be a whole roast in °C. Which is it?"),
                open(one).toString());
        write("c.csv", roast("seconds;beans;words", 2, 700, 40, RecordedChargesTest::bean));
        write("d.csv", roast("seconds;beans;words", 4, 700, 40, RecordedChargesTest::bean));
        Gather three = Gather.of(old());
        assertEquals(List.of("°F", "°C", "°C", "°C"), units(three));
        assertEquals(List.of(), open(three));
    }

    /** Beside one in °F, a recording that climbs to a reading and stays there: 260 and 185 are the last that a whole roast in °C has. */
    @ParameterizedTest
    @CsvSource({"259, true", "261, false", "186, true", "184, false"})
    void whatIsNoWholeRoastInCelsiusIsTakenForFahrenheitUnasked(double highest, boolean asked) throws IOException {
        roastInFahrenheit("a.csv");
        write("b.csv", roast("seconds;beans;words", 0, 700, 0, second -> Math.min(highest, 100 + second)));
        Gather gather = Gather.of(old());
        assertEquals(List.of("°F", "°F"), units(gather));
        assertEquals(
                asked,
                gather.gathering().questions().open().stream()
                        .anyMatch(question -> question.key().equals("file.b.temperature-unit")));
    }

    @Test
    void twoRecordingsOfOneNameHaveKeysOfTheirOwn() throws IOException {
        for (String name : List.of("a/101.csv", "b/101.csv", "101.csv", "101.txt")) {
            // Never hot enough for a charge, and not begun with the roast.
            int shift = name.hashCode() % 7;
            write(name, roast("seconds;beans;words", 30, 700, 0, second -> 100 + (90 + shift) * second / 700.0));
        }
        Gather gather = Gather.of(old());
        gather.gathering();
        for (String key : List.of("a-101", "b-101", "101-csv", "101-txt")) {
            Gather answered = gather.answer("file." + key + ".starts-at-charge", "yes");
            assertEquals(Set.of(), answered.gathering().questions().unused(), key);
            assertEquals(
                    1,
                    answered.gathering().curves().stream()
                                    .filter(curve -> curve.roastedAt().isPresent()
                                            || !curve.marks().isEmpty())
                                    .count()
                            + answered.gathering().questions().taken().stream()
                                    .filter(line -> line.contains("starts at the charge: yes"))
                                    .count(),
                    key);
        }
        Files.delete(old().resolve("b/101.csv"));
        Files.delete(old().resolve("101.csv"));
        Files.delete(old().resolve("101.txt"));
        Gather alone = Gather.of(old()).answer("file.101.starts-at-charge", "yes");
        alone.gathering();
        assertEquals(
                Set.of(),
                alone.gathering().questions().unused(),
                "an answer under the name alone, as it was once kept, is still read");
    }

    /** A day in one file: a roast at 8:00, another at 8:25 out of a drum that had cooled to 110 °C. */
    private void day() throws IOException {
        StringBuilder text = new StringBuilder("2031-06-01;;\nclock;beans;words\n");
        double reading = 200;
        for (int second = -120; second <= 2300; second += 2) {
            int second2 = second - 1500;
            if (second < 600) {
                reading = bean(second);
            } else if (second < 720) {
                reading = bean(600);
            } else if (second2 < 0) {
                reading = bean(600) - (bean(600) - 110) * (second - 720) / 780.0;
            } else {
                reading = 68 + 42 * Math.exp(-second2 / 20.0) + 140 * second2 / 800.0;
            }
            text.append(String.format(
                    Locale.ROOT, "%s;%.1f;\n", clock(LocalTime.of(8, 0).plusSeconds(second)), reading));
        }
        write("day.csv", text.toString());
    }

    private static String clock(LocalTime time) {
        return String.format(Locale.ROOT, "%02d:%02d:%02d", time.getHour(), time.getMinute(), time.getSecond());
    }

    private static String list(String... rows) {
        return "Batch;Date;Time;Coffee;Drop\n" + String.join("\n", rows) + "\n";
    }

    @Test
    void aChargeOfTheListIsFoundWhereTheFallAloneIsTooSmall() throws IOException {
        day();
        assertEquals(List.of(28_800.0), rounded(zeros(Gather.of(old()))));
        write("list.csv", list("201;2031-06-01;08:00;Kela;10:00", "202;2031-06-01;08:25;Mist;11:30"));
        Gather gather = Gather.of(old());
        assertEquals(List.of(28_800.0, 30_300.0), rounded(zeros(gather)));
        assertTrue(
                gather.text()
                        .contains(
                                "'day.csv': the list has '202' charged at 08:25; the bean temperature falls a little at 08:2"),
                gather.text());
    }

    private static List<Double> rounded(List<Double> zeros) {
        return zeros.stream().map(at -> (double) Math.round(at / 10) * 10).toList();
    }
}
