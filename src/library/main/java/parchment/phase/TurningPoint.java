package parchment.phase;

import java.util.List;
import java.util.Optional;
import parchment.curve.SmoothCurve;
import parchment.curve.measured.Smoothed;

/**
 * Finds the lowest point of a smoothed bean-probe curve after charge, and how exactly it is known.
 *
 * <p>Every window that smooths a turn moves it, if the curve bends more to one side. The bias grows with the square of the window, so two
 * windows tell it: what stands out of the noise of their difference is taken away, the rest is error.
 */
final class TurningPoint {
    private static final double LATEST_SECONDS = 300;

    /** Window of the turning point as a share of the usual one; the two together show the bias of the window. */
    static final double SHARPER = 0.75;

    /** Windows more alike than this tell no bias: of their difference so much is then taken as left in the narrower one. */
    private static final double ALIKE = 0.95;

    private static final double LEFT_OF_ALIKE = 10;

    /** With fewer readings than this to either side a parabola nearly passes through them, and noise cannot be told from the curve. */
    private static final double FEWEST_INTERVALS = 3;

    private static final double EXACT_SECONDS = 1e-6;

    private TurningPoint() {}

    /** Returns the lowest point of the smoothed curve after charge at 0; empty if it does not fall and rise again. */
    static Optional<OnCurve.Found> of(SmoothCurve smooth, double dropSeconds) {
        SmoothCurve narrow = narrow(smooth);
        double latest = Math.min(LATEST_SECONDS, dropSeconds);
        return lowest(narrow, latest).map(at -> {
            double noise = noise(narrow, at);
            return lowest(early(smooth, smooth.bandwidthSeconds()), latest)
                    .map(wide -> {
                        double ratio = narrow.bandwidthSeconds() / smooth.bandwidthSeconds();
                        OnCurve.Found found = withoutBias(at, wide, noise, ratio);
                        return new OnCurve.Found(found.seconds(), withFewReadings(narrow, found.standardError()));
                    })
                    .orElseGet(() -> new OnCurve.Found(at, Math.hypot(noise, 0.5 * narrow.bandwidthSeconds())));
        });
    }

    /** Returns the standard error that noise alone gives the turn: that of the slope, over how fast the slope changes there. */
    private static double noise(SmoothCurve narrow, double at) {
        double half = 0.5 * narrow.bandwidthSeconds();
        double bend = (narrow.at(at + half).slope() - narrow.at(at - half).slope()) / (2 * half);
        return bend > 0 ? narrow.at(at).slopeStandardError() / bend : half;
    }

    /**
     * Takes away as much of the window's bias as stands out of the noise.
     *
     * @param narrow the turn as seen with the narrower window, in seconds
     * @param wide the turn as seen with the wider one
     * @param noise the standard error of the first that noise alone makes
     * @param ratio the narrower window as a share of the wider one
     */
    static OnCurve.Found withoutBias(double narrow, double wide, double noise, double ratio) {
        // The bias grows with the square of the window: so much of the difference between the two is left in the
        // narrower one.
        double left = ratio < ALIKE ? ratio * ratio / (1 - ratio * ratio) : LEFT_OF_ALIKE;
        double seen = left * (narrow - wide);
        // What noise alone makes of the difference: a slope's variance falls with the cube of the window, and the wider
        // window holds all
        // that the narrower holds.
        double shared = ratio * ratio * ratio;
        double variance = noise * noise;
        double byNoise = left * left * (1 - shared) * variance;
        double bias = Math.max(0, seen * seen - byNoise);
        // As much of the bias is taken away as stands out of the noise; what stays is error.
        double taken = seen == 0 ? 0 : bias / (seen * seen);
        double moved = taken * left;
        double noiseLeft = variance * (Math.pow(1 + moved, 2) + shared * (moved * moved - 2 * moved * (1 + moved)));
        return new OnCurve.Found(narrow + taken * seen, Math.sqrt(noiseLeft + Math.pow(1 - taken, 2) * bias));
    }

    private static double withFewReadings(SmoothCurve narrow, double error) {
        double interval = narrow.clean().interval();
        return narrow.bandwidthSeconds() < FEWEST_INTERVALS * interval
                ? Math.hypot(error, interval / Math.sqrt(12))
                : error;
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
        return SmoothCurve.of(smooth.clean().between(0, LATEST_SECONDS + 60), bandwidth, smooth.noise());
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
            Smoothed before = rows.get(i - 1);
            Smoothed here = rows.get(i);
            height += (here.seconds() - before.seconds()) * (before.slope() + here.slope());
            if (height < least) {
                least = height;
                lowest = i;
            }
        }
        if (lowest == 0 || lowest == rows.size() - 1) {
            return Optional.empty();
        }
        // The slopes on either side of the lowest reading add up to a fall before and a rise after it, so the turn lies
        // on the side to which its own slope points.
        Smoothed reading = rows.get(lowest);
        int after = reading.slope() < 0 ? lowest + 1 : lowest;
        double low = rows.get(after - 1).seconds();
        double high = rows.get(after).seconds();
        while (high - low > EXACT_SECONDS) {
            double at = 0.5 * (low + high);
            double slope = smooth.at(at).slope();
            if (Double.isNaN(slope)) {
                // The turn lies in a gap: the reading next to it is the best that can be told.
                return Optional.of(reading.seconds());
            }
            if (slope < 0) {
                low = at;
            } else {
                high = at;
            }
        }
        return Optional.of(0.5 * (low + high));
    }
}
