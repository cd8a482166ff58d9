package parchment.drift.found;

import java.util.Locale;
import parchment.display.Showable;
import parchment.drift.ProbeShifts;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.period.ProbePeriods;
import parchment.stats.Estimate;

/**
 * Puts readings of earlier probe periods on the scale of the latest one, and says how well that is known.
 *
 * <p>What must be added is known where an indicator is read (turning point, first crack) and taken as straight between them and as
 * constant beyond. Its error is one error for all batches of a period: it does not shrink with the number of batches.
 */
public final class OneScale implements Showable {
    private final ProbeShifts shifts;

    public OneScale(ProbeShifts shifts) {
        this.shifts = shifts;
    }

    /**
     * Returns what must be added to a reading of a batch to have it on the scale of the latest probe period; see {@link ProbePeriods#toToday}.
     *
     * @param celsius where on the temperature scale the reading lies, °C
     */
    public Estimate added(Batch batch, double celsius) {
        return shifts.periods().toToday(batch, celsius);
    }

    /** Returns a feature's numbers, one per batch of the table, on the scale of the latest probe; other features as they are. */
    public double[] values(BatchTable table, Feature feature) {
        return table.onTodaysProbe().values(feature);
    }

    /** Draws a feature before and after its readings were put on one scale. */
    public Showable drawn(Feature feature) {
        return OneScalePicture.of(this, shifts, feature);
    }

    @Override
    public String toString() {
        long periods = 1
                + shifts.changes().stream()
                        .filter(c -> c.kind().separatesPeriods())
                        .count();
        return String.format(
                Locale.ROOT,
                "readings of %d probe %s on the scale of the latest",
                periods,
                periods == 1 ? "period" : "periods");
    }
}
