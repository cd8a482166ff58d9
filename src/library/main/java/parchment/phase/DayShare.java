package parchment.phase;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import parchment.phase.MarkReport.Comparison;

/** Counts the share of marks for which something holds, with a standard error that takes roast days as the units. */
final class DayShare {
    private DayShare() {}

    /**
     * Returns the share and its standard error: the ratio estimator over days, and no smaller than the binomial one of as many marks.
     *
     * @see <a href="https://www.wiley.com/en-us/9780471162407">Cochran 1977, Sampling Techniques, section 3.12 (cluster sampling)</a>
     */
    static double[] of(List<Comparison> list, Predicate<Comparison> holds) {
        int n = list.size();
        if (n == 0) {
            return new double[] {Double.NaN, Double.NaN};
        }
        Map<String, int[]> days = new LinkedHashMap<>();
        int held = 0;
        for (Comparison comparison : list) {
            int[] day = days.computeIfAbsent(comparison.day(), key -> new int[2]);
            day[0]++;
            if (holds.test(comparison)) {
                day[1]++;
                held++;
            }
        }
        double share = (double) held / n;
        double squares = 0;
        for (int[] day : days.values()) {
            squares += Math.pow(day[1] - share * day[0], 2);
        }
        int d = days.size();
        double byDays = d < 2 ? Double.NaN : Math.sqrt(squares * d / (d - 1)) / n;
        // With all or none held the spread over days is nothing; one mark in a hundred short of it is not.
        double guarded = (held + 1.0) / (n + 2.0);
        return new double[] {share, Math.max(byDays, Math.sqrt(guarded * (1 - guarded) / n))};
    }
}
