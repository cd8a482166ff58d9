package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.sheet.Numbers;
import parchment.sheet.Sheet;

/** Holds how the titles above recordings that stand beside one another become a list of batches. */
class TitleFactsTest {
    @Test
    void titlesAboveRecordingsBesideOneAnotherAreAListWithARowARecording() {
        FoundTable list = TitleFacts.of(List.of(
                        recording("2031-06-11", "Batch 61", "Wren", "charged 08:56", "5.38 kg green"),
                        recording("2031-06-11", "Batch 62", "Sola", "charged 9:15:20", "green: 7.72 kg")))
                .orElseThrow();
        assertEquals(List.of("Batch", "Date", "#3", "charged", "green [kg]"), list.headings());
        assertEquals(
                List.of(
                        List.of("61", "2031-06-11", "Wren", "08:56", "5.38"),
                        List.of("62", "2031-06-11", "Sola", "9:15:20", "7.72")),
                list.rows());
        assertEquals("", list.sheet().tab());
        assertEquals(
                List.of("What stands above the readings of 2 recordings is read as a list with a row a recording; its"
                        + " lines are those of the first readings."),
                list.leftOut());
    }

    @Test
    void marksAboveTheReadingsAreReadToo() {
        FoundTable list = TitleFacts.of(List.of(
                        recording("a", "Batch 61", "first crack 9:12"), recording("a", "Batch 62", "first crack 9:48")))
                .orElseThrow();
        assertEquals(List.of("Batch", "first crack"), list.headings());
    }

    @Test
    void aMassThatNoWordGoesWithStaysAboveTheReadings() {
        FoundTable recording = recording("a", "Batch 61", "5.38 kg", "humid 4 kg green 9:12", "charged 08:56");
        assertEquals(
                List.of(List.of("Batch 61"), List.of("5.38 kg"), List.of("humid 4 kg green 9:12")),
                TitleFacts.withoutTaken(recording).above());
    }

    @Test
    void namesThatComeAgainOnAnotherDayAreTwoBatches() {
        assertEquals(
                true,
                TitleFacts.of(List.of(
                                recording("2031-06-11", "Batch 1", "5.38 kg green"),
                                recording("2031-06-12", "Batch 1", "7.72 kg green")))
                        .isPresent());
        assertEquals(
                Optional.empty(),
                TitleFacts.of(List.of(
                        recording("a", "Batch 1", "5.38 kg green"), recording("b", "Batch 1", "7.72 kg green"))));
    }

    @Test
    void nothingIsReadWhereABatchIsNotNamedOrNothingElseIsSaid() {
        FoundTable said = recording("a", "Batch 61", "5.38 kg green");
        assertEquals(Optional.empty(), TitleFacts.of(List.of(said)));
        assertEquals(Optional.empty(), TitleFacts.of(List.of(said, recording("a", "7.72 kg green"))));
        assertEquals(Optional.empty(), TitleFacts.of(List.of(recording("a", "Batch 61"), recording("a", "Batch 62"))));
    }

    /** Two recordings beside one another on one tab become two tables of readings and one list. */
    @Test
    void aFolderWithSuchATabHasAList(@org.junit.jupiter.api.io.TempDir Path folder) throws Exception {
        List<String> lines = new ArrayList<>(List.of(
                "Batch 61,,,,Batch 62,,",
                "charged 08:56,,,,charged 09:15,,",
                "5.38 kg green,,,,7.72 kg green,,",
                ",,,,,,",
                "time,beans °C,air °C,,time,beans °C,air °C"));
        for (int i = 0; i < 60; i++) {
            String reading = String.format(
                    java.util.Locale.ROOT,
                    "%d:%02d,%.1f,%.1f",
                    i / 6,
                    i % 6 * 10,
                    i < 6 ? 200 - 20.0 * i : 70 + 2.0 * i,
                    210 + 0.5 * i);
            lines.add(reading + ",," + reading);
        }
        java.nio.file.Files.write(folder.resolve("2031-06-11.csv"), lines);
        List<StrangeFolder.Found> tables = StrangeFolder.read(folder).tables();
        assertEquals(
                List.of(true, true, false),
                tables.stream().map(StrangeFolder.Found::isRecording).toList());
        assertEquals(
                List.of("Batch", "Date", "charged", "green [kg]"),
                tables.get(2).table().headings());
        assertEquals(List.of(List.of("Batch 61", "", "")), tables.get(0).table().above());
    }

    private static FoundTable recording(String tab, String... titles) {
        List<List<String>> above = new ArrayList<>();
        for (String title : titles) {
            above.add(List.of(title));
        }
        return new FoundTable(
                new Sheet(Path.of("drum log.xlsx"), tab, ',', Numbers.Decimal.POINT, List.of()),
                above,
                List.of("time", "beans"),
                List.of(List.of("0:00", "200")),
                List.of(9),
                List.of());
    }
}
