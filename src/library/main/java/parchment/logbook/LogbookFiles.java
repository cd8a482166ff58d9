package parchment.logbook;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.Problem;
import parchment.logbook.written.UpkeepKind;
import parchment.quantity.Mass;
import parchment.sheet.Header;

/** Gives the names of a logbook's files to those who write a new one. */
public final class LogbookFiles {
    /** The table of batches. */
    public static final String BATCHES = BatchesFile.FILE;

    /** The table of cups. */
    public static final String CUPPINGS = CuppingFiles.CUPPINGS;

    /** The table of cuppings. */
    public static final String SESSIONS = CuppingFiles.SESSIONS;

    /** The table of lots. */
    public static final String LOTS = LotFiles.LOTS;

    /** The table of work on the machines. */
    public static final String UPKEEP = MachineFiles.UPKEEP;

    /** The folder of curves. */
    public static final String CURVES = FolderReader.CURVES;

    /** The settings. */
    public static final String SETTINGS = Settings.FILE;

    /** What the setting {@code provenance} says of a logbook of an invented machine. */
    public static final String INVENTED = Settings.INVENTED;

    /** Readings that mean "no reading" without anybody saying so. */
    public static final Set<Double> MISSING_READINGS = Set.copyOf(Settings.USUAL_MISSING_READINGS);

    /** Marks that have a column in the table of batches. */
    public static final List<MarkKind> MARKS = BatchesFile.WRITTEN;

    /** The lightest charge that is read, from a sample roaster's; common practice, no source. */
    public static final Mass LIGHTEST_CHARGE = Mass.kilograms(Bounds.LIGHTEST_CHARGE);

    /** The heaviest charge that is read, from a large drum's; common practice, no source. */
    public static final Mass HEAVIEST_CHARGE = Mass.kilograms(Bounds.HEAVIEST_CHARGE);

    private LogbookFiles() {}

    /** Returns the name of a batch's curve file; signs that no file name can hold are written as in an address. */
    public static String curve(String batch) {
        return CurveNames.fileName(batch);
    }

    /**
     * Reads a file of settings, one {@code name=value} a line.
     *
     * @throws LogbookException if it cannot be read, or a setting in it is not one; the message says where
     */
    public static Map<String, String> settings(Path file) {
        ProblemLog problems = new ProblemLog(file.toString());
        Map<String, String> read = Settings.properties(file, problems);
        for (Problem problem : problems.toList()) {
            throw new LogbookException(problem.toString());
        }
        return read;
    }

    /** Returns whether a file of settings says that its logbook is of an invented machine; one that cannot be read says nothing. */
    public static Logbook.Provenance provenance(Path settings) {
        ProblemLog problems = new ProblemLog(Settings.FILE);
        return Settings.of(Settings.properties(settings, problems), problems).provenance();
    }

    /** Returns the place of a heading in the table of batches as it is written, counted from 0; that of the note for a column of another name. */
    public static int placeInBatches(Header header) {
        String name = Header.plain(header.name());
        return IntStream.range(0, BatchesFile.FIELDS.size())
                .filter(i -> Header.plain(BatchesFile.FIELDS.get(i).name()).equals(name))
                .findFirst()
                .orElse(BatchesFile.FIELDS.size() - 1);
    }

    /** Returns whether a heading is one of the table of batches, with a unit that it may have there. */
    public static boolean isBatchColumn(Header header) {
        return BatchesFile.FIELDS.stream()
                .anyMatch(field ->
                        Header.plain(field.name()).equals(Header.plain(header.name())) && field.accepts(header));
    }

    /** Returns the place of a heading in the table of lots as it is written, counted from 0; that of the note for a column of another name. */
    public static int placeInLots(Header header) {
        String name = Header.plain(header.name());
        return IntStream.range(0, LotFiles.LOT_FIELDS.size())
                .filter(i -> Header.plain(LotFiles.LOT_FIELDS.get(i).name()).equals(name))
                .findFirst()
                .orElse(LotFiles.LOT_FIELDS.size() - 1);
    }

    /** Returns whether a heading is that of a date or a measured value in the table of lots, which words have no place under. */
    public static boolean isMeasuredOfLots(Header header) {
        return LotFiles.LOT_FIELDS.stream()
                .filter(field -> Header.plain(field.name()).equals(Header.plain(header.name())))
                .anyMatch(field -> field.kind() != Field.Kind.TEXT && field.kind() != Field.Kind.NAME);
    }

    /** Returns the kind of work that is written so, as it stands in the table of work; empty if the words are no kind. */
    public static Optional<String> kindOfUpkeep(String written) {
        return UpkeepKind.written(written).map(UpkeepKind::words);
    }
}
