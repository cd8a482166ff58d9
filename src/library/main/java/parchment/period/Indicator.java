package parchment.period;

import java.util.ArrayList;
import java.util.List;

/**
 * One number that the beans should not move, batch by batch on one machine, with what else moves it: by it a change of the probe is found.
 *
 * @param name in words
 * @param celsius where on the temperature scale it is read, °C
 * @param rows places of its batches in the machine's order of time
 * @param y readings, °C
 * @param columns what else moves it, an intercept or lots first
 * @param columnNames in words
 */
record Indicator(
        String name, double celsius, List<Integer> rows, Numbers y, List<Numbers> columns, List<String> columnNames) {

    /** A list of numbers that nobody changes. */
    static final class Numbers {
        private final double[] values;

        Numbers(double[] values) {
            this.values = values.clone();
        }

        double[] values() {
            return values.clone();
        }

        double[] raw() {
            return values;
        }
    }

    Indicator {
        rows = List.copyOf(rows);
        columns = List.copyOf(columns);
        columnNames = List.copyOf(columnNames);
    }

    /** Tells whether it says what the probe reads in beans; the empty drum says only whether it moved. */
    boolean toldOfBeans() {
        return !name.equals(IndicatorByDay.EMPTY_DRUM);
    }

    int size() {
        return rows.size();
    }

    List<double[]> rawColumns() {
        List<double[]> raw = new ArrayList<>(columns.size());
        columns.forEach(column -> raw.add(column.raw()));
        return raw;
    }
}
