package parchment.picture;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import parchment.quantity.Unit;
import parchment.stats.linear.Robust;

/**
 * Fields of one width between round numbers, into which numbers are counted. A number on a border belongs to the field above it.
 *
 * @param from where the first begins
 * @param width of each
 * @param count how many there are
 */
record Bins(double from, double width, int count) {
    private static final double[] FACTORS = {1, 2, 5, 10};
    private static final List<Integer> SECONDS = List.of(1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 1200, 3600);
    private static final double SECONDS_IN_A_MINUTE = 60;

    /** Of so many whole numbers each has a field of its own. */
    private static final int MOST_WHOLE_NUMBERS = 20;

    /** So little beside a width is an error of the machine's arithmetic. */
    private static final double NOTHING = 1e-9;

    /**
     * Returns fields about as wide as Freedman and Diaconis advise, rounded up, and no more than a number of them.
     *
     * @see "Freedman and Diaconis 1981, Probability Theory and Related Fields 57:453"
     */
    static Bins of(DrawnNumbers measure, int most) {
        double[] values = measure.values().present();
        double low = Arrays.stream(values).min().orElseThrow();
        double high = Arrays.stream(values).max().orElseThrow();
        double quarters = Robust.quantile(values, 0.75) - Robust.quantile(values, 0.25);
        double advised = 2 * quarters / Math.cbrt(values.length);
        double least = (high - low) / most;
        double wanted = advised > least ? advised : Math.max(least, (high - low) / Math.sqrt(values.length));
        boolean whole = measure.clock() == DrawnNumbers.Clock.NO_TIME
                && Arrays.stream(values).allMatch(value -> value == Math.rint(value));
        boolean few = whole && high - low < Math.min(most, MOST_WHOLE_NUMBERS);
        double width = few ? 1 : round(measure, whole ? Math.max(1, wanted) : wanted);
        while (true) {
            // Whole numbers stand in the middle of their field.
            double shift = whole && width == 1 ? 0.5 : 0;
            double from = Math.floor((low + shift) / width + NOTHING) * width - shift;
            int count = (int) Math.floor((high - from) / width + NOTHING) + 1;
            if (count <= most) {
                return new Bins(from, width, count);
            }
            width = round(measure, width * (1 + 1e-6));
        }
    }

    /** Returns the next larger of the widths that borders of a measure may have. */
    static double round(DrawnNumbers measure, double width) {
        if (measure.clock() == DrawnNumbers.Clock.MINUTES_AND_SECONDS) {
            double seconds = width * SECONDS_IN_A_MINUTE;
            return SECONDS.stream()
                            .mapToDouble(step -> step)
                            .filter(step -> step >= seconds * (1 - NOTHING))
                            .findFirst()
                            .orElse(3600 * Math.ceil(seconds / 3600))
                    / SECONDS_IN_A_MINUTE;
        }
        double power = Math.pow(10, Math.floor(Math.log10(width)));
        return Arrays.stream(FACTORS)
                .map(factor -> factor * power)
                .filter(step -> step >= width * (1 - NOTHING))
                .findFirst()
                .orElse(20 * power);
    }

    /** Tells whether each field holds one whole number, which stands in its middle. */
    boolean isOfWholeNumbers() {
        return width == 1 && from != Math.rint(from);
    }

    /** Returns the place of the field that holds a number, from 0. */
    int place(double value) {
        return Math.max(0, Math.min(count - 1, (int) Math.floor((value - from) / width + NOTHING)));
    }

    double edge(int place) {
        return from + place * width;
    }

    /** Returns how many numbers each field holds. */
    List<Integer> counts(double[] values) {
        int[] counts = new int[count];
        Arrays.stream(values).forEach(value -> counts[place(value)]++);
        return Arrays.stream(counts).boxed().toList();
    }

    /** Returns the names of the fields, as in "202–204". */
    List<String> names(DrawnNumbers measure) {
        return IntStream.range(0, count)
                .mapToObj(i -> isOfWholeNumbers()
                        ? border(measure, edge(i) + 0.5)
                        : border(measure, edge(i)) + "–" + border(measure, edge(i + 1)))
                .toList();
    }

    /** Prints a border with no more decimals than it needs. */
    String border(DrawnNumbers measure, double edge) {
        if (measure.clock() == DrawnNumbers.Clock.MINUTES_AND_SECONDS) {
            return measure.print(edge);
        }
        int decimals = Math.max(0, (int) -Math.floor(Math.log10(width) + NOTHING));
        return Unit.labelled("").withDigits(decimals).number(edge);
    }
}
