package parchment.gather.corpus;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import parchment.gather.corpus.StrewnFolder.Cell;

/**
 * Finds the cells of a gathered folder that stand neither in the logbook, as a text, a number, a date or a time, nor in what the gathering says: the
 * cell itself, its line, its column as one that is left out, or its file as one that is.
 */
final class CellsInSilence {
    private static final Pattern CLOCK = Pattern.compile("(\\d{1,2}):(\\d{2})");
    private static final Pattern LOSS =
            Pattern.compile("left out|leave out|leaves open|cannot|is no |are not|more than|not taken");

    private final Set<String> texts = new HashSet<>();
    private final Set<Double> numbers = new TreeSet<>();
    private final StringBuilder all = new StringBuilder();
    private final List<String> said = new ArrayList<>();

    private CellsInSilence() {}

    /** Gathers a folder and returns what of its cells is lost, and why it is thought so. */
    static List<String> of(Path folder, List<Cell> cells, Path to) throws IOException {
        GatherEntry.Gathered gathered = GatherEntry.gather(folder, to);
        CellsInSilence silence = new CellsInSilence();
        silence.said.addAll(gathered.report().lines().toList());
        if (gathered.logbook().isPresent()) {
            silence.readTables(to);
        }
        List<String> lost = new ArrayList<>();
        for (Cell cell : cells) {
            if (!silence.isWritten(cell.text()) && !silence.isTold(cell)) {
                lost.add(cell.text() + " under '" + cell.heading() + "' on line " + cell.line() + " of " + cell.file());
            }
        }
        return lost;
    }

    private void readTables(Path to) throws IOException {
        try (Stream<Path> files = Files.list(to)) {
            for (Path file :
                    files.filter(path -> path.toString().endsWith(".csv")).toList()) {
                try (Reader in = Files.newBufferedReader(file)) {
                    for (CSVRecord record : CSVFormat.RFC4180.parse(in)) {
                        record.forEach(this::add);
                    }
                }
            }
        }
    }

    private void add(String cell) {
        texts.add(cell);
        all.append(cell).append('\n');
        number(cell).ifPresent(numbers::add);
        seconds(cell).ifPresent(numbers::add);
    }

    private static Optional<Double> number(String cell) {
        return cell.matches("[+-]?\\d+([.,]\\d+)?")
                ? Optional.of(Double.parseDouble(cell.replace(',', '.')))
                : Optional.empty();
    }

    private static Optional<Double> seconds(String cell) {
        Matcher clock = CLOCK.matcher(cell);
        return clock.matches()
                ? Optional.of(60.0 * Integer.parseInt(clock.group(1)) + Integer.parseInt(clock.group(2)))
                : Optional.empty();
    }

    private boolean isWritten(String cell) {
        return texts.contains(cell)
                || number(cell).filter(numbers::contains).isPresent()
                || seconds(cell).filter(numbers::contains).isPresent()
                || all.indexOf(cell.replace(' ', 'T')) >= 0
                || (cell.length() > 3 || !cell.matches("\\d+")) && all.indexOf(cell) >= 0;
    }

    private boolean isTold(Cell cell) {
        Pattern line = Pattern.compile("(?i)\\b(line|lines)\\b[^.:']*\\b" + cell.line() + "\\b");
        Pattern alone = Pattern.compile("(?<![\\p{L}\\d.])" + Pattern.quote(cell.text()) + "(?![\\p{L}\\d])");
        for (String sentence : said) {
            boolean here = sentence.contains("'" + cell.file() + "'");
            boolean loss = LOSS.matcher(sentence).find();
            if (here
                    && !sentence.startsWith("  Column")
                    && (alone.matcher(sentence).find()
                            || line.matcher(sentence).find()
                            || loss && !cell.heading().isEmpty() && sentence.contains("'" + cell.heading() + "'")
                            || sentence.contains("more than a list")
                            || sentence.contains("it is no list of batches")
                            || sentence.contains("are no lists of batches"))) {
                return true;
            }
        }
        return said.stream()
                .anyMatch(sentence ->
                        sentence.startsWith("No table of values") && sentence.contains("'" + cell.file() + "'"));
    }
}
