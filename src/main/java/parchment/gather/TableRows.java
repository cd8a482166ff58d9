package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Collects the rows of one table while a sheet is walked through, and says what it leaves out. */
final class TableRows {
    private static final int ROWS_LOOKED_AT = 60;
    private static final int WORKED_OUT_ROWS = 3;
    private static final int LONGEST_DAY = 32;
    private static final String DAY = "Date";
    private static final double MOST_WIDE = 0.3;
    private static final int MOST_ROWS_SUMMED = 20_000;

    private final SheetArea area;
    private final TableHead head;
    private final List<List<String>> above;
    private final List<List<String>> rows = new ArrayList<>();
    private final List<Integer> lines = new ArrayList<>();
    private final List<String> leftOut = new ArrayList<>();
    private final List<String> days = new ArrayList<>();
    private String section = "";
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
            leftOut.add(line + " is worked out of the other rows: " + quoted(cells) + ".");
        } else if (isSection(cells)) {
            section = cells.stream().filter(cell -> !cell.isEmpty()).findFirst().orElse("");
        } else if (isRemark(cells)) {
            leftOut.add(line + " is a remark: " + quoted(cells) + ".");
        } else {
            keep(cells, row);
        }
    }

    private void keep(List<String> cells, int row) {
        rows.add(cells);
        lines.add(area.sheet().line(row));
        if (!section.isEmpty() || !days.isEmpty()) {
            while (days.size() < rows.size() - 1) {
                days.add("");
            }
            days.add(section);
        }
    }

    /** A day alone on a row heads the rows below it, as on a page of a notebook. */
    private boolean isSection(List<String> cells) {
        List<String> filled = cells.stream().filter(cell -> !cell.isEmpty()).toList();
        return area.width() >= 3 && filled.size() == 1 && isDay(filled.get(0));
    }

    /** Returns whether a cell is a day, or a few words with one, such as "Tuesday, 3 June 2031" or "Week 23, 3.6.2031". */
    private static boolean isDay(String cell) {
        return CellForm.of(cell) == CellForm.DATE
                || cell.length() < LONGEST_DAY
                        && WrittenDay.find(cell).isPresent()
                        && CellForm.of(cell) == CellForm.WORDS;
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

    /** Leaves out what stands below the table. */
    void note(List<String> cells, int line) {
        leftOut.add("Line " + line + " is a remark: " + quoted(cells) + ".");
    }

    int count() {
        return rows.size();
    }

    /** Returns the table without columns that have neither a heading nor a value. */
    Table table() {
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
                rows.remove(at);
                lines.remove(at);
                if (!days.isEmpty()) {
                    days.remove(at);
                }
            }
        }
        return days.isEmpty() ? trimmed() : dated(trimmed());
    }

    /** A remark with the sign between columns in it runs on into columns without a heading: its parts are put together again. */
    private void runOn() {
        int named = head.names().size();
        while (named > 0 && head.names().get(named - 1).matches("#\\d+")) {
            named--;
        }
        int wide = 0;
        int words = 0;
        for (List<String> row : rows) {
            wide += row.subList(named, row.size()).stream().anyMatch(cell -> !cell.isEmpty()) ? 1 : 0;
            words += named > 0 && CellForm.of(row.get(named - 1)) == CellForm.WORDS ? 1 : 0;
        }
        if (named == 0 || wide == 0 || wide > MOST_WIDE * rows.size() && wide > 1 || words < wide) {
            return;
        }
        for (int r = 0; r < rows.size(); r++) {
            List<String> row = rows.get(r);
            List<String> more = row.subList(named, row.size()).stream()
                    .filter(cell -> !cell.isEmpty())
                    .toList();
            if (!more.isEmpty() && CellForm.of(row.get(named - 1)) == CellForm.WORDS) {
                List<String> joined = new ArrayList<>(row);
                joined.set(
                        named - 1,
                        row.get(named - 1) + area.sheet().delimiter() + " "
                                + String.join(area.sheet().delimiter() + " ", more));
                for (int c = named; c < joined.size(); c++) {
                    joined.set(c, "");
                }
                rows.set(r, joined);
                leftOut.add(
                        "Line " + lines.get(r) + " is wider than the headings: the rest was put to the last column, "
                                + Words.quote(joined.get(named - 1)) + ".");
            }
        }
    }

    /** Gives each row the day that headed it as a column of its own. */
    private Table dated(Table table) {
        if (days.size() != table.rows().size()) {
            return table;
        }
        List<String> headings = new ArrayList<>(table.headings());
        headings.add(DAY);
        List<List<String>> dated = new ArrayList<>();
        for (int r = 0; r < days.size(); r++) {
            List<String> row = new ArrayList<>(table.rows().get(r));
            row.add(days.get(r));
            dated.add(row);
        }
        List<String> told = new ArrayList<>(table.leftOut());
        told.add("Days stand alone on rows: each row got the day above it, as a column " + Words.quote(DAY) + ".");
        return new Table(table.sheet(), table.above(), headings, dated, table.lines(), told);
    }

    private Table trimmed() {
        runOn();
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
            return new Table(area.sheet(), above, head.names(), rows, lines, leftOut);
        }
        return new Table(
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
