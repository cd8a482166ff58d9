package parchment.gather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** Says what each column of a table of scores is: something that a cup is known by, a note, or scores. */
final class ScoreColumns {
    /** Share of a column's cells that must be of one kind; common practice, no source. */
    private static final double MOST = 0.7;

    private static final Set<ScorePart> NAMES_OF_CUPS = Set.of(ScorePart.BATCH, ScorePart.CODE, ScorePart.LOT);

    private final Table table;
    private final ScoreClues clues;
    private final ScoreSurroundings around;
    private final List<ScoreHead> heads = new ArrayList<>();
    private final Map<ScorePart, Integer> keys = new EnumMap<>(ScorePart.class);
    private final Map<Integer, ScorePart> specialRows = new TreeMap<>();
    private final Set<Integer> scoreColumns = new HashSet<>();
    private final List<Integer> notes = new ArrayList<>();
    private final List<Integer> others = new ArrayList<>();
    private Map<Integer, Map<ScorePart, String>> meanings = new LinkedHashMap<>();

    private ScoreColumns(Table table, ScoreClues clues, ScoreSurroundings around) {
        this.table = table;
        this.clues = clues;
        this.around = around;
        List<ScoreHead> written = new ArrayList<>();
        for (int i = 0; i < table.headings().size(); i++) {
            ScoreHead head = ScoreHead.of(heading(i));
            written.add(
                    around.groups().isEmpty()
                            ? head
                            : head.under(around.groups().get(i)));
        }
        heads.addAll(ScoreCross.apart(written));
    }

    static ScoreColumns of(Table table, ScoreClues clues, ScoreSurroundings around) {
        ScoreColumns columns = new ScoreColumns(table, clues, around);
        columns.byHeading();
        columns.lineNumbers();
        columns.attributeColumn();
        columns.scores();
        columns.byValues();
        columns.meanings = ScoreHeads.of(columns, clues, around);
        columns.people();
        columns.loneCup();
        return columns;
    }

    /** Returns a heading; "" where none stands, and without the number that tells two of one name apart. */
    private String heading(int column) {
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

    private void byHeading() {
        for (int i = 0; i < heads.size(); i++) {
            Optional<ScorePart> stated = Optional.ofNullable(
                            clues.stated().get(table.headings().get(i)))
                    .flatMap(ScorePart::of);
            String written = heads.get(i).written();
            Optional<ScorePart> part = stated.or(() -> ScoreWords.key(written));
            boolean numbers = share(i, cell -> ScoreCell.of(cell).isScore()) >= MOST;
            if (stated.isPresent()
                    && (stated.get() == ScorePart.SCORE || stated.get() == ScorePart.ATTRIBUTE && numbers)) {
                scoreColumns.add(i);
            } else if (stated.filter(p -> p == ScorePart.OTHER).isPresent()) {
                others.add(i);
            } else if (part.isPresent() && filled(i) > 0) {
                key(i, part.get(), numbers, stated.isPresent());
            } else if (ScoreWords.isAttribute(written)
                    && !numbers
                    && share(i, cell -> ScoreCell.of(cell).isScore()) < 0.3
                    && filled(i) > 0
                    && heads.get(i).parts().size() == 1
                    && ScoreWords.plain(written).matches(".*\\b(notes?|comments?|kommentar\\w*|notas?|note)\\b.*")) {
                notes.add(i);
            }
        }
    }

    private void key(int column, ScorePart part, boolean numbers, boolean stated) {
        ScorePart meant = part;
        boolean days = share(column, ScoreClues::isDay) >= MOST;
        if (part == ScorePart.ROASTED
                && !days
                && ScoreWords.isBareRoasted(heads.get(column).written())) {
            return;
        }
        if (part == ScorePart.NOTE) {
            if (!numbers) {
                notes.add(column);
            }
            return;
        }
        if ((part == ScorePart.CUPPER || part == ScorePart.ATTRIBUTE) && numbers && !stated) {
            return;
        }
        if ((part == ScorePart.CODE || part == ScorePart.LOT)
                && !stated
                && share(column, clues.batches()::contains) > 0.5) {
            meant = ScorePart.BATCH;
        } else if (part == ScorePart.CUPPING && days) {
            meant = ScorePart.DAY;
        } else if (part == ScorePart.BATCH && !stated && days && !isBareNumber(column)) {
            meant = ScorePart.ROASTED;
        } else if (part == ScorePart.BATCH && !stated && isCodes(column)) {
            meant = ScorePart.CODE;
        } else if (part == ScorePart.CUP && share(column, cell -> cupNumber(cell) > 0) < MOST) {
            meant = ScorePart.CODE;
        }
        Integer before = keys.putIfAbsent(meant, column);
        if (before != null) {
            boolean better = meant == ScorePart.BATCH && rank(column) > rank(before);
            keys.put(meant, better ? column : before);
            others.add(better ? before : column);
        }
    }

    /** Says how well a column names batches: known names first, then a heading that says more than "number". */
    private double rank(int column) {
        return 2 * share(column, clues.batches()::contains) + (isBareNumber(column) ? 0 : 1);
    }

    /** "No" over codes that no batch is called by is how the cups were served. */
    private boolean isCodes(int column) {
        return isBareNumber(column)
                && share(column, ScoreWords::isCode) >= MOST
                && share(column, clues.batches()::contains) < 0.5;
    }

    private boolean isBareNumber(int column) {
        return ScoreWords.isBareNumber(heads.get(column).written());
    }

    /** Takes 1, 2, 3 … under "No" for the lines of the sheet where a code or lot names each cup. */
    private void lineNumbers() {
        Integer batch = keys.get(ScorePart.BATCH);
        if (batch != null
                && isBareNumber(batch)
                && isRunning(batch)
                && (keys.containsKey(ScorePart.CODE) || keys.containsKey(ScorePart.LOT))
                && share(batch, clues.batches()::contains) < 0.5) {
            keys.remove(ScorePart.BATCH);
            others.add(batch);
        }
    }

    private void attributeColumn() {
        for (int i = 0; i < heads.size() && !keys.containsKey(ScorePart.ATTRIBUTE); i++) {
            Set<String> distinct = new HashSet<>(cells(i));
            long attributes = distinct.stream().filter(ScoreWords::isAttribute).count();
            long known = distinct.stream()
                    .filter(cell -> ScoreWords.isAttribute(cell)
                            || ScoreWords.isTotal(cell)
                            || ScoreWords.isScore(cell)
                            || ScoreWords.key(cell).isPresent())
                    .count();
            if (attributes >= 2 && known >= 0.6 * distinct.size() && !notes.contains(i)) {
                keys.values().remove(i);
                keys.put(ScorePart.ATTRIBUTE, i);
            }
        }
        Integer attribute = keys.get(ScorePart.ATTRIBUTE);
        for (int r = 0; attribute != null && r < table.rows().size(); r++) {
            String label = cell(r, attribute);
            if (!ScoreWords.isAttribute(label) && !ScoreWords.isTotal(label) && !ScoreWords.isScore(label)) {
                int row = r;
                ScoreWords.key(label).ifPresent(part -> specialRows.put(row, part));
            }
        }
    }

    private void scores() {
        for (int i = 0; i < heads.size(); i++) {
            if (keys.containsValue(i) || notes.contains(i) || others.contains(i) || scoreColumns.contains(i)) {
                continue;
            }
            String written = heads.get(i).written();
            boolean numbers =
                    share(i, cell -> ScoreCell.of(cell).isScore()) >= (ScoreWords.isAttribute(written) ? 0.5 : MOST);
            boolean bounded = share(i, cell -> {
                        ScoreCell read = ScoreCell.of(cell);
                        return !read.isScore() || read.score() >= 0 && read.score() <= 100;
                    })
                    >= MOST;
            // Rows that say what each column is stand for headings.
            boolean known =
                    (!heads.get(i).parts().isEmpty() || NAMES_OF_CUPS.stream().anyMatch(specialRows::containsValue))
                            && !ScoreWords.speaksAgainst(written);
            boolean batches = share(i, clues.batches()::contains) > 0.5
                    && !keys.containsKey(ScorePart.BATCH)
                    && !ScoreWords.isAttribute(written);
            if (numbers && bounded && known && !batches && !isRunning(i)) {
                scoreColumns.add(i);
            }
        }
    }

    // 1, 2, 3 …: lines or cups that somebody numbered; nobody scores so from three rows on.
    private boolean isRunning(int column) {
        List<String> cells = cells(column);
        return cells.size() >= 3
                && !ScoreWords.isAttribute(heads.get(column).written())
                && IntStream.range(0, cells.size()).allMatch(k -> cells.get(k).equals(String.valueOf(k + 1)));
    }

    private void byValues() {
        for (int i = 0; i < heads.size(); i++) {
            if (isTaken(i) || filled(i) == 0) {
                continue;
            }
            Predicate<String> cups = cell -> ScoreWords.cupNumber(cell) > 0;
            if (share(i, clues.batches()::contains) > 0.5) {
                take(ScorePart.BATCH, i);
            } else if (share(i, cell -> clues.cuppers().stream().anyMatch(cell::equalsIgnoreCase)) > 0.5) {
                take(ScorePart.CUPPER, i);
            } else if (share(i, ScoreClues::isDay) >= MOST) {
                take(ScorePart.DAY, i);
            } else if (share(i, cups) >= MOST) {
                take(ScorePart.CUP, i);
            } else if (heads.get(i).written().isEmpty()
                    && i == 0
                    && !isRunning(i)
                    && share(i, cell -> cell.matches("#?\\d{1,6}")) >= MOST) {
                take(ScorePart.BATCH, i);
            } else if (share(i, ScoreWords::isCode) >= MOST
                    && (heads.get(i).written().isEmpty() || !keys.containsKey(ScorePart.BATCH))
                    && !ScoreWords.speaksAgainst(heads.get(i).written())) {
                take(ScorePart.CODE, i);
            }
        }
    }

    /** Settles columns of names, once it is known what the headings are. */
    private void people() {
        boolean headsNameCups =
                meanings.values().stream().anyMatch(m -> m.keySet().stream().anyMatch(NAMES_OF_CUPS::contains));
        boolean headsNameCuppers = meanings.values().stream().anyMatch(m -> m.containsKey(ScorePart.CUPPER));
        for (int i = 0; i < heads.size(); i++) {
            if (isTaken(i) || filled(i) == 0) {
                continue;
            }
            boolean named = headsNameCups
                    || NAMES_OF_CUPS.stream().anyMatch(keys::containsKey)
                    || NAMES_OF_CUPS.stream()
                            .anyMatch(part -> !around.said(part).isEmpty());
            boolean names = share(i, ScoreWords::isName) >= MOST;
            if (names && named && !headsNameCuppers && !keys.containsKey(ScorePart.CUPPER)) {
                keys.put(ScorePart.CUPPER, i);
            } else if (!named && i < 2 && !ScoreWords.speaksAgainst(heads.get(i).written())) {
                keys.put(ScorePart.BATCH, i);
            } else {
                others.add(i);
            }
        }
    }

    /** A column of cups with nothing else that tells them apart holds the codes they were served under. */
    private void loneCup() {
        Integer cup = keys.get(ScorePart.CUP);
        boolean named = NAMES_OF_CUPS.stream()
                        .anyMatch(part ->
                                keys.containsKey(part) || !around.said(part).isEmpty())
                || meanings.values().stream().anyMatch(m -> m.keySet().stream().anyMatch(NAMES_OF_CUPS::contains))
                || keys.containsKey(ScorePart.ROASTED)
                || specialRows.values().stream().anyMatch(NAMES_OF_CUPS::contains);
        if (cup != null && !named) {
            keys.remove(ScorePart.CUP);
            keys.put(ScorePart.CODE, cup);
        }
    }

    private boolean isTaken(int column) {
        return keys.containsValue(column)
                || notes.contains(column)
                || others.contains(column)
                || scoreColumns.contains(column);
    }

    private void take(ScorePart part, int column) {
        if (keys.putIfAbsent(part, column) != null) {
            others.add(column);
        }
    }

    static int cupNumber(String cell) {
        return cell.matches("\\d{1,2}") ? Integer.parseInt(cell) : ScoreWords.cupNumber(cell);
    }

    Optional<LocalDate> day(String cell) {
        return clues.day(cell);
    }

    /** Returns the share of a column's cells in which something stands that are as asked, rows of dates and the like aside. */
    private double share(int column, Predicate<String> asked) {
        Collection<String> cells = cells(column);
        List<String> there = cells.stream()
                .filter(cell -> ScoreCell.of(cell).kind() != ScoreCell.Kind.MISSING)
                .toList();
        return there.isEmpty() ? 0 : there.stream().filter(asked).count() / (double) there.size();
    }

    private List<String> cells(int column) {
        return IntStream.range(0, table.rows().size())
                .filter(r -> !specialRows.containsKey(r))
                .mapToObj(r -> cell(r, column))
                .filter(cell -> !cell.isEmpty())
                .toList();
    }

    private int filled(int column) {
        return cells(column).size();
    }

    String cell(int row, int column) {
        List<String> cells = table.rows().get(row);
        return column < cells.size() ? cells.get(column).strip() : "";
    }

    List<ScoreHead> heads() {
        return heads;
    }

    /** Returns the column of each thing that a cup is known by. */
    Map<ScorePart, Integer> keys() {
        return keys;
    }

    /** Returns what the heading of each column of scores says of them. */
    Map<Integer, Map<ScorePart, String>> meanings() {
        return meanings;
    }

    List<Integer> scoreColumns() {
        return scoreColumns.stream().sorted().toList();
    }

    /** Returns the rows of a sheet with cups side by side that hold no scores. */
    Map<Integer, ScorePart> specialRows() {
        return specialRows;
    }

    List<Integer> notes() {
        return notes;
    }

    List<Integer> others() {
        return others;
    }

    Table table() {
        return table;
    }
}
