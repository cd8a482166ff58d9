package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.file.FolderLock;
import parchment.logbook.contents.LogbookException;

/** A run that is stopped after any of its writes, two runs at once, and records that are damaged. */
class StoppedGatheringTest {
    @TempDir
    Path temporary;

    private Path folder;

    @BeforeEach
    void files() throws IOException {
        folder = Files.createDirectories(temporary.resolve("Logger files"));
        recording("batch 1", 201);
        recording("batch 2", 203);
        list("1,2031-03-04,kela,5", "2,2031-03-05,kela,5");
    }

    private void recording(String name, int last) throws IOException {
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i <= 60; i++) {
            double degrees = i < 6 ? 190 - 18 * i : 90 + (last - 90) * (i - 6) / 54.0;
            text.append(String.format(Locale.ROOT, "%d,%.1f%n", 10 * i, degrees));
        }
        Files.writeString(folder.resolve(name + ".csv"), text);
    }

    private void list(String... rows) throws IOException {
        Files.writeString(
                folder.resolve("list.csv"), "batch,date,lot,green mass [kg]\n" + String.join("\n", rows) + "\n");
    }

    private void grown() throws IOException {
        recording("batch 2", 205);
        recording("batch 3", 207);
        // The earlier row's lot is another now, and the new rows stand before the old ones.
        list("4,2031-03-03,house,5", "3,2031-03-06,house,5", "1,2031-03-04,house,5", "2,2031-03-05,kela,5");
    }

    private static Map<String, String> files(Path logbook) throws IOException {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(logbook)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                String name = logbook.relativize(file).toString();
                if (!name.equals(GatheredBefore.FILE) && !name.equals(GatherWriter.REPORT)) {
                    files.put(
                            name,
                            Files.readString(file).replace(logbook.getFileName().toString(), "LOGBOOK"));
                }
            }
        }
        return files;
    }

    private String gather(Path logbook) {
        StringBuilder out = new StringBuilder();
        assertEquals(0, Gather.run(folder, logbook, Optional.empty(), Gather.NOBODY, out), out.toString());
        return out.toString();
    }

    /** Runs and stops after so many writes, as a killed run does; returns whether it was stopped. */
    private boolean stopped(Path logbook, int after) {
        int[] left = {after};
        GatherPlace place = GatherPlace.of(Gather.of(folder), logbook);
        try {
            place.write(file -> {
                if (left[0]-- == 0) {
                    throw new IOException("The run is stopped here.");
                }
                file.write();
            });
            return false;
        } catch (LogbookException e) {
            return true;
        }
    }

    /** Returns a copy of a logbook, as the run before left it, under the same name. */
    private Path copied(Path logbook, String place) throws IOException {
        Path copy = temporary.resolve(place).resolve(logbook.getFileName());
        try (Stream<Path> all = Files.walk(logbook)) {
            for (Path each : all.toList()) {
                Path target = copy.resolve(logbook.relativize(each));
                if (Files.isDirectory(each)) {
                    Files.createDirectories(target);
                } else {
                    Files.copy(each, target);
                }
            }
        }
        return copy;
    }

    /** On the old code a table that was written before the record counted as changed by hand. */
    @Test
    void aRunThatIsStoppedAfterAnyWriteIsFinishedByTheNext() throws IOException {
        Path first = temporary.resolve("first/logbook");
        gather(first);
        grown();
        Path whole = copied(first, "whole");
        gather(whole);
        Map<String, String> wanted = files(whole);
        int stops = 0;
        for (boolean stopped = true; stopped; stops++) {
            Path logbook = copied(first, "stop" + stops);
            stopped = stopped(logbook, stops);
            String out = gather(logbook);
            assertEquals(wanted, files(logbook), "stopped after " + stops + " writes");
            assertFalse(out.contains("by hand"), out);
            assertEquals(stopped && stops > 0, out.contains("The run before was stopped half way"), out);
            if (stops % 3 == 0) {
                String before = Files.readString(logbook.resolve(GatheredBefore.FILE));
                assertTrue(gather(logbook).contains("Added 0 batches"));
                assertEquals(before, Files.readString(logbook.resolve(GatheredBefore.FILE)));
            }
        }
        assertTrue(stops > 5, stops + " writes");
    }

    /** The folder grows on between the run that was stopped and the next one. */
    @Test
    void aStoppedRunIsKnownAsOursThoughTheFolderIsAnotherAgain() throws IOException {
        Path first = temporary.resolve("first/logbook");
        gather(first);
        for (int stop = 1; stop <= 7; stop += 2) {
            Path logbook = copied(first, "other" + stop);
            grown();
            stopped(logbook, stop);
            recording("batch 2", 209);
            recording("batch 3", 211);
            list("5,2031-03-07,wren,5", "1,2031-03-04,house,5", "2,2031-03-05,wren,5", "3,2031-03-06,house,6");
            String out = gather(logbook);
            assertFalse(out.contains("by hand"), out);
            assertTrue(Files.readString(logbook.resolve("curves/3.csv")).contains("211"));
            assertTrue(Files.readString(logbook.resolve("curves/2.csv")).contains("209"));
            assertTrue(Files.readString(logbook.resolve("batches.csv")).contains("2031-03-07,wren"));
        }
    }

    /** A new logbook in a folder that is there and empty. */
    @Test
    void aFirstRunIntoAnEmptyFolderIsFinishedByTheNext() throws IOException {
        Path whole = temporary.resolve("whole");
        gather(whole);
        int stops = 0;
        for (boolean stopped = true; stopped; stops++) {
            Path logbook = Files.createDirectories(temporary.resolve("empty" + stops));
            stopped = stopped(logbook, stops);
            String out = gather(logbook);
            assertEquals(files(whole), files(logbook), "stopped after " + stops + " writes");
            assertFalse(out.contains("by hand"), out);
        }
        assertTrue(stops > 5, stops + " writes");
    }

    @Test
    void aSecondRunAtTheSameTimeIsRefused() throws IOException {
        Path logbook = temporary.resolve("logbook");
        gather(logbook);
        grown();
        Map<String, String> before = files(logbook);
        try (FolderLock held = FolderLock.of(logbook).orElseThrow()) {
            StringBuilder out = new StringBuilder();
            assertEquals(1, Gather.run(folder, logbook, Optional.empty(), Gather.NOBODY, out));
            assertTrue(
                    out.toString()
                            .contains("Another gathering is being written into it now. Wait until that one has ended,"
                                    + " and type the same line again: '" + logbook + "' was left as it was."),
                    out.toString() + held);
        }
        assertEquals(before, files(logbook));
        gather(logbook);
    }

    @Test
    void aRunThatBeganBeforeAnotherEndedIsRefused() throws IOException {
        Path logbook = temporary.resolve("logbook");
        gather(logbook);
        grown();
        GatherPlace late = GatherPlace.of(Gather.of(folder), logbook);
        gather(logbook);
        Map<String, String> before = files(logbook);
        LogbookException refused = assertThrows(LogbookException.class, late::write);
        assertTrue(
                refused.getMessage().contains("Another gathering has added to it since this one began"),
                refused.getMessage());
        assertEquals(before, files(logbook));
    }

    @Test
    void whatIsAddedIsCounted() throws IOException {
        Path logbook = temporary.resolve("logbook");
        gather(logbook);
        // Saved with semicolons, the table gets no row: the new version is laid aside.
        Path table = logbook.resolve("batches.csv");
        Files.writeString(table, Files.readString(table).replace(',', ';'));
        grown();
        String out = gather(logbook);
        assertTrue(out.contains("Added 0 batches to "), out);
        assertTrue(out.contains("'batches.csv' was changed by hand and stays as it is"), out);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "^what,.*|wot,file,size,SHA-256,batch|line 1: its headings are not what,file,size,SHA-256,batch",
                "(?s)^.*$||line 1: its headings are not",
                "(?s)\\nend,.*$||it breaks off there",
                "\\nwritten,batches.csv,\\d+|\\nwritten,batches.csv,many|found 'written,batches.csv,many,",
                "\\nwritten,batches.csv|\\nmine,batches.csv|found 'mine,batches.csv,",
                "(?s)\\nbatch,.*?\\n|\\n|found 'end,,",
                "\\nbatch,|\\nbatch,\"|it cannot be read on from there",
                ",|;|line 1: its headings are not"
            })
    void aDamagedRecordIsToldInPlainWordsAndNothingIsWritten(String old, String other, String said) throws IOException {
        Path logbook = temporary.resolve("logbook");
        gather(logbook);
        Path record = logbook.resolve(GatheredBefore.FILE);
        String text = Files.readString(record);
        String damaged = text.replaceAll(old, other == null ? "" : other.replace("\\n", "\n"));
        assertFalse(text.equals(damaged));
        Files.writeString(record, damaged);
        grown();
        Map<String, String> before = files(logbook);
        StringBuilder out = new StringBuilder();
        assertEquals(1, Gather.run(folder, logbook, Optional.empty(), Gather.NOBODY, out));
        assertTrue(
                out.toString().startsWith("'gathered-files.txt' in '" + logbook + "' is damaged at line "),
                out.toString());
        assertTrue(out.toString().contains(said), out.toString());
        assertTrue(
                out.toString()
                        .contains(
                                "Put back a safety copy of it, or gather into a new folder; the logbook was left as it was."),
                out.toString());
        assertFalse(out.toString().contains("Exception"), out.toString());
        assertEquals(before, files(logbook));
    }

    /** A record as it was written before it had a last line. */
    @Test
    void aRecordWithoutALastLineIsReadWhereItHasTheEarlierHeadings() throws IOException {
        Path logbook = temporary.resolve("logbook");
        gather(logbook);
        Path record = logbook.resolve(GatheredBefore.FILE);
        Files.writeString(
                record, Files.readString(record).replace("SHA-256", "checksum").replaceAll("(?s)\\nend,.*$", "\n"));
        grown();
        String out = gather(logbook);
        assertTrue(out.contains("Added 2 batches"), out);
        assertFalse(out.contains("by hand"), out);
    }

    @ParameterizedTest
    @CsvSource({"'\\u00zz=1'", "'a=\u0000'", "'=x'", "'date.order=never'", "'justaword'"})
    void oddLinesInTheAnswersAreToldInPlainWords(String line) throws IOException {
        Path logbook = temporary.resolve("logbook");
        gather(logbook);
        Path answers = logbook.resolve(GatherWriter.ANSWERS);
        Files.writeString(answers, Files.readString(answers) + line + "\n");
        grown();
        StringBuilder out = new StringBuilder();
        int code = Gather.run(folder, logbook, Optional.empty(), Gather.NOBODY, out);
        assertFalse(out.toString().contains("Exception") || out.toString().contains("\tat "), out.toString());
        assertTrue(code == 0 || out.toString().contains("gathered-answers.properties"), code + " " + out);
    }

    /** A logger writes into its file while it is gathered: what is noted is of the bytes that were read. */
    @Test
    void whatIsNotedOfAFileIsOfTheBytesThatWereRead() throws IOException {
        Gather gather = Gather.of(folder);
        recording("batch 2", 215);
        Path logbook = temporary.resolve("logbook");
        gather.writeTo(logbook);
        String out = gather(logbook);
        assertTrue(out.contains("Changed in the folder since: 'batch 2.csv'."), out);
        assertTrue(Files.readString(logbook.resolve("curves/2.csv")).contains("215"));
    }

    @Test
    void whatAKilledRunLeftAmongTheTemporaryFilesIsTakenAwayByTheNextThatAdds() throws IOException {
        Path logbook = temporary.resolve("logbook");
        gather(logbook);
        Path files = Path.of(System.getProperty("java.io.tmpdir"));
        Path left = Files.createDirectories(files.resolve(".parchment-0-" + UUID.randomUUID() + ".part"));
        Path made = Files.writeString(left.resolve("batches.csv"), "batch");
        FileTime longAgo = FileTime.from(Instant.now().minus(Duration.ofHours(2)));
        Files.setLastModifiedTime(made, longAgo);
        Files.setLastModifiedTime(left, longAgo);
        grown();
        gather(logbook);
        assertFalse(Files.exists(left), "it is older than an hour");
    }
}
