package parchment.drift;

import java.util.Arrays;

/**
 * Estimates how often something happens that depends on how rows resemble each other, from a stretch that only says how likely each kind
 * of resemblance is.
 *
 * <p>The mean of the kinds' rates, each as often as it is likely, is drawn to the middle: a stretch without resemblance leaves some
 * likely, and the other way round. So each kind gets the number for which the mean over series of every kind comes nearest to that
 * kind's own rate: the inverse of mistaking kinds for each other, found by Richardson and Lucy's repeated step, which keeps the numbers
 * above zero (Richardson 1972, J. Opt. Soc. Am. 62:55; Lucy 1974, Astron. J. 79:745; both from memory).
 */
final class LikelyRate {
    private static final int STEPS = 300;

    private final double[] numbers;

    /**
     * @param rates how often it happens in series of each kind
     * @param taken for each kind, how likely the kinds are held to be in the mean over its series
     * @param before how much each kind weighs
     */
    LikelyRate(double[] rates, double[][] taken, double[] before) {
        int kinds = rates.length;
        double mean = 0;
        double[] whole = new double[kinds];
        for (int i = 0; i < kinds; i++) {
            mean += before[i] * rates[i];
            for (int k = 0; k < kinds; k++) {
                whole[k] += before[i] * taken[i][k];
            }
        }
        this.numbers = new double[kinds];
        Arrays.fill(numbers, mean);
        for (int step = 0; step < STEPS; step++) {
            double[] next = new double[kinds];
            for (int i = 0; i < kinds; i++) {
                double share = before[i] * rates[i] / Math.max(1e-300, of(taken[i]));
                for (int k = 0; k < kinds; k++) {
                    next[k] += share * taken[i][k];
                }
            }
            for (int k = 0; k < kinds; k++) {
                numbers[k] *= next[k] / whole[k];
            }
        }
    }

    /** Returns the rate where the kinds are as likely as given. */
    double rate(double[] likely) {
        return Math.min(1, of(likely));
    }

    private double of(double[] likely) {
        double sum = 0;
        for (int k = 0; k < numbers.length; k++) {
            sum += likely[k] * numbers[k];
        }
        return sum;
    }
}
