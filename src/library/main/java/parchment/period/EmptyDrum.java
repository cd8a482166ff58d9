package parchment.period;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.curve.Curve;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.stats.linear.Robust;

/**
 * Reads the empty drum just before charge, where bean probe and air probe stand in the same air.
 *
 * <p>Whoever charges by the bean probe's reading charges a hotter drum once it reads lower: the reading at charge and the turning point then hardly
 * move. The air's reading does.
 */
final class EmptyDrum {
    /** Seconds before charge that are read; common practice, no source. */
    private static final double FROM = 40;

    private static final double TO = 3;
    private static final int LEAST_READINGS = 3;

    private EmptyDrum() {}

    /** Returns what the bean probe read above the air's, batch by batch in °C; NaN where either has fewer than three readings then. */
    static double[] beanAboveAir(List<Phases> phases) {
        double[] bean = before(Quantity.BEAN_TEMPERATURE, phases);
        double[] air = before(Quantity.AIR_TEMPERATURE, phases);
        double[] above = new double[bean.length];
        Arrays.setAll(above, i -> bean[i] - air[i]);
        return above;
    }

    /** Returns the median reading of a curve just before charge, batch by batch; NaN where there are fewer than three. */
    static double[] before(Quantity quantity, List<Phases> phases) {
        return phases.stream().mapToDouble(one -> before(quantity, one)).toArray();
    }

    private static double before(Quantity quantity, Phases one) {
        Optional<Curve> curve = one.batch().curve(quantity);
        if (curve.isEmpty()) {
            return Double.NaN;
        }
        double charge = one.mark(MarkKind.CHARGE).map(Mark::seconds).orElse(0.0);
        Curve read = curve.get().between(charge - FROM, charge - TO);
        return read.size() < LEAST_READINGS ? Double.NaN : Robust.median(read.values());
    }
}
