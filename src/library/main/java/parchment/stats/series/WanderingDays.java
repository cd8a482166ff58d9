package parchment.stats.series;

import java.util.Random;

/**
 * Carries rows in order of time that share an effect of their day, the days' effects wandering: their correlation falls with the days
 * between as exp(-days / length).
 *
 * <p>One pass of a Kalman filter takes the wandering out of a column: what is left of each row is what the rows before did not
 * foretell, divided by its standard deviation. Least squares on columns treated so are generalised least squares on the rows (Harvey
 * 1989, Forecasting, Structural Time Series Models and the Kalman Filter, section 3.4). Work grows with the number of rows only.
 */
public final class WanderingDays {
    private final int[] day;
    private final double[] gaps;

    /**
     * @param day number of each row's roast day, from 0, never falling
     * @param dates date of each roast day, in days, rising
     */
    public WanderingDays(int[] day, double[] dates) {
        this.day = day;
        this.gaps = new double[dates.length];
        for (int d = 1; d < dates.length; d++) {
            gaps[d] = dates[d] - dates[d - 1];
        }
    }

    public int rows() {
        return day.length;
    }

    public int days() {
        return gaps.length;
    }

    public int dayOf(int row) {
        return day[row];
    }

    /** Returns the usual distance of neighbouring roast days, in days. */
    public double usualGap() {
        double sum = 0;
        for (double gap : gaps) {
            sum += gap;
        }
        return gaps.length < 2 ? 1 : Math.max(1e-9, sum / (gaps.length - 1));
    }

    /**
     * Prepares the filter for one set of variances.
     *
     * @param ratio variance of the days' effects divided by that of batches within a day, 0 or more
     * @param length days after which the correlation of two days' effects has fallen to 0.37; 0 for days that share nothing
     */
    public Filter filter(double ratio, double length) {
        return new Filter(ratio, length);
    }

    /** The filter at given variances; the variance within a day is 1. */
    public final class Filter {
        private final double[] keep = new double[day.length];
        private final double[] gain = new double[day.length];
        private final double[] spread = new double[day.length];
        private final double logDeterminant;

        private Filter(double ratio, double length) {
            double variance = ratio;
            double log = 0;
            for (int i = 0; i < day.length; i++) {
                keep[i] = 1;
                if (i > 0 && day[i] != day[i - 1]) {
                    double gap = 0;
                    for (int d = day[i - 1] + 1; d <= day[i]; d++) {
                        gap += gaps[d];
                    }
                    keep[i] = length > 0 ? Math.exp(-gap / length) : 0;
                    variance = keep[i] * keep[i] * variance + ratio * (1 - keep[i] * keep[i]);
                }
                double total = variance + 1;
                gain[i] = variance / total;
                spread[i] = Math.sqrt(total);
                log += Math.log(total);
                variance *= 1 - gain[i];
            }
            this.logDeterminant = log;
        }

        public double logDeterminant() {
            return logDeterminant;
        }

        /** Takes the wandering out of a column. */
        public double[] whitened(double[] column) {
            double[] out = new double[column.length];
            double mean = 0;
            for (int i = 0; i < out.length; i++) {
                mean *= keep[i];
                double surprise = column[i] - mean;
                out[i] = surprise / spread[i];
                mean += gain[i] * surprise;
            }
            return out;
        }

        /** Returns, for each row, the sum over whitened rows of what a 1 there adds to them times the given values: the transpose. */
        public double[] transposed(double[] values) {
            double[] out = new double[values.length];
            double carried = 0;
            for (int i = values.length - 1; i >= 0; i--) {
                out[i] = values[i] / spread[i] + gain[i] * carried;
                carried = keep[i] * (carried - out[i]);
            }
            return out;
        }

        /** Puts the wandering into independent values of variance 1: the inverse of {@link #whitened}. */
        public double[] wandering(double[] independent) {
            double[] out = new double[independent.length];
            double mean = 0;
            for (int i = 0; i < out.length; i++) {
                mean *= keep[i];
                double surprise = independent[i] * spread[i];
                out[i] = mean + surprise;
                mean += gain[i] * surprise;
            }
            return out;
        }
    }

    public static double[] normals(int size, Random random) {
        double[] out = new double[size];
        for (int i = 0; i < size; i++) {
            out[i] = random.nextGaussian();
        }
        return out;
    }
}
