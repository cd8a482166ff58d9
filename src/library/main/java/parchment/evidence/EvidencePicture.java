package parchment.evidence;

import java.util.List;
import parchment.chart.Axis;
import parchment.chart.Band;
import parchment.chart.Boundary;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Marker;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.chart.Span;
import parchment.chart.Weight;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
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
        return Plot.of(
                Wording.sentence(attribute) + " of each batch by its " + measure.name(),
                Axis.of(measure.name() + where, measure.unit(), measure.reader()),
                Axis.of(attribute, Unit.POINTS.withDigits(1), measure.reader()));
    }

    private static String where(Measure measure, Analysis analysis) {
        if (analysis.places() != TodaysCourse.Places.READINGS) {
            return ", each lot and probe brought to the average of all";
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
            Findings.Planned planned) {
        boolean tentative = verdict == Verdict.CANNOT_TELL;
        FittedScores fitted = analysis.drawn();
        ModelFrame material = analysis.todays();
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
        String asPlanned = planned == Findings.Planned.BY_CHANCE ? " as planned" : "";
        Plot plot = of(attribute, measure, asPlanned + where(measure, analysis))
                .with(Band.of("where the average may lie", along, lower, upper)
                        .withColour(tentative ? Colour.INK : Colour.BLUE))
                .with(Points.of("one batch, average of its cups", places, scores)
                        .withIntervals(from, to)
                        .withNames(names)
                        .withMarker(Marker.CIRCLE))
                .with(Line.of(tentative ? "average line, in doubt" : "average line", along, mean)
                        .withWeight(tentative ? Weight.TENTATIVE : Weight.STRONG))
                .withTriedRange(range.lowest(), range.highest());
        if (peak.answer() == Peak.Answer.INSIDE && analysis.bendSeen()) {
            for (Interval part : peak.set()
                    .map(set -> set.within(range.lowest(), range.highest()))
                    .orElse(List.of())) {
                plot = plot.with(Span.of("where the best may lie", part.lower(), part.upper()));
            }
        }
        // What could be wrong must stand on the first screen there.
        return tentative ? plot.withHeight(LOWER) : plot;
    }

    /** Marks the two readings that the first sentence compares. */
    static Plot compared(Plot plot, TwoReadings told) {
        return plot.with(Boundary.at("compared:", Math.min(told.from(), told.to())))
                .with(Boundary.at("compared:", Math.max(told.from(), told.to())));
    }
}
