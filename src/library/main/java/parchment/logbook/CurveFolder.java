package parchment.logbook;

import java.io.IOException;
import java.io.InputStream;
import java.lang.ref.SoftReference;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import parchment.display.Progress;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.Problem;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.ReadableFile;
import parchment.sheet.TextFile;
import parchment.sheet.Words;

/**
 * Reads the curve files of a folder, several at once.
 *
 * <p>Files are found by listing the folder, never by putting a batch's name into a path, and a link that leads out of the folder is
 * not followed: no name in a table can make another file be read. Curves are held in memory up to a bound; those beyond it were read
 * once for their problems and are read again, softly held, when they are asked for.
 */
final class CurveFolder {
    /**
     * Holds one file that was read.
     *
     * @param fingerprint the same for files of the same readings; 0 if there are too few to compare
     */
    record Entry(
            String batch,
            Set<Quantity> quantities,
            Supplier<CurveSet> curves,
            long fingerprint,
            Optional<TemperatureUnit> written,
            List<Problem> problems) {}

    private final Path folder;
    private final String shownFolder;
    private final CurveLayout layout;
    private final Settings settings;
    private final long mostBytes;
    private final AtomicLong bytes = new AtomicLong();

    CurveFolder(Path folder, String shownFolder, CurveLayout layout, Settings settings, long mostBytes) {
        this.folder = folder;
        this.shownFolder = shownFolder;
        this.layout = layout;
        this.settings = settings;
        this.mostBytes = mostBytes;
    }

    /** A quarter of the memory: the rest is for what is made of the curves. */
    static long usualBytes() {
        return Runtime.getRuntime().maxMemory() / 4;
    }

    /** Returns the files in the order of their names; what is in the folder and no curve file is a problem. */
    List<Path> files(ProblemLog problems) {
        Map<String, Path> sorted = new TreeMap<>();
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
            for (Path file : stream) {
                String name = String.valueOf(file.getFileName());
                if (name.startsWith(".") || name.equals(CurveLayout.FILE)) {
                    continue;
                }
                if (!name.toLowerCase(Locale.ROOT).endsWith(".csv")) {
                    problems.add(0, "", "something else, " + Words.quote(name), "curve files, named .csv", "left out");
                } else if (ReadableFile.leadsOut(file, folder)) {
                    problems.add(0, "", "a link out of the folder, " + Words.quote(name), "a file", "not followed");
                } else {
                    sorted.put(name, file);
                }
            }
        } catch (IOException e) {
            problems.add(0, "", TextFile.reason(e), "a folder of curve files", "curves left out");
        }
        return new ArrayList<>(sorted.values());
    }

    /** Reads files, several at once; the result is in the order of the files. */
    List<Entry> read(List<Path> files) {
        try (Progress progress = Progress.of(files.size(), "reading curve files")) {
            return files.parallelStream()
                    .peek(file -> progress.step())
                    .map(this::entry)
                    .toList();
        }
    }

    private Entry entry(Path file) {
        String name = String.valueOf(file.getFileName());
        ProblemLog problems = new ProblemLog(shownFolder + name);
        CurveFile.Result result = read(file, problems);
        CurveSet curves = result.curves();
        Supplier<CurveSet> source = () -> curves;
        if (bytes.addAndGet(curves.bytes()) > mostBytes) {
            bytes.addAndGet(-curves.bytes());
            source = new ReadAgain(file);
        }
        return new Entry(
                batchName(name),
                curves.quantities(),
                source,
                curves.fingerprint(),
                result.written(),
                problems.toList());
    }

    private CurveFile.Result read(Path file, ProblemLog problems) {
        try (InputStream in = ReadableFile.open(file, folder)) {
            return CurveFile.read(in, layout, settings, problems);
        } catch (IOException e) {
            problems.add(0, "", TextFile.reason(e), "a curve file", "file left out");
            return CurveFile.Result.NOTHING;
        }
    }

    /** Returns the name of the batch that a file is named after, in the signs of the file; a sign that no file name may hold is written %2F, as in an address. */
    static String batchName(String fileName) {
        return fileName.substring(0, fileName.length() - ".csv".length());
    }

    private final class ReadAgain implements Supplier<CurveSet> {
        private final Path file;
        private final State state;
        private volatile SoftReference<@Nullable CurveSet> held = new SoftReference<>(null);

        ReadAgain(Path file) {
            this.file = file;
            this.state = State.of(file);
        }

        @Override
        public CurveSet get() {
            CurveSet curves = held.get();
            if (curves == null) {
                if (!state.equals(State.of(file))) {
                    throw new LogbookException("The curve file " + Words.quote(String.valueOf(file.getFileName()))
                            + " was changed since the logbook was opened. Open the logbook again to go on.");
                }
                curves = read(file, new ProblemLog("")).curves();
                held = new SoftReference<>(curves);
            }
            return curves;
        }
    }

    /** Holds what tells that a file was changed. */
    private record State(long bytes, long modifiedMillis) {
        static State of(Path file) {
            try {
                BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
                return new State(now.size(), now.lastModifiedTime().toMillis());
            } catch (IOException e) {
                return new State(-1, -1);
            }
        }
    }
}
