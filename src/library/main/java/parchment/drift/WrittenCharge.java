package parchment.drift;

import static parchment.logbook.MarkKind.CHARGE;

import java.util.Optional;
import parchment.curve.Curve;
import parchment.feature.Feature;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.Quantity;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;
import parchment.stats.linear.Robust;

/**
 * Lets a mistyped charge temperature stand out: a written one is held against what the curve reads at charge. Roasters differ in the
 * moment at which they read it; a lot's batches share that habit, so one that was written wrong stands out.
 */
final class WrittenCharge {
    /** Seconds before charge whose median is the reading; common practice, no source. */
    private static final double BEFORE = 10;

    static final Feature AGAINST_THE_CURVE = Feature.of(
            "charge temperature as written less as read",
            Unit.TEMPERATURE_STEP,
            "charge temperature as written less the median reading of the ten seconds before charge, or the first reading",
            WrittenCharge::measured);

    private WrittenCharge() {}

    private static Measured measured(BatchPath path) {
        Optional<Temperature> written = path.batch().conditions().chargeTemperature();
        if (written.isEmpty()) {
            return Measured.missing("charge temperature was not written.");
        }
        Optional<Curve> bean = path.curve(Quantity.BEAN_TEMPERATURE).filter(curve -> !curve.isEmpty());
        if (bean.isEmpty()) {
            return Measured.missing("no bean temperature was logged.");
        }
        if (!path.phases().isChargeLogged()) {
            return Measured.missing("the log does not hold the charge.");
        }
        double atCharge = path.mark(CHARGE).map(m -> m.seconds()).orElse(0.0);
        Curve before = bean.get().between(atCharge - BEFORE, atCharge);
        double reading = before.isEmpty() ? bean.get().valueAt(0) : Robust.median(before.values());
        return Measured.exact(written.get().celsius() - reading);
    }
}
