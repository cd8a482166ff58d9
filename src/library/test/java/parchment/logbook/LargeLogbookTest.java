package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.curve.Curve;
import parchment.logbook.contents.LogbookException;

class LargeLogbookTest {
    private static final long GIGABYTE = 1L << 30;

    @TempDir
    Path temporary;

    /** Hands out rows for ever (to a gigabyte) without holding them, and counts what was taken. */
    private static final class EndlessRows extends InputStream {
        private final String row;
        private long taken;
        private int next;
        private long number;
        private byte[] current;

        EndlessRows(String heading, String row) {
            this.row = row;
            this.current = heading.getBytes(StandardCharsets.UTF_8);
        }

        @Override
        public int read() {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0];
        }

        @Override
        public int read(byte[] buffer, int from, int length) {
            if (taken >= GIGABYTE) {
                return -1;
            }
            if (next == current.length) {
                current = row.replace("#", Long.toString(number++)).getBytes(StandardCharsets.UTF_8);
                next = 0;
            }
            int count = Math.min(length, current.length - next);
            System.arraycopy(current, next, buffer, from, count);
            next += count;
            taken += count;
            return count;
        }
    }

    private static CurveFile.Result read(InputStream in, ProblemLog problems) throws IOException {
        return CurveFile.read(in, CurveLayout.standard(), Settings.usual(), problems);
    }

    @Test
    void stopsReadingACurveOfAGigabyteAtAMillionReadings() throws IOException {
        EndlessRows rows = new EndlessRows("time [s],bean temperature [°C]\n", "#,200.5\n");
        ProblemLog problems = new ProblemLog("curves/1.csv");
        CurveFile.Result result = read(rows, problems);
        Curve kept = result.curves().known().get(Quantity.BEAN_TEMPERATURE);
        assertEquals(Bounds.MOST_READINGS_KEPT, kept.size());
        assertEquals(
                999_950, kept.secondsAt(kept.size() - 1), "one of every 50 of the million that were read, to the last");
        assertTrue(rows.taken < GIGABYTE / 50, "it took " + rows.taken + " bytes");
        assertTrue(problems.toList().get(0).toString().contains("more than 1000000 readings"));
    }

    @Test
    void holdsFewerReadingsOfAFileWithVeryManyColumns() throws IOException {
        String heading = "time [s],bean temperature [°C]" + ",x".repeat(900) + "\n";
        EndlessRows rows = new EndlessRows(heading, "#,200.5" + ",1".repeat(900) + "\n");
        ProblemLog problems = new ProblemLog("curves/1.csv");
        CurveFile.Result result = read(rows, problems);
        assertEquals(
                16_000_000 / 901,
                result.curves().known().get(Quantity.BEAN_TEMPERATURE).size());
    }

    @Test
    void givesUpOnAGigabyteInWhichNothingIsAReading() throws IOException {
        EndlessRows rows = new EndlessRows("time [s],bean temperature [°C]\n", "never,x\n");
        ProblemLog problems = new ProblemLog("curves/1.csv");
        assertTrue(read(rows, problems).curves().isEmpty());
        assertTrue(rows.taken < 1 << 20, "it took " + rows.taken + " bytes");
        assertTrue(
                problems.toList().toString().contains("no reading with a time"),
                problems.toList().toString());
    }

    @Test
    void refusesAGigabyteWithoutALineEnd() throws IOException {
        Files.createDirectory(temporary.resolve("curves"));
        try (RandomAccessFile file =
                new RandomAccessFile(temporary.resolve("curves/1.csv").toFile(), "rw")) {
            file.setLength(GIGABYTE); // Zeros that take no place on the disk.
        }
        Logbook logbook = Logbook.open(temporary);
        assertTrue(
                logbook.problems().text().contains("line 1 is longer than 1048576 characters"),
                logbook.problems().text());
    }

    @Test
    void opensThousandsOfCurvesAndReadsThoseBeyondTheMemoryAgain() throws IOException {
        WrittenFolder folder = new WrittenFolder(temporary);
        for (int i = 0; i < 3000; i++) {
            String curve = WrittenFolder.curve("°C", 0, 90, 3, 200 + i / 100.0);
            folder.withText("curves/" + i + ".csv", i == 2500 ? curve + "oops,1\n" : curve);
        }
        long held = 200_000;
        Logbook logbook = FolderReader.open(temporary, Optional.empty(), held);
        assertEquals(3000, logbook.batches().size());
        assertEquals(1, logbook.problems().size(), "problems are found in the files that are not held, too");
        assertTrue(logbook.toString().contains("3000 batches (3000 with a curve)"));
        for (Batch batch : logbook.batches()) {
            assertEquals(31, batch.beanTemperature().orElseThrow().size());
        }
    }

    @Test
    void holdsCurvesThatFitAndSaysWhenAFileChangedUnderneath() throws IOException {
        WrittenFolder folder = new WrittenFolder(temporary).withText("curves/1.csv", WrittenFolder.CURVE);
        Batch held = folder.open().batch("1");
        assertSame(held.beanTemperature().orElseThrow(), held.beanTemperature().orElseThrow());
        Batch again = FolderReader.open(temporary, Optional.empty(), 0).batch("1");
        Files.setLastModifiedTime(temporary.resolve("curves/1.csv"), FileTime.fromMillis(1_000_000));
        LogbookException e = assertThrows(LogbookException.class, again::beanTemperature);
        assertTrue(e.getMessage().contains("'1.csv' was changed since the logbook was opened"), e.getMessage());
        assertEquals(113, held.beanTemperature().orElseThrow().size());
    }
}
