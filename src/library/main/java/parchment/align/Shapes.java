package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.chart.Axis;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.quantity.Unit;
import parchment.sheet.Words;
import parchment.stats.warp.FunctionalComponents;

/**
 * Tells in words along which shapes the batches on one clock differ most: their functional principal components.
 *
 * <p>Each batch is the mean plus so much of the first shape, so much of the second, and so on. A shape is told at the size of one standard
 * deviation of the batches: a batch at the upper end runs so much above the mean here and so much below it there. Shapes that hold less
 * than a twentieth of the spread, or that change sides more than twice, are not told; they are mostly noise. A shape is a summary of these batches, not a cause.
 *
 * <pre>{@code
 * Shapes.of(OneClock.of(logbook, Clock.BY_BEAN_TEMPERATURE))
 * }</pre>
 *
 * @see FunctionalComponents
 */
public final class Shapes implements ShownAs {
    private static final double LEAST_SHARE = 0.05;
    private static final int MOST = 3;
    /** A shape that changes sides more often than this follows the noise of the rates; common practice, no source. */
    private static final int MOST_STRETCHES = 3;
    /** Fewest batches from which shapes are told; common practice, no source. */
    private static final int FEWEST = 10;

    private final OneClock one;
    private final Optional<FunctionalComponents> components;

    private Shapes(OneClock one, Optional<FunctionalComponents> components) {
        this.one = one;
        this.components = components;
    }

    /** Finds the shapes of the batches that the mean is taken of. */
    public static Shapes of(OneClock one) {
        List<double[]> curves = one.whole().stream().map(one::values).toList();
        return new Shapes(
                one,
                curves.size() < FEWEST
                        ? Optional.empty()
                        : Optional.of(FunctionalComponents.of(one.positions(), curves)));
    }

    /** Returns the components, or nothing with fewer than ten batches. */
    public Optional<FunctionalComponents> components() {
        return components;
    }

    /** Returns how many shapes are told: from the first on, as long as they hold enough and do not waver. */
    public int count() {
        int told = 0;
        while (components.isPresent()
                && told < Math.min(MOST, components.get().size())
                && components.get().share(told) >= LEAST_SHARE
                && parts(told).size() <= MOST_STRETCHES) {
            told++;
        }
        return told;
    }

    /** Returns a shape in words; shapes count from 1. */
    public String words(int shape) {
        FunctionalComponents found = components.orElseThrow();
        int c = shape - 1;
        return String.format(
                Locale.ROOT,
                "Shape %d holds %.0f %% of the spread. A batch one standard deviation up on it runs %s. Farthest up: %s; farthest"
                        + " down: %s.",
                shape,
                100 * found.share(c),
                String.join(", and ", parts(c)),
                "batch " + extreme(found, c, 1),
                "batch " + extreme(found, c, -1));
    }

    /** Returns the stretches in which a shape stands above or below the mean, in words; shapes count from 0. */
    private List<String> parts(int c) {
        FunctionalComponents found = components.orElseThrow();
        double[] at = found.grid();
        double[] size = found.shape(c);
        double deviation = Math.sqrt(found.variance(c));
        for (int k = 0; k < size.length; k++) {
            size[k] *= deviation;
        }
        double largest = IntStream.range(0, size.length)
                .mapToDouble(k -> Math.abs(size[k]))
                .max()
                .orElse(0);
        List<String> parts = new ArrayList<>();
        int k = 0;
        while (k < size.length) {
            int from = k;
            double sign = Math.signum(size[k]);
            int peak = k;
            while (k < size.length && Math.signum(size[k]) == sign) {
                peak = Math.abs(size[k]) > Math.abs(size[peak]) ? k : peak;
                k++;
            }
            // A stretch that hardly leaves the mean is not worth a word.
            if (Math.abs(size[peak]) >= largest / 4) {
                parts.add(part(size[peak], at[from], at[k - 1], at[peak]));
            }
        }
        return parts;
    }

    private String part(double size, double from, double to, double peak) {
        boolean rates = one.clock().comparesRates();
        String higher = rates ? size > 0 ? "faster" : "slower" : size > 0 ? "hotter" : "colder";
        return "up to " + amount(Math.abs(size)) + " " + higher + " from " + place(from) + " to " + place(to)
                + " (most at " + place(peak) + ")";
    }

    private String place(double at) {
        return one.clock() == Clock.BY_BEAN_TEMPERATURE
                ? Stretches.whole(at, one.reader())
                : new parchment.quantity.Elapsed(at).toString();
    }

    private String extreme(FunctionalComponents found, int c, int sign) {
        List<OneClock.Laid> whole = one.whole();
        int extreme = IntStream.range(0, whole.size())
                .boxed()
                .max(Comparator.comparingDouble(i -> sign * found.score(i, c)))
                .orElse(0);
        return whole.get(extreme).name();
    }

    private static double[] times(double[] shape, double factor) {
        return Arrays.stream(shape).map(size -> factor * size).toArray();
    }

    /** Returns the picture of a shape, as what a batch has above or below the mean; shapes count from 1. */
    Plot plot(int shape) {
        FunctionalComponents found = components.orElseThrow();
        double[] size = found.shape(shape - 1);
        double deviation = Math.sqrt(found.variance(shape - 1));
        double[] positions = one.positions();
        boolean rates = one.clock().comparesRates();
        Axis upwards = Axis.of(
                rates ? "rate of rise above the mean" : "bean temperature above the mean",
                rates ? Unit.RATE_OF_RISE : Unit.TEMPERATURE_STEP,
                one.reader());
        // Drawn as differences: on the curves themselves a small shape would be three lines on one another.
        return Plot.of(
                        String.format(
                                Locale.ROOT, "Shape %d: %.0f %% of the spread", shape, 100 * found.share(shape - 1)),
                        OneClockPicture.across(one),
                        upwards)
                .with(Line.of("the mean", positions, new double[positions.length])
                        .withColour(Colour.INK))
                .with(Line.of("one batch in six lies above this", positions, times(size, deviation))
                        .withColour(Colour.VERMILLION))
                .with(Line.of("one batch in six lies below this", positions, times(size, -deviation))
                        .withColour(Colour.BLUE))
                .withNote("About two of three batches lie between the two coloured lines.")
                .withHeight(220);
    }

    @Override
    public Showable shownAs() {
        Report page = Report.titled("The shapes along which batches differ").add(inShort());
        Report folded = Report.titled("How this was worked out").say(toString() + ".");
        for (int shape = 1; shape <= count(); shape++) {
            page = page.add(plot(shape));
            folded = folded.say(words(shape));
        }
        for (String note : one.notes()) {
            folded = folded.say(note);
        }
        return page.fold(folded);
    }

    /** Returns the answer in three sentences: in which way batches differ most, how much of it that is, what to compare. */
    public InShort inShort() {
        int batches = one.whole().size();
        if (components.isEmpty()) {
            return ShapesInShort.tooFew(batches, FEWEST);
        }
        if (count() == 0) {
            return ShapesInShort.none(batches);
        }
        FunctionalComponents found = components.get();
        double[] size = found.shape(0);
        int most = IntStream.range(0, size.length)
                .reduce((a, b) -> Math.abs(size[b]) > Math.abs(size[a]) ? b : a)
                .orElse(0);
        boolean rates = one.clock().comparesRates();
        return ShapesInShort.of(
                new ShapesInShort.First(
                        amount(Math.abs(size[most]) * Math.sqrt(found.variance(0))),
                        rates ? "faster or slower" : "hotter or colder",
                        place(found.grid()[most]),
                        found.share(0),
                        extreme(found, 0, 1),
                        extreme(found, 0, -1)),
                batches);
    }

    private String amount(double size) {
        return (one.clock().comparesRates() ? Unit.RATE_OF_RISE.withDigits(1) : Unit.TEMPERATURE_STEP)
                .formatStep(size, one.reader());
    }

    @Override
    public String toString() {
        if (components.isEmpty()) {
            return "Cannot tell the shapes along which batches differ: "
                    + Words.count(one.whole().size(), "batch", "batches")
                    + (one.whole().size() == 1 ? " reaches" : " reach") + " over the common stretch, and " + FEWEST
                    + " are needed";
        }
        return String.format(
                Locale.ROOT,
                "%d batches on one clock (%s) differ along %d %s that can be told from noise",
                one.whole().size(),
                one.clock().words(),
                count(),
                count() == 1 ? "shape" : "shapes");
    }
}
