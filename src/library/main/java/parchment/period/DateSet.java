package parchment.period;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/** Chooses the days that a 90 % date set holds: those of highest likelihood, the step's size integrated out. */
final class DateSet {
    private static final double LEVEL = 0.9;

    private DateSet() {}

    /**
     * Chooses.
     *
     * @param criteria minus twice the log likelihood of a step before each day; NaN where none was tried
     * @param information what is known of the step's size for each day, multiplied over indicators
     * @param from first day that may be chosen
     * @param to first day that may not
     */
    static List<Integer> of(double[] criteria, double[] information, int from, int to) {
        double best = Arrays.stream(criteria).filter(Double::isFinite).min().orElse(0);
        double[] weight = new double[criteria.length];
        double total = 0;
        List<Integer> candidates = new ArrayList<>();
        for (int day = from; day < to; day++) {
            if (!Double.isNaN(criteria[day])) {
                weight[day] = Math.exp((best - criteria[day]) / 2) / Math.sqrt(information[day]);
                total += weight[day];
                candidates.add(day);
            }
        }
        candidates.sort(Comparator.comparingDouble(day -> -weight[day]));
        List<Integer> set = new ArrayList<>();
        double sum = 0;
        for (int day : candidates) {
            set.add(day);
            sum += weight[day];
            if (sum >= LEVEL * total) {
                break;
            }
        }
        Collections.sort(set);
        return set;
    }
}
