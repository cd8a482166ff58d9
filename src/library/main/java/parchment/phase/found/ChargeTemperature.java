package parchment.phase.found;

import java.util.Optional;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.curve.measured.CurveEstimate;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.quantity.Temperature;
import parchment.stats.linear.Robust;

/**
 * Reads the charge temperature of a batch: what the bean probe showed just before charge, as written; where it was not written, the median
 * reading of the ten seconds before charge.
 */
public final class ChargeTemperature {
    private static final double SECONDS_BEFORE = 10;

    private ChargeTemperature() {}

    /** Returns the charge temperature in °C, or why it is not known; a written one has the error 0, as none is known. */
    public static CurveEstimate of(Phases phases) {
        Optional<Temperature> written = phases.batch().conditions().chargeTemperature();
        if (written.isPresent()) {
            return CurveEstimate.of(written.get().celsius(), 0);
        }
        return asLogged(phases);
    }

    /** Returns what the curve says, whatever was written: what a written charge temperature can be held against. */
    public static CurveEstimate asLogged(Phases phases) {
        Optional<CleanCurve> clean = phases.clean();
        if (clean.isEmpty()) {
            return CurveEstimate.missing("charge temperature was not written, and no bean temperature was logged.");
        }
        if (!phases.isChargeLogged()) {
            return CurveEstimate.missing("charge temperature was not written, and the log does not hold the charge.");
        }
        double atCharge = phases.mark(MarkKind.CHARGE).map(Mark::seconds).orElse(0.0);
        Curve before = clean.get().kept().between(atCharge - SECONDS_BEFORE, atCharge);
        if (before.isEmpty()) {
            return CurveEstimate.missing("charge temperature was not written, and there is no reading before charge.");
        }
        double error = clean.get().step() / Math.sqrt(12);
        if (before.size() > 2) {
            double[] values = before.values();
            return CurveEstimate.of(Robust.median(values), Math.hypot(error, Robust.medianAbsoluteDeviation(values)));
        }
        double last = before.valueAt(before.size() - 1);
        // One reading at charge may already have begun to fall: the next fall says by how much.
        int next = clean.get().kept().position(atCharge + 1e-9);
        double fall = next < clean.get().kept().size()
                ? Math.abs(last - clean.get().kept().valueAt(next))
                : 0;
        return CurveEstimate.of(last, Math.hypot(error, fall));
    }
}
