package parchment.period;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.QRDecomposition;

/**
 * Splits the room's temperature of a machine's batches into what moved slowly, a straight line and a wave of the year, and the rest.
 *
 * <p>Only a room that moved slowly can stand for a slow change of the probe. A room that only jitters from day to day moves readings from day to
 * day: that is something to compare at like, and no change.
 */
final class RoomCourse {
    /** Share of batches in which the room must be written. */
    static final double KNOWN = 0.85;

    /** Share of the variance of the day means that the slow part must explain. */
    static final double SLOW = 0.5;

    private static final int COLUMNS = 4;
    private static final double YEAR = 365.25;

    private final double[] room;
    private final Optional<double[]> slow;

    private RoomCourse(double[] room, Optional<double[]> slow) {
        this.room = room;
        this.slow = slow;
    }

    /**
     * Splits.
     *
     * @param dates date of each roast day, in days
     * @param dayOfRow number of each batch's roast day, from 0
     * @param room the room's temperature per batch, NaN where missing
     */
    static RoomCourse of(double[] dates, int[] dayOfRow, double[] room) {
        long known = Arrays.stream(room).filter(Double::isFinite).count();
        if (known == 0 || known < KNOWN * room.length) {
            return new RoomCourse(room.clone(), Optional.empty());
        }
        double[] sums = new double[dates.length];
        int[] counts = new int[dates.length];
        for (int i = 0; i < room.length; i++) {
            if (Double.isFinite(room[i])) {
                sums[dayOfRow[i]] += room[i];
                counts[dayOfRow[i]]++;
            }
        }
        int[] days =
                IntStream.range(0, dates.length).filter(day -> counts[day] > 0).toArray();
        double[] means =
                Arrays.stream(days).mapToDouble(day -> sums[day] / counts[day]).toArray();
        return new RoomCourse(
                room.clone(),
                fitted(dates, days, means)
                        .map(ofDay -> Arrays.stream(dayOfRow)
                                .mapToDouble(day -> ofDay[day])
                                .toArray()));
    }

    /** Returns the slow course on each roast day; empty if it explains less than half of the variance of the day means. */
    private static Optional<double[]> fitted(double[] dates, int[] days, double[] means) {
        int free = days.length - COLUMNS;
        if (free < 1) {
            return Optional.empty();
        }
        double[][] columns = Arrays.stream(days)
                .mapToObj(day -> columns(dates[day] - dates[0]))
                .toArray(double[][]::new);
        DecompositionSolver solver = new QRDecomposition(new Array2DRowRealMatrix(columns)).getSolver();
        if (!solver.isNonSingular()) {
            return Optional.empty();
        }
        double[] weights = solver.solve(new ArrayRealVector(means)).toArray();
        double mean = Arrays.stream(means).average().orElse(0);
        double rest = 0;
        double all = 0;
        for (int k = 0; k < means.length; k++) {
            double off = means[k] - at(columns[k], weights);
            rest += off * off;
            all += (means[k] - mean) * (means[k] - mean);
        }
        // Degrees of freedom are reckoned: four columns explain a third of the variance of ten days by chance.
        double explained = 1 - rest / free / (all / (days.length - 1));
        return all > 0 && explained >= SLOW
                ? Optional.of(Arrays.stream(dates)
                        .map(date -> at(columns(date - dates[0]), weights))
                        .toArray())
                : Optional.empty();
    }

    private static double[] columns(double day) {
        double angle = 2 * Math.PI * day / YEAR;
        return new double[] {1, day / YEAR, Math.cos(angle), Math.sin(angle)};
    }

    private static double at(double[] columns, double[] weights) {
        double sum = 0;
        for (int k = 0; k < columns.length; k++) {
            sum += columns[k] * weights[k];
        }
        return sum;
    }

    /** Returns the slow course, one value per batch in °C; empty if the room hardly moved slowly, or is not known. */
    Optional<double[]> slow() {
        return slow.map(double[]::clone);
    }

    /** Returns what the slow course leaves of the room's temperature, the whole of it where there is none; NaN where missing. */
    double[] rest() {
        double[] rest = room.clone();
        slow.ifPresent(course -> Arrays.setAll(rest, i -> rest[i] - course[i]));
        return rest;
    }
}
