package parchment.period;

import java.util.List;
import parchment.stats.series.DayRegression;

/** Takes an indicator's day means, freed of everything but the steps, in standard deviations of a day's mean. */
final class DayMeans {
    private DayMeans() {}

    /**
     * Returns the means, one per roast day, NaN where the day has no batch.
     *
     * @param columns of the fit
     * @param free how many of them, from the first, are taken out; the steps stay
     * @param days how many roast days there are
     */
    static double[] of(
            Indicator indicator, DayRegression fit, List<double[]> columns, int free, int[] dayOfRow, int days) {
        double[] coefficients = fit.coefficients();
        double[] sums = new double[days];
        double[] counts = new double[days];
        double[] y = indicator.y().raw();
        for (int i = 0; i < y.length; i++) {
            double rest = y[i];
            for (int k = 0; k < free; k++) {
                rest -= coefficients[k] * columns.get(k)[i];
            }
            int day = dayOfRow[indicator.rows().get(i)];
            sums[day] += rest;
            counts[day]++;
        }
        double usual = y.length / (double) days;
        double scale = Math.hypot(fit.dayDeviation(), fit.batchDeviation() / Math.sqrt(usual));
        for (int d = 0; d < sums.length; d++) {
            sums[d] = counts[d] == 0 ? Double.NaN : sums[d] / counts[d] / scale;
        }
        return sums;
    }
}
