package parchment.feature;

import parchment.feature.path.BatchPath;
import parchment.logbook.MarkKind;
import parchment.phase.found.Mark;

/** Carries the uncertainty of one mark into features: measures what they would be with the mark one standard error earlier and later. */
final class MarkShift {
    private final double seconds;
    private final BatchPath earlier;
    private final BatchPath later;

    private MarkShift(double by, BatchPath earlier, BatchPath later) {
        this.seconds = by;
        this.earlier = earlier;
        this.later = later;
    }

    static MarkShift of(BatchPath path, MarkKind kind) {
        double by = path.mark(kind).map(Mark::standardError).orElse(0.0);
        return new MarkShift(by, path.withMarkMoved(kind, -by), path.withMarkMoved(kind, by));
    }

    /** Returns by how much a feature changes when the mark comes one standard error later. */
    double effectOn(Feature feature, double asItIs) {
        if (seconds == 0) {
            return 0;
        }
        double before = feature.measureWithMarksExact(earlier).value();
        double after = feature.measureWithMarksExact(later).value();
        double effect;
        if (Double.isNaN(before)) {
            effect = Double.isNaN(after) ? 0 : after - asItIs;
        } else {
            effect = Double.isNaN(after) ? asItIs - before : 0.5 * (after - before);
        }
        // The last digits of a sum are no uncertainty.
        return Math.abs(effect) < 1e-9 * Math.abs(asItIs) ? 0 : effect;
    }
}
