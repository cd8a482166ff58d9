package parchment.evidence;

import java.util.List;
import java.util.Locale;
import parchment.chart.Axis;
import parchment.chart.Band;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Marker;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.chart.Span;
import parchment.chart.Weight;
import parchment.quantity.Unit;
import parchment.stats.Interval;

/**
 * Draws the attribute against the feature: batch means with everything but the feature taken out, the fitted course with its band, the
 * tried range, and the interval of the best place if there is one.
 */
final class EvidencePicture {
    private static final int LOWER = 260;

    private EvidencePicture() {}

    static Plot of(String attribute, Measure measure, String where) {
        return of(attribute, measure, measure.name(), where);
    }

    private static Plot of(String attribute, Measure measure, String name, String where) {
        String along = name + where;
        return Plot.of(
                Wording.sentence(attribute) + " of each batch by its " + name,
                Axis.of(along, measure.unit(), measure.reader()),
                Axis.of(attribute, Unit.POINTS.withDigits(1), measure.reader()));
    }

    private static String where(Measure measure, Analysis analysis) {
        if (analysis.places() != TodaysCourse.Places.READINGS) {
            return ", each lot and probe brought to the mean of all";
        }
        return analysis.material().movedToToday() ? measure.onTodaysProbe() : "";
    }

    /**
     * Draws what the batches show.
     *
     * @param peak the best place as it is told
     * @param verdict what the batches tell; where they cannot tell, the course is drawn as one that may not be so
     * @param planned whether the dots stand at the targets that chance set, or at what the batches came out at
     */
    static Plot of(
            String attribute,
            Measure measure,
            Analysis analysis,
            Peak peak,
            Verdict verdict,
            Findings.Planned planned,
            double level) {
        boolean tentative = verdict == Verdict.CANNOT_TELL;
        FittedScores fitted = analysis.drawn();
        Material material = analysis.todays();
        TriedRange range = analysis.range();
        double[] scores = fitted.adjustedBatchScores();
        double[] own = fitted.design().centered();
        int[] cups = fitted.scoresPerBatch();
        double[] places = new double[scores.length];
        double[] from = new double[scores.length];
        double[] to = new double[scores.length];
        for (int i = 0; i < scores.length; i++) {
            places[i] = range.center() + own[i];
            double error = fitted.cupToCup() / Math.sqrt(cups[i]);
            from[i] = scores[i] - error;
            to[i] = scores[i] + error;
        }
        List<String> names = material.batches().stream().map(TastedBatch::name).toList();
        FittedCurve curve = analysis.curve();
        double[] along = curve.places();
        double[] mean = new double[along.length];
        double[] lower = new double[along.length];
        double[] upper = new double[along.length];
        for (int i = 0; i < along.length; i++) {
            Interval band = curve.band(along[i]);
            mean[i] = curve.at(along[i]);
            lower[i] = band.lower();
            upper[i] = band.upper();
        }
        Plot plot = of(
                        attribute,
                        measure,
                        (planned == Findings.Planned.BY_CHANCE ? "planned " : "") + measure.name(),
                        where(measure, analysis))
                .with(Band.of("where the mean may lie", along, lower, upper)
                        .withColour(tentative ? Colour.INK : Colour.BLUE))
                .with(Points.of("one batch, mean of its cups", places, scores)
                        .withIntervals(from, to)
                        .withNames(names)
                        .withMarker(Marker.CIRCLE))
                .with(Line.of(tentative ? "mean, may not be so" : "mean", along, mean)
                        .withWeight(tentative ? Weight.TENTATIVE : Weight.STRONG))
                .withTriedRange(range.lowest(), range.highest());
        if (peak.answer() == Peak.Answer.INSIDE && analysis.bendSeen()) {
            for (Interval part : peak.set()
                    .map(set -> set.within(range.lowest(), range.highest()))
                    .orElse(List.of())) {
                plot = plot.with(Span.of("best", part.lower(), part.upper()));
            }
        }
        if (tentative) {
            // What could be wrong must stand on the first screen there.
            plot = plot.withHeight(LOWER)
                    .withNote(
                            "The line is dashed because these batches cannot tell: it may be luck, or come from something that"
                                    + " moved along.");
        }
        return plot.withNote(String.format(
                        Locale.ROOT,
                        "The band shows where the line may truly lie: at any one reading it is right %.0f times in 100. A dot's bar shows"
                                + " how far more cups of that batch may move it.",
                        100 * level))
                .withNote(
                        "What comes of lot, roast day, cupper, cupping, rest days, place in the day, green mass and date is taken"
                                + " out first, as far as these batches show it.")
                .withNote(Wording.sentence(material.toString()) + ".");
    }
}
