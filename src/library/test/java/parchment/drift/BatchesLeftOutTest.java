package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;

/** Where nothing of batches.csv could be used, each answer says that first and nothing that follows from it as if it were written so. */
class BatchesLeftOutTest {
    private static final String WHY = "batches.csv was left out because it has no column 'roasted at'";

    @TempDir
    private Path folder;

    private Logbook open(String batches) throws IOException {
        Files.createDirectories(folder.resolve("curves"));
        Files.writeString(folder.resolve("batches.csv"), batches);
        Files.writeString(
                folder.resolve("curves/B1.csv"), "time [s],bean temperature [°C]\n0,180\n60,90\n120,100\n180,110\n");
        return Logbook.open(folder);
    }

    @Test
    void aMissingColumnIsToldFirst() throws IOException {
        Logbook logbook = open("batch,lot\nB1,Kela\n");
        assertEquals(Optional.of(WHY), logbook.problems().batchesLeftOut());
        assertEquals(
                new InShort(
                        "The list " + WHY + ".",
                        "So there is no week to show: no batch has a date.",
                        "Mend the first line of batches.csv and ask again."),
                ShortSentences.keptBy(Week.of(logbook).inShort()));
        Usual usual = Usual.of(logbook.batch("B1"), logbook);
        assertEquals(
                new InShort(
                        "The list " + WHY + ".",
                        "So whether batch B1 is like the others cannot be told.",
                        "Mend the first line of batches.csv and ask again."),
                ShortSentences.keptBy(usual.inShort()));
        assertEquals("Cannot tell whether batch B1 is like the others: " + WHY, usual.toString());
        assertTrue(assertThrows(LogbookException.class, () -> logbook.ofLot("Kela"))
                .getMessage()
                .endsWith("has no lot 'Kela'. The reason: " + WHY + "."));
        assertFalse(
                logbook.problems().text().contains("a curve of no batch"),
                logbook.problems().text());
    }

    @Test
    void withoutCurvesThereIsTheSameReason() throws IOException {
        Logbook logbook = open("batch,lot\nB1,Kela\n");
        Files.delete(folder.resolve("curves/B1.csv"));
        Logbook without = Logbook.open(folder);
        assertEquals(1, logbook.batches().size());
        assertEquals(0, without.batches().size());
        assertEquals("The list " + WHY + ".", Week.of(without).inShort().found());
    }

    @Test
    void anotherReasonIsToldAsWhatWasFound() throws IOException {
        assertEquals(
                Optional.of("batches.csv was left out because of this: an empty file"),
                open("").problems().batchesLeftOut());
    }

    @Test
    void aListThatWasReadIsNotToldAsLeftOut() throws IOException {
        Logbook logbook = open("batch,roasted at\nB2,2025-03-03 09:00\n");
        assertEquals(Optional.empty(), logbook.problems().batchesLeftOut());
        assertEquals(
                "No lot was written for it.",
                Usual.of(logbook.batch("B1"), logbook).inShort().howSure());
        assertTrue(assertThrows(LogbookException.class, () -> logbook.ofLot("Kela"))
                .getMessage()
                .endsWith("No batch names a lot."));
        assertTrue(
                logbook.problems().text().contains("a curve of no batch"),
                logbook.problems().text());
    }
}
