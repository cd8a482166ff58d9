package parchment.gather;

import java.util.Arrays;
import java.util.List;
import parchment.sheet.Numbers;

/** Tells a clock from a counter or a measurement by the steps from row to row of one column, as seconds or numbers. */
record ColumnSteps(List<Double> values, double evenness) {
    private static final double ALMOST_ALL = 0.95;
    private static final double LEAST_RANGE = 40;
    private static final double SMOOTH = 0.12;

    ColumnSteps {
        values = List.copyOf(values);
    }

    static ColumnSteps of(List<String> cells, Numbers.Decimal decimal) {
        double[] found = new double[cells.size()];
        int size = 0;
        for (String cell : cells) {
            double value = value(cell, decimal);
            if (!Double.isNaN(value)) {
                found[size++] = value;
            }
        }
        double[] values = size >= 0.5 * cells.size() ? Arrays.copyOf(found, size) : new double[0];
        return new ColumnSteps(Arrays.stream(values).boxed().toList(), evenness(values));
    }

    private static double value(String cell, Numbers.Decimal decimal) {
        return switch (CellForm.of(cell)) {
            case NUMBER -> CellNumber.of(cell, decimal).map(CellNumber::value).orElse(Double.NaN);
            case CLOCK ->
                WrittenDay.timeOfDay(cell)
                        .map(time -> time.toNanoOfDay() / 1e9)
                        .orElse(ColumnTimes.seconds(cell, ColumnTimes.HOURS, decimal));
            case DATE_AND_TIME ->
                WrittenDay.find(cell)
                        .flatMap(WrittenDay::clock)
                        .map(time -> time.toNanoOfDay() / 1e9)
                        .orElse(Double.NaN);
            default -> Double.NaN;
        };
    }

    /** Returns how alike the steps are: the middle half of them over their median. */
    private static double evenness(double[] values) {
        if (values.length < 3) {
            return Double.POSITIVE_INFINITY;
        }
        double[] steps = new double[values.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = values[i + 1] - values[i];
        }
        double median = ColumnValues.quantile(steps, 0.5);
        return median <= 0
                ? Double.POSITIVE_INFINITY
                : (ColumnValues.quantile(steps, 0.9) - ColumnValues.quantile(steps, 0.1)) / median;
    }

    /** Returns whether the values rise nearly always. */
    boolean goesOn() {
        int up = 0;
        for (int i = 1; i < values.size(); i++) {
            up += values.get(i) > values.get(i - 1) ? 1 : 0;
        }
        return values.size() > 2 && up >= ALMOST_ALL * (values.size() - 1) && evenness < 3;
    }

    /** Returns whether the values go over many degrees in small steps, as what a probe reads. */
    boolean isSmooth() {
        double[] sorted = values.stream().mapToDouble(Double::doubleValue).toArray();
        double range = ColumnValues.quantile(sorted, 0.98) - ColumnValues.quantile(sorted, 0.02);
        if (sorted.length < 10 || range < LEAST_RANGE) {
            return false;
        }
        double[] steps = new double[sorted.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = Math.abs(values.get(i + 1) - values.get(i));
        }
        double allowed = Math.max(SMOOTH, 3.0 / sorted.length);
        return ColumnValues.quantile(steps, 0.9) <= allowed * range;
    }
}
