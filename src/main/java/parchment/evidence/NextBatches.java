package parchment.evidence;

import java.util.Locale;
import parchment.display.Showable;

/**
 * Says how many more batches would settle a question, by one formula.
 *
 * <p>The error of a slope shrinks as 1 / sqrt(sum of squares of the measure). From the fitted error, each batch carries information
 * in proportion to its squared distance from the mean. The wanted error is the one with which a difference of the stated size over the
 * tried range would be seen in 8 of 10 logbooks: size / (t + 0.84), with t the point that the verdict uses. New batches are
 * reckoned at the ends of the middle 80 % of the tried values, half at each, inside one lot and each roast day.
 *
 * @param batches how many more batches
 * @param roastDays on how many roast days, with as many batches a day as now (at least two)
 * @param low the lower of the two values to roast at
 * @param high the higher one
 * @param size the difference that would be seen, in points over that range
 */
public record NextBatches(long batches, long roastDays, double low, double high, double size) implements Showable {
    /** The normal quantile of 0.80: a difference is to be seen in 8 of 10 logbooks. */
    private static final double POWER = 0.8416;

    /** Beyond this many the sentence says so instead of naming a number that nobody will roast. */
    private static final long MOST = 400;

    static NextBatches of(Analysis analysis, double size) {
        Slope slope = analysis.fitted().slope();
        TriedRange range = analysis.range();
        double half = range.width() / 2;
        double[] within = analysis.fitted().design().centered();
        double squares = 0;
        for (double value : within) {
            squares += value * value;
        }
        double critical = new Slope(0, 1, Math.max(2, slope.degreesOfFreedom()))
                .interval(1 - VerdictRules.CHANCE_OF_SLOPE)
                .upper();
        double wanted = size / range.width() / (critical + POWER);
        double perSquare = slope.standardError() * slope.standardError() * squares;
        double needed = perSquare / (wanted * wanted) - squares;
        Material material = analysis.material();
        long perDay = Math.max(2, Math.round((double) material.batches().size() / material.roastDays()));
        long more = Math.max(perDay, (long) Math.ceil(needed / (half * half)));
        long days = (more + perDay - 1) / perDay;
        return new NextBatches(days * perDay, days, range.low(), range.high(), size);
    }

    /** Returns the sentence in the reader's unit. */
    String words(Measure measure) {
        if (!(high > low)) {
            return "The " + measure.name()
                    + " hardly varied: any answer needs batches in which it is moved on purpose.";
        }
        if (batches > MOST) {
            return String.format(
                    Locale.ROOT,
                    "With the range tried so far, more than %d further batches would be needed to see a difference of %s points;"
                            + " a wider range of %s, inside what your machine's maker allows, would be cheaper.",
                    MOST,
                    Wording.points(size),
                    measure.name());
        }
        return String.format(
                Locale.ROOT,
                "What would tell: about %d more batches on %s, all of one lot and each roast day with both a %s near %s and one near"
                        + " %s, which of them drawn by chance before charge, cupped blind and scored before anybody speaks. By formula that would show a"
                        + " difference of %s points over this range in 8 of 10 logbooks.",
                batches,
                Wording.count(roastDays, "roast day", "roast days"),
                measure.name(),
                measure.value(low),
                measure.value(high),
                Wording.points(size));
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "about %d more batches on %d roast days", batches, roastDays);
    }
}
