package parchment.drift;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.BatchPlan;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;

/**
 * A batch as a row of a table of rules: what is not said is not written. Rows of one logbook lie a day apart.
 *
 * @param aim planned drop temperature in °C, NaN if not written
 * @param charge charge temperature in °C, NaN if not written
 */
record BuiltBatch(String lot, String machine, double green, double roasted, double aim, double charge) {
    static BuiltBatch of(double green) {
        return new BuiltBatch("one", "", green, Double.NaN, Double.NaN, Double.NaN);
    }

    static BuiltBatch losing(double loss) {
        return of(2).withRoasted(2 * (1 - loss));
    }

    BuiltBatch withLot(String other) {
        return new BuiltBatch(other, machine, green, roasted, aim, charge);
    }

    BuiltBatch withMachine(String other) {
        return new BuiltBatch(lot, other, green, roasted, aim, charge);
    }

    /** The same loss of another mass. */
    BuiltBatch withGreen(double other) {
        return new BuiltBatch(lot, machine, other, roasted * other / green, aim, charge);
    }

    BuiltBatch withRoasted(double other) {
        return new BuiltBatch(lot, machine, green, other, aim, charge);
    }

    BuiltBatch withAim(double other) {
        return new BuiltBatch(lot, machine, green, roasted, other, charge);
    }

    BuiltBatch withCharge(double other) {
        return new BuiltBatch(lot, machine, green, roasted, aim, other);
    }

    static Logbook logbook(List<BuiltBatch> rows) {
        List<Batch> batches = new ArrayList<>();
        for (BuiltBatch row : rows) {
            Batch.Builder batch = Batch.named("B" + (batches.size() + 1))
                    .roastedAt(LocalDate.of(2025, 1, 1)
                            .plusDays(batches.size())
                            .atTime(12, 0)
                            .atOffset(ZoneOffset.UTC))
                    .conditions(new BatchConditions(
                            written(row.green).map(Mass::kilograms),
                            written(row.roasted).map(Mass::kilograms),
                            written(row.charge).map(Temperature::celsius),
                            Optional.empty(),
                            Optional.empty(),
                            OptionalDouble.empty(),
                            OptionalDouble.empty(),
                            Optional.empty()));
            written(row.aim)
                    .ifPresent(aim -> batch.plan(
                            new BatchPlan(Optional.of(Temperature.celsius(aim)), BatchPlan.PlannedBy.CHOICE)));
            if (!row.lot.isEmpty()) {
                batch.lot(row.lot);
            }
            if (!row.machine.isEmpty()) {
                batch.machine(row.machine);
            }
            batches.add(batch.build());
        }
        return Logbook.of(LogbookContents.ofBatches("built", batches));
    }

    private static Optional<Double> written(double value) {
        return Double.isNaN(value) ? Optional.empty() : Optional.of(value);
    }
}
