package parchment.learning;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import parchment.chart.Axis;
import parchment.chart.Band;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.display.answer.Sentence;
import parchment.quantity.Unit;
import parchment.stats.linear.Robust;

/** Draws the rate of rise of each kind of roast; of all batches together where there are no kinds. */
final class KindsPicture {
    private static final List<Colour> COLOURS = List.of(Colour.BLUE, Colour.VERMILLION, Colour.GREEN, Colour.PURPLE);

    private KindsPicture() {}

    static Plot of(KindsOfRoast found) {
        Plot plot = Plot.of(
                        found.kinds().isEmpty() ? "The rate of rise of all batches" : "The rate of rise of each kind",
                        Axis.clock("time since charge"),
                        Axis.of(
                                "rate of rise",
                                Unit.RATE_OF_RISE,
                                found.logbook().readerUnit()))
                .withEmptySentence("No batch has a rate of rise over the whole way.");
        if (found.kinds().isEmpty()) {
            return found.paths().rates().isEmpty()
                    ? plot
                    : drawn(plot, "all batches", found.paths().rates(), Colour.BLUE);
        }
        for (int k = 0; k < found.kinds().size(); k++) {
            String name = Sentence.of(KindsPage.briefly(found, found.kinds().get(k)));
            plot = drawn(plot, name, found.rates(k), COLOURS.get(k));
        }
        return plot.withNote(
                "Each line is the middle of its kind; eight of ten of its batches lie in the band around it.");
    }

    private static Plot drawn(Plot plot, String name, List<double[]> rates, Colour colour) {
        // Where fewer than half of the batches are still in the drum there is no middle of the kind.
        int length = (int)
                Robust.median(rates.stream().mapToDouble(one -> one.length).toArray());
        double[] at = IntStream.range(0, length)
                .mapToDouble(k -> RatePaths.FROM + RatePaths.STEP * k)
                .toArray();
        return plot.with(Band.of(name + ", eight of ten", at, along(rates, length, 0.1), along(rates, length, 0.9))
                        .withColour(colour))
                .with(Line.of(name, at, along(rates, length, 0.5)).withColour(colour));
    }

    private static double[] along(List<double[]> rates, int length, double share) {
        double[] out = new double[length];
        Arrays.setAll(
                out,
                k -> Robust.quantile(
                        rates.stream()
                                .filter(one -> one.length > k)
                                .mapToDouble(one -> one[k])
                                .toArray(),
                        share));
        return out;
    }
}
