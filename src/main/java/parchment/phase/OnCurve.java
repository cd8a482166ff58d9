package parchment.phase;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.curve.SmoothCurve;
import parchment.curve.Smoothed;
import parchment.stats.Robust;

/**
 * Finds charge, turning point and drop on a bean-probe curve.
 *
 * <p>Charge is the onset of the sharp fall that cold beans cause; drop is the onset of the fall at the end, where the log goes on; both
 * are common practice, no source. The thresholds are wide: a fall counts from {@value #FALL_AT_CHARGE} °C on at charge and from
 * {@value #FALL_AT_DROP} °C on at the drop.
 */
final class OnCurve {
    /** A found instant on the clock of the curve. */
    record Found(double seconds, double standardError) {}

    static final double FALL_AT_CHARGE = 15;
    static final double FALL_AT_DROP = 6;
    private static final double RISE_AFTER_CHARGE = 30;
    private static final double LONGEST_FALL_SECONDS = 240;
    private static final double FALL_WINDOW_SECONDS = 20;
    private static final double LATEST_TURN_SECONDS = 300;

    /** Window of the turning point as a share of the usual one: half-way between the noise of a narrow and the bias of a wide window. */
    private static final double SHARPER = 0.75;

    /** The bias grows with the square of the window, so the narrower one has 1.29 times the difference of the two left. */
    private static final double BIAS_LEFT = SHARPER * SHARPER / (1 - SHARPER * SHARPER);

    private OnCurve() {}

    /** Returns the middle of the interval in which the sharp fall begins; empty if the log starts within the fall or there is none. */
    static Optional<Found> charge(CleanCurve clean) {
        Curve curve = clean.kept();
        int bottom = bottomOfTheFall(curve);
        if (bottom < 2) {
            return Optional.empty();
        }
        int steepest = -1;
        double largest = 0;
        double from = curve.secondsAt(bottom) - LONGEST_FALL_SECONDS;
        for (int i = Math.max(1, curve.position(from)); i <= bottom; i++) {
            double fall = (curve.valueAt(i - 1) - curve.valueAt(i)) / (curve.secondsAt(i) - curve.secondsAt(i - 1));
            if (fall > largest) {
                largest = fall;
                steepest = i;
            }
        }
        if (steepest < 0) {
            return Optional.empty();
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
        double interval = clean.interval();
        double early = curve.secondsAt(onset) - Math.max(2 * interval, 15);
        double late = curve.secondsAt(onset + 1) + Math.max(interval, 3);
        return FallOnset.between(clean, FallOnset.Cause.CHARGE, early, late, Math.max(30, 4 * interval), Math.max(20, 2 * interval));
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

    /** Returns the last reading before the curve falls sharply for good; empty if it ends without a fall. */
    static Optional<Found> drop(CleanCurve clean, double afterSeconds) {
        Curve curve = clean.kept();
        int first = curve.position(afterSeconds);
        int highest = first;
        for (int i = first; i < curve.size(); i++) {
            if (curve.valueAt(i) >= curve.valueAt(highest)) {
                highest = i;
            }
        }
        if (highest >= curve.size() - 1) {
            return Optional.empty();
        }
        // The steepest fall after the highest reading, taken over a few seconds so that noise is not a fall, and back to where it began.
        double interval = clean.interval();
        double span = Math.max(interval, 4);
        double latest = curve.secondsAt(highest) + 90;
        int steepest = -1;
        double largest = 0;
        for (int i = highest; i < curve.size() - 1 && curve.secondsAt(i) <= latest; i++) {
            int ahead = Math.min(curve.size() - 1, curve.position(curve.secondsAt(i) + span - 1e-6));
            double rate = (curve.valueAt(i) - curve.valueAt(ahead)) / (curve.secondsAt(ahead) - curve.secondsAt(i));
            if (rate > largest) {
                largest = rate;
                steepest = i;
            }
        }
        if (steepest < 0) {
            return Optional.empty();
        }
        double end = curve.secondsAt(curve.size() - 1);
        double noise = Double.isNaN(clean.noise()) ? 0 : clean.noise();
        double depth = curve.valueAt(highest) - curve.valueAt(curve.size() - 1);
        double seconds = Math.min(60, end - curve.secondsAt(highest));
        double fallen = curve.valueAt(highest) - curve.valueAt(Math.max(0, curve.position(curve.secondsAt(highest) + seconds + 1e-6) - 1));
        if (depth < 1.5 || fallen < Math.max(Math.max(1.5, 5 * noise), 3 * clean.step()) || 60 * fallen / Math.max(seconds, 1) < FALL_AT_DROP) {
            return Optional.empty();
        }
        double early = curve.secondsAt(steepest) - Math.max(3 * interval, 25);
        double late = Math.min(curve.secondsAt(steepest) + Math.max(interval, 4), end - 0.5 * interval);
        return FallOnset.between(clean, FallOnset.Cause.DROP, early, late, Math.max(30, 4 * interval), Math.max(20, 2 * interval));
    }

    private static double resolution(CleanCurve clean) {
        // The onset lies somewhere between two readings, and the probe needs a moment to feel it.
        return Math.hypot(clean.interval() / Math.sqrt(12), 1);
    }

    /** Returns the lowest point of the smoothed curve after charge at 0; empty if it does not fall and rise again. */
    static Optional<Found> turningPoint(SmoothCurve smooth, double dropSeconds) {
        SmoothCurve narrow = narrow(smooth);
        double latest = Math.min(LATEST_TURN_SECONDS, dropSeconds);
        Optional<Double> at = lowest(narrow, latest);
        if (at.isEmpty()) {
            return Optional.empty();
        }
        Smoothed there = narrow.at(at.get());
        double half = 0.5 * narrow.bandwidthSeconds();
        double bend =
                (narrow.at(at.get() + half).slope() - narrow.at(at.get() - half).slope()) / 60 / (2 * half);
        double noise = bend > 0 && !there.isMissing() ? there.slopeStandardError() / 60 / bend : half;
        double window = lowest(early(smooth, smooth.bandwidthSeconds()), latest)
                .map(wide -> BIAS_LEFT * (at.get() - wide))
                .orElse(half);
        double error = Math.hypot(Math.hypot(noise, window), smooth.clean().interval() / Math.sqrt(12));
        return Optional.of(new Found(at.get(), error));
    }

    /** The turn is sharper than the rest of the curve, so a narrower window is used; the usual one shows what that matters. */
    static SmoothCurve narrow(SmoothCurve smooth) {
        return early(
                smooth,
                Math.max(
                        SHARPER * smooth.bandwidthSeconds(),
                        2.5 * smooth.clean().interval()));
    }

    private static SmoothCurve early(SmoothCurve smooth, double bandwidth) {
        return SmoothCurve.of(smooth.clean().between(0, LATEST_TURN_SECONDS + 60), bandwidth, smooth.noise());
    }

    /** Returns where the slope turns from falling to rising: the lowest point of the curve that the slopes add up to. */
    private static Optional<Double> lowest(SmoothCurve smooth, double latest) {
        List<Smoothed> rows = smooth.atReadings().stream()
                .filter(row -> row.seconds() <= latest && !row.isMissing())
                .toList();
        int lowest = 0;
        double height = 0;
        double least = 0;
        for (int i = 1; i < rows.size(); i++) {
            double minutes = (rows.get(i).seconds() - rows.get(i - 1).seconds()) / 60;
            height += 0.5 * minutes * (rows.get(i - 1).slope() + rows.get(i).slope());
            if (height < least) {
                least = height;
                lowest = i;
            }
        }
        if (lowest == 0 || lowest == rows.size() - 1) {
            return Optional.empty();
        }
        double low = rows.get(lowest - 1).seconds();
        double high = rows.get(lowest + 1).seconds();
        if (!(smooth.at(low).slope() < 0) || !(smooth.at(high).slope() > 0)) {
            return Optional.of(rows.get(lowest).seconds());
        }
        double slopeLow = smooth.at(low).slope();
        double slopeHigh = smooth.at(high).slope();
        for (int i = 0; i < 20 && high - low > 1e-4; i++) {
            double at = low - slopeLow * (high - low) / (slopeHigh - slopeLow);
            // A step that hardly moves one end is halved instead, so that both ends close in.
            at = i % 3 == 2 ? 0.5 * (low + high) : at;
            double slope = smooth.at(at).slope();
            if (Double.isNaN(slope)) {
                // The turn lies in a gap: the reading next to it is the best that can be told.
                return Optional.of(rows.get(lowest).seconds());
            }
            if (slope < 0) {
                low = at;
                slopeLow = slope;
            } else {
                high = at;
                slopeHigh = slope;
            }
            if (slope == 0) {
                break;
            }
        }
        double share = slopeHigh > slopeLow ? -slopeLow / (slopeHigh - slopeLow) : 0.5;
        return Optional.of(low + share * (high - low));
    }
}
