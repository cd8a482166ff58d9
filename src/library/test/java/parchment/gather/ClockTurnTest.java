package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.gather.ListColumn.Confidence;
import parchment.logbook.WrittenFolder;
import parchment.sheet.DateOrder;

/** Holds that times of day and times since the charge are told apart by their heading first; invented lists. */
class ClockTurnTest {
    @TempDir
    Path temporary;

    private static ListColumns list(String heading, String... times) {
        List<String> lines = new ArrayList<>(List.of("Batch|Date|Coffee|Green kg|Roasted kg|" + heading));
        for (int i = 0; i < times.length; i++) {
            lines.add((101 + i) + "|2031-03-05|Wren|5." + i + "|4.3|" + times[i]);
        }
        return ListColumns.of(Sheets.table(lines.toArray(String[]::new)), Clues.NONE);
    }

    private static String last(String heading, String... times) {
        ListColumn column = list(heading, times).columns().get(5);
        return column.meaning().words() + (column.confidence() == Confidence.OPEN ? ", asked" : "");
    }

    @ParameterizedTest
    @CsvSource({
        "Drop, 9:30 9:51 10:12 10:33 10:54 11:15",
        "Drop, 11:15 10:54 10:33 10:12 9:51 9:30",
        "Drop, 10:00 10:00 10:00 10:00 10:00 10:00",
        "Drop [min:s], 9:30 9:51 10:12 10:33 10:54 11:15",
        "Total time, 9:30 9:51 10:12 10:33 10:54 11:15",
        "Brrp [min:s], 9:30 9:51 10:12 10:33 10:54 11:15",
    })
    void aMarkThatRisesFallsOrStaysIsNoTimeOfDay(String heading, String times) {
        assertTrue(list(heading, times.split(" ")).of(ListMeaning.TIME_OF_DAY).isEmpty());
        if (!heading.startsWith("Brrp")) {
            assertEquals("drop", last(heading, times.split(" ")).replace(", asked", ""));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "Time, 08:00 09:07 10:14 11:00 24:00, time of day",
        "Time, 08:00 09:07 10:14 11:20 12:60, time of day",
        "Time, 20:00 21:07 22:14 23:20 00:10, 'time of day, asked'",
        "Time, 10:30 11:15 12:20 1:05 1:50, 'time of day, asked'",
        "Start, 10:30 11:15 12:20 1:05 1:50, 'time of day, asked'",
        "Time, 8:05 8:25 8:50 9:15 9:40, 'time of day, asked'",
        "Time, 9:13 8:35 9:16 9:06 8:31 8:57 8:47, drop",
    })
    void aTimeInWhichNoRoastCouldLastSoLongIsATimeOfDay(String heading, String times, String meaning) {
        assertEquals(meaning, last(heading, times.split(" ")));
    }

    /** One row on each side of each hour at which a clock may turn. */
    @ParameterizedTest
    @CsvSource({
        "12:20, 1:05, NOON",
        "12:20, 5:20, NOON",
        "12:20, 5:21, none",
        "8:00, 1:00, NOON",
        "7:59, 1:00, none",
        "8:27, 6:53, none",
        "12:20, 0:59, none",
        "13:00, 1:05, none",
        "23:20, 0:10, MIDNIGHT",
        "19:00, 3:59, MIDNIGHT",
        "18:59, 3:59, none",
        "19:00, 4:00, none",
    })
    void aClockTurnsAtNoonOrAtMidnight(String before, String after, String turn) {
        assertEquals(
                turn,
                ClockTurn.of(List.of(before, after))
                        .map(found -> found.turn().toString())
                        .orElse("none"));
    }

    @Test
    void whatStandsAfterNoonIsWrittenSoAndNotAtNight() {
        List<ListedBatch> rows = BatchList.of(
                        list("Time", "10:30", "11:15", "12:20", "1:05", "1:50"), DateOrder.DAY_MONTH_YEAR)
                .batches();
        assertEquals(
                List.of("10:30", "11:15", "12:20", "13:05", "13:50"),
                rows.stream()
                        .map(row -> row.roastedAt().orElseThrow().toLocalTime().toString())
                        .toList());
    }

    @Test
    void anAnswerTakesTheHoursForThoseOfTheNight() throws Exception {
        new WrittenFolder(temporary.resolve("old"))
                .with(
                        "roasts.csv",
                        "Batch,Date,Time,Coffee,Green kg,Roasted kg",
                        "1,2031-03-05,10:30,Wren,5,4.25",
                        "2,2031-03-05,11:15,Wren,5,4.27",
                        "3,2031-03-05,12:20,Wren,5,4.29",
                        "4,2031-03-05,1:05,Wren,5,4.31");
        assertTrue(gathered("a", "").contains("2031-03-05T13:05"));
        assertTrue(gathered("b", "sheet.a.column.3=time of day [24 h]").contains("2031-03-05T01:05"));
    }

    private String gathered(String name, String answer) throws Exception {
        Path answers = temporary.resolve(name + ".properties");
        Files.writeString(answers, answer + "\n");
        StringBuilder said = new StringBuilder();
        Path made = temporary.resolve(name);
        assertEquals(
                0,
                Gather.run(temporary.resolve("old"), made, Optional.of(answers), Gather.NOBODY, said),
                said.toString());
        return Files.readString(made.resolve("batches.csv"));
    }
}
