package parchment.drift;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import parchment.chart.Axis;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Panels;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.chart.Span;
import parchment.display.Report;
import parchment.display.Showable;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.process.CusumChart;
import parchment.stats.process.EwmaChart;
import parchment.stats.process.IndividualsChart;

/** Draws the three charts of a watch under each other. */
final class WatchPicture {
    private WatchPicture() {}

    static Showable of(Watch watch) {
        String title = watch.feature().name() + " of " + watch.of();
        Report page = Report.titled("Watch on " + title).say(watch.toString() + ".");
        if (!watch.hasLimits()) {
            return page.say(watch.leftOutWords());
        }
        IndividualsChart single = watch.single().orElseThrow();
        EwmaChart mean = watch.weightedMean().orElseThrow();
        CusumChart sum = watch.cumulatedSum().orElseThrow();
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
        int first = watch.batches().indexOf(watch.stable().get(0));
        Span stable = new Span("stable", x[first], x[first + watch.stable().size() - 1]);
        Unit unit = watch.feature().unit();
        Plot singles = Plot.of("", Axis.dates(""), Axis.of(watch.feature().name(), unit, reader))
                .withHeight(170)
                .with(stable)
                .with(Points.of("one batch", x, watch.values()).withNames(names).withColour(Colour.BLUE))
                .with(level("center", x, single.center()))
                .with(level("upper limit", x, single.upperLimit()))
                .with(level("lower limit", x, single.lowerLimit()));
        double[] upper = new double[x.length];
        double[] lower = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            upper[i] = mean.center() + mean.halfWidth(i + 1);
            lower[i] = mean.center() - mean.halfWidth(i + 1);
        }
        Plot means = Plot.of("", Axis.dates(""), Axis.of("weighted mean", unit, reader))
                .withHeight(140)
                .with(stable)
                .with(Line.of("weighted mean", x, mean.charted()).withColour(Colour.BLUE))
                .with(Line.of("upper limit", x, upper).withColour(Colour.INK))
                .with(Line.of("lower limit", x, lower).withColour(Colour.INK));
        double[] below = Arrays.stream(sum.below()).map(v -> -Math.abs(v)).toArray();
        Plot sums = Plot.of("", Axis.dates("roast day"), Axis.number("cumulated sum", "standard deviations"))
                .withHeight(140)
                .with(stable)
                .with(Line.of("above", x, scaled(sum.above(), single)).withColour(Colour.BLUE))
                .with(Line.of("below", x, scaled(below, single)).withColour(Colour.VERMILLION))
                .with(level("limit", x, sum.limit() / single.standardDeviation()))
                .with(level("limit", x, -sum.limit() / single.standardDeviation()))
                .withNote(watch.leftOutWords());
        double correlation = watch.neighbourCorrelation();
        page = page.add(Panels.stacked(title, List.of(singles, means, sums)))
                .say(String.format(
                        Locale.ROOT,
                        "Limits from the %d batches %s to %s. If nothing changes, and if the limits were known exactly, a single"
                                + " batch falls outside once in %s batches, the weighted mean signals once in %s, the cumulated"
                                + " sum once in %s; a shift of one standard deviation is seen after %s, %s and %s batches on"
                                + " average. Limits from so few batches cry wolf more often than that.",
                        watch.stable().size(),
                        watch.stable().get(0).name(),
                        watch.stable().get(watch.stable().size() - 1).name(),
                        whole(parchment.stats.process.RunLength.ofIndividuals(3).at(0)),
                        whole(mean.runLength().at(0)),
                        whole(sum.runLength().at(0)),
                        whole(parchment.stats.process.RunLength.ofIndividuals(3).at(1)),
                        whole(mean.runLength().at(1)),
                        whole(sum.runLength().at(1))));
        return Math.abs(correlation) > 2 / Math.sqrt(watch.stable().size())
                ? page.say(String.format(
                        Locale.ROOT,
                        "Neighbouring batches of the stable stretch resemble each other (correlation %.2f), so signals come more"
                                + " often than stated.",
                        correlation))
                : page;
    }

    private static double[] scaled(double[] values, IndividualsChart single) {
        return Arrays.stream(values).map(v -> v / single.standardDeviation()).toArray();
    }

    private static Line level(String label, double[] x, double value) {
        double[] y = new double[x.length];
        Arrays.fill(y, value);
        return Line.of(label, x, y).withColour(Colour.INK);
    }

    private static String whole(double number) {
        return String.format(Locale.ROOT, "%.0f", number);
    }
}
