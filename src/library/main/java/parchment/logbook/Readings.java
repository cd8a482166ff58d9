package parchment.logbook;

import java.util.Arrays;

/** Grows as a curve file is read: one time, one line number and one value per column for each reading; a missing value is NaN. */
final class Readings {
    private double[] seconds = new double[512];
    private int[] lines = new int[512];
    private final double[][] values;
    private int size;

    Readings(int columns) {
        values = new double[columns][512];
    }

    /** Starts a reading whose values are all missing. */
    void add(double atSeconds, int line) {
        if (size == seconds.length) {
            int larger = size * 2;
            seconds = Arrays.copyOf(seconds, larger);
            lines = Arrays.copyOf(lines, larger);
            for (int c = 0; c < values.length; c++) {
                values[c] = Arrays.copyOf(values[c], larger);
            }
        }
        seconds[size] = atSeconds;
        lines[size] = line;
        for (double[] column : values) {
            column[size] = Double.NaN;
        }
        size++;
    }

    void set(int column, double value) {
        values[column][size - 1] = value;
    }

    void removeLast() {
        size--;
    }

    int size() {
        return size;
    }

    double secondsAt(int reading) {
        return seconds[reading];
    }

    int lineAt(int reading) {
        return lines[reading];
    }

    double valueAt(int column, int reading) {
        return values[column][reading];
    }
}
