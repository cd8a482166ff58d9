package parchment.align;

import java.util.Arrays;
import java.util.List;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.phase.found.ChargeTemperature;
import parchment.phase.found.Mark;
import parchment.phase.found.ProbeReading;
import parchment.quantity.Temperature;
import parchment.stats.linear.Robust;

/**
 * Finds written charge temperatures that the curve does not bear out, by the probe's reading as the beans go in or, where the readings
 * start too late for that, by the turning point.
 *
 * <p>The two need not be equal, as another probe may have been read: what counts is whether they lie as far apart as in the other batches.
 */
final class WrittenCharges {
    /** Degrees Celsius by which a written charge must be off to be worth a word; common practice, no source. */
    static final double LEAST_CELSIUS = 15;

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
        double[] read = members.stream()
                .mapToDouble(phases -> ChargeTemperature.asLogged(phases).value())
                .toArray();
        double[] gaps = new double[written.length];
        Arrays.setAll(gaps, i -> written[i] - read[i]);
        double[] turns = members.stream()
                .mapToDouble(phases -> phases.mark(MarkKind.TURNING_POINT)
                        .filter(turn -> phases.isChargeLogged())
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
        Robust.Fences gap = Robust.Fences.of(gaps);
        Robust.Fences charge = Robust.Fences.of(written);
        Robust.Fences turn = Robust.Fences.of(turns);
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
