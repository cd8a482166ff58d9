package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/** A folder in which no date shows which number is the day: what needs no answer is joined, and what needs one is named with its key. */
class OpenDatesTest {
    private static final List<String> DAYS = List.of("03-05-2031", "03-07-2031", "04-05-2031");

    private static final List<String> NAMES = List.of("61", "62", "63", "64", "65", "66", "67", "68", "69");

    @TempDir
    Path temporary;

    private Path folder;

    @BeforeEach
    void threeDaysOfThreeRoasts() throws IOException {
        folder = Files.createDirectories(temporary.resolve("Logger files"));
        StringBuilder list = new StringBuilder("Batch,Date,Time,Coffee,Green kg\n");
        StringBuilder scores = new StringBuilder("Date,Cupper,Batch,Acidity,Body,Overall\n");
        int number = 61;
        for (String day : DAYS) {
            for (String at : List.of("0816", "0951", "1132")) {
                recording(day + " " + at + "40", number);
                String written = day.replaceAll("0(\\d)-0(\\d)-", "$1/$2/");
                list.append(String.format(
                        Locale.ROOT,
                        "%d,%s,%s:%s,Wren,5.%d%n",
                        number,
                        written,
                        at.substring(0, 2),
                        at.substring(2),
                        number));
                scores.append(String.format(Locale.ROOT, "%s,Inês,%d,6.25,7.%d,6%n", written, number, number % 2 * 5));
                number++;
            }
        }
        Files.writeString(folder.resolve("list.csv"), list);
        Files.writeString(folder.resolve("scores.csv"), scores);
    }

    private void recording(String name, int more) throws IOException {
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i <= 60; i++) {
            double degrees = i < 6 ? 190 - 18 * i : 90 + 2.05 * (i - 6);
            text.append(String.format(Locale.ROOT, "%d,%.2f%n", 10 * i, degrees + more / 100.0));
        }
        Files.writeString(folder.resolve(name + ".csv"), text);
    }

    private static List<String> names(Logbook logbook) {
        return logbook.batches().stream().map(Batch::name).sorted().toList();
    }

    @Test
    void aRecordingAndARowOfOneWrittenDayAreOneBatchWhicheverDayItIs() {
        Gather gather = Gather.of(folder);
        Logbook logbook = gather.writeTo(temporary.resolve("made"));
        assertEquals(NAMES, names(logbook));
        assertTrue(
                gather.gathering().batches().stream()
                        .allMatch(batch -> batch.recording().isPresent()),
                "each has its curve");
        assertTrue(
                gather.text()
                        .contains(
                                "'03-05-2031 081640' is row '61', because they go together whichever way the dates are read"),
                gather.text());
        assertTrue(
                gather.gathering().batches().stream()
                        .allMatch(batch ->
                                batch.day().isEmpty() && batch.roastedAt().isEmpty()),
                "the day stays open");
    }

    @Test
    void anAnswerGivesTheSameBatchesTheirDays() {
        Logbook logbook =
                Gather.of(folder).answer("date.order", "month/day/year").writeTo(temporary.resolve("made"));
        assertEquals(NAMES, names(logbook));
        assertEquals(
                LocalDate.of(2031, 3, 5),
                logbook.batch("61").roastedAt().orElseThrow().toLocalDate());
    }

    @Test
    void thoseThatAnswersTakeApartStayApart() {
        Gathering gathering =
                Gather.of(folder).answer("join.03-05-2031-081640", "apart").gathering();
        assertEquals(10, gathering.batches().size());
    }

    @Test
    void aListThatWritesItsDatesTheOtherWayIsNotJoinedUnseen() throws IOException {
        Path list = folder.resolve("list.csv");
        Files.writeString(
                list, Files.readString(list).replace("3/5/2031", "7/3/2031").replace("3/7/2031", "5/3/2031"));
        Map<String, String> joined = Gather.of(folder).gathering().joins().stream()
                .collect(java.util.stream.Collectors.toMap(
                        join -> join.curve().name(), join -> join.roast().name()));
        assertFalse(joined.containsKey("03-05-2031 081640"), joined.toString());
        assertEquals("67", joined.get("04-05-2031 081640"));
    }

    @Test
    void daysOfTastingThatNeedTheOrderAreNamedOnceWithItsKey() {
        List<String> left = Gather.of(folder).gathering().questions().leftOut().stream()
                .filter(line -> line.startsWith("'scores.csv'"))
                .toList();
        assertEquals(
                List.of(
                        "'scores.csv' leaves open: Which day is '3/5/2031', and 2 more such days, of 9 cups? date.order answers it; until then nobody knows when they were tasted, and they are left out."),
                left);
    }

    @Test
    void aScaleThatIsNotSaidLeavesNothingOut() {
        GatherQuestions questions = Gather.of(folder).gathering().questions();
        assertTrue(
                questions.leftOut().stream().noneMatch(line -> line.contains("scale")),
                questions.leftOut().toString());
        assertTrue(
                questions.taken().stream()
                        .anyMatch(
                                line -> line.startsWith("  'scores.csv': What is the scale of acidity, body, overall?")
                                        && line.endsWith("(scale.acidity=0..10 says it of an attribute).")),
                questions.taken().toString());
    }
}
