package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import parchment.align.OneClock.Laid;
import parchment.chart.Axis;
import parchment.chart.Band;
import parchment.chart.Colour;
import parchment.chart.Layer;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.chart.Weight;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.sheet.Words;
import parchment.stats.warp.SimultaneousBand;

/** Draws batches on one clock: thin lines, their mean, and its band. */
final class OneClockPicture {
    private OneClockPicture() {}

    static Axis across(OneClock one) {
        return one.clock() == Clock.BY_BEAN_TEMPERATURE
                ? Axis.of("bean temperature", Unit.TEMPERATURE, one.reader())
                : Axis.clock(one.clock().words());
    }

    static Axis upwards(OneClock one) {
        return one.clock().comparesRates()
                ? Axis.of("rate of rise", Unit.RATE_OF_RISE, one.reader()).fromZero()
                : Axis.of("bean temperature", Unit.TEMPERATURE, one.reader());
    }

    static Unit unit(OneClock one) {
        return one.clock().comparesRates() ? Unit.RATE_OF_RISE : Unit.TEMPERATURE;
    }

    static Plot plot(OneClock one) {
        Plot plot = Plot.of(title(one), across(one), upwards(one))
                .with(layers(one))
                .withEmptySentence("No batch can be laid on this clock: it needs a bean temperature and the "
                        + one.clock().needed().words() + ".");
        for (String sentence : sentences(one)) {
            plot = plot.withNote(sentence);
        }
        return plot;
    }

    private static String title(OneClock one) {
        int count = one.laid().size();
        return (one.clock().comparesRates() ? "Rate of rise" : "Bean temperature") + " of "
                + (count == 1 ? "one batch" : count + " batches") + " by "
                + one.clock().words();
    }

    private static List<Layer> layers(OneClock one) {
        List<Layer> layers = new ArrayList<>();
        List<Layer> setOff = new ArrayList<>();
        boolean few = one.laid().size() <= Crowd.NAMED;
        for (Laid batch : one.laid()) {
            boolean off = one.highlight().filter(batch.name()::equals).isPresent();
            Line line = Line.of(off || few ? "batch " + batch.name() : "one batch each", one.grid(), batch.values());
            if (off) {
                setOff.add(line.withWeight(Weight.STRONG).withColour(Colour.VERMILLION));
            } else {
                layers.add(few ? line : line.withWeight(Weight.FAINT).withName("batch " + batch.name()));
            }
        }
        layers.addAll(setOff);
        if (!few && one.band().isPresent()) {
            double[] positions = one.positions();
            SimultaneousBand band = one.band().get();
            if (band.canTell()) {
                layers.add(Band.of("band for the whole mean", positions, band.lower(), band.upper()));
            }
            layers.add(Line.of("mean of " + one.whole().size() + " batches", positions, band.difference())
                    .withWeight(Weight.STRONG)
                    .withColour(Colour.BLUE));
        }
        return layers;
    }

    private static List<String> sentences(OneClock one) {
        List<String> sentences = new ArrayList<>();
        int laid = one.laid().size();
        sentences.add(laid + " of " + Words.count(one.asked(), "batch", "batches") + (laid == 1 ? " is" : " are")
                + " on this clock"
                + (laid == one.whole().size()
                        ? "."
                        : "; " + (laid - one.whole().size()) + " of them "
                                + (laid - one.whole().size() == 1 ? "does" : "do")
                                + " not reach over the whole stretch of the mean, which is taken without."));
        one.band().ifPresent(band -> sentences.add(bandSentence(one, band)));
        sentences.addAll(one.notes());
        return sentences;
    }

    static String bandSentence(OneClock one, SimultaneousBand band) {
        long days = one.roastDays();
        if (!band.canTell()) {
            return "The batches of the mean are of " + days
                    + (days == 1 ? " roast day" : " roast days")
                    + "; a band for the mean asks for 5 at least, so how well the mean is known cannot be told.";
        }
        double[] errors = band.standardError();
        double middle = Arrays.stream(errors).sorted().toArray()[errors.length / 2];
        TemperatureUnit reader = one.reader();
        Unit unit = unit(one);
        return String.format(
                Locale.ROOT,
                "The band is meant to hold the whole true mean in %.0f of 100 logbooks; it counts the %d roast days, not the"
                        + " batches, and reaches %s to either side in the middle (for one place alone: %s).",
                100 * band.level(),
                days,
                unit.formatStep(band.critical() * middle, reader),
                unit.formatStep(band.pointwiseCritical() * middle, reader));
    }
}
