package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;

/** Holds that a logbook reads the cuppings that are written for it, score by score. */
class CuppingsWriterTest {
    @TempDir
    Path folder;

    private static CuppingsWriter writer(FoundTable... tables) {
        List<ScoreSheet> sheets = new ArrayList<>();
        List<TastedCup> cups = new ArrayList<>();
        List<BlindKey> keys = new ArrayList<>();
        for (FoundTable table : tables) {
            ScoreClues clues = ScoreClues.of(List.of("101", "102"));
            ScoreSheets.of(table, clues)
                    .ifPresentOrElse(
                            sheet -> {
                                sheets.add(sheet);
                                cups.addAll(sheet.cups());
                            },
                            () -> keys.add(BlindKey.of(table, clues).orElseThrow()));
        }
        List<NamedBatch> batches = List.of(
                new NamedBatch("101", List.of(), Optional.of(LocalDate.of(2031, 6, 1)), Optional.empty(), ""),
                new NamedBatch("102", List.of(), Optional.of(LocalDate.of(2031, 6, 1)), Optional.empty(), ""));
        return CuppingsWriter.of(CupJoin.of(cups, keys, batches).joined(), sheets);
    }

    private Logbook opened(CuppingsWriter writer) throws IOException {
        Files.writeString(
                folder.resolve("batches.csv"), "batch,roasted at\n101,2031-06-01T08:00\n102,2031-06-01T08:20\n");
        Files.writeString(
                folder.resolve("logbook.properties"), "name=Quay\n" + String.join("\n", writer.settings()) + "\n");
        writer.write(folder);
        return Logbook.open(folder);
    }

    @Test
    void isReadBackAsItWasTasted() throws IOException {
        CuppingsWriter writer = writer(MadeTables.of(
                "Date|Cupper|Batch|Code|Cup|Acidity (0-10)|Clean cup|Order|Comments",
                "2031-06-04|Ana|101|K7|1|7,25|6|2|=plum, dry",
                "2031-06-04|Ana|101|K7|2|7|6.5|3|",
                "2031-06-05|Wren|102|M2|1|-|8|1|"));
        Logbook logbook = opened(writer);
        List<CupScores> cups = logbook.cups();
        assertEquals(3, cups.size());
        assertEquals("{acidity=7.25, clean cup=6.0}", cups.get(0).scores().toString());
        assertEquals(
                List.of("2031-06-04", "Ana", "101", "K7", "1", "=plum, dry"),
                List.of(
                        cups.get(0).cupping(),
                        cups.get(0).cupper(),
                        cups.get(0).batch(),
                        cups.get(0).blindCode().orElseThrow(),
                        cups.get(0).cup().orElseThrow(),
                        cups.get(0).note().orElseThrow()));
        assertEquals(2, cups.get(0).servingPosition().orElseThrow());
        assertTrue(Double.isNaN(cups.get(2).score("acidity")));
        assertEquals(List.of("scale.acidity=0..10"), writer.settings());
        assertFalse(
                Files.exists(folder.resolve("sessions.csv")),
                "a batch stands beside each code, so that nobody knows whether it was blind");
        assertTrue(
                logbook.problems().toString().contains("no problems")
                        || !logbook.problems().toString().contains("cuppings.csv"),
                logbook.problems().toString());
    }

    @Test
    void writesBlindOnlyWhereCodesStoodAlone() throws IOException {
        CuppingsWriter writer = writer(
                MadeTables.of("Date|Code|Cupper|Acidity|Body", "2031-06-04|K7|Ana|7|6", "2031-06-04|M2|Ana|6|6"),
                MadeTables.named("list.csv", "", List.of(), "Date|Batch|Cupper|Acidity|Body", "2031-06-05|101|Ana|7|6"),
                MadeTables.named("key.csv", "", List.of(), "Code|Batch", "K7|101", "M2|102"));
        Logbook logbook = opened(writer);
        assertEquals(List.of(List.of("cupping", "blind"), List.of("2031-06-04", "yes")), writer.sessions());
        assertEquals(
                Cupping.Said.YES, logbook.cupping("2031-06-04").orElseThrow().blind());
        assertEquals(
                List.of("101", "102", "101"),
                logbook.cups().stream().map(CupScores::batch).toList());
    }

    @Test
    void writesMeansAsThoseOfThePanelAndSaysSo() throws IOException {
        CuppingsWriter writer = writer(MadeTables.named(
                "means 2031-06-04.csv",
                "",
                List.of(),
                "Batch|Average acidity|Average body",
                "101|7.25|6.5",
                "102|6.5|6.5"));
        assertEquals(
                List.of("panel", "panel"),
                opened(writer).cups().stream().map(CupScores::cupper).toList());
        assertEquals(
                List.of(
                        "Nobody is named as the cupper in means 2031-06-04.csv. Its scores are written as those of 'panel', as one cupper: "
                                + "how far cuppers agree cannot be told from them."),
                writer.told());
    }

    @Test
    void callsTwoCuppingsOfADayByLetters() {
        CuppingsWriter writer = writer(MadeTables.of(
                "Date|Session|Cupper|Batch|Acidity|Body",
                "2031-06-04|morning|Ana|101|7|6",
                "2031-06-04|evening|Ana|101|6|6",
                "2031-06-05|morning|Ana|102|6|6"));
        assertEquals(
                List.of("2031-06-04a", "2031-06-04b", "2031-06-05"),
                writer.cuppings().stream().skip(1).map(row -> row.get(0)).toList());
        assertEquals(
                List.of(
                        "The cupping 'morning' of 2031-06-04 is called 2031-06-04a.",
                        "The cupping 'evening' of 2031-06-04 is called 2031-06-04b."),
                writer.told());
    }

    @Test
    void writesNoCupWithoutADay() throws IOException {
        CuppingsWriter writer = writer(MadeTables.of("Cupper|Batch|Acidity|Body", "Ana|101|7|6"));
        writer.write(folder);
        assertFalse(Files.exists(folder.resolve("cuppings.csv")));
        assertEquals(List.of("scores.csv line 2 has no day of tasting and is not written."), writer.told());
    }

    @Test
    void statesNoScaleWhereTwoSheetsHaveTwo() {
        CuppingsWriter writer = writer(
                MadeTables.of("Date|Cupper|Batch|Acidity (0-10)|Body (0-10)", "2031-06-04|Ana|101|7|6"),
                MadeTables.named(
                        "b.csv",
                        "",
                        List.of(),
                        "Date|Cupper|Batch|Acidity (1-5)|Body (0-10)",
                        "2031-06-05|Ana|101|4|6"));
        assertEquals(List.of("scale.body=0..10"), writer.settings());
        assertEquals(1, writer.told().size());
        assertTrue(
                writer.told().get(0).startsWith("'acidity' is scored on several scales ("),
                writer.told().toString());
    }
}
