package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds the charges in a recording that may hold several batches: a hot bean probe falls sharply when cold beans bury it, and climbs
 * again for minutes after, up to where coffee is roasted. The fall after a drop looks alike where the drum cools in the pause and is
 * heated again. So falls take turns: one that begins at the top of a batch's climb is its drop, and the next may be a charge.
 *
 * <p>The numbers are common practice, no source: an empty drum is above 120 °C, the reading falls by more than 45 °C within 100 s, and
 * rises by more than 40 °C within five minutes of its lowest; a roast lasts four minutes at least and passes 150 °C. After a drop the
 * drum may have cooled, so a smaller fall from a lower reading is a charge too. Beans are out where the reading has gone down by 8 °C
 * for 20 s, or has stood still for a minute, before it falls.
 */
final class ChargeFinder {
    /** A batch's stretch begins so long before its charge, in seconds. */
    static final double BEFORE_CHARGE = 60;

    private static final double EMPTY_DRUM = 120;
    private static final double FALL = 45;
    private static final double EMPTY_COOLED_DRUM = 90;
    private static final double FALL_IN_COOLED_DRUM = 30;
    private static final double FALL_SECONDS = 100;
    private static final double TURNING_SECONDS = 240;
    private static final double RISE = 40;
    private static final double RISE_SECONDS = 300;
    /** A roast lasts as many seconds at least. */
    static final double SHORTEST_BATCH = 240;

    private static final double ROASTING = 150;
    private static final double LONGEST_BACK = 40;
    private static final double DIP = 8;
    private static final double DIP_SECONDS = 20;
    private static final double STILL = 1;
    private static final double STILL_SECONDS = 60;
    private static final double MEAN_SECONDS = 10;
    private static final double SLOWING_SECONDS = 15;

    private ChargeFinder() {}

    /**
     * Returns the times of the charges.
     *
     * @param seconds the times, rising
     * @param celsius the bean temperatures, without missing readings
     */
    static List<Double> charges(double[] seconds, double[] celsius) {
        List<Double> charges = new ArrayList<>();
        int within = -1; // the charge of the batch that is in the drum
        boolean cooled = false;
        int i = 0;
        while (i < seconds.length) {
            double empty = cooled ? EMPTY_COOLED_DRUM : EMPTY_DRUM;
            int lowest = celsius[i] < empty ? i : lowest(seconds, celsius, i, FALL_SECONDS);
            if (celsius[i] - celsius[lowest] < (cooled ? FALL_IN_COOLED_DRUM : FALL)) {
                i++;
                continue;
            }
            int begins = start(seconds, celsius, i, lowest);
            if (within >= 0 && !isEmpty(seconds, celsius, within, begins)) {
                within = -1;
                cooled = true;
                i = Math.max(slows(seconds, celsius, begins), i + 1);
            } else if (isCharge(seconds, celsius, begins)) {
                charges.add(seconds[begins]);
                within = begins;
                cooled = false;
                int turning = lowest(seconds, celsius, begins, TURNING_SECONDS);
                i = Math.max(after(seconds, begins, SHORTEST_BATCH), turning);
                i = Math.max(i, begins + 1);
            } else {
                i = Math.max(lowest, i + 1);
            }
        }
        return charges;
    }

    /** Returns where a fall begins between two times that is a charge if the drum had cooled before: what a list says was one. */
    static Optional<Double> smaller(double[] seconds, double[] celsius, double from, double to) {
        for (int i = 0; i < seconds.length && seconds[i] <= to; i++) {
            if (seconds[i] < from || celsius[i] < EMPTY_COOLED_DRUM) {
                continue;
            }
            int lowest = lowest(seconds, celsius, i, FALL_SECONDS);
            int turning = lowest(seconds, celsius, i, TURNING_SECONDS);
            boolean climbs =
                    highest(celsius, turning, after(seconds, turning, RISE_SECONDS)) - celsius[turning] >= RISE;
            if (celsius[i] - celsius[lowest] >= FALL_IN_COOLED_DRUM && climbs) {
                double begins = seconds[start(seconds, celsius, i, lowest)];
                return begins >= from && begins <= to ? Optional.of(begins) : Optional.empty();
            }
        }
        return Optional.empty();
    }

    /**
     * Returns where a batch ends and the next begins: some time before the next charge, but never before the batch's own drop.
     *
     * @param dropped when the batch was dropped, or may have been; NaN if that is not known
     */
    static double border(double charge, double next, double dropped) {
        double usual = Math.max(charge, next - BEFORE_CHARGE);
        return dropped >= usual && dropped < next ? dropped + (next - dropped) / 2 : usual;
    }

    /** A charge turns and climbs to roasting before anything falls again; a recording that ends before that is believed. */
    private static boolean isCharge(double[] seconds, double[] celsius, int charge) {
        int turning = lowest(seconds, celsius, charge, TURNING_SECONDS);
        int risen = after(seconds, turning, RISE_SECONDS);
        if (highest(celsius, turning, risen) - celsius[turning] < RISE) {
            return false;
        }
        double top = celsius[turning];
        for (int k = slows(seconds, celsius, charge); k < seconds.length; k++) {
            top = Math.max(top, celsius[k]);
            int lowest = celsius[k] < EMPTY_DRUM ? k : lowest(seconds, celsius, k, FALL_SECONDS);
            if (celsius[k] - celsius[lowest] >= FALL) {
                int begins = start(seconds, celsius, k, lowest);
                return seconds[begins] - seconds[charge] >= SHORTEST_BATCH && top >= ROASTING;
            }
        }
        return top >= ROASTING || seconds[seconds.length - 1] - seconds[turning] < RISE_SECONDS;
    }

    /** Returns whether the batch has left the drum before a fall begins: the reading went down, or stood still, after its climb. */
    private static boolean isEmpty(double[] seconds, double[] celsius, int charge, int begins) {
        double top = Double.NEGATIVE_INFINITY;
        int belowFrom = -1;
        for (int k = after(seconds, charge, SHORTEST_BATCH); k <= begins; k++) {
            top = Math.max(top, celsius[k]);
            if (top < ROASTING || celsius[k] > top - DIP) {
                belowFrom = -1;
                continue;
            }
            belowFrom = belowFrom < 0 ? k : belowFrom;
            if (seconds[k] - seconds[belowFrom] >= DIP_SECONDS) {
                return true;
            }
        }
        double before =
                mean(seconds, celsius, seconds[begins] - STILL_SECONDS - MEAN_SECONDS, seconds[begins] - STILL_SECONDS);
        double at = mean(seconds, celsius, seconds[begins] - MEAN_SECONDS, seconds[begins]);
        return before >= ROASTING && at - before <= STILL;
    }

    /** Returns the mean reading between two times; NaN if there is none. */
    private static double mean(double[] seconds, double[] celsius, double from, double to) {
        double sum = 0;
        int count = 0;
        for (int k = 0; k < seconds.length && seconds[k] <= to; k++) {
            if (seconds[k] >= from) {
                sum += celsius[k];
                count++;
            }
        }
        return count == 0 ? Double.NaN : sum / count;
    }

    /** Returns where a fall has slowed to a quarter of its steepest, so that another may begin. */
    private static int slows(double[] seconds, double[] celsius, int begins) {
        double most = 0;
        int k = begins;
        while (k < seconds.length - 1) {
            int ahead = after(seconds, k, SLOWING_SECONDS);
            double rate = (celsius[k] - celsius[ahead]) / Math.max(seconds[ahead] - seconds[k], 1);
            most = Math.max(most, rate);
            if (seconds[k] - seconds[begins] >= DIP_SECONDS && rate < most / 4) {
                return k;
            }
            k++;
        }
        return k;
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
