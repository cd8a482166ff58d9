package parchment.evidence.finding;

import parchment.stats.Interval;

/** Puts differences of scores into the words of a first sentence, the same for what was watched and for what was drawn by chance. */
public final class PointsWords {
    private PointsWords() {}

    /** Prints points with as many decimals as their interval deserves: one, or two where it is narrower than a fifth of a point. */
    public static String points(double value, Interval interval) {
        return Wording.plain(value, decimals(interval));
    }

    private static int decimals(Interval interval) {
        return interval.upper() - interval.lower() < 0.2 ? 2 : 1;
    }

    /** Prints an interval of points from its end nearer to nothing, without signs where both have the same. */
    public static String range(Interval interval) {
        boolean downward = interval.upper() <= 0;
        double from = downward ? -interval.upper() : interval.lower();
        double to = downward ? -interval.lower() : interval.upper();
        String start = points(from, interval);
        // An end that is not zero must not look like it.
        return (from > 0 && Double.parseDouble(start) == 0 ? "just above 0" : start) + " to " + points(to, interval);
    }

    /** Prints one end of an interval as a comparison, as in "0.2 points less"; an end that rounds to 0 is "no difference". */
    public static String end(double points, Interval interval) {
        String size = points(Math.abs(points), interval);
        return Double.parseDouble(size) == 0 ? "no difference" : size + " points " + (points < 0 ? "less" : "more");
    }
}
