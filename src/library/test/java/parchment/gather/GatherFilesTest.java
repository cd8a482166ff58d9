package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

class GatherFilesTest {
    @TempDir
    Path temporary;

    private Path old() throws IOException {
        return Files.createDirectories(temporary.resolve("old"));
    }

    private static String recording(int rows) {
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i < rows; i++) {
            double degrees = i < 6 ? 190 - 18 * i : 90 + 2 * (i - 6);
            text.append(String.format(Locale.ROOT, "%d,%.1f%n", 10 * i, degrees));
        }
        return text.toString();
    }

    private String gathered() throws IOException {
        StringBuilder out = new StringBuilder();
        assertEquals(
                0,
                Gather.run(
                        old(),
                        temporary.resolve("made"),
                        Optional.empty(),
                        question -> Optional.of(question.contains("None of them shows it") ? "day/month/year" : ""),
                        out),
                out.toString());
        return out.toString();
    }

    @Test
    void aFolderThatMayNotBeLookedIntoIsNamedAndStopsNothing() throws IOException {
        Files.writeString(old().resolve("real.csv"), recording(60));
        Path shut = Files.createDirectories(old().resolve("shut"));
        assumeTrue(
                shut.toFile().setReadable(false, false) && !Files.isReadable(shut), "somebody who may read everything");
        try {
            String out = gathered();
            assertTrue(out.contains("May not be looked into, and left out: 'shut'."), out);
        } finally {
            assertTrue(shut.toFile().setReadable(true));
        }
    }

    @Test
    void aLinkOutOfTheFolderIsNamedAndNotRead() throws IOException {
        Files.writeString(old().resolve("real.csv"), recording(60));
        Path outside = Files.writeString(temporary.resolve("outside.csv"), recording(61));
        Files.createSymbolicLink(old().resolve("link.csv"), outside);
        Files.createSymbolicLink(old().resolve("again.csv"), old().resolve("real.csv"));
        Files.createSymbolicLink(old().resolve("dead.csv"), temporary.resolve("nowhere.csv"));
        Files.createDirectories(old().resolve("week.csv"));
        Files.writeString(old().resolve("notes.pdf"), "no table");
        String out = gathered();
        assertTrue(
                out.contains(
                        "Left out, because a link out of the folder is not followed: 'link.csv'. To take one in, copy the file"
                                + " into the folder."),
                out);
        assertTrue(
                out.contains("Folders, though named like files, so only what lies in them was looked at: 'week.csv'."),
                out);
        assertTrue(
                out.contains(
                        "Left out, because a link to a folder is not followed, and what is no file is not read: 'dead.csv'."),
                out);
        assertTrue(out.contains("1 file, whose names end in '.pdf'."), out);
        List<String> names = Logbook.open(temporary.resolve("made")).batches().stream()
                .map(Batch::name)
                .toList();
        assertFalse(names.contains("link"), names.toString());
        assertTrue(names.contains("real"), names.toString());
    }

    /** One row fewer than are needed, and as many. */
    @ParameterizedTest
    @CsvSource({"9,true", "10,false"})
    void saysHowManyRowsARecordingHasWhereTooFewAreThere(int rows, boolean leftOut) throws IOException {
        Files.writeString(old().resolve("real.csv"), recording(60));
        Files.writeString(old().resolve("short.csv"), recording(rows));
        String out = gathered();
        assertEquals(
                leftOut,
                out.contains(
                        "'short.csv': it is no list of batches, and for a recording it has 9 rows where 10 are needed."),
                out);
    }
}
