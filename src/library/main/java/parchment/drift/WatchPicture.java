package parchment.drift;

import java.util.Arrays;
import java.util.List;
import parchment.chart.Axis;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Panels;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.chart.Span;
import parchment.display.Showable;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Draws the three charts of a watch under each other. */
final class WatchPicture {
    private WatchPicture() {}

    static Showable of(Watch watch) {
        String title = watch.feature().name() + " of " + watch.of();
        Report page = Report.titled("Watch on " + title).add(watch.inShort());
        Report workedOut = Report.titled("How this was worked out").say(Sentence.of(watch.toString()) + ".");
        if (!watch.hasLimits()) {
            return page.fold(workedOut.say(watch.rows().leftOutWords()));
        }
        EstimatedLimits limits = watch.limits().orElseThrow();
        TemperatureUnit reader = watch.logbook().readerUnit();
        double[] x = watch.batches().stream()
                .mapToDouble(b -> {
                    var at = b.roastedAt().orElseThrow();
                    return at.toLocalDate().toEpochDay() + at.toLocalTime().toSecondOfDay() / 86400.0;
                })
                .toArray();
        List<String> names = watch.batches().stream()
                .map(b -> "batch " + b.name() + ", " + b.roastDay().orElseThrow())
                .toList();
        int stretch = watch.stable().size();
        Span stable = new Span("limits from here", x[0], x[stretch - 1]);
        Unit unit = watch.feature().unit();
        double[] deviations = limits.deviations();
        double center =
                Arrays.stream(watch.rows().values(), 0, stretch).average().orElse(0);
        double[] values = Arrays.stream(deviations).map(d -> center + d).toArray();
        double[] later = Arrays.copyOfRange(x, stretch, x.length);
        Plot singles = Plot.of(
                        "", Axis.dates("roast day"), Axis.of(watch.feature().name(), unit, reader))
                .withHeight(170)
                .with(stable)
                .with(Points.of("one batch", x, values).withNames(names).withColour(Colour.BLUE))
                .with(level("center", x, center));
        Plot means = Plot.of("", Axis.dates("roast day"), Axis.of("weighted mean", unit, reader))
                .withHeight(140)
                .with(stable);
        Plot sums = Plot.of("", Axis.dates("roast day"), Axis.number("cumulated sum", "standard deviations"))
                .withHeight(140)
                .with(stable)
                .withNote(watch.rows().leftOutWords());
        if (later.length > 0) {
            double[] width = limits.singleLimits();
            double[] meanWidth = scaled(limits.weightedMeanLimits(), limits.spread());
            singles = singles.with(around("limit", later, center, width, 1))
                    .with(around("limit", later, center, width, -1));
            means = means.with(around("weighted mean", later, center, scaled(limits.weightedMean(), limits.spread()), 1)
                            .withColour(Colour.BLUE))
                    .with(around("limit", later, center, meanWidth, 1))
                    .with(around("limit", later, center, meanWidth, -1));
            sums = sums.with(Line.of("above", later, limits.sumAbove()).withColour(Colour.BLUE))
                    .with(Line.of("below", later, scaled(limits.sumBelow(), -1)).withColour(Colour.VERMILLION))
                    .with(around("limit", later, 0, limits.sumLimits(), 1))
                    .with(around("limit", later, 0, limits.sumLimits(), -1));
        }
        return page.add(Panels.stacked(title, List.of(singles, means, sums)))
                .fold(workedOut
                        .say("Limits from the " + stretch + " batches "
                                + watch.stable().get(0).name() + " to "
                                + watch.stable().get(stretch - 1).name() + ". "
                                + watch.rows().likeWords())
                        .say(watch.rateWords())
                        .say(watch.neighbourWords())
                        .say("A signal is a reason to look, not a finding."));
    }

    private static double[] scaled(double[] values, double by) {
        return Arrays.stream(values).map(v -> v * by).toArray();
    }

    private static Line around(String label, double[] x, double center, double[] width, int side) {
        return Line.of(
                        label,
                        x,
                        Arrays.stream(width).map(w -> center + side * w).toArray())
                .withColour(Colour.INK);
    }

    private static Line level(String label, double[] x, double value) {
        double[] y = new double[x.length];
        Arrays.fill(y, value);
        return Line.of(label, x, y).withColour(Colour.INK);
    }
}
