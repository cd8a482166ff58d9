package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Lets the scores drift smoothly through the calendar: the columns of a smooth curve over the roast date.
 *
 * <p>A straight line plus broken lines that bend at knots; the bends share one variance in the mixed model, which is a penalised
 * spline (Ruppert, Wand and Carroll 2003, Semiparametric Regression, section 3.5 and 4.9). Under 5 roast days there is no date
 * term, under 12 a line only.
 */
final class DateCurve {
    private static final int DAYS_FOR_LINE = 5;
    private static final int DAYS_FOR_BENDS = 12;
    private static final int DAYS_PER_BEND = 4;
    private static final int MOST_BENDS = 10;

    private final double[] line;
    private final List<double[]> bends;

    private DateCurve(double[] line, List<double[]> bends) {
        this.line = line;
        this.bends = List.copyOf(bends);
    }

    /** Returns the columns of the batches' dates; rows are batches. */
    static DateCurve of(List<TastedBatch> batches) {
        double[] days =
                batches.stream().mapToDouble(batch -> batch.day().toEpochDay()).toArray();
        double[] distinct = IntStream.range(0, days.length)
                .mapToDouble(i -> days[i])
                .distinct()
                .sorted()
                .toArray();
        if (distinct.length < DAYS_FOR_LINE) {
            return new DateCurve(new double[0], List.of());
        }
        double first = distinct[0];
        double span = distinct[distinct.length - 1] - first;
        double[] line = new double[days.length];
        for (int i = 0; i < line.length; i++) {
            line[i] = (days[i] - first) / span - 0.5;
        }
        List<double[]> bends = new ArrayList<>();
        int knots = distinct.length < DAYS_FOR_BENDS ? 0 : Math.min(MOST_BENDS, distinct.length / DAYS_PER_BEND);
        for (int k = 1; k <= knots; k++) {
            double knot = (distinct[(int) Math.round((distinct.length - 1.0) * k / (knots + 1))] - first) / span - 0.5;
            double[] bend = new double[days.length];
            for (int i = 0; i < bend.length; i++) {
                bend[i] = Math.max(0, line[i] - knot);
            }
            bends.add(bend);
        }
        return new DateCurve(line, bends);
    }

    /** Returns the straight line, from -0.5 on the first day to 0.5 on the last; empty if there are too few days. */
    double[] line() {
        return line.clone();
    }

    /** Returns the broken lines; empty if there are too few days. */
    List<double[]> bends() {
        return bends;
    }
}
