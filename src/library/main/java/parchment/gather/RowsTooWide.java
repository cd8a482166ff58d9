package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import parchment.sheet.Words;

/** Puts a remark together again that has the sign between the columns in it, and so runs on into columns without a heading. */
final class RowsTooWide {
    private static final double MOST_WIDE = 0.3;

    private final String sign;
    private final int named;

    /** Returns what puts rows under some headings together; the sign stands between the columns. */
    RowsTooWide(List<String> headings, char sign) {
        this.sign = sign + " ";
        int last = headings.size();
        while (last > 0 && headings.get(last - 1).matches("#\\d+")) {
            last--;
        }
        named = last;
    }

    /** Changes the rows that are too wide, if they are few, and tells each. */
    void mend(List<List<String>> rows, List<Integer> lines, List<String> told) {
        int wide = 0;
        int words = 0;
        for (List<String> row : rows) {
            wide += isWide(row) ? 1 : 0;
            words += named > 0 && CellForm.of(row.get(named - 1)) == CellForm.WORDS ? 1 : 0;
        }
        if (named == 0 || wide == 0 || wide > MOST_WIDE * rows.size() && wide > 1 || words < wide) {
            return;
        }
        for (int r = 0; r < rows.size(); r++) {
            List<String> row = rows.get(r);
            if (isWide(row) && CellForm.of(row.get(named - 1)) == CellForm.WORDS) {
                rows.set(r, together(row));
                told.add("Line " + lines.get(r) + " is wider than the headings: the rest was put to the last column, "
                        + Words.quote(rows.get(r).get(named - 1)) + ".");
            }
        }
    }

    private boolean isWide(List<String> row) {
        return row.subList(named, row.size()).stream().anyMatch(cell -> !cell.isEmpty());
    }

    private List<String> together(List<String> row) {
        List<String> joined = new ArrayList<>(row.subList(0, named));
        List<String> more = row.subList(named, row.size()).stream()
                .filter(cell -> !cell.isEmpty())
                .toList();
        joined.set(named - 1, row.get(named - 1) + sign + String.join(sign, more));
        while (joined.size() < row.size()) {
            joined.add("");
        }
        return joined;
    }
}
