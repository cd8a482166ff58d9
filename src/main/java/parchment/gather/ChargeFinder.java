package parchment.gather;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds the charges in a recording that may hold several batches: a hot bean probe falls sharply when cold beans bury it, and rises
 * again for minutes after.
 *
 * <p>The numbers are common practice, no source: an empty drum is above 120 °C, the reading falls by more than 45 °C within 100 s, and
 * rises by more than 40 °C within five minutes of its lowest. A drop does not look like this: the empty drum is hot.
 */
final class ChargeFinder {
    private static final double EMPTY_DRUM = 120;
    private static final double FALL = 45;
    private static final double FALL_SECONDS = 100;
    private static final double TURNING_SECONDS = 240;
    private static final double RISE = 40;
    private static final double RISE_SECONDS = 300;
    private static final double SHORTEST_BATCH = 240;
    private static final double LONGEST_BACK = 40;

    private ChargeFinder() {}

    /**
     * Returns the times of the charges.
     *
     * @param seconds the times, rising
     * @param celsius the bean temperatures, without missing readings
     */
    static List<Double> charges(double[] seconds, double[] celsius) {
        List<Double> charges = new ArrayList<>();
        int i = 0;
        while (i < seconds.length) {
            int lowest = celsius[i] < EMPTY_DRUM ? i : lowest(seconds, celsius, i, FALL_SECONDS);
            if (celsius[i] - celsius[lowest] < FALL) {
                i++;
                continue;
            }
            int charge = start(seconds, celsius, i, lowest);
            int turning = lowest(seconds, celsius, charge, TURNING_SECONDS);
            int after = after(seconds, turning, RISE_SECONDS);
            if (highest(celsius, turning, after) - celsius[turning] >= RISE) {
                charges.add(seconds[charge]);
                i = Math.max(after(seconds, charge, SHORTEST_BATCH), turning);
            } else {
                i = Math.max(lowest, i + 1);
            }
        }
        return charges;
    }

    /** Goes back from the steepest part of the fall to where it began. */
    private static int start(double[] seconds, double[] celsius, int from, int lowest) {
        int steepest = from;
        double most = 0;
        for (int k = from; k < lowest; k++) {
            int ahead = Math.min(after(seconds, k, 5), lowest);
            double rate = (celsius[k] - celsius[ahead]) / Math.max(seconds[ahead] - seconds[k], 1);
            if (rate > most) {
                most = rate;
                steepest = k;
            }
        }
        int start = steepest;
        while (start > 0 && seconds[steepest] - seconds[start] < LONGEST_BACK) {
            int back = start - 1;
            double rate = (celsius[back] - celsius[start]) / (seconds[start] - seconds[back]);
            if (rate < most / 4) {
                break;
            }
            start = back;
        }
        return start;
    }

    private static int lowest(double[] seconds, double[] celsius, int from, double within) {
        int lowest = from;
        for (int k = from; k < seconds.length && seconds[k] <= seconds[from] + within; k++) {
            lowest = celsius[k] < celsius[lowest] ? k : lowest;
        }
        return lowest;
    }

    private static double highest(double[] celsius, int from, int to) {
        double highest = celsius[from];
        for (int k = from; k <= to && k < celsius.length; k++) {
            highest = Math.max(highest, celsius[k]);
        }
        return highest;
    }

    /** Returns the first place at least so many seconds later, or the last place. */
    private static int after(double[] seconds, int from, double later) {
        int k = from;
        while (k < seconds.length - 1 && seconds[k] < seconds[from] + later) {
            k++;
        }
        return k;
    }
}
