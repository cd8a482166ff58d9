package parchment.period;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleFunction;
import parchment.calendar.RoastCalendar;
import parchment.calendar.machine.MachineDays;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.Phases;
import parchment.phase.found.ChargeTemperature;
import parchment.phase.found.Mark;
import parchment.phase.found.ProbeReading;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.stats.linear.Robust;

/**
 * Reads from a machine's batches what the beans should not move: the turning point at like charge, first crack at like pace, and the
 * cold machine's first reading against the room, and the empty drum's against the probe in the air.
 */
final class Indicators {
    /** Fewest batches and roast days on which an indicator says anything. */
    private static final int LEAST_BATCHES = 30;

    /** Fewest batches for each column of the regression; common practice, no source. */
    private static final int PER_COLUMN = 3;

    private static final int LEAST_DAYS = 2 * ChangeSearch.SHORTEST + 2;
    /** Share of batches in which a column must be known to be used. */
    private static final double KNOWN = 0.85;
    /** A first reading within so many degrees of the room comes of a cold machine; common practice, no source. */
    private static final double COLD = 15;

    private static final double BEFORE_CHARGE = -120;

    /** Batches of a lot on either side that a reading is held against to see whether it is a slip. */
    private static final int AROUND = 5;

    /** Degrees and robust standard deviations by which a reading must lie apart to be one; common practice, no source. */
    private static final double LEAST_SLIP = 5;

    private static final double SPREADS_OF_SLIP = 5;

    private final MachineDays machine;
    private final List<Phases> phases;
    private final RoastCalendar calendar;

    private Indicators(MachineDays machine, List<Phases> all, RoastCalendar calendar) {
        this.machine = machine;
        this.phases = machine.rows().stream().map(all::get).toList();
        this.calendar = calendar;
    }

    /**
     * Reads a machine's indicators.
     *
     * @param all the marks of every batch of the logbook, in its order
     * @param airProbe the days on which the upkeep says that the probe in the air was changed
     */
    static List<Indicator> of(MachineDays machine, List<Phases> all, RoastCalendar calendar, List<LocalDate> airProbe) {
        Indicators indicators = new Indicators(machine, all, calendar);
        List<Indicator> found = new ArrayList<>();
        double[] turning = indicators.at(MarkKind.TURNING_POINT, ProbeReading::celsius);
        double[] crack = indicators.at(MarkKind.FIRST_CRACK_START, ProbeReading::celsius);
        double[] charge = indicators.read(one -> ChargeTemperature.of(one).value());
        boolean[] slips = indicators.slips(turning, crack, charge);
        double[] mass = indicators.of(
                batch -> batch.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN));
        indicators.addTo(
                found,
                "turning point",
                without(slips, turning),
                List.of(
                        new Beside("green mass", mass),
                        new Beside("charge temperature", charge),
                        new Beside(
                                "green temperature",
                                indicators.of(batch -> batch.conditions()
                                        .greenTemperature()
                                        .map(Temperature::celsius)
                                        .orElse(Double.NaN))),
                        new Beside("time since the last drop", indicators.sinceLastDrop()),
                        new Beside("room temperature", indicators.roomFromDayToDay())),
                List.of(batch -> batch.lot().orElse("")));
        indicators.addTo(
                found,
                "first crack",
                without(slips, crack),
                List.of(
                        new Beside("green mass", mass),
                        new Beside(
                                "rate of rise at first crack",
                                indicators.at(MarkKind.FIRST_CRACK_START, ProbeReading::rateOfRise)),
                        new Beside("room temperature", indicators.roomFromDayToDay())),
                List.of(
                        batch -> batch.lot().orElse(""),
                        batch -> batch.operator().orElse("")));
        indicators.addTo(found, "cold machine", indicators.coldReadings(), List.of(), List.of());
        double[] above = EmptyDrum.beanAboveAir(indicators.phases);
        List<Beside> besideAir = new ArrayList<>(List.of(
                new Beside("gas before charge", EmptyDrum.before(Quantity.GAS, indicators.phases)),
                new Beside("airflow before charge", EmptyDrum.before(Quantity.AIRFLOW, indicators.phases)),
                new Beside("time since the last drop", indicators.sinceLastDrop())));
        besideAir.addAll(indicators.since(airProbe));
        indicators.addTo(
                found, IndicatorByDay.EMPTY_DRUM, without(indicators.slips(above), above), besideAir, List.of());
        return found;
    }

    /** What else moves a reading: a column beside it, NaN where missing. */
    private record Beside(String name, double[] values) {}

    private double[] read(ToDoubleFunction<Phases> of) {
        return phases.stream().mapToDouble(of).toArray();
    }

    private double[] of(ToDoubleFunction<Batch> what) {
        return machine.batches().stream().mapToDouble(what).toArray();
    }

    private double[] at(MarkKind kind, ToDoubleFunction<ProbeReading> what) {
        return read(one ->
                one.mark(kind).flatMap(Mark::probe).map(what::applyAsDouble).orElse(Double.NaN));
    }

    private double[] room() {
        return of(batch ->
                batch.conditions().roomTemperature().map(Temperature::celsius).orElse(Double.NaN));
    }

    /** Returns what the room did from day to day; its slow course, which could stand for a change of the probe, is left to the search. */
    private double[] roomFromDayToDay() {
        return RoomCourse.of(machine.epochDays(), machine.dayNumbers(), room()).rest();
    }

    private double[] placeInDay() {
        return of(batch -> {
            OptionalInt place = calendar.batchOfTheDay(batch);
            return place.isPresent() ? place.getAsInt() : Double.NaN;
        });
    }

    /** Returns the time the drum stood empty; 0 for the first batch of a day: it has no drop before it, its own column stands for that. */
    private double[] sinceLastDrop() {
        double[] place = placeInDay();
        double[] empty =
                of(batch -> calendar.sinceLastDrop(batch).map(Elapsed::seconds).orElse(Double.NaN));
        for (int i = 0; i < empty.length; i++) {
            empty[i] = place[i] == 1 ? 0 : empty[i];
        }
        return empty;
    }

    /** Returns a column for each day on which something was done: 1 since, 0 before. */
    private List<Beside> since(List<LocalDate> days) {
        return days.stream()
                .map(day -> new Beside(
                        "since " + day,
                        of(batch ->
                                batch.roastDay().filter(on -> !on.isBefore(day)).isPresent() ? 1 : 0)))
                .toList();
    }

    /** Returns the first reading of the day less the room's temperature, where the machine was cold. */
    private double[] coldReadings() {
        double[] room = room();
        double[] out = new double[room.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = Double.NaN;
            boolean first = i == 0
                    || !machine.dayOfBatch().get(i).equals(machine.dayOfBatch().get(i - 1));
            Batch batch = machine.batches().get(i);
            if (first && batch.curve(Quantity.BEAN_TEMPERATURE).isPresent()) {
                Curve curve = batch.curve(Quantity.BEAN_TEMPERATURE).orElseThrow();
                if (!curve.isEmpty()
                        && curve.secondsAt(0) < BEFORE_CHARGE
                        && Math.abs(curve.valueAt(0) - room[i]) < COLD) {
                    out[i] = curve.valueAt(0) - room[i];
                }
            }
        }
        return out;
    }

    /**
     * Marks the batches in which a reading or the written charge is a slip: far from what the batches of its lot roasted around then read. A probe that
     * moved is none, for all that follow it read so.
     */
    private boolean[] slips(double[]... all) {
        boolean[] slip = new boolean[machine.batches().size()];
        for (double[] values : all) {
            double[] off = new double[slip.length];
            for (int i = 0; i < off.length; i++) {
                off[i] = values[i] - aroundOf(values, i);
            }
            double[] known =
                    java.util.Arrays.stream(off).filter(Double::isFinite).toArray();
            if (known.length == 0) {
                continue;
            }
            double spread = Robust.medianAbsoluteDeviation(known);
            for (int i = 0; i < off.length; i++) {
                slip[i] |= Math.abs(off[i]) > Math.max(LEAST_SLIP, SPREADS_OF_SLIP * spread);
            }
        }
        return slip;
    }

    /** Returns the median over the batches of the same lot nearest in time, as many before as after; NaN where there are too few. */
    private double aroundOf(double[] values, int batch) {
        Optional<String> lot = machine.batches().get(batch).lot();
        List<Double> around = new ArrayList<>();
        for (int step = -1; step <= 1; step += 2) {
            int taken = 0;
            for (int i = batch + step; i >= 0 && i < values.length && taken < AROUND; i += step) {
                if (Double.isFinite(values[i]) && machine.batches().get(i).lot().equals(lot)) {
                    around.add(values[i]);
                    taken++;
                }
            }
        }
        return around.size() < AROUND
                ? Double.NaN
                : Robust.median(around.stream().mapToDouble(value -> value).toArray());
    }

    private static double[] without(boolean[] slips, double[] values) {
        double[] out = values.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] = slips[i] ? Double.NaN : out[i];
        }
        return out;
    }

    private void addTo(
            List<Indicator> found,
            String name,
            double[] y,
            List<Beside> covariates,
            List<Function<Batch, String>> groups) {
        List<String> names = new ArrayList<>();
        List<IntToDoubleFunction> columns = new ArrayList<>();
        names.add("all");
        columns.add(row -> 1);
        groups.forEach(group -> dummies(group, y, names, columns));
        double[] position = placeInDay();
        if (!covariates.isEmpty()) {
            add("first batch of the day", row -> position[row] == 1 ? 1 : 0, names, columns);
            add("second batch of the day", row -> position[row] == 2 ? 1 : 0, names, columns);
        }
        for (Beside beside : covariates) {
            double[] values = beside.values();
            if (count(y, values) >= KNOWN * count(y, y)) {
                add(beside.name(), row -> values[row], names, columns);
            }
        }
        List<Integer> rows = new ArrayList<>();
        for (int i = 0; i < y.length; i++) {
            int row = i;
            if (Double.isFinite(y[i])
                    && columns.stream().allMatch(column -> Double.isFinite(column.applyAsDouble(row)))) {
                rows.add(i);
            }
        }
        long days = rows.stream().map(machine.dayOfBatch()::get).distinct().count();
        boolean few = covariates.isEmpty()
                ? rows.size() < LEAST_DAYS
                : rows.size() < Math.max(LEAST_BATCHES, PER_COLUMN * columns.size());
        if (few || days < LEAST_DAYS) {
            return;
        }
        List<Indicator.Numbers> kept = new ArrayList<>();
        for (IntToDoubleFunction column : columns) {
            double[] values = rows.stream().mapToDouble(column::applyAsDouble).toArray();
            kept.add(new Indicator.Numbers(kept.isEmpty() ? values : centred(values)));
        }
        double[] read = rows.stream().mapToDouble(row -> y[row]).toArray();
        double[] room = room();
        double celsius = covariates.isEmpty()
                ? rows.stream().mapToDouble(row -> room[row] + y[row]).average().orElse(COLD)
                : java.util.Arrays.stream(read).average().orElse(Double.NaN);
        found.add(new Indicator(name, celsius, rows, new Indicator.Numbers(read), kept, names));
    }

    private static void add(
            String name, IntToDoubleFunction column, List<String> names, List<IntToDoubleFunction> columns) {
        names.add(name);
        columns.add(column);
    }

    private static double[] centred(double[] values) {
        double mean = java.util.Arrays.stream(values).average().orElse(0);
        return java.util.Arrays.stream(values).map(v -> v - mean).toArray();
    }

    private static long count(double[] y, double[] values) {
        long count = 0;
        for (int i = 0; i < y.length; i++) {
            count += Double.isFinite(y[i]) && Double.isFinite(values[i]) ? 1 : 0;
        }
        return count;
    }

    /** Adds one column per group after the first; a group of one batch is its own column, which takes the batch out. */
    private void dummies(
            Function<Batch, String> group, double[] y, List<String> names, List<IntToDoubleFunction> columns) {
        Map<String, Integer> counts = new TreeMap<>();
        for (int i = 0; i < y.length; i++) {
            if (Double.isFinite(y[i])) {
                counts.merge(group.apply(machine.batches().get(i)), 1, Integer::sum);
            }
        }
        counts.keySet().stream().skip(1).forEach(name -> {
            names.add(name);
            columns.add(row -> group.apply(machine.batches().get(row)).equals(name) ? 1 : 0);
        });
    }
}
