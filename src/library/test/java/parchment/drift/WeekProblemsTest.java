package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;

class WeekProblemsTest {
    @TempDir
    Path folder;

    private static String curve(int readings) {
        StringBuilder curve = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int k = 0; k < readings; k++) {
            curve.append(10 * k).append(',').append(90 + 2 * k).append('\n');
        }
        return curve.toString();
    }

    /** Batches of an hour each, from the second on a day of the last week; the first of a month before. */
    private Week week(String rows, List<Integer> readings) throws IOException {
        Files.writeString(
                folder.resolve("batches.csv"), "batch,roasted at,lot,green mass [kg],roasted mass [kg]\n" + rows);
        Files.createDirectories(folder.resolve("curves"));
        for (int i = 0; i < readings.size(); i++) {
            if (readings.get(i) >= 0) {
                Files.writeString(folder.resolve("curves").resolve("B" + (i + 1) + ".csv"), curve(readings.get(i)));
            }
        }
        return Week.of(Logbook.open(folder));
    }

    @Test
    void namesTheBatchesOfTheWeekThatWereNotReadAsWrittenWithTheReason() throws IOException {
        Week week = week("""
                B1,2025-01-02 09:00,one,2,4
                B2,2025-02-02 09:00,one,2,1.7
                B3,2025-02-03 09:00,one,2,1.7
                B4,2025-02-04 09:00,one,2,3
                B5,2025-02-05 09:00,one,2,1.7
                B6,2025-02-06 09:00,one,2,1.7
                B6,2025-02-06 09:30,one,2,1.7
                """, List.of(40, 41, 1, 42, 0, -1));
        List<String> told = List.of(
                "Please check batch B3: curves/B3.csv, column 'bean temperature [°C]': found 1 usable reading, too few to work with;"
                        + " expected bean temperatures at three times or more; kept; no mark is looked for on this curve.",
                "Please check batch B4: batches.csv, line 5, column 'roasted mass [kg]': found '3'; expected less than the green mass,"
                        + " 2 kg; value treated as missing.",
                "Please check batch B5: curves/B5.csv: found a heading and no readings; expected one reading or more; file left out.",
                "Please check batch B6: batches.csv, line 7, column 'batch': found the batch 'B6' without a curve; expected a file"
                        + " 'curves/B6.csv'; kept without a curve.",
                "The logbook has 2 other problems; the tour lists them.");
        assertEquals(told, WeekProblems.of(week));
        told.forEach(words -> assertTrue(week.text().contains(words), week.text()));
    }

    @Test
    void saysWhereNoProblemIsOfTheWeekAndNothingWhereThereIsNone() throws IOException {
        String rows = "B2,2025-02-02 09:00,one,2,1.7\n";
        Week week = week("B1,2025-01-02 09:00,one,2,4\n" + rows, List.of(40, 41));
        assertEquals(
                List.of("The logbook has 1 problem, none of them with a batch of the week; the tour lists it."),
                WeekProblems.of(week));
        Week quiet = week("B1,2025-01-02 09:00,one,2,1.7\n" + rows, List.of(40, 41));
        assertEquals(List.of(), WeekProblems.of(quiet));
        assertFalse(quiet.text().contains("problem"), quiet.text());
    }

    /** Without a day on which the page is read no date is doubted; with one the doubt comes first, and every batch stays in the week. */
    @Test
    void datesAfterTheDayOfReadingAreDoubtedAndNotLeftOut() throws IOException {
        Week week = week("B1,2025-02-01 09:00,one,2,1.7\nB2,2025-02-02 09:00,one,2,1.7\n", List.of(40, 41));
        assertEquals(List.of(), WeekProblems.of(week));
        assertEquals(List.of(), WeekProblems.of(week.readOn(LocalDate.of(2025, 2, 1))));
        Week early = week.readOn(LocalDate.of(2024, 2, 1)).withOrder("one", Mass.kilograms(2));
        assertEquals(
                List.of(
                        "2 of 2 batches are dated after today, 2024-02-01, the last on 2025-02-02. Check the year under 'roasted at' in"
                                + " batches.csv, and the date of this computer; nothing is left out for it."),
                WeekProblems.of(early));
        assertEquals(2, early.batches().size());
        assertTrue(early.text().contains("2 of 2 batches are dated after today, 2024-02-01"), early.text());
    }

    /** The page may not be calm in its first sentences and doubt its days below; tomorrow may have begun where the batch was roasted. */
    @ParameterizedTest
    @CsvSource({"2025-01-31,true", "2025-02-01,false"})
    void datesAfterTheDayOfReadingAreInTheFirstSentences(LocalDate today, boolean ahead) throws IOException {
        Week week = week("B1,2025-02-01 09:00,one,2,1.7\nB2,2025-02-02 09:00,one,2,1.7\n", List.of(40, 41));
        InShort plain = week.inShort();
        InShort read = ShortSentences.keptBy(week.readOn(today).inShort());
        assertEquals(
                ahead
                        ? new InShort(
                                "2 batches in the week to 2025-02-02 (still to come): too early to say what is usual.",
                                plain.howSure(),
                                "First check the dates: 1 of 2 batches are dated after today.")
                        : plain,
                read);
    }

    /** A logger's sign for no reading was read as what it means; a mass that cannot be is not calm in the first sentences. */
    @Test
    void aSignForNoReadingIsNothingToCheckAndAMassThatCannotBeIs() throws IOException {
        StringBuilder rows = new StringBuilder();
        for (int i = 1; i <= 10; i++) {
            rows.append("B" + i + ",2025-02-02 " + (9 + i) + ":00,one,2," + (1.7 + 0.003 * (i % 3)) + "\n");
        }
        Files.createDirectories(folder.resolve("curves"));
        Files.writeString(
                folder.resolve("curves").resolve("B1.csv"),
                curve(40).replace("200,130\n", "200,999.9\n").replace("210,132\n", "210,999.9\n"));
        List<Integer> others = new java.util.ArrayList<>(List.of(-1, 41, 42, 43, 44, 45, 46, 47, 48, 49));
        Week signs = week(rows.toString(), others);
        assertTrue(
                signs.logbook().problems().list().stream()
                        .anyMatch(problem -> problem.toString().contains("2 readings of 999.9")),
                signs.logbook().problems().text());
        assertEquals(List.of(), WeekProblems.of(signs));
        assertEquals("Nothing to do; the cup decides.", signs.inShort().next());
        Week misread = week(rows.toString().replace("18:00,one,2,", "18:00,one,500,"), others);
        assertTrue(WeekProblems.of(misread).get(0).startsWith("Please check batch B9: batches.csv, line 10"));
        assertEquals(
                "Check batch B9 first: not all of it was read as written.",
                ShortSentences.keptBy(misread.inShort()).next());
    }

    /** Of one batch two reasons are told and the rest is counted; eleven batches are ten and a name. */
    @ParameterizedTest
    @CsvSource({"10,0", "11,1"})
    void tenBatchesAreToldWithTheirReasonsAndTheOthersByName(int batches, int named) throws IOException {
        StringBuilder rows = new StringBuilder();
        for (int i = 1; i <= batches; i++) {
            rows.append("B" + i + ",2025-02-02 " + (10 + i) + ":00,one,2,4\n");
        }
        List<String> told = WeekProblems.of(week(rows.toString(), java.util.Collections.nCopies(batches, 40)));
        assertEquals(
                10,
                told.stream()
                        .filter(words -> words.startsWith("Please check batch B"))
                        .count(),
                told.toString());
        assertEquals(named == 0 ? List.of() : List.of("Please check too: B11."), told.subList(10, told.size()));
    }

    @ParameterizedTest
    @CsvSource({"0,0", "1,1", "2,2"})
    void batchesWithoutADateAreCounted(int undated, int said) throws IOException {
        StringBuilder rows = new StringBuilder("B1,2025-02-01 09:00,one,2,1.7\n");
        for (int i = 0; i < undated; i++) {
            rows.append("B" + (i + 2) + ",,one,2,1.7\n");
        }
        List<String> told = WeekProblems.of(week(rows.toString(), java.util.Collections.nCopies(1 + undated, 40)));
        String expected = said == 0
                ? ""
                : said == 1
                        ? "1 batch has no date that could be read, so it is in no week."
                        : "2 batches have no date that could be read, so they are in no week.";
        assertEquals(
                expected,
                told.stream()
                        .filter(words -> words.contains("no week"))
                        .findFirst()
                        .orElse(""),
                told.toString());
    }
}
