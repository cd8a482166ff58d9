package parchment.gather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import parchment.sheet.Numbers;

/**
 * Decides which rows that are called a sum, a mean or a limit are one. A batch, a lot or a cupper may be called "Max": such a row has a value wherever
 * the others have one, and its numbers are not the largest.
 */
final class NamedTotals {
    /** A column that so many rows fill is filled by a row like them. */
    private static final double NEARLY_ALL = 0.9;

    private static final double MOSTLY = 0.8;
    private static final long MOST_CELLS_COMPARED = 20_000_000;

    private final List<List<String>> rows;
    private final NavigableSet<Integer> named;
    private final Numbers.Decimal decimal;
    private final List<List<String>> others = new ArrayList<>();

    NamedTotals(List<List<String>> rows, Set<Integer> named, Numbers.Decimal decimal) {
        this.rows = rows;
        this.named = new TreeSet<>(named);
        this.decimal = decimal;
        for (int i = 0; i < rows.size(); i++) {
            if (!named.contains(i)) {
                others.add(rows.get(i));
            }
        }
    }

    /** Returns which of the rows that are called so are no rows of their own. */
    Set<Integer> found() {
        Set<Integer> found = new TreeSet<>();
        boolean many = named.size() * (long) rows.size() > MOST_CELLS_COMPARED;
        for (int at : named) {
            boolean fits = fits(rows.get(at));
            if (TableTotals.isSure(rows.get(at)) || !fits || !many && isWorkedOut(at)) {
                found.add(at);
            }
        }
        return found;
    }

    /** Returns whether a row has what nearly all others have, in the form that they have it in. */
    private boolean fits(List<String> row) {
        int looked = Math.min(others.size(), TableRows.ROWS_LOOKED_AT);
        for (int c = 0; c < row.size(); c++) {
            int filled = 0;
            int[] forms = new int[CellForm.values().length];
            for (List<String> other : others.subList(0, looked)) {
                CellForm form = CellForm.of(other.get(c));
                filled += form == CellForm.BLANK ? 0 : 1;
                forms[form.ordinal()]++;
            }
            CellForm here = CellForm.of(row.get(c));
            boolean misses = here == CellForm.BLANK && looked > 0 && filled >= NEARLY_ALL * looked;
            for (CellForm form : CellForm.values()) {
                boolean usual = form.isValue() && form != CellForm.NUMBER && forms[form.ordinal()] >= MOSTLY * filled;
                misses |= usual && filled > 0 && here != CellForm.BLANK && here != form;
            }
            if (misses) {
                return false;
            }
        }
        return true;
    }

    private boolean isWorkedOut(int at) {
        int last = named.lower(at) == null ? 0 : named.lower(at) + 1;
        return isWorkedOut(rows.get(at), before(at, 0))
                || isWorkedOut(rows.get(at), before(at, last))
                || isWorkedOut(rows.get(at), others);
    }

    private List<List<String>> before(int at, int from) {
        List<List<String>> before = new ArrayList<>();
        for (int i = from; i < at; i++) {
            if (!named.contains(i)) {
                before.add(rows.get(i));
            }
        }
        return before;
    }

    /** Returns whether each number of a row is what the row's word says of the numbers that stand in its column. */
    private boolean isWorkedOut(List<String> row, List<List<String>> of) {
        int compared = 0;
        for (int c = 0; c < row.size(); c++) {
            int place = c;
            double value = TableTotals.value(row.get(c), decimal);
            double[] numbers = of.stream()
                    .mapToDouble(other -> TableTotals.value(other.get(place), decimal))
                    .filter(number -> !Double.isNaN(number))
                    .sorted()
                    .toArray();
            if (Double.isNaN(value) || numbers.length == 0) {
                continue;
            }
            boolean constant = numbers[0] == numbers[numbers.length - 1] && value == numbers[0];
            if (!constant) {
                compared++;
                String written = row.get(c);
                if (expected(row, numbers).noneMatch(each -> TableTotals.near(value, each, written))) {
                    return false;
                }
            }
        }
        return compared > 0;
    }

    private static java.util.stream.DoubleStream expected(List<String> row, double[] sorted) {
        double count = sorted.length;
        double sum = Arrays.stream(sorted).sum();
        double mean = sum / count;
        double squares = Arrays.stream(sorted)
                .map(number -> (number - mean) * (number - mean))
                .sum();
        double[] values = switch (TableTotals.statistic(row)) {
            case LEAST -> new double[] {sorted[0]};
            case MOST -> new double[] {sorted[sorted.length - 1]};
            case COUNT -> new double[] {count};
            case SPREAD -> new double[] {Math.sqrt(squares / count), Math.sqrt(squares / Math.max(1, count - 1))};
            case SUM_OR_MEAN ->
                new double[] {sum, mean, (sorted[sorted.length / 2] + sorted[(sorted.length - 1) / 2]) / 2, count};
        };
        return Arrays.stream(values);
    }
}
