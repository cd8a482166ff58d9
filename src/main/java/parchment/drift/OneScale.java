package parchment.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Showable;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.stats.Estimate;

/**
 * Puts readings of earlier probe periods on the scale of the latest one, and says how well that is known.
 *
 * <p>What must be added is known where an indicator is read (turning point, first crack) and taken as straight between them and as
 * constant beyond. Its error is one error for all batches of a period: it does not shrink with the number of batches.
 */
public final class OneScale implements Showable {
    private final ProbeShifts shifts;

    OneScale(ProbeShifts shifts) {
        this.shifts = shifts;
    }

    /**
     * Returns what must be added to a reading of a batch to have it on the scale of the latest probe period.
     *
     * @param celsius where on the temperature scale the reading lies, °C
     * @return in °C, with the error that all batches of the period share; 0 without error in the latest period, NaN if it is not known
     */
    public Estimate added(Batch batch, double celsius) {
        Optional<MachineShifts> machine = shifts.machine(batch);
        if (machine.isEmpty() || batch.roastedAt().isEmpty()) {
            return new Estimate("offset", Double.NaN, Double.NaN, Double.NaN);
        }
        List<Estimate> known = machine.get().toLatest(MachineDays.day(batch, shifts.logbook()));
        List<Estimate> anchors = new ArrayList<>();
        List<Double> at = new ArrayList<>();
        for (int j = 0; j < known.size(); j++) {
            if (Double.isFinite(known.get(j).estimate())) {
                anchors.add(known.get(j));
                at.add(machine.get().indicators().get(j).celsius());
            }
        }
        if (anchors.isEmpty()) {
            boolean one =
                    machine.get().changes().stream().noneMatch(c -> c.kind().separatesPeriods());
            return one
                    ? new Estimate("offset", 0, 0, Double.POSITIVE_INFINITY)
                    : new Estimate("offset", Double.NaN, Double.NaN, Double.NaN);
        }
        int below = -1;
        int above = -1;
        for (int j = 0; j < at.size(); j++) {
            below = at.get(j) <= celsius && (below < 0 || at.get(j) > at.get(below)) ? j : below;
            above = at.get(j) > celsius && (above < 0 || at.get(j) < at.get(above)) ? j : above;
        }
        if (below < 0 || above < 0) {
            return anchors.get(Math.max(below, above));
        }
        double share = (celsius - at.get(below)) / (at.get(above) - at.get(below));
        Estimate low = anchors.get(below);
        Estimate high = anchors.get(above);
        return new Estimate(
                "offset",
                (1 - share) * low.estimate() + share * high.estimate(),
                Math.hypot((1 - share) * low.standardError(), share * high.standardError()),
                Math.min(low.degreesOfFreedom(), high.degreesOfFreedom()));
    }

    /** Tells whether a feature is a reading of the bean probe, which an offset moves. */
    static boolean moves(Feature feature) {
        return List.of(
                        Features.dropTemperature(),
                        Features.firstCrackTemperature(),
                        Features.yellowingTemperature(),
                        Features.turningPointTemperature())
                .stream()
                .anyMatch(read -> read.name().equals(feature.name()));
    }

    /** Returns a feature's numbers, one per batch of the table, on the scale of the latest probe; other features as they are. */
    public double[] values(BatchTable table, Feature feature) {
        double[] values = table.values(feature);
        if (moves(feature)) {
            for (int i = 0; i < values.length; i++) {
                if (Double.isFinite(values[i])) {
                    double added = added(table.batches().get(i), values[i]).estimate();
                    values[i] += added;
                }
            }
        }
        return values;
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
