package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import parchment.sheet.Sheet;

/**
 * Looks at some columns of a sheet as if they were all of it.
 *
 * @param sheet the sheet
 * @param places the columns that are looked at, in order
 * @param until the row behind the last one
 */
record SheetArea(Sheet sheet, List<Integer> places, int until) {
    private static final int MOST_ROWS_SPLIT = 5_000;
    private static final int FEWEST_ROWS_APART = 2;
    private static final int LONGEST_TITLE = 40;

    SheetArea {
        places = List.copyOf(places);
    }

    /** Returns the areas of a sheet that hold something: one, or several where tables stand side by side. */
    static List<SheetArea> of(Sheet sheet) {
        int width = 0;
        for (List<String> row : sheet.rows()) {
            width = Math.max(width, row.size());
        }
        boolean[] filled = new boolean[width];
        for (List<String> row : sheet.rows()) {
            for (int c = 0; c < row.size(); c++) {
                filled[c] |= !row.get(c).isBlank();
            }
        }
        List<List<Integer>> runs = new ArrayList<>();
        for (int c = 0; c < width; c++) {
            if (filled[c]) {
                if (c == 0 || !filled[c - 1]) {
                    runs.add(new ArrayList<>());
                }
                runs.get(runs.size() - 1).add(c);
            }
        }
        List<SheetArea> areas = new ArrayList<>();
        List<Integer> together = new ArrayList<>();
        for (List<Integer> run : runs) {
            if (!together.isEmpty() && standsApart(sheet, together, run)) {
                areas.add(new SheetArea(sheet, together, sheet.rows().size()));
                together = new ArrayList<>();
            }
            together.addAll(run);
        }
        if (!together.isEmpty()) {
            areas.add(new SheetArea(sheet, together, sheet.rows().size()));
        }
        return areas;
    }

    /** A blank column alone parts nothing: the right side must repeat the left's headings or end at another row. */
    private static boolean standsApart(Sheet sheet, List<Integer> left, List<Integer> right) {
        if (left.size() < 2 || right.size() < 2 || sheet.rows().size() > MOST_ROWS_SPLIT) {
            return false;
        }
        SheetArea one = new SheetArea(sheet, left, sheet.rows().size());
        SheetArea two = new SheetArea(sheet, right, sheet.rows().size());
        for (int r = 0; r < one.until(); r++) {
            List<String> here = one.row(r);
            List<String> there = two.row(r);
            long words = there.stream()
                    .filter(cell -> CellForm.of(cell) == CellForm.WORDS)
                    .count();
            long same = there.stream()
                    .filter(cell -> CellForm.of(cell) == CellForm.WORDS && here.contains(cell))
                    .count();
            if (words >= 2
                    && 2 * same > words
                    && here.stream().noneMatch(cell -> CellForm.of(cell).isValue())) {
                return true;
            }
        }
        int[] a = one.firstAndLast();
        int[] b = two.firstAndLast();
        boolean unbroken = two.isUnbroken(b) && one.isUnbroken(a);
        return unbroken && Math.abs(a[1] - b[1]) >= FEWEST_ROWS_APART && b[1] - b[0] >= 2 && two.isHeaded(b[0]);
    }

    /** Headings begin a table, or stand below its title: one cell, such as "Batch 12" over its readings. */
    private boolean isHeaded(int row) {
        long titles = row(row).stream().filter(cell -> !cell.isBlank()).count();
        return isWords(row)
                || titles == 1
                        && row + 1 < until
                        && isWords(row + 1)
                        && cell(row, 0).length() <= LONGEST_TITLE;
    }

    private boolean isWords(int row) {
        return row(row).stream().allMatch(cell -> CellForm.of(cell) == CellForm.WORDS);
    }

    private int[] firstAndLast() {
        int first = -1;
        int last = -1;
        for (int r = 0; r < until; r++) {
            if (!isBlank(r)) {
                first = first < 0 ? r : first;
                last = r;
            }
        }
        return new int[] {first, last};
    }

    private boolean isUnbroken(int[] rows) {
        for (int r = rows[0]; r <= rows[1]; r++) {
            if (isBlank(r)) {
                return false;
            }
        }
        return rows[0] >= 0;
    }

    int width() {
        return places.size();
    }

    /** Returns a cell by its place in the area. */
    String cell(int row, int place) {
        return sheet.cell(row, places.get(place));
    }

    /** Returns a row's cells. */
    List<String> row(int row) {
        String[] cells = new String[places.size()];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = sheet.cell(row, places.get(i));
        }
        return List.of(cells);
    }

    boolean isBlank(int row) {
        List<String> cells = sheet.rows().get(row);
        for (int place : places) {
            if (place < cells.size() && !cells.get(place).isBlank()) {
                return false;
            }
        }
        return true;
    }
}
