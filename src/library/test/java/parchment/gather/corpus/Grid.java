package parchment.gather.corpus;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Holds a table as it will be written: cells are text, numbers, dates, times, instants or {@link Cells.Span}s; "" is an empty cell.
 */
final class Grid {
    private final String name;
    private final List<List<Object>> rows = new ArrayList<>();
    private final Set<Integer> hidden = new TreeSet<>();
    private final List<int[]> merged = new ArrayList<>();

    Grid(String name) {
        this.name = name;
    }

    String name() {
        return name;
    }

    List<List<Object>> rows() {
        return rows;
    }

    Set<Integer> hidden() {
        return hidden;
    }

    /** Returns the merged ranges: top, left, bottom, right. */
    List<int[]> merged() {
        return merged;
    }

    Grid row(Object... cells) {
        rows.add(new ArrayList<>(Arrays.asList(cells)));
        return this;
    }

    Grid row(List<?> cells) {
        rows.add(new ArrayList<>(cells));
        return this;
    }

    Grid hide(int column) {
        hidden.add(column);
        return this;
    }

    Grid merge(int top, int left, int bottom, int right) {
        merged.add(new int[] {top, left, bottom, right});
        return this;
    }

    Grid add(Grid other) {
        other.rows.forEach(this::row);
        return this;
    }

    int width() {
        return rows.stream().mapToInt(List::size).max().orElse(0);
    }

    /** Returns the same with each row filled up with empty cells, as programs do that save a sheet as text. */
    Grid padded() {
        Grid padded = new Grid(name);
        int width = width();
        for (List<Object> row : rows) {
            List<Object> full = new ArrayList<>(row);
            while (full.size() < width) {
                full.add("");
            }
            padded.row(full);
        }
        return padded;
    }

    Grid transposed() {
        Grid turned = new Grid(name);
        for (int column = 0; column < width(); column++) {
            List<Object> cells = new ArrayList<>();
            for (List<Object> row : rows) {
                cells.add(column < row.size() ? row.get(column) : "");
            }
            turned.row(cells);
        }
        return turned;
    }

    Grid named(String other) {
        Grid same = new Grid(other);
        same.rows.addAll(rows);
        same.hidden.addAll(hidden);
        same.merged.addAll(merged);
        return same;
    }

    /** Returns two tables side by side with an empty column between them. */
    Grid beside(Grid other) {
        Grid both = new Grid(name);
        int width = width() + 1;
        for (int i = 0; i < Math.max(rows.size(), other.rows.size()); i++) {
            List<Object> cells = new ArrayList<>(i < rows.size() ? rows.get(i) : List.of());
            while (cells.size() < width) {
                cells.add("");
            }
            cells.addAll(i < other.rows.size() ? other.rows.get(i) : List.of());
            both.row(cells);
        }
        return both;
    }
}
