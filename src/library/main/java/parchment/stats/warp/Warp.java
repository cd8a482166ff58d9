package parchment.stats.warp;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import parchment.stats.linear.Checks;

/**
 * Maps one clock to another: strictly increasing on an interval, so that it can be turned round, and chained with another.
 *
 * <p>A warp is made through landmarks, pairs of instants that mean the same on both clocks; between them it runs straight
 * ({@link #linear}) or along a smooth rising cubic ({@link #monotoneCubic}). Both clocks are in any unit, usually seconds. A
 * straight or smooth warp meets its landmarks exactly; turning it round and back gives the same instants to rounding error.
 *
 * @see <a href="https://doi.org/10.1137/0717021">Fritsch and Carlson 1980, SIAM J. Numer. Anal. 17:238</a>
 */
public final class Warp {
    /** How far, as a share of the interval, an instant may lie outside it and still count as its end: rounding, not extrapolation. */
    private static final double ROUNDING = 1e-9;

    private final List<Stretch> chain;

    private Warp(List<Stretch> chain) {
        this.chain = List.copyOf(chain);
    }

    /**
     * Returns the warp that changes nothing.
     *
     * @throws IllegalArgumentException if the interval is empty or not finite
     */
    public static Warp identity(double from, double to) {
        double[] ends = {from, to};
        Checks.rising("The ends of a warp", ends);
        return linear(ends, ends);
    }

    /**
     * Returns the warp that is straight between landmarks.
     *
     * @param from instants on the first clock, increasing, at least two
     * @param to the same landmarks on the second clock
     * @throws IllegalArgumentException if the two differ in number, there are fewer than two, or one of them fails to increase
     */
    public static Warp linear(double[] from, double[] to) {
        check(from, to);
        return new Warp(List.of(Stretch.linear(from.clone(), to.clone())));
    }

    /**
     * Returns the warp that rises smoothly through landmarks, without overshoot; its slope is continuous and above 0.
     *
     * @param from instants on the first clock, increasing, at least two
     * @param to the same landmarks on the second clock
     * @throws IllegalArgumentException if the two differ in number, there are fewer than two, or one of them fails to increase
     */
    public static Warp monotoneCubic(double[] from, double[] to) {
        check(from, to);
        return new Warp(List.of(Stretch.monotoneCubic(from.clone(), to.clone())));
    }

    private static void check(double[] from, double[] to) {
        Checks.asManySamples("A warp through landmarks", "the first clock", from.length, "the second clock", to.length);
        if (from.length < 2) {
            throw new IllegalArgumentException(
                    "A warp needs at least 2 landmarks, its two ends, but there are " + from.length + ".");
        }
        Checks.rising("Landmarks on the first clock", from);
        Checks.rising("Landmarks on the second clock", to);
    }

    /** Returns the start of the interval on the first clock. */
    public double from() {
        return chain.get(0).from()[0];
    }

    /** Returns the end of the interval on the first clock. */
    public double to() {
        double[] knots = chain.get(0).from();
        return knots[knots.length - 1];
    }

    /** Returns where the start of the interval falls on the second clock. */
    public double imageFrom() {
        return at(from());
    }

    /** Returns where the end of the interval falls on the second clock. */
    public double imageTo() {
        return at(to());
    }

    /**
     * Returns where an instant of the first clock falls on the second; NaN if it is missing.
     *
     * @throws IllegalArgumentException if the instant lies outside the interval of the warp
     */
    public double at(double instant) {
        double t = inside(instant);
        for (Stretch stretch : chain) {
            t = stretch.at(clamp(t, stretch.from()));
        }
        return t;
    }

    /** Returns where each instant falls on the second clock, in the same order. */
    public double[] at(double[] instants) {
        return Arrays.stream(instants).map(this::at).toArray();
    }

    /**
     * Returns how fast the second clock runs against the first at an instant: 1 is equal speed, 2 twice as fast. At a corner of a
     * straight warp it is the speed after the corner.
     *
     * @throws IllegalArgumentException if the instant lies outside the interval of the warp
     */
    public double slope(double instant) {
        double t = inside(instant);
        double slope = 1;
        for (Stretch stretch : chain) {
            double held = clamp(t, stretch.from());
            slope *= stretch.slope(held);
            t = stretch.at(held);
        }
        return slope;
    }

    /** Returns the warp from the second clock back to the first. */
    public Warp inverse() {
        List<Stretch> back = new ArrayList<>();
        for (Stretch stretch : chain) {
            back.add(stretch.inverse());
        }
        Collections.reverse(back);
        return new Warp(back);
    }

    /**
     * Returns this warp followed by another, from the first clock of this one to the second clock of the other.
     *
     * @throws IllegalArgumentException if this warp leads outside the interval of the other
     */
    public Warp then(Warp other) {
        double slack = ROUNDING * (other.to() - other.from());
        if (imageFrom() < other.from() - slack || imageTo() > other.to() + slack) {
            throw new IllegalArgumentException("The first warp leads to " + interval(imageFrom(), imageTo())
                    + ", but the second one only knows " + interval(other.from(), other.to())
                    + ". Cut the first warp, or give the second one landmarks at both ends.");
        }
        if (chain.size() == 1
                && other.chain.size() == 1
                && chain.get(0).isStraight()
                && other.chain.get(0).isStraight()) {
            return new Warp(List.of(merged(chain.get(0), other.chain.get(0))));
        }
        List<Stretch> both = new ArrayList<>(chain);
        both.addAll(other.chain);
        return new Warp(both);
    }

    /** Two straight warps make one straight warp with the corners of both, so chains of them do not grow. */
    private static Stretch merged(Stretch first, Stretch second) {
        double[] start = first.from();
        double[] corners = new double[start.length + second.from().length];
        System.arraycopy(start, 0, corners, 0, start.length);
        Stretch back = first.inverse();
        int count = start.length;
        double begin = start[0];
        double end = start[start.length - 1];
        for (double corner : second.from()) {
            double t = back.at(clamp(corner, back.from()));
            if (t > begin && t < end) {
                corners[count++] = t;
            }
        }
        corners = Arrays.copyOf(corners, count);
        Arrays.sort(corners);
        double[] x = new double[count];
        double[] y = new double[count];
        int kept = 0;
        double gap = 1e-13 * (end - begin);
        for (int i = 0; i < count; i++) {
            double value = second.at(clamp(first.at(corners[i]), second.from()));
            if (kept == 0 || (corners[i] > x[kept - 1] + gap && value > y[kept - 1])) {
                x[kept] = corners[i];
                y[kept++] = value;
            } else if (i == count - 1) {
                // The end stays where it was; a corner closer to it than rounding gives way.
                x[kept - 1] = corners[i];
                y[kept - 1] = value;
            }
        }
        return Stretch.linear(Arrays.copyOf(x, kept), Arrays.copyOf(y, kept));
    }

    /**
     * Returns how far this warp is from equal speed: the angle acos of the mean of sqrt(slope), both clocks scaled to run from 0
     * to 1. It is 0 for equal speed, below pi/2 always, and the same for the warp turned round.
     *
     * @see <a href="https://doi.org/10.1007/978-1-4939-4020-2">Srivastava and Klassen 2016, Functional and Shape Data Analysis,
     *     section 4</a>
     */
    public double phaseDistance() {
        // Where a smooth warp is nearly flat its inverse is nearly upright; the angle is the same and easier to
        // integrate this way.
        Warp easier = chain.size() == 1 && chain.get(0).isBackward() ? inverse() : this;
        return easier.phaseDistance(identity(easier.from(), easier.to()));
    }

    /**
     * Returns the angle between two warps of the same interval: acos of the integral of the square root of both slopes, all clocks
     * scaled to run from 0 to 1.
     *
     * @throws IllegalArgumentException if the intervals on the first clock differ
     */
    public double phaseDistance(Warp other) {
        double length = to() - from();
        if (Math.abs(other.from() - from()) > ROUNDING * length || Math.abs(other.to() - to()) > ROUNDING * length) {
            throw new IllegalArgumentException("Two warps can be compared on one interval only, but they run over "
                    + interval(from(), to()) + " and " + interval(other.from(), other.to()) + ".");
        }
        return WarpAngle.angle(this, other);
    }

    boolean isStraight() {
        return chain.stream().allMatch(Stretch::isStraight);
    }

    /** Returns the corners and knots on the first clock, between which this warp has no break in its slope or curvature. */
    double[] knots() {
        double[] all = {from(), to()};
        Warp reached = null;
        for (Stretch stretch : chain) {
            double[] own = stretch.from();
            if (reached != null) {
                Warp back = reached.inverse();
                double low = back.from();
                double high = back.to();
                own = Arrays.stream(own)
                        .filter(t -> t > low && t < high)
                        .map(back::at)
                        .toArray();
            }
            double[] joined = Arrays.copyOf(all, all.length + own.length);
            System.arraycopy(own, 0, joined, all.length, own.length);
            all = joined;
            Warp next = new Warp(List.of(stretch));
            reached = reached == null ? next : reached.followedBy(next);
        }
        return Arrays.stream(all).sorted().distinct().toArray();
    }

    private Warp followedBy(Warp other) {
        List<Stretch> both = new ArrayList<>(chain);
        both.addAll(other.chain);
        return new Warp(both);
    }

    private double inside(double instant) {
        double start = from();
        double end = to();
        double slack = ROUNDING * (end - start);
        if (instant < start - slack || instant > end + slack) {
            throw new IllegalArgumentException("The warp runs from " + Checks.number(start) + " to "
                    + Checks.number(end) + ", but was asked for " + Checks.number(instant)
                    + ". It does not guess beyond its landmarks: ask inside, or add a landmark there.");
        }
        return Math.max(start, Math.min(instant, end));
    }

    private static double clamp(double t, double[] knots) {
        return Math.max(knots[0], Math.min(t, knots[knots.length - 1]));
    }

    private static String interval(double from, double to) {
        return Checks.number(from) + " to " + Checks.number(to);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "warp of %s onto %s, phase distance %.3f",
                interval(from(), to()),
                interval(imageFrom(), imageTo()),
                phaseDistance());
    }
}
