package parchment.stats.resample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import parchment.display.Showable;
import parchment.stats.Interval;
import parchment.stats.linear.Checks;

/**
 * Holds the slopes on achieved values that shuffles of the assigned ones do not speak against: one stretch, two rays, or every slope.
 *
 * @param parts the stretches in rising order; ends without a number are infinite; empty if every slope is spoken against
 * @param level as in 0.90
 */
public record ShuffledRatio(List<Interval> parts, double level) implements Showable {
    /** Stretches that rounding alone holds apart are one. */
    private static final double ROUNDING = 1e-9;

    /** Copies the parts. */
    public ShuffledRatio {
        parts = List.copyOf(parts);
    }

    /** A slope at which a shuffle changes sides: above it, or below it, it speaks for a steeper one. */
    private record Turn(double at, int up) {}

    static ShuffledRatio of(double sum, double[] sums, double base, double[] bases, boolean complete, double level) {
        Checks.share("The level of an interval", level);
        double scale = Arrays.stream(bases).map(b -> Math.abs(base - b)).max().orElse(0);
        List<Turn> turns = new ArrayList<>();
        // A way that was drawn besides the one that came about; where all are gone through it is among them.
        int up = complete ? 0 : 1;
        int low = up;
        for (int i = 0; i < sums.length; i++) {
            double n = sum - sums[i];
            double d = base - bases[i];
            if (Math.abs(d) > ROUNDING * scale) {
                turns.add(new Turn(n / d, d > 0 ? 1 : -1));
                up += d > 0 ? 0 : 1;
                low += d > 0 ? 1 : 0;
            } else {
                up += n <= ROUNDING ? 1 : 0;
                low += n >= -ROUNDING ? 1 : 0;
            }
        }
        turns.sort(Comparator.comparingDouble(Turn::at));
        double least = (1 - level) / 2 * (sums.length + (complete ? 0 : 1)) + ROUNDING;
        return new ShuffledRatio(merged(swept(turns, up, low, least, level)), level);
    }

    /** Walks over the turns from the lowest slope to the highest; a slope is kept where both sides have more than the least number of ways. */
    private static List<Interval> swept(List<Turn> turns, int upAtLowest, int lowAtLowest, double least, double level) {
        List<Interval> kept = new ArrayList<>();
        int up = upAtLowest;
        int low = lowAtLowest;
        double from = up > least && low > least ? Double.NEGATIVE_INFINITY : Double.NaN;
        for (int i = 0; i < turns.size(); ) {
            double at = turns.get(i).at();
            int rising = 0;
            int falling = 0;
            for (; i < turns.size() && turns.get(i).at() == at; i++) {
                rising += turns.get(i).up() > 0 ? 1 : 0;
                falling += turns.get(i).up() > 0 ? 0 : 1;
            }
            // At the turn itself a way counts on both sides.
            boolean here = up + rising > least && low + falling > least;
            up += rising - falling;
            low += falling - rising;
            boolean after = up > least && low > least;
            if (Double.isNaN(from) && here) {
                from = at;
            }
            if (!Double.isNaN(from) && !after) {
                kept.add(new Interval(from, at, level));
                from = Double.NaN;
            }
        }
        if (!Double.isNaN(from)) {
            kept.add(new Interval(from, Double.POSITIVE_INFINITY, level));
        }
        return kept;
    }

    private static List<Interval> merged(List<Interval> parts) {
        List<Interval> whole = new ArrayList<>();
        for (Interval part : parts) {
            int last = whole.size() - 1;
            boolean touches =
                    last >= 0 && part.lower() - whole.get(last).upper() <= ROUNDING * (1 + Math.abs(part.lower()));
            if (touches) {
                whole.set(last, new Interval(whole.get(last).lower(), part.upper(), part.level()));
            } else {
                whole.add(part);
            }
        }
        return whole;
    }

    /** Says whether a slope is among them. */
    public boolean contains(double slope) {
        return parts.stream().anyMatch(part -> part.contains(slope));
    }

    /** Says whether there is a lowest and a highest slope among them. */
    public boolean isBounded() {
        return parts.stream().allMatch(part -> Double.isFinite(part.lower()) && Double.isFinite(part.upper()));
    }

    @Override
    public String toString() {
        String share = String.format(Locale.ROOT, " (%.0f %%)", 100 * level);
        return parts.isEmpty()
                ? "no slope at all" + share
                : parts.stream().map(ShuffledRatio::words).collect(Collectors.joining(" or ")) + share;
    }

    private static String words(Interval part) {
        if (Double.isInfinite(part.lower()) && Double.isInfinite(part.upper())) {
            return "anything";
        }
        return Double.isInfinite(part.lower())
                ? String.format(Locale.ROOT, "below %.4g", part.upper())
                : Double.isInfinite(part.upper())
                        ? String.format(Locale.ROOT, "above %.4g", part.lower())
                        : String.format(Locale.ROOT, "between %.4g and %.4g", part.lower(), part.upper());
    }
}
