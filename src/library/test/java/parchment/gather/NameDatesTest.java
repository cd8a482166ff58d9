package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Dates of two digits each in the names of files: which number is the year. */
class NameDatesTest {
    @TempDir
    Path temporary;

    private static List<WrittenDay> days(String dates) {
        return Arrays.stream(dates.split(" "))
                .filter(date -> !date.isEmpty())
                .map(date -> WrittenDay.inName(date).orElseThrow())
                .toList();
    }

    /** A day that does not exist rules a reading out, and a year that is not of the folder does. */
    @ParameterizedTest
    @CsvSource({
        // One 31st could be a day or a year; of the rest of the folder, only the year can be 2031.
        "'31-01-05', '2031-02-01', YEAR_FIRST",
        "'31-01-05', '2032-02-01', YEAR_FIRST",
        "'31-01-05', '2033-02-01', NOT",
        "'31-01-05', '2005-02-01', LIKE_THE_REST",
        "'31-01-05', '', NOT",
        // February has no 31st: the year stands first, whatever else lies there.
        "'31-01-05 31-02-05', '', YEAR_FIRST",
        "'31-01-05 31-02-05', '2005-02-01', YEAR_FIRST",
        // 2013 has no 31st of June.
        "'13-06-31', '', LIKE_THE_REST",
        "'13-06-31 12-05-31', '', LIKE_THE_REST",
        "'12-13-31', '', LIKE_THE_REST",
        "'12-05-31', '', NOT",
        "'12-05-31', '2031-02-01', LIKE_THE_REST",
        "'1-6-31', '', LIKE_THE_REST",
        "'31.01.05', '2031-02-01', LIKE_THE_REST",
        "'', '2031-02-01', LIKE_THE_REST"
    })
    void theFirstNumberIsTheYearWhereNothingElseIsPossible(String names, String others, NameDates.Reads reads) {
        GatherQuestions questions = new GatherQuestions(Map.of());
        assertEquals(
                reads, NameDates.decide(days(names), days(others), questions).reads());
        assertEquals(reads == NameDates.Reads.NOT ? 1 : 0, questions.open().size(), "asked once where it is open");
        assertEquals(reads == NameDates.Reads.NOT, !questions.leftOut().isEmpty());
    }

    @ParameterizedTest
    @CsvSource({
        "year/month/day, 2031-01-05",
        "day/month/year, 2005-01-31",
        "Day/Month/Year , 2005-01-31",
        "as written, "
    })
    void theAnswerSaysIt(String answer, LocalDate day) throws IOException {
        recording("roast 31-01-05 wren");
        Gather gather = Gather.of(temporary).answer("date.order.names", answer);
        assertEquals(
                Optional.ofNullable(day), gather.gathering().batches().get(0).day());
        assertEquals(
                0,
                gather.gathering().questions().open().stream()
                        .filter(open -> open.key().startsWith("date.order"))
                        .count());
    }

    /** On the old code 31-01-05 in a name proved day/month/year for every list of the folder. */
    @Test
    void aYearInANameProvesNothingForTheLists() throws IOException {
        recording("roast 31-01-05");
        recording("roast 31-02-05");
        Files.writeString(
                temporary.resolve("list.csv"),
                "batch,date,green mass [kg],lot\n1,01/05/2031,5,kela\n2,02/05/2031,6,kela\n3,03/05/2031,7,wren\n");
        Gathering gathering = Gather.of(temporary).gathering();
        assertTrue(
                gathering.questions().open().stream()
                        .anyMatch(open -> open.key().equals("date.order")),
                gathering.questions().open().toString());
        assertEquals(
                List.of("2031-01-05", "2031-02-05"),
                gathering.curves().stream()
                        .flatMap(curve -> curve.day().stream())
                        .map(LocalDate::toString)
                        .toList());
        assertTrue(
                gathering.questions().taken().stream()
                        .anyMatch(line ->
                                line.contains("The date '31-01-05' in the names of the files is read so, because"
                                        + " no other order gives days that exist: year/month/day (date.order.names)")),
                gathering.questions().taken().toString());
    }

    @Test
    void aNameWithTheYearLastIsReadAsTheFolderIs() throws IOException {
        recording("roast 03-04-31");
        Files.writeString(
                temporary.resolve("list.csv"),
                "batch,date,green mass [kg],lot\n1,13/04/2031,5,kela\n2,02/05/2031,6,kela\n3,03/05/2031,7,wren\n");
        Gathering gathering = Gather.of(temporary).gathering();
        assertEquals(
                Stream.of(LocalDate.of(2031, 4, 3)).toList(),
                gathering.curves().stream()
                        .flatMap(curve -> curve.day().stream())
                        .toList());
        assertFalse(gathering.questions().open().stream()
                .anyMatch(open -> open.key().startsWith("date")));
    }

    private void recording(String name) throws IOException {
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i <= 60; i++) {
            double degrees = i < 6 ? 190 - 18 * i : 90 + 2.05 * (i - 6);
            text.append(String.format(Locale.ROOT, "%d,%.2f%n", 10 * i, degrees + name.hashCode() % 97 / 100.0));
        }
        Files.writeString(temporary.resolve(name + ".csv"), text);
    }
}
