package parchment.align;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Upkeep;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;

/** Makes invented roasts whose clocks, rates and controls are known: the bean temperature runs towards that of the air. */
final class InventedRoasts {
    static final double AIR = 260;
    static final double USUAL_OPENING = 300;

    private InventedRoasts() {}

    /**
     * A roast whose beans take up heat from air of 260 °C, faster once the airflow was opened.
     *
     * @param timeConstant seconds in which two thirds of the difference are made up
     * @param opening seconds after charge at which the air is opened, which makes the time constant shorter by a factor of 1.3
     */
    static Batch.Builder roast(String name, double timeConstant, double opening, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Double> seconds = new ArrayList<>();
        List<Double> celsius = new ArrayList<>();
        List<Double> air = new ArrayList<>();
        double bean = 75;
        double drop = Double.NaN;
        for (int t = 0; t <= 1200 && Double.isNaN(drop); t += 2) {
            double constant = t >= opening ? timeConstant / 1.3 : timeConstant;
            bean += t < 60 ? 0 : 2 * (AIR - bean) / constant;
            double probe = bean + 105 * Math.exp(-t / 14.0) + 0.1 * random.nextGaussian();
            seconds.add((double) t);
            celsius.add(probe);
            air.add(t >= opening ? 60.0 : 30.0);
            drop = bean >= 210 ? t : Double.NaN;
        }
        return Batch.named(name)
                .machine("drum")
                .curve(Quantity.BEAN_TEMPERATURE, curve("bean temperature", Unit.TEMPERATURE, seconds, celsius))
                .curve(Quantity.AIRFLOW, curve("airflow", Unit.labelled("%"), seconds, air))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(drop));
    }

    /** A noiseless roast on a clock of its own: the temperature at a stage, and the stage at each second. */
    static Batch.Builder onClock(String name, DoubleUnaryOperator stage, double drop, double... marks) {
        List<Double> seconds = new ArrayList<>();
        List<Double> celsius = new ArrayList<>();
        for (int t = 0; t <= drop; t += 2) {
            seconds.add((double) t);
            celsius.add(temperature(stage.applyAsDouble(t)));
        }
        Batch.Builder batch = Batch.named(name)
                .curve(Quantity.BEAN_TEMPERATURE, curve("bean temperature", Unit.TEMPERATURE, seconds, celsius))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(drop));
        if (marks.length == 2) {
            batch.writtenMark(MarkKind.YELLOWING, Elapsed.seconds(marks[0]));
            batch.writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(marks[1]));
        }
        return batch;
    }

    /** The temperature at a stage of the reference roast, whose clock runs from 0 to 600 s; its rate has a hump around 300 s. */
    static double temperature(double stage) {
        double hump = 12 / (1 + Math.exp(-(stage - 300) / 25));
        return 215 - 140 * Math.exp(-stage / 330) + 100 * Math.exp(-stage / 14) + hump;
    }

    private static Curve curve(String name, Unit unit, List<Double> seconds, List<Double> values) {
        return Curve.of(
                name,
                unit,
                seconds.stream().mapToDouble(Double::doubleValue).toArray(),
                values.stream().mapToDouble(Double::doubleValue).toArray());
    }

    /** Roasts of one lot, three a day, whose time constants and openings wander a little. */
    static List<Batch> batches(String prefix, int count, double timeConstant, String lot, int firstDay, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            batches.add(roast(
                            prefix + i,
                            timeConstant + 8 * random.nextGaussian(),
                            USUAL_OPENING + 5 * random.nextGaussian(),
                            seed + i)
                    .lot(lot)
                    .roastedAt(at(firstDay + i / 3, i % 3))
                    .build());
        }
        return batches;
    }

    static OffsetDateTime at(int day, int ofDay) {
        return OffsetDateTime.of(2025, 3, 1, 9, 0, 0, 0, ZoneOffset.UTC)
                .plusDays(day)
                .plusMinutes(30L * ofDay);
    }

    static Logbook logbook(List<Batch> batches, List<CupScores> cups, List<Upkeep> upkeep) {
        return Logbook.of(LogbookContents.ofBatches("invented", batches).toBuilder()
                .cups(cups)
                .upkeep(upkeep)
                .build());
    }

    static Logbook logbook(List<Batch> batches) {
        return logbook(batches, List.of(), List.of());
    }

    static LocalDate day(int day) {
        return at(day, 0).toLocalDate();
    }
}
