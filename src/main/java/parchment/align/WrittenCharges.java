package parchment.align;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.curve.Curve;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.Mark;
import parchment.phase.Phases;
import parchment.phase.ProbeReading;
import parchment.quantity.Temperature;
import parchment.stats.Robust;

/**
 * Holds the charge temperature that somebody wrote against what the curve shows: the probe's reading as the beans go in, or, where the
 * readings start too late for that, the turning point.
 *
 * <p>The two need not be equal, as another probe may have been read: what counts is whether they lie as far apart as in the other batches.
 */
final class WrittenCharges {
    /** Degrees Celsius by which a written charge must be off to be worth a word; common practice, no source. */
    static final double LEAST_CELSIUS = 15;
    /** Seconds before charge over which the probe is read; common practice, no source. */
    private static final double BEFORE = 15;
    /** Seconds after charge up to which a first reading still tells of the empty drum; common practice, no source. */
    private static final double AFTER = 3;

    private final double[] written;
    private final double[] off;

    private WrittenCharges(double[] written, double[] off) {
        this.written = written;
        this.off = off;
    }

    static WrittenCharges of(List<Phases> members) {
        double[] written = members.stream()
                .mapToDouble(phases -> phases.batch()
                        .conditions()
                        .chargeTemperature()
                        .map(Temperature::celsius)
                        .orElse(Double.NaN))
                .toArray();
        double[] read =
                members.stream().mapToDouble(WrittenCharges::readAtCharge).toArray();
        double[] gaps = new double[written.length];
        Arrays.setAll(gaps, i -> written[i] - read[i]);
        double[] turns = members.stream()
                .mapToDouble(phases -> phases.mark(MarkKind.TURNING_POINT)
                        .flatMap(Mark::probe)
                        .map(ProbeReading::celsius)
                        .orElse(Double.NaN))
                .toArray();
        return of(written, gaps, turns);
    }

    /**
     * Judges built numbers, one for each batch.
     *
     * @param written the charge temperature as written
     * @param gaps the same less what the probe read at charge, NaN where it was not read
     * @param turns the temperature at the turning point
     */
    static WrittenCharges of(double[] written, double[] gaps, double[] turns) {
        Fences gap = Fences.of(gaps);
        Fences charge = Fences.of(written);
        Fences turn = Fences.of(turns);
        double[] off = new double[written.length];
        for (int i = 0; i < off.length; i++) {
            boolean read = Double.isFinite(gaps[i]) && Double.isFinite(gap.median());
            if (read && gap.farOut(gaps[i], LEAST_CELSIUS)) {
                off[i] = gaps[i] - gap.median();
            } else if (!read
                    && charge.farOut(written[i], LEAST_CELSIUS)
                    && turns[i] >= turn.low()
                    && turns[i] <= turn.high()) {
                // So many degrees at charge would show in the turning point, and do not.
                off[i] = written[i] - charge.median();
            }
        }
        return new WrittenCharges(written, off);
    }

    private static double readAtCharge(Phases phases) {
        Optional<Curve> curve = phases.curve(Quantity.BEAN_TEMPERATURE);
        if (curve.isEmpty()) {
            return Double.NaN;
        }
        Curve before = curve.get().between(-BEFORE, 0);
        Curve near = before.isEmpty() ? curve.get().between(0, AFTER) : before;
        return near.isEmpty() ? Double.NaN : before.isEmpty() ? near.valueAt(0) : Robust.median(near.values());
    }

    /** Returns by how many degrees a batch's written charge is off; 0 if it is not. */
    double off(int batch) {
        return off[batch];
    }

    /** Returns the charge temperatures as written, those that are off left out. */
    double[] believed() {
        double[] believed = written.clone();
        Arrays.setAll(believed, i -> off[i] == 0 ? written[i] : Double.NaN);
        return believed;
    }
}
