package parchment.gather;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * Lets a table of scores be asked for its cells, its headings in their parts, and the rows that say what each column is.
 */
final class ScoreCells {
    /** Share of a column's cells that must be of one kind; common practice, no source. */
    static final double MOST = 0.7;

    private final FoundTable table;
    private final List<ScoreHead> heads;
    private final Map<Integer, ScorePart> specialRows = new TreeMap<>();

    /** A list has few different cells, and each is looked at many times. */
    private final Map<String, ScoreCell> read = new HashMap<>();

    private ScoreCells(FoundTable table, List<ScoreHead> heads) {
        this.table = table;
        this.heads = heads;
    }

    static ScoreCells of(FoundTable table, ScoreSurroundings around) {
        List<ScoreHead> written = new ArrayList<>();
        for (int i = 0; i < table.headings().size(); i++) {
            ScoreHead head = ScoreHead.of(heading(table, i));
            written.add(
                    around.groups().isEmpty()
                            ? head
                            : head.under(around.groups().get(i)));
        }
        return new ScoreCells(table, ScoreCross.apart(written));
    }

    /** Returns a heading; "" where none stands, and without the number that tells two of one name apart. */
    private static String heading(FoundTable table, int column) {
        String written = table.headings().get(column).strip();
        if (written.matches("#\\d+")) {
            return "";
        }
        String bare = written.replaceFirst("\\s+\\d+$", "");
        boolean repeated = !bare.equals(written)
                && table.headings().contains(bare)
                && !bare.isEmpty()
                && ScoreWords.cupNumber(written) == 0;
        return repeated ? bare : written;
    }

    FoundTable table() {
        return table;
    }

    int width() {
        return heads.size();
    }

    List<ScoreHead> heads() {
        return heads;
    }

    /** Returns the heading of a column as it stands. */
    String written(int column) {
        return heads.get(column).written();
    }

    /** Returns the rows of a sheet with cups side by side that hold no scores. */
    Map<Integer, ScorePart> specialRows() {
        return specialRows;
    }

    String cell(int row, int column) {
        List<String> cells = table.rows().get(row);
        return column < cells.size() ? cells.get(column).strip() : "";
    }

    /** Returns the cells of a column in which something stands, rows of dates and the like aside. */
    List<String> filled(int column) {
        return IntStream.range(0, table.rows().size())
                .filter(r -> !specialRows.containsKey(r))
                .mapToObj(r -> cell(r, column))
                .filter(cell -> !cell.isEmpty())
                .toList();
    }

    private ScoreCell read(String cell) {
        return read.computeIfAbsent(cell, ScoreCell::of);
    }

    boolean isEmpty(int column) {
        return filled(column).isEmpty();
    }

    /** Returns the share of a column's cells that are as asked; signs for nothing do not count. */
    double share(int column, Predicate<String> asked) {
        List<String> there = filled(column).stream()
                .filter(cell -> read(cell).kind() != ScoreCell.Kind.MISSING)
                .toList();
        return there.isEmpty() ? 0 : there.stream().filter(asked).count() / (double) there.size();
    }

    boolean mostly(int column, Predicate<String> asked) {
        return share(column, asked) >= MOST;
    }

    /** Returns the share of a column's cells that hold a score. */
    double numbers(int column) {
        return share(column, cell -> read(cell).isScore());
    }

    /** Returns the scores of a column. */
    double[] scores(int column) {
        return filled(column).stream()
                .map(this::read)
                .filter(ScoreCell::isScore)
                .mapToDouble(ScoreCell::score)
                .toArray();
    }

    /** Returns whether a column can name batches: where its own heading is a batch, or a row says which batch each column is, it holds what was scored. */
    boolean canNameBatches(int column, Set<String> batches) {
        return !specialRows.containsValue(ScorePart.BATCH)
                && heads.get(column).parts().stream().map(ScoreHeads::bare).noneMatch(batches::contains)
                && share(column, batches::contains) > 0.5;
    }

    /** Returns whether a column counts 1, 2, 3 …: lines or cups that somebody numbered; nobody scores so from three rows on. */
    boolean isRunning(int column) {
        List<String> cells = filled(column);
        return cells.size() >= 3
                && specialRows.isEmpty()
                && !ScoreWords.isAttribute(written(column))
                && IntStream.range(0, cells.size()).allMatch(k -> cells.get(k).equals(String.valueOf(k + 1)));
    }

    /** Returns the number of a cup, as in "2" and "cup 2", or 0. */
    static int cupNumber(String cell) {
        return cell.matches("\\d{1,2}") ? Integer.parseInt(cell) : ScoreWords.cupNumber(cell);
    }
}
