package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import parchment.chart.Axis;
import parchment.chart.Band;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.display.answer.InShort;
import parchment.display.answer.Sentence;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;
import parchment.sheet.Words;
import parchment.stats.warp.SimultaneousBand;

/** Draws the difference of two groups with its band, and says where it is not zero. */
final class DifferencePicture {
    private DifferencePicture() {}

    static Plot plot(Difference difference) {
        OneClock together = difference.together();
        boolean rates = together.clock().comparesRates();
        Plot plot = Plot.of(
                        Sentence.of(difference.firstName() + " minus " + difference.secondName()),
                        OneClockPicture.across(together),
                        Axis.of(
                                rates ? "difference in rate of rise" : "difference in bean temperature",
                                step(difference),
                                together.reader()))
                .withEmptySentence(Sentence.of(sentence(difference)));
        double[] positions = difference.positions();
        if (difference.band().isPresent()) {
            SimultaneousBand band = difference.band().get();
            if (band.canTell()) {
                plot = plot.with(Band.of("band for the whole difference", positions, band.lower(), band.upper()));
            }
            plot = plot.with(Line.of("no difference", positions, new double[positions.length])
                            .withColour(Colour.INK))
                    .with(Line.of("difference of the means", positions, band.difference())
                            .withColour(Colour.BLUE));
        }
        int[] used = difference.used();
        int[] sizes = difference.sizes();
        plot = plot.withNote(Sentence.of(sentence(difference)))
                .withNote(String.format(
                        Locale.ROOT,
                        "Used: %s %d of %s, %s %d of %d. The others do not reach over the whole stretch, or lack what the"
                                + " clock needs.",
                        difference.firstName(),
                        used[0],
                        Words.count(sizes[0], "batch", "batches"),
                        difference.secondName(),
                        used[1],
                        sizes[1]));
        for (String note : difference.notes()) {
            plot = plot.withNote(note);
        }
        return plot.withNote(
                "These batches were not told apart by chance: what differs goes with the group, and need not come from"
                        + " it.");
    }

    private static Unit step(Difference difference) {
        return difference.together().clock().comparesRates() ? Unit.RATE_OF_RISE : Unit.TEMPERATURE_STEP;
    }

    static String sentence(Difference difference) {
        if (difference.band().isEmpty()) {
            int[] used = difference.used();
            return "cannot tell: " + difference.firstName() + " has " + used[0] + " and " + difference.secondName()
                    + " " + Words.count(used[1], "batch", "batches")
                    + " over a common stretch, and each needs batches of 5 roast days.";
        }
        SimultaneousBand band = difference.band().get();
        if (!band.canTell()) {
            return "cannot tell: a band needs batches of 5 roast days in each group.";
        }
        List<String> parts =
                stretches(difference, band).stream().map(Stretch::words).toList();
        String largest = largest(difference, band);
        return parts.isEmpty()
                ? "no difference is seen: the 90 % band holds zero everywhere. Differences of up to " + largest
                        + " are not ruled out."
                : String.join("; ", parts)
                        + ". Elsewhere the 90 % band, which is meant to hold the whole difference at once, holds zero.";
    }

    private static String largest(Difference difference, SimultaneousBand band) {
        double widest = Math.max(
                Arrays.stream(band.upper()).map(Math::abs).max().orElse(0),
                Arrays.stream(band.lower()).map(Math::abs).max().orElse(0));
        return step(difference).formatStep(widest, difference.together().reader());
    }

    static InShort inShort(Difference difference) {
        if (difference.band().filter(SimultaneousBand::canTell).isEmpty()) {
            return DifferenceInShort.cannotTell(difference.firstName(), difference.secondName());
        }
        SimultaneousBand band = difference.band().get();
        return DifferenceInShort.of(
                difference.firstName(),
                difference.secondName(),
                stretches(difference, band).stream()
                        .sorted(Comparator.comparingDouble(stretch -> -stretch.size()))
                        .map(Stretch::words)
                        .toList(),
                largest(difference, band));
    }

    /** One stretch on which the groups differ, and by how much at most. */
    private record Stretch(String words, double size) {}

    private static List<Stretch> stretches(Difference difference, SimultaneousBand band) {
        boolean[] apart = band.apart();
        double[] at = difference.positions();
        double[] middle = band.difference();
        List<Stretch> parts = new ArrayList<>();
        int k = 0;
        while (k < apart.length) {
            int from = k;
            int peak = k;
            while (k < apart.length && apart[k] && Math.signum(middle[k]) == Math.signum(middle[from])) {
                peak = Math.abs(middle[k]) > Math.abs(middle[peak]) ? k : peak;
                k++;
            }
            if (k > from) {
                parts.add(new Stretch(words(difference, band, at[from], at[k - 1], peak), Math.abs(middle[peak])));
            } else {
                k++;
            }
        }
        return parts;
    }

    private static String words(Difference difference, SimultaneousBand band, double from, double to, int peak) {
        OneClock together = difference.together();
        double size = band.difference()[peak];
        double low = Math.min(Math.abs(band.lower()[peak]), Math.abs(band.upper()[peak]));
        double high = Math.max(Math.abs(band.lower()[peak]), Math.abs(band.upper()[peak]));
        boolean rates = together.clock().comparesRates();
        String higher = rates ? size > 0 ? "faster" : "slower" : size > 0 ? "hotter" : "colder";
        Unit unit = step(difference).withDigits(1).withDigitsFor((high - low) / 2, together.reader());
        String where = together.clock() == Clock.BY_BEAN_TEMPERATURE
                ? Stretches.between(from, to, together.reader())
                : "between " + new Elapsed(from) + " and " + new Elapsed(to);
        return difference.firstName() + " is " + higher + " " + where + ", by up to "
                + unit.formatStep(Math.abs(size), together.reader()) + " ("
                + unit.number(unit.shownStep(low, together.reader())) + " to "
                + unit.number(unit.shownStep(high, together.reader())) + ")";
    }
}
