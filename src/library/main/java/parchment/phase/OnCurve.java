package parchment.phase;

import java.util.Arrays;
import java.util.Optional;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.stats.linear.Robust;

/**
 * Finds charge and drop on a bean-probe curve; the turning point between them is {@link TurningPoint}.
 *
 * <p>Charge is the onset of the sharp fall that cold beans cause; drop is the onset of the fall at the end, where the log goes on; both
 * are common practice, no source. The thresholds are wide: a fall counts from {@value #FALL_AT_CHARGE} °C on at charge and from
 * {@value #FALL_AT_DROP} °C a minute on at the drop. When exactly it began, {@link FallOnset} tells.
 */
final class OnCurve {
    /** A found instant on the clock of the curve. */
    record Found(double seconds, double standardError) {}

    static final double FALL_AT_CHARGE = 15;

    /** A fall at the end counts from so many °C a minute on: no roast with beans in the drum cools so fast. Common practice, no source. */
    static final double FALL_AT_DROP = 6;

    /** It must be seen, too: this deep in °C, this many standard deviations of the noise, this many steps of the logger. */
    static final double LEAST_FALL = 1.5;

    static final double NOISES = 5;
    static final double STEPS = 3;

    /** How long before the steepest fall its onset may lie: a probe in a thick sheath is that slow. Common practice, no source. */
    private static final double GENTLE_SECONDS = 25;

    static final double RISE_AFTER_CHARGE = 30;
    static final double LONGEST_FALL_SECONDS = 240;
    private static final double FALL_WINDOW_SECONDS = 20;

    private OnCurve() {}

    /** Returns when the sharp fall at charge begins; empty if the log starts within the fall or there is none. */
    static Optional<Found> charge(CleanCurve clean) {
        return atCharge(clean).flatMap(rough -> {
            double interval = clean.interval();
            return onset(
                    clean,
                    FallOnset.Cause.CHARGE,
                    rough - Math.max(2 * interval, 15),
                    rough + interval + Math.max(interval, 3));
        });
    }

    /** Shows the search half a minute of the course before and a third of a minute of the fall after, or a few readings of a slow logger. */
    private static Optional<Found> onset(CleanCurve clean, FallOnset.Cause cause, double from, double to) {
        double interval = clean.interval();
        return FallOnset.between(clean, cause, from, to, Math.max(30, 4 * interval), Math.max(20, 2 * interval));
    }

    /** Returns the last reading before the sharp fall at charge, in seconds: an interval or two exact. */
    static Optional<Double> atCharge(CleanCurve clean) {
        Curve curve = clean.kept();
        int bottom = bottomOfTheFall(curve);
        if (bottom < 2) {
            return Optional.empty();
        }
        int steepest = bottom;
        double largest = 0;
        double from = curve.secondsAt(bottom) - LONGEST_FALL_SECONDS;
        for (int i = Math.max(1, curve.position(from)); i <= bottom; i++) {
            double fall = (curve.valueAt(i - 1) - curve.valueAt(i)) / (curve.secondsAt(i) - curve.secondsAt(i - 1));
            if (fall > largest) {
                largest = fall;
                steepest = i;
            }
        }
        // Back from the steepest fall to where it began: the last reading still at the level of those before it.
        int onset = steepest - 1;
        while (onset > 0) {
            double rate = (curve.valueAt(onset - 1) - curve.valueAt(onset))
                    / (curve.secondsAt(onset) - curve.secondsAt(onset - 1));
            if (rate < 0.15 * largest) {
                break;
            }
            onset--;
        }
        int before = curve.position(curve.secondsAt(onset) - FALL_WINDOW_SECONDS);
        if (onset - before < 2) {
            return Optional.empty();
        }
        double level = Robust.median(Arrays.copyOfRange(curve.values(), before, onset + 1));
        if (level - curve.valueAt(bottom) < FALL_AT_CHARGE) {
            return Optional.empty();
        }
        return Optional.of(curve.secondsAt(onset));
    }

    /**
     * The beans cool the probe before they warm it: the bottom is the point that lies furthest below the readings of the minutes before it
     * and far below a later one. Warming up has no such fall, and the fall after the drop no such rise.
     */
    private static int bottomOfTheFall(Curve curve) {
        int n = curve.size();
        double[] highestAfter = new double[n + 1];
        highestAfter[n] = Double.NEGATIVE_INFINITY;
        for (int i = n - 1; i >= 0; i--) {
            highestAfter[i] = Math.max(highestAfter[i + 1], curve.valueAt(i));
        }
        int bottom = -1;
        double deepest = 0;
        for (int i = 1; i < n; i++) {
            if (highestAfter[i] - curve.valueAt(i) < RISE_AFTER_CHARGE) {
                continue;
            }
            double from = curve.secondsAt(i) - LONGEST_FALL_SECONDS;
            for (int j = i - 1; j >= 0 && curve.secondsAt(j) >= from; j--) {
                double fall = curve.valueAt(j) - curve.valueAt(i);
                if (fall > deepest) {
                    deepest = fall;
                    bottom = i;
                }
            }
        }
        return bottom;
    }

    /** Returns when the curve begins to fall sharply for good; empty if it ends without such a fall. */
    static Optional<Found> drop(CleanCurve clean, double afterSeconds) {
        Curve curve = clean.kept();
        int highest = curve.position(afterSeconds);
        for (int i = highest; i < curve.size(); i++) {
            if (curve.valueAt(i) >= curve.valueAt(highest)) {
                highest = i;
            }
        }
        if (highest >= curve.size() - 1 || !isSharp(clean, highest)) {
            return Optional.empty();
        }
        double interval = clean.interval();
        double end = curve.secondsAt(curve.size() - 1);
        double steep = steepFall(curve, highest, Math.max(interval, 4));
        return onset(
                clean,
                FallOnset.Cause.DROP,
                steep - Math.max(3 * interval, GENTLE_SECONDS),
                Math.min(steep + Math.max(interval, 4), end - 0.5 * interval));
    }

    /** Whether a fall from the highest reading stays, stands out of the noise, and is faster than beans in a drum can cool. */
    private static boolean isSharp(CleanCurve clean, int highest) {
        Curve curve = clean.kept();
        double top = curve.valueAt(highest);
        double end = curve.secondsAt(curve.size() - 1);
        double seconds = Math.min(60, end - curve.secondsAt(highest));
        int within = Math.max(highest, curve.position(curve.secondsAt(highest) + seconds + 1e-6) - 1);
        double fallen = top - curve.valueAt(within);
        double noise = Double.isNaN(clean.noise()) ? 0 : clean.noise();
        double least = Math.max(LEAST_FALL, Math.max(NOISES * noise, STEPS * clean.step()));
        return fallen >= least
                && top - curve.valueAt(curve.size() - 1) >= least
                && 60 * fallen >= FALL_AT_DROP * Math.max(seconds, 1);
    }

    /**
     * Returns where the fall after the highest reading first reaches half its steepest rate; rates are taken over a few seconds so that
     * noise is no fall.
     */
    static double steepFall(Curve curve, int highest, double span) {
        double latest = curve.secondsAt(highest) + 90;
        double[] rates = new double[curve.size()];
        double largest = 0;
        for (int i = highest; i < curve.size() - 1 && curve.secondsAt(i) <= latest; i++) {
            int ahead = Math.min(curve.size() - 1, curve.position(curve.secondsAt(i) + span - 1e-6));
            rates[i] = (curve.valueAt(i) - curve.valueAt(ahead)) / (curve.secondsAt(ahead) - curve.secondsAt(i));
            largest = Math.max(largest, rates[i]);
        }
        int steep = highest;
        while (rates[steep] < 0.5 * largest) {
            steep++;
        }
        return curve.secondsAt(steep);
    }
}
