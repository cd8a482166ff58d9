package parchment.period;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.Upkeep;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;

/** A logbook of whole curves on one machine, "drum", whose probe reads otherwise from named days on: a row of a table of rules. */
public final class BuiltProbe {
    static final LocalDate FIRST = LocalDate.of(2025, 1, 6);
    private static final int BATCHES_A_DAY = 3;
    private static final int GAP = 5;
    /** About 63 and 188 °C in the shape below. */
    private static final int CRACK = 480;

    final int days;
    /** What the probe adds at the turning point and at first crack, by roast day from 0. */
    IntToDoubleFunction atTurningPoint = day -> 0;

    IntToDoubleFunction atFirstCrack = day -> 0;
    /** What the bean probe reads above the air probe in the empty drum, by roast day; neither is logged before charge where it is absent. */
    Optional<IntToDoubleFunction> emptyDrum = Optional.empty();

    IntFunction<String> lot = batch -> batch % 2 == 0 ? "one" : "two";
    List<Upkeep> upkeep = new ArrayList<>();
    boolean crackWritten = true;
    public double noise = 0.3;

    public BuiltProbe(int days) {
        this.days = days;
    }

    public static LocalDate day(int day) {
        return FIRST.plusDays((long) GAP * day);
    }

    public BuiltProbe step(int day, double size) {
        IntToDoubleFunction turning = atTurningPoint;
        IntToDoubleFunction crack = atFirstCrack;
        atTurningPoint = d -> turning.applyAsDouble(d) + (d >= day ? size : 0);
        atFirstCrack = d -> crack.applyAsDouble(d) + (d >= day ? size : 0);
        return this;
    }

    BuiltProbe stepAtFirstCrackOnly(int day, double size) {
        atFirstCrack = d -> d >= day ? size : 0;
        return this;
    }

    /** Lets both probes be logged in the empty drum; from a day on the bean probe reads so much more above the air's than before. */
    BuiltProbe stepInTheEmptyDrum(int day, double size) {
        emptyDrum = Optional.of(d -> d >= day ? size : 0);
        return this;
    }

    BuiltProbe ofLots(IntFunction<String> other) {
        lot = other;
        return this;
    }

    public BuiltProbe written(String what, LocalDate on) {
        return written("drum", what, on);
    }

    BuiltProbe written(String machine, String what, LocalDate on) {
        upkeep.add(new Upkeep(machine, on, what, Optional.empty()));
        return this;
    }

    public Logbook logbook() {
        Random random = new Random(41);
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < BATCHES_A_DAY * days; i++) {
            int day = i / BATCHES_A_DAY;
            double low = atTurningPoint.applyAsDouble(day) + noise * random.nextGaussian();
            double high = atFirstCrack.applyAsDouble(day) + noise * random.nextGaussian();
            Batch.Builder batch = Batch.named("B" + (i + 1))
                    .roastedAt(day(day).atTime(9 + i % BATCHES_A_DAY, 0).atOffset(ZoneOffset.UTC))
                    .machine("drum")
                    .lot(lot.apply(i))
                    .conditions(new BatchConditions(
                            Optional.of(Mass.kilograms(2)),
                            Optional.empty(),
                            Optional.of(Temperature.celsius(200)),
                            Optional.empty(),
                            Optional.empty(),
                            OptionalDouble.empty(),
                            OptionalDouble.empty(),
                            Optional.empty()))
                    .curve(Quantity.BEAN_TEMPERATURE, curve(low, high, emptyDrum.isPresent() ? 8 : 0))
                    .writtenMark(MarkKind.DROP, Elapsed.seconds(600));
            emptyDrum.ifPresent(above -> batch.curve(
                    Quantity.AIR_TEMPERATURE, air(200 - above.applyAsDouble(day) + noise * random.nextGaussian())));
            if (crackWritten) {
                batch.writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(CRACK));
            }
            batches.add(batch.build());
        }
        return Logbook.of(LogbookContents.ofBatches("built", batches).toBuilder()
                .upkeep(upkeep)
                .build());
    }

    /** The beans' rise, the probe's fall from the hot drum, and what it adds: all of one until two minutes, all of the other from five on. */
    private static Curve curve(double low, double high, int readingsBefore) {
        double[] seconds = IntStream.rangeClosed(-readingsBefore, 120)
                .mapToDouble(i -> 5 * i)
                .toArray();
        double[] values = Arrays.stream(seconds)
                .map(t -> t < 0
                        ? 200
                        : 215
                                - 150 * Math.exp(-t / 280)
                                + 135 * Math.exp(-t / 22)
                                + low
                                + (high - low) * Math.max(0, Math.min(1, (t - 120) / 180)))
                .toArray();
        return Curve.of("bean temperature", Unit.TEMPERATURE, seconds, values);
    }

    private static Curve air(double empty) {
        double[] seconds =
                IntStream.rangeClosed(-8, 120).mapToDouble(i -> 5 * i).toArray();
        double[] values =
                Arrays.stream(seconds).map(t -> t < 0 ? empty : 160 + t / 12).toArray();
        return Curve.of("air temperature", Unit.TEMPERATURE, seconds, values);
    }

    ProbePeriods periods() {
        return ProbePeriods.of(logbook());
    }
}
