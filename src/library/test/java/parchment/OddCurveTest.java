package parchment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.align.Nearest;
import parchment.align.Unusual;
import parchment.drift.Usual;
import parchment.drift.Week;
import parchment.evidence.Evidence;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.period.ProbePeriods;
import parchment.phase.Phases;

/** One curve file with hardly a reading, or always the same, stops no answer about the other batches. */
class OddCurveTest {
    private static final Path DEMO = Path.of("..", "datasets", "harbour");
    private static final String HEAD = "time [s],bean temperature [°C]\n";
    private static final String ODD = "H005";
    private static final int BATCHES = 12;

    @TempDir
    Path folder;

    /** The first twelve batches of the demo logbook, the fifth with another curve. */
    private Logbook with(String curve) throws IOException {
        Files.createDirectories(folder.resolve("curves"));
        List<String> rows = Files.readAllLines(DEMO.resolve("batches.csv")).subList(0, BATCHES + 1);
        Files.write(folder.resolve("batches.csv"), rows);
        List<String> names = rows.stream().map(row -> row.split(",")[0]).toList();
        List<String> scores = Files.readAllLines(DEMO.resolve("cuppings.csv"));
        int column = List.of(scores.get(0).split(",")).indexOf("batch");
        Files.write(
                folder.resolve("cuppings.csv"),
                scores.stream()
                        .filter(row -> names.contains(row.split(",", -1)[column]))
                        .toList());
        for (String table : List.of("lots.csv", "machines.csv", "logbook.properties")) {
            Files.copy(DEMO.resolve(table), folder.resolve(table));
        }
        for (String name : names.subList(1, names.size())) {
            Files.copy(DEMO.resolve("curves/" + name + ".csv"), folder.resolve("curves/" + name + ".csv"));
        }
        Files.writeString(folder.resolve("curves/" + ODD + ".csv"), curve);
        return Logbook.open(folder);
    }

    private static String rows(IntStream seconds, double celsius) {
        StringBuilder text = new StringBuilder(HEAD);
        seconds.forEach(t -> text.append(t).append(',').append(celsius).append('\n'));
        return text.toString();
    }

    private static void everythingElseIsAnswered(Logbook logbook) {
        List<Phases> phases = Phases.of(logbook);
        assertEquals(BATCHES, phases.size());
        for (Phases one : phases) {
            assertFalse(one.text().isBlank());
            if (!one.batch().name().equals(ODD)) {
                assertTrue(
                        one.mark(MarkKind.TURNING_POINT).isPresent(),
                        one.batch().name());
            }
        }
        BatchTable table = BatchTable.of(logbook);
        assertEquals(BATCHES, table.batches().size());
        assertFalse(table.text().isBlank());
        ProbePeriods.of(logbook);
        assertFalse(Evidence.of("sweetness", Features.dropTemperature(), logbook)
                .text()
                .isBlank());
        assertFalse(Unusual.of(logbook).text().isBlank());
        assertFalse(Week.of(logbook).text().isBlank());
        for (Batch batch : logbook.batches()) {
            List<String> answers = new ArrayList<>();
            answers.add(Usual.of(batch, logbook).text());
            if (!batch.name().equals(ODD)) {
                answers.add(Nearest.to(batch, logbook).text());
            }
            answers.forEach(answer -> assertFalse(answer.isBlank()));
        }
    }

    static Stream<Arguments> hardlyAReading() {
        return Stream.of(
                Arguments.of("one reading", HEAD + "0,200\n"),
                Arguments.of("one late reading", HEAD + "500,200\n"),
                Arguments.of("one reading before the charge", HEAD + "-30,200\n"),
                Arguments.of("all further rows blank", HEAD + "0,200\n2,\n4,\n6,\n"),
                Arguments.of("two at the same time", HEAD + "0,200\n0,190\n"),
                Arguments.of("two readings", HEAD + "0,200\n400,190\n"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("hardlyAReading")
    void aFileWithHardlyAReadingIsNamedAndTellsNoMark(String what, String curve) throws IOException {
        Logbook logbook = with(curve);
        assertTrue(
                logbook.problems().list().stream()
                        .anyMatch(problem -> problem.toString().contains("curves/" + ODD + ".csv")
                                && problem.toString().contains("three")),
                logbook.problems().text());
        Phases odd = Phases.of(logbook.batch(ODD));
        assertTrue(odd.clean().isEmpty() && odd.mark(MarkKind.TURNING_POINT).isEmpty(), odd.text());
        everythingElseIsAnswered(logbook);
    }

    @Test
    void oneReadingOfTheAirAndOfTheGasStopNothing() throws IOException {
        StringBuilder curve = new StringBuilder("time [s],bean temperature [°C],air temperature [°C],gas [%]\n");
        curve.append("0,190,240,80\n");
        for (int t = 2; t < 700; t += 2) {
            curve.append(t)
                    .append(',')
                    .append(t < 90 ? 190 - t : 100 + 0.17 * (t - 90))
                    .append(",,\n");
        }
        everythingElseIsAnswered(with(curve.toString()));
    }

    static Stream<Arguments> always() {
        return Stream.of(150.0, 180.0)
                .flatMap(celsius -> Stream.of(
                        Arguments.of(celsius, rows(IntStream.range(0, 700), celsius)),
                        Arguments.of(celsius, rows(IntStream.range(-60, 350).map(t -> 2 * t), celsius)),
                        Arguments.of(celsius, rows(IntStream.range(0, 70).map(t -> 10 * t), celsius)),
                        Arguments.of(celsius, rows(IntStream.range(0, 5).map(t -> 120 * t), celsius))));
    }

    @ParameterizedTest
    @MethodSource("always")
    void aProbeThatAlwaysReadsTheSameStopsNothing(double celsius, String curve) throws IOException {
        everythingElseIsAnswered(with(curve));
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4, 5, 6, 8})
    void aFewReadingsStopNothing(int count) throws IOException {
        StringBuilder curve = new StringBuilder(HEAD);
        for (int i = 0; i < count; i++) {
            curve.append(i * 100).append(',').append(i == 0 ? 190 : 90 + 15 * i).append('\n');
        }
        everythingElseIsAnswered(with(curve.toString()));
    }

    /** A roast of 12 minutes that was logged in milliseconds lasts for days by its heading; nothing of it is measured. */
    @Test
    void aCurveInMillisecondsUnderAHeadingOfSecondsCountsAsNone() throws IOException {
        List<String> lines = Files.readAllLines(DEMO.resolve("curves/" + ODD + ".csv"));
        StringBuilder curve = new StringBuilder(lines.get(0)).append('\n');
        for (String line : lines.subList(1, lines.size())) {
            int comma = line.indexOf(',');
            curve.append(Math.round(1000 * Double.parseDouble(line.substring(0, comma))))
                    .append(line.substring(comma))
                    .append('\n');
        }
        Logbook logbook = with(curve.toString());
        assertTrue(
                logbook.problems().text().contains("Are these milliseconds?"),
                logbook.problems().text());
        Phases odd = Phases.of(logbook.batch(ODD));
        assertTrue(odd.clean().isEmpty() && odd.mark(MarkKind.TURNING_POINT).isEmpty(), odd.text());
        assertEquals(753, odd.mark(MarkKind.DROP).orElseThrow().seconds());
        everythingElseIsAnswered(logbook);
        BatchTable measured = BatchTable.of(logbook);
        Files.writeString(folder.resolve("curves/" + ODD + ".csv"), HEAD + "0,200\n");
        BatchTable without = BatchTable.of(Logbook.open(folder));
        int row = without.batches().stream().map(Batch::name).toList().indexOf(ODD);
        for (Feature feature : without.features()) {
            assertEquals(without.values(feature)[row], measured.values(feature)[row], feature.name());
        }
    }
}
