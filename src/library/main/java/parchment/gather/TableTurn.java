package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** Turns tables whose headings stand in the first column and whose batches are columns. */
final class TableTurn {
    private static final int MOST_ROWS = 80;
    private static final int FEWEST_KNOWN = 3;

    private TableTurn() {}

    /** Returns the turned table of a block, if its headings run down the first column. */
    static Optional<FoundTable> of(SheetArea area, int from, int to, Supplier<List<List<String>>> above) {
        if (to - from < FEWEST_KNOWN || to - from > MOST_ROWS || area.width() < 3) {
            return Optional.empty();
        }
        // A title may stand alone above the headings.
        int first = from;
        while (first < to && filled(area, first) < 2) {
            first++;
        }
        if (to - first < FEWEST_KNOWN) {
            return Optional.empty();
        }
        List<String> down = new ArrayList<>();
        for (int r = first; r < to; r++) {
            down.add(area.cell(r, 0));
        }
        List<String> across = area.row(first);
        double knownDown = known(down);
        double knownAcross = known(across.subList(1, across.size()));
        long values = down.stream().filter(cell -> CellForm.of(cell).isValue()).count();
        boolean alike = rowsAlike(area, first, to) > columnsAlike(area, first, to);
        if (knownDown < FEWEST_KNOWN
                || knownDown < 0.4 * down.size()
                || values > 0.2 * down.size()
                || knownDown <= knownAcross + 1
                || !alike) {
            return Optional.empty();
        }
        List<List<String>> titles = new ArrayList<>(above.get());
        for (int r = from; r < first; r++) {
            titles.add(area.row(r));
        }
        return Optional.of(turned(area, first, to, titles));
    }

    /** Returns a sheet that holds one batch only, a heading and its value a row, as a table of one row. */
    static Optional<FoundTable> single(SheetArea area, List<Integer> rows) {
        List<String> headings = new ArrayList<>();
        List<String> values = new ArrayList<>();
        List<List<String>> above = new ArrayList<>();
        for (int r : rows) {
            List<String> cells =
                    area.row(r).stream().filter(cell -> !cell.isEmpty()).toList();
            if (cells.size() == 2) {
                headings.add(cells.get(0).replaceAll(":$", ""));
                values.add(cells.get(1));
            } else {
                above.add(area.row(r));
            }
        }
        if (known(headings) <= FEWEST_KNOWN) {
            return Optional.empty();
        }
        return Optional.of(new FoundTable(
                area.sheet(),
                above,
                headings,
                List.of(values),
                List.of(area.sheet().line(rows.get(0))),
                List.of("The sheet holds one row of values, written down the page.")));
    }

    /** Returns whether each row of a block is a key and its value, as above the readings of a recording. */
    static boolean isKeys(SheetArea area, int from, int to) {
        int keys = 0;
        List<String> down = new ArrayList<>();
        for (int r = from; r < to && r - from < MOST_ROWS; r++) {
            List<String> cells =
                    area.row(r).stream().filter(cell -> !cell.isEmpty()).toList();
            if (cells.size() > 2 || cells.isEmpty()) {
                return false;
            }
            // A time of day or of a roast has a colon too, and is no key.
            boolean words = CellForm.of(cells.get(0)) == CellForm.WORDS;
            keys += words && (cells.size() == 2 || cells.get(0).contains(":")) ? 1 : 0;
            down.add(cells.get(0));
        }
        double known = known(down);
        long colons = down.stream().filter(cell -> cell.contains(":")).count();
        return to - from <= MOST_ROWS
                && keys == down.size()
                && (2 * known >= down.size() && known >= 2 || 2 * colons > down.size());
    }

    private static double known(List<String> cells) {
        double known = 0;
        for (String cell : cells) {
            TradeWords.Named named = CellForm.of(cell) == CellForm.WORDS && cell.length() < 40
                    ? TradeWords.of(cell)
                    : new TradeWords.Named(java.util.Set.of(), java.util.Set.of());
            known += !named.whole().isEmpty() ? 1 : named.isKnown() ? 0.5 : 0;
        }
        return known;
    }

    private static long filled(SheetArea area, int row) {
        return area.row(row).stream().filter(cell -> !cell.isEmpty()).count();
    }

    /** Returns the share of cells that have the form that most of their row has. */
    private static double rowsAlike(SheetArea area, int from, int to) {
        double alike = 0;
        for (int r = from; r < to; r++) {
            alike += alike(area.row(r).subList(1, area.width()).stream());
        }
        return alike / (to - from);
    }

    private static double columnsAlike(SheetArea area, int from, int to) {
        double alike = 0;
        for (int c = 1; c < area.width(); c++) {
            List<String> column = new ArrayList<>();
            for (int r = from; r < to; r++) {
                column.add(area.cell(r, c));
            }
            alike += alike(column.stream());
        }
        return alike / (area.width() - 1);
    }

    private static double alike(Stream<String> cells) {
        int[] counts = new int[CellForm.values().length];
        cells.forEach(cell -> counts[CellForm.of(cell).ordinal()]++);
        int most = 0;
        int all = 0;
        for (CellForm form : CellForm.values()) {
            if (form != CellForm.BLANK) {
                most = Math.max(most, counts[form.ordinal()]);
                all += counts[form.ordinal()];
            }
        }
        return all == 0 ? 0 : most / (double) all;
    }

    private static FoundTable turned(SheetArea area, int from, int to, List<List<String>> above) {
        List<String> headings = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        List<Integer> used = new ArrayList<>();
        for (int r = from; r < to; r++) {
            List<String> cells = area.row(r);
            if (cells.get(0).isEmpty() && filled(area, r) == 0) {
                continue;
            }
            used.add(r);
            headings.add(
                    cells.get(0).isEmpty() ? "#" + used.size() : cells.get(0).replaceAll(":$", ""));
        }
        // A column of units stands between the headings and the first batch.
        int start = 1;
        List<String> second = used.stream().map(r -> area.cell(r, 1)).toList();
        if (TableHead.isUnits(second)) {
            for (int i = 0; i < headings.size(); i++) {
                String unit = second.get(i).replaceAll("[\\[\\]()]", "");
                headings.set(i, unit.isEmpty() ? headings.get(i) : headings.get(i) + " [" + unit + "]");
            }
            start = 2;
        }
        List<List<String>> rows = new ArrayList<>();
        List<Integer> lines = new ArrayList<>();
        for (int c = start; c < area.width(); c++) {
            int column = c;
            List<String> cells = used.stream().map(r -> area.cell(r, column)).toList();
            if (TableTotals.isNamed(cells)) {
                leftOut.add("Column " + (area.places().get(c) + 1) + " is worked out of the others.");
            } else if (cells.stream().anyMatch(cell -> !cell.isEmpty())) {
                rows.add(cells);
                lines.add(area.sheet().line(from));
            }
        }
        leftOut.add(
                0,
                "The headings stand in column " + (area.places().get(0) + 1)
                        + ": each row here is a column of the sheet, from column "
                        + (area.places().get(start) + 1) + " on.");
        return new FoundTable(area.sheet(), above, headings, rows, lines, leftOut);
    }
}
