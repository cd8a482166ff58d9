package parchment.gather;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Collects the rows of one table while a sheet is walked through, and says what it leaves out. */
final class TableRows {
    static final int ROWS_LOOKED_AT = 60;
    private static final int WORKED_OUT_ROWS = 3;
    private static final int MOST_ROWS_SUMMED = 20_000;

    private final SheetArea area;
    private final TableHead head;
    private final List<List<String>> above;
    private final List<List<String>> rows = new ArrayList<>();
    private final List<Integer> lines = new ArrayList<>();
    private final List<String> leftOut = new ArrayList<>();
    private final RowDays days = new RowDays();
    private final Set<Integer> named = new LinkedHashSet<>();
    private final List<CellForm> forms = new ArrayList<>();

    TableRows(SheetArea area, TableHead head, List<List<String>> above) {
        this.area = area;
        this.head = head;
        this.above = above;
    }

    /** Adds the rows from one up to, not including, another. */
    void add(int from, int to) {
        for (int r = from; r < to; r++) {
            add(r);
        }
    }

    private void add(int row) {
        List<String> cells = area.row(row);
        // Most rows of a long recording begin with two numbers: no heading, total or remark does.
        if (cells.size() > 1 && isNumber(cells.get(0)) && isNumber(cells.get(1))) {
            keep(cells, row);
            return;
        }
        String line = "Line " + area.sheet().line(row);
        if (isHeading(cells)) {
            leftOut.add(line + " holds the headings again.");
        } else if (above.contains(cells)) {
            leftOut.add(line + " holds the title again.");
        } else if (TableHead.isUnits(cells)
                && cells.stream().filter(cell -> !cell.isEmpty()).count() > 1) {
            leftOut.add(line + " holds units only.");
        } else if (TableTotals.isNamed(cells)) {
            named.add(rows.size());
            keep(cells, row);
        } else if (RowDays.isDay(cells)) {
            days.begin(cells);
        } else if (isRemark(cells)) {
            leftOut.add(line + " is a remark: " + quoted(cells) + ".");
        } else {
            keep(cells, row);
        }
    }

    private void keep(List<String> cells, int row) {
        rows.add(cells);
        lines.add(area.sheet().line(row));
        days.give(rows.size());
    }

    private static boolean isNumber(String cell) {
        return !Double.isNaN(Numbers.parse(cell, Numbers.Decimal.EITHER));
    }

    private static String quoted(List<String> cells) {
        return Words.quote(
                String.join(" ", cells.stream().filter(cell -> !cell.isEmpty()).toList()));
    }

    /** Returns whether cells are the headings again, as at the head of each page of a printed list. */
    boolean isHeading(List<String> cells) {
        if (head.from() == head.body()) {
            return false;
        }
        for (int r = head.from(); r < head.body(); r++) {
            List<String> heading = area.row(r);
            int filled = 0;
            int same = 0;
            for (int c = 0; c < cells.size(); c++) {
                filled += cells.get(c).isEmpty() ? 0 : 1;
                same += !cells.get(c).isEmpty() && cells.get(c).equalsIgnoreCase(heading.get(c)) ? 1 : 0;
            }
            if (filled >= 2 && same >= 0.8 * filled) {
                return true;
            }
        }
        return false;
    }

    /** Returns whether cells are the headings with another number in the corner, as in "Roast 62" and "Roast 63": another table begins. */
    boolean beginsAnother(List<String> cells) {
        if (head.body() != head.from() + 1 || cells.size() < 2) {
            return false;
        }
        List<String> heading = area.row(head.from());
        return cells.get(0).matches("\\D+\\d+")
                && !cells.get(0).equalsIgnoreCase(heading.get(0))
                && withoutDigits(cells.get(0)).equalsIgnoreCase(withoutDigits(heading.get(0)))
                && cells.subList(1, cells.size()).equals(heading.subList(1, heading.size()))
                && cells.stream().skip(1).anyMatch(cell -> CellForm.of(cell) == CellForm.WORDS);
    }

    /** Returns what stands above its headings. */
    List<List<String>> above() {
        return above;
    }

    private static String withoutDigits(String cell) {
        return cell.replaceAll("\\d+", "");
    }

    /** One cell of words in a table of three columns or more is no row, unless it could be a batch's name alone. */
    private boolean isRemark(List<String> cells) {
        if (area.width() < 3) {
            return false;
        }
        int place = -1;
        for (int c = 0; c < cells.size(); c++) {
            if (CellForm.of(cells.get(c)) != CellForm.BLANK) {
                if (place >= 0) {
                    return false;
                }
                place = c;
            }
        }
        return place < 0
                || CellForm.of(cells.get(place)) == CellForm.WORDS
                        && !cells.get(place).matches("\\S{0,12}\\d\\S{0,12}");
    }

    /** Returns whether a row goes on with this table: its values stand where this table has such values. */
    boolean goesOn(List<String> cells) {
        if (TableTotals.isNamed(cells) || isHeading(cells)) {
            return true;
        }
        if (forms.isEmpty()) {
            forms.addAll(usual());
        }
        int values = 0;
        int alike = 0;
        int filled = 0;
        for (int c = 0; c < cells.size(); c++) {
            CellForm form = CellForm.of(cells.get(c));
            filled += form == CellForm.BLANK ? 0 : 1;
            values += form.isValue() ? 1 : 0;
            alike += form.isValue() && form == forms.get(c) ? 1 : 0;
        }
        boolean words = forms.stream().noneMatch(CellForm::isValue);
        return values > 0 ? alike >= 0.6 * values : words && 2 * filled > cells.size();
    }

    private List<CellForm> usual() {
        List<CellForm> usual = new ArrayList<>();
        for (int c = 0; c < area.width(); c++) {
            Map<CellForm, Integer> counts = new LinkedHashMap<>();
            for (List<String> row : rows.subList(0, Math.min(rows.size(), ROWS_LOOKED_AT))) {
                CellForm form = CellForm.of(row.get(c));
                if (form != CellForm.BLANK) {
                    counts.merge(form, 1, Integer::sum);
                }
            }
            usual.add(counts.entrySet().stream()
                    .max(Map.Entry.comparingByValue())
                    .map(Map.Entry::getKey)
                    .orElse(CellForm.BLANK));
        }
        return usual;
    }

    /** Tells a second row of headings in which no word is of the trade: it may have been a row. */
    void tellOddHeadings() {
        for (int r = head.from() + 1; r < head.body(); r++) {
            List<String> cells = area.row(r);
            if (!TableHead.isUnits(cells)
                    && cells.stream().noneMatch(cell -> TradeWords.of(cell).isKnown())) {
                leftOut.add("Line " + area.sheet().line(r) + " is taken for a second row of headings: "
                        + cells.stream()
                                .filter(cell -> !cell.isEmpty())
                                .map(Words::quote)
                                .collect(joining(", ")) + ".");
            }
        }
    }

    /** Leaves out what stands below the table. */
    void note(List<String> cells, int line) {
        leftOut.add("Line " + line + " is a remark: " + quoted(cells) + ".");
    }

    /** Returns the table without totals and without columns that have neither a heading nor a value. */
    FoundTable table() {
        leaveOutNamed();
        for (int i = 0; i < WORKED_OUT_ROWS && rows.size() > 1 && rows.size() < MOST_ROWS_SUMMED; i++) {
            int last = rows.size() - 1;
            int at = -1;
            for (int r = last; r > last - WORKED_OUT_ROWS && r > 0 && at < 0; r--) {
                at = TableTotals.isWorkedOut(
                                rows.subList(0, r), rows.get(r), area.sheet().decimal())
                        ? r
                        : -1;
            }
            if (at >= 0) {
                leftOut.add("Line " + lines.get(at) + " holds the sums or means of the rows above it: "
                        + quoted(rows.get(at)) + ".");
                remove(at);
            }
        }
        new RowsTooWide(head.names(), area.sheet().delimiter()).mend(rows, lines, leftOut);
        return days.beside(trimmed());
    }

    private void leaveOutNamed() {
        Set<Integer> totals = new NamedTotals(rows, named, area.sheet().decimal()).found();
        for (int at : named) {
            String line = "Line " + lines.get(at);
            leftOut.add(
                    totals.contains(at)
                            ? line + " is worked out of the other rows: " + quoted(rows.get(at)) + "."
                            : line + " is called " + Words.quote(TableTotals.word(rows.get(at)))
                                    + ", and its numbers are not worked out of the other rows: it is read as a row like them.");
        }
        List<Integer> downwards = new ArrayList<>(new TreeSet<>(totals).descendingSet());
        downwards.forEach(this::remove);
    }

    private void remove(int row) {
        rows.remove(row);
        lines.remove(row);
        days.remove(row);
    }

    private FoundTable trimmed() {
        boolean[] kept = new boolean[area.width()];
        for (int c = 0; c < kept.length; c++) {
            kept[c] = !head.names().get(c).matches("#\\d+");
        }
        for (List<String> row : rows) {
            for (int c = 0; c < kept.length; c++) {
                kept[c] |= !row.get(c).isEmpty();
            }
        }
        boolean all = true;
        for (boolean one : kept) {
            all &= one;
        }
        if (all) {
            return new FoundTable(area.sheet(), above, head.names(), rows, lines, leftOut);
        }
        return new FoundTable(
                area.sheet(),
                above,
                only(head.names(), kept),
                rows.stream().map(row -> only(row, kept)).toList(),
                lines,
                leftOut);
    }

    private static List<String> only(List<String> cells, boolean[] kept) {
        List<String> only = new ArrayList<>();
        for (int c = 0; c < cells.size(); c++) {
            if (kept[c]) {
                only.add(cells.get(c));
            }
        }
        return only;
    }
}
