package parchment.period;

import java.util.Arrays;
import java.util.List;
import parchment.stats.series.DayRegression;

/** Measures how far two indicators err together: a late mark or an odd batch moves both. */
final class SharedSurprise {
    private SharedSurprise() {}

    /** Returns the correlation of the first two indicators' surprises in the same batches. */
    static double of(List<Indicator> indicators, List<DayRegression> fits, int batches) {
        if (fits.size() < 2) {
            return 0;
        }
        double[] first = new double[batches];
        Arrays.fill(first, Double.NaN);
        double[] surprises = fits.get(0).surprises();
        for (int i = 0; i < surprises.length; i++) {
            first[indicators.get(0).rows().get(i)] = surprises[i];
        }
        double[] second = fits.get(1).surprises();
        double sum = 0;
        double squares1 = 0;
        double squares2 = 0;
        for (int i = 0; i < second.length; i++) {
            double other = first[indicators.get(1).rows().get(i)];
            if (!Double.isNaN(other)) {
                sum += other * second[i];
                squares1 += other * other;
                squares2 += second[i] * second[i];
            }
        }
        return squares1 > 0 && squares2 > 0 ? Math.max(-0.95, Math.min(0.95, sum / Math.sqrt(squares1 * squares2))) : 0;
    }
}
