package parchment.drift.found;

import java.util.ArrayList;
import java.util.List;
import parchment.chart.Axis;
import parchment.chart.Boundary;
import parchment.chart.Colour;
import parchment.chart.Panels;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.display.Showable;
import parchment.drift.ProbeShifts;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.period.ProbeChange;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;
import parchment.stats.Interval;

/** Draws a reading of the probe against the date, as read and on the scale of the latest probe. */
final class OneScalePicture {
    private OneScalePicture() {}

    static Showable of(OneScale scale, ProbeShifts shifts, Feature feature) {
        BatchTable table = BatchTable.of(shifts.logbook(), feature);
        TemperatureUnit reader = shifts.reader();
        double[] read = table.values(feature);
        double[] even = scale.values(table, feature);
        double[] x = new double[read.length];
        double[] lower = new double[read.length];
        double[] upper = new double[read.length];
        List<String> names = new ArrayList<>();
        double widest = 0;
        for (int i = 0; i < read.length; i++) {
            Batch batch = table.batches().get(i);
            x[i] = batch.roastDay().map(day -> (double) day.toEpochDay()).orElse(Double.NaN);
            lower[i] = Double.NaN;
            upper[i] = Double.NaN;
            if (feature.readsBeanProbe() && Double.isFinite(read[i])) {
                Estimate added = scale.added(batch, read[i]);
                if (added.standardError() > 0) {
                    Interval interval = added.interval(0.90);
                    lower[i] = read[i] + interval.lower();
                    upper[i] = read[i] + interval.upper();
                    widest = Math.max(widest, interval.width() / 2);
                }
            }
            names.add("batch " + batch.name());
        }
        Plot before = Plot.of(
                        "", Axis.dates("roast day"), Axis.of(feature.name() + ", as read", feature.unit(), reader))
                .withHeight(170)
                .withEmptySentence("No batch has both a date and this number.")
                .with(Points.of("one batch, as read", x, read).withNames(names).withColour(Colour.VERMILLION));
        Plot after = Plot.of(
                        "", Axis.dates("roast day"), Axis.of(feature.name() + ", on one scale", feature.unit(), reader))
                .withHeight(170)
                .withEmptySentence("No batch has both a date and this number.")
                .with(Points.of("one batch, on the latest probe's scale", x, even)
                        .withIntervals(lower, upper)
                        .withNames(names)
                        .withColour(Colour.BLUE));
        for (ProbeChange change : shifts.changes()) {
            if (change.kind().separatesPeriods()) {
                Boundary boundary = Boundary.at("probe changed", change.on().toEpochDay());
                before = before.with(boundary);
                after = after.with(boundary);
            }
        }
        boolean any = shifts.changes().stream().anyMatch(c -> c.kind().separatesPeriods());
        return Panels.stacked("Before and after: " + feature.name(), List.of(before, after))
                .withNote(
                        !feature.readsBeanProbe()
                                ? "This is not a reading of the bean probe at a mark; it stays as it is."
                                : any
                                        ? bars(widest, reader)
                                        : "One probe period is known, so nothing had to be moved.");
    }

    private static String bars(double widest, TemperatureUnit reader) {
        return widest > 0
                ? "Bars: 90 % interval of what was added, at most "
                        + Unit.TEMPERATURE_STEP.formatStep(widest, reader)
                        + " to either side; where none is seen it is shorter than its dot is high. It is one error for all batches of a"
                        + " period, so the whole period moves together within it."
                : "How far the readings had to be moved has no known error, so no bars are drawn.";
    }
}
