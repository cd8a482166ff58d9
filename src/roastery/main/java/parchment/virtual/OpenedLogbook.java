package parchment.virtual;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.BatchPlan;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.logbook.written.Upkeep;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.virtual.people.GivenScore;
import parchment.virtual.physics.Room;
import parchment.virtual.written.LoggedCurve;
import parchment.virtual.written.PlannedBatch;
import parchment.virtual.written.VirtualBatch;
import parchment.virtual.written.VirtualCupping;
import parchment.virtual.written.VirtualLot;

/**
 * Opens a virtual logbook in memory, with the numbers that its files would hold, rounded as they are there.
 *
 * <p>For studies that need hundreds of logbooks; machines, lot checks and columns that nothing measures are left to the files.
 */
final class OpenedLogbook {
    private final VirtualLogbook logbook;
    private final Story story;
    private final TemperatureUnit unit;
    private final boolean full;

    OpenedLogbook(VirtualLogbook logbook) {
        this.logbook = logbook;
        this.story = logbook.story();
        this.unit = story.writing().temperature();
        this.full = !story.machineName().isEmpty();
    }

    Logbook open() {
        Map<String, Logbook.Scale> scales = new LinkedHashMap<>();
        logbook.attributes().forEach(attribute -> scales.put(attribute, new Logbook.Scale(0, 10)));
        return Logbook.of(
                LogbookContents.ofBatches(
                                logbook.name(),
                                logbook.batches().stream().map(this::batch).toList())
                        .toBuilder()
                        .readerUnit(unit)
                        .lots(story.lots().stream().map(OpenedLogbook::lot).toList())
                        .cups(cups())
                        .cuppings(cuppings())
                        .upkeep(logbook.upkeep().stream()
                                .map(work -> new Upkeep(
                                        story.machineName(),
                                        work.day(),
                                        work.what(),
                                        work.kind(),
                                        written(work.note())))
                                .toList())
                        .scales(scales)
                        .crackHabit(Logbook.CrackHabit.FIRST_POP)
                        .provenance(Logbook.Provenance.INVENTED)
                        .build());
    }

    private Batch batch(VirtualBatch batch) {
        PlannedBatch plan = batch.plan();
        Written written = Written.of(logbook, batch);
        Batch.Builder builder = Batch.named(batch.name())
                .roastedAt(plan.roastedAt().atOffset(ZoneOffset.UTC))
                .readerUnit(unit)
                .conditions(conditions(batch, written));
        written.lot().ifPresent(builder::lot);
        if (full) {
            builder.machine(story.machineName())
                    .label(Batch.Label.OPERATOR, batch.operator())
                    .label(Batch.Label.RECIPE, plan.recipe())
                    .label(Batch.Label.PURPOSE, written.purpose())
                    .plan(plan(plan));
        }
        written(written.note()).ifPresent(note -> builder.label(Batch.Label.NOTE, note));
        mark(builder, MarkKind.YELLOWING, batch.marks().yellowing());
        mark(builder, MarkKind.FIRST_CRACK_START, batch.marks().firstCrackStart());
        mark(builder, MarkKind.FIRST_CRACK_END, batch.marks().firstCrackEnd());
        mark(builder, MarkKind.DROP, batch.marks().drop());
        curves(builder, batch.curve());
        return builder.build();
    }

    private BatchConditions conditions(VirtualBatch batch, Written written) {
        Room room = batch.conditions().room();
        PlannedBatch plan = batch.plan();
        Optional<Elapsed> warmUp = full && plan.positionInDay() == 1
                ? Optional.of(Elapsed.seconds(60 * rounded(plan.warmUp(), 0)))
                : Optional.empty();
        return new BatchConditions(
                Optional.of(mass(plan.greenMass())),
                written.roastedMass().map(OpenedLogbook::mass),
                Optional.of(temperature(plan.chargeReading(), 0)),
                full ? Optional.of(temperature(batch.roast().charge().greenTemperature(), 0)) : Optional.empty(),
                full ? Optional.of(temperature(room.temperature(), 1)) : Optional.empty(),
                full ? OptionalDouble.of(rounded(100 * room.humidity(), 0) / 100) : OptionalDouble.empty(),
                full ? OptionalDouble.of(rounded(room.pressure(), 0)) : OptionalDouble.empty(),
                warmUp);
    }

    private BatchPlan plan(PlannedBatch plan) {
        return switch (plan.plan()) {
            case CHANCE -> new BatchPlan(Optional.of(temperature(plan.meantDrop(), 1)), BatchPlan.PlannedBy.CHANCE);
            case CHOICE -> new BatchPlan(Optional.of(temperature(plan.meantDrop(), 1)), BatchPlan.PlannedBy.CHOICE);
            case UNWRITTEN -> BatchPlan.NOT_WRITTEN;
        };
    }

    private void curves(Batch.Builder builder, LoggedCurve logged) {
        boolean seconds = story.writing().times() == Story.Writing.Times.SECONDS;
        List<LoggedCurve.Reading> kept = logged.readings().stream()
                .filter(reading -> seconds || reading.seconds() >= 0)
                .toList();
        int decimals = seconds ? 1 : 0;
        builder.curve(
                Quantity.BEAN_TEMPERATURE,
                curve(
                        kept,
                        decimals,
                        Quantity.BEAN_TEMPERATURE,
                        Unit.TEMPERATURE,
                        r -> r.bean() == Logger.SENTINEL
                                ? Double.NaN
                                : temperature(r.bean(), decimals).celsius()));
        if (story.writing().airProbe() == Story.Writing.AirProbe.MEASURED) {
            builder.curve(
                    Quantity.AIR_TEMPERATURE,
                    curve(
                            kept,
                            decimals,
                            Quantity.AIR_TEMPERATURE,
                            Unit.TEMPERATURE,
                            r -> temperature(r.air(), 1).celsius()));
            builder.curve(
                    Quantity.GAS,
                    curve(kept, decimals, Quantity.GAS, Unit.labelled("%"), r -> rounded(100 * r.gas(), 0)));
            builder.curve(
                    Quantity.AIRFLOW,
                    curve(kept, decimals, Quantity.AIRFLOW, Unit.labelled("%"), r -> rounded(100 * r.airflow(), 0)));
        }
    }

    private static Curve curve(
            List<LoggedCurve.Reading> readings,
            int decimals,
            Quantity quantity,
            Unit unit,
            ToDoubleFunction<LoggedCurve.Reading> value) {
        double[] times = new double[readings.size()];
        double[] values = new double[readings.size()];
        int size = 0;
        for (LoggedCurve.Reading reading : readings) {
            double shown = value.applyAsDouble(reading);
            if (!Double.isNaN(shown)) {
                times[size] = rounded(reading.seconds(), decimals);
                values[size] = shown;
                size++;
            }
        }
        return Curve.of(
                quantity.words(), unit, java.util.Arrays.copyOf(times, size), java.util.Arrays.copyOf(values, size));
    }

    private static void mark(Batch.Builder builder, MarkKind kind, double seconds) {
        if (!Double.isNaN(seconds)) {
            builder.writtenMark(kind, Elapsed.seconds(StrictMath.rint(seconds)));
        }
    }

    private static Lot lot(VirtualLot lot) {
        return new Lot(
                lot.name(),
                Optional.of(lot.origin()),
                Optional.of(lot.process()),
                written(lot.variety()),
                Optional.empty(),
                Optional.of(lot.harvestedOn()),
                Optional.of(lot.arrivedOn()),
                Optional.empty(),
                Optional.of(Integer.toString(lot.screenSize())),
                OptionalDouble.of(rounded(lot.beans().moistureShare() * 100, 1) / 100),
                OptionalDouble.of(rounded(lot.beans().density(), 0)),
                Optional.empty(),
                Map.of());
    }

    private List<CupScores> cups() {
        List<CupScores> cups = new ArrayList<>();
        for (VirtualCupping cupping : logbook.cuppings()) {
            LocalDate day = cupping.tastedOn();
            for (GivenScore score : cupping.scores()) {
                Map<String, Double> points = new LinkedHashMap<>();
                for (int a = 0; a < score.points().size(); a++) {
                    points.put(logbook.attributes().get(a), score.points().get(a));
                }
                cups.add(new CupScores(
                        cupping.name(),
                        day,
                        score.cupper(),
                        score.batch(),
                        full ? written(score.blindCode()) : Optional.empty(),
                        full ? Optional.of(Integer.toString(score.cup())) : Optional.empty(),
                        full ? OptionalInt.of(score.position()) : OptionalInt.empty(),
                        points,
                        Optional.empty()));
            }
        }
        return cups;
    }

    private List<Cupping> cuppings() {
        List<Cupping> cuppings = new ArrayList<>();
        for (VirtualCupping cupping : full ? logbook.cuppings() : List.<VirtualCupping>of()) {
            boolean blind = cupping.blind() == VirtualCupping.Blind.YES;
            boolean before = cupping.beforeDiscussion() == VirtualCupping.Talk.SCORED_BEFORE;
            cuppings.add(new Cupping(
                    cupping.name(),
                    blind ? Cupping.Said.YES : Cupping.Said.NO,
                    before ? Cupping.Said.YES : Cupping.Said.NO,
                    Map.of()));
        }
        return cuppings;
    }

    private Temperature temperature(double celsius, int decimals) {
        return Temperature.of(rounded(unit.fromCelsius(celsius), decimals), unit);
    }

    private static Mass mass(double kilograms) {
        return Mass.of(rounded(kilograms, 3), MassUnit.KILOGRAM);
    }

    private static double rounded(double value, int decimals) {
        return Decimals.exact(value, decimals).doubleValue();
    }

    private static Optional<String> written(String text) {
        return text.isEmpty() ? Optional.empty() : Optional.of(text);
    }
}
