package parchment.logbook;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.curve.Curve;
import parchment.curve.SmoothCurve;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.sheet.Header;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Makes curves of the readings of one file: units, and whether a unit contradicts its values. */
final class CurveBuilder {
    /** Hottest bean temperature that is taken for one, in degrees Celsius; nothing is dropped above 260 (common practice, no source). */
    private static final double HOTTEST_BEANS = 300;

    /** Coolest peak of a bean temperature that is taken for a roast's; none is dropped below 170 (common practice, no source). */
    private static final double COOLEST_PEAK = 140;

    private static final double HOTTEST_AIR = 700;
    private static final double WRONG_SHARE = 0.05;

    private CurveBuilder() {}

    static CurveFile.Result build(
            CurveColumns columns,
            Readings readings,
            int[] order,
            double start,
            ColumnChecks checks,
            ProblemLog problems) {
        Map<Quantity, Curve> known = new EnumMap<>(Quantity.class);
        Map<String, Curve> others = new LinkedHashMap<>();
        Optional<TemperatureUnit> beanUnit = Optional.empty();
        boolean beanRefused = false;
        for (int c = 0; c < columns.columns().size(); c++) {
            CurveColumns.Column column = columns.columns().get(c);
            if (checks.holdsWords(c)) {
                continue;
            }
            Samples samples = thinned(samples(readings, order, start, c), column, problems);
            if (samples.seconds.length == 0) {
                continue;
            }
            Optional<Quantity> quantity = column.quantity();
            if (quantity.isEmpty()) {
                if (others.putIfAbsent(column.heading(), extra(column, samples)) != null) {
                    problems.add(0, column.heading(), "the same column twice", "one of them", "the first one read");
                }
            } else if (quantity.get().isControl()) {
                known.put(quantity.get(), samples.curve(quantity.get().words(), label(column)));
            } else if (quantity.get() == Quantity.BEAN_TEMPERATURE) {
                Optional<TemperatureUnit> unit = beanUnit(column, samples, problems);
                beanRefused = unit.isEmpty();
                beanUnit = unit;
                fewReadings(column, samples, problems);
                flat(column, samples, problems);
                unit.ifPresent(u -> known.put(
                        quantity.get(), samples.in(u).curve(quantity.get().words(), Unit.TEMPERATURE)));
            } else {
                air(column, samples, beanUnit, beanRefused, problems)
                        .ifPresent(curve -> known.put(quantity.get(), curve));
            }
        }
        if (!known.containsKey(Quantity.BEAN_TEMPERATURE) && !beanRefused) {
            problems.add(
                    0, "", "no bean temperature", "a column 'bean temperature [°C]' with readings", "kept without it");
        }
        return new CurveFile.Result(new CurveSet(known, others), beanUnit);
    }

    private static void fewReadings(CurveColumns.Column column, Samples samples, ProblemLog problems) {
        if (samples.seconds.length < SmoothCurve.FEWEST_READINGS) {
            problems.add(
                    0,
                    column.heading(),
                    Words.count(samples.seconds.length, "usable reading", "usable readings") + ", too few to work with",
                    "bean temperatures at three times or more",
                    "kept; no mark is looked for on this curve");
        }
    }

    private static void flat(CurveColumns.Column column, Samples samples, ProblemLog problems) {
        if (samples.seconds.length >= SmoothCurve.FEWEST_READINGS
                && Arrays.stream(samples.values).allMatch(value -> value == samples.values[0])) {
            problems.add(
                    0,
                    column.heading(),
                    Words.count(samples.seconds.length, "reading", "readings") + " that are always the same, "
                            + Numbers.written(samples.values[0]),
                    "bean temperatures that change; was the probe connected?",
                    "kept as written");
        }
    }

    private static Unit label(CurveColumns.Column column) {
        String unit = column.header().unit();
        return Unit.labelled(column.header().plainUnit().equals("rpm") ? "1/min" : unit);
    }

    private static Curve extra(CurveColumns.Column column, Samples samples) {
        Optional<TemperatureUnit> unit = Header.temperatureUnit(column.header().plainUnit());
        return unit.isPresent() && column.header().brackets() != Header.Brackets.NONE
                ? samples.in(unit.get()).curve(column.heading(), Unit.TEMPERATURE)
                : samples.curve(column.heading(), Unit.labelled(column.header().unit()));
    }

    /** Returns the scale of the bean temperature; empty if the column cannot be believed on the scale it states. */
    private static Optional<TemperatureUnit> beanUnit(
            CurveColumns.Column column, Samples samples, ProblemLog problems) {
        Optional<TemperatureUnit> stated =
                Header.temperatureUnit(column.header().plainUnit());
        double highest = samples.highButForSpikes();
        if (stated.isEmpty()) {
            return unstated(column, highest, problems);
        }
        double celsius = stated.get().toCelsius(highest);
        boolean tooHot = celsius > HOTTEST_BEANS;
        boolean otherScale =
                stated.get() != TemperatureUnit.CELSIUS && celsius < COOLEST_PEAK && highest > COOLEST_PEAK;
        if (!tooHot && !otherScale) {
            return stated;
        }
        problems.add(
                0,
                column.heading(),
                String.format(
                        Locale.ROOT,
                        "readings up to %.0f %s",
                        highest,
                        stated.get().symbol()),
                "a bean temperature on that scale; is it " + (tooHot ? "°F" : "°C") + "? Then write so in the heading",
                "the temperatures of this file left out");
        return Optional.empty();
    }

    private static Optional<TemperatureUnit> unstated(CurveColumns.Column column, double highest, ProblemLog problems) {
        // Drops lie between 170 and 260 °C, which is 340 to 500 °F: between the two nothing is dropped on either scale.
        Optional<TemperatureUnit> fits = highest >= COOLEST_PEAK && highest <= 280
                ? Optional.of(TemperatureUnit.CELSIUS)
                : highest >= 330 && highest <= 572 ? Optional.of(TemperatureUnit.FAHRENHEIT) : Optional.empty();
        problems.add(
                0,
                column.heading(),
                column.header().unit().isEmpty()
                        ? "no unit"
                        : "the unit " + Words.quote(column.header().unit()),
                Field.Kind.TEMPERATURE.units(),
                fits.map(unit -> String.format(
                                Locale.ROOT,
                                "read in %s, which alone fits readings up to %.0f",
                                unit.symbol(),
                                highest))
                        .orElse("the temperatures of this file left out"));
        return fits;
    }

    private static Optional<Curve> air(
            CurveColumns.Column column,
            Samples samples,
            Optional<TemperatureUnit> beanUnit,
            boolean beanRefused,
            ProblemLog problems) {
        Optional<TemperatureUnit> stated =
                Header.temperatureUnit(column.header().plainUnit());
        Optional<TemperatureUnit> unit = stated.or(() -> beanUnit);
        if (beanRefused) {
            return Optional.empty();
        }
        if (stated.isEmpty()) {
            problems.add(
                    0,
                    column.heading(),
                    column.header().unit().isEmpty()
                            ? "no unit"
                            : "the unit " + Words.quote(column.header().unit()),
                    Field.Kind.TEMPERATURE.units(),
                    unit.map(u -> "read in " + u.symbol() + ", the unit of the bean temperature")
                            .orElse("column left out"));
        } else if (stated.get().toCelsius(samples.highButForSpikes()) > HOTTEST_AIR) {
            problems.add(
                    0,
                    column.heading(),
                    String.format(
                            Locale.ROOT,
                            "readings up to %.0f %s",
                            samples.highButForSpikes(),
                            stated.get().symbol()),
                    "an air temperature on that scale",
                    "column left out");
            return Optional.empty();
        }
        return unit.map(u -> samples.in(u).curve(Quantity.AIR_TEMPERATURE.words(), Unit.TEMPERATURE));
    }

    /** Keeps so many readings as a roast can need: the work of a smooth grows with readings times those of its window. */
    private static Samples thinned(Samples samples, CurveColumns.Column column, ProblemLog problems) {
        int count = samples.seconds.length;
        if (count <= Bounds.MOST_READINGS_KEPT) {
            return samples;
        }
        int every = (count + Bounds.MOST_READINGS_KEPT - 1) / Bounds.MOST_READINGS_KEPT;
        double[] seconds = new double[(count + every - 1) / every];
        double[] values = new double[seconds.length];
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = samples.seconds[i * every];
            values[i] = samples.values[i * every];
        }
        problems.add(
                0,
                column.heading(),
                Words.count(count, "reading", "readings"),
                "at most " + Bounds.MOST_READINGS_KEPT + ", which is more than a roast needs",
                "one of every " + every + " kept");
        return new Samples(seconds, values);
    }

    private static Samples samples(Readings readings, int[] order, double start, int column) {
        double[] seconds = new double[order.length];
        double[] values = new double[order.length];
        int size = 0;
        for (int i : order) {
            double value = readings.valueAt(column, i);
            if (!Double.isNaN(value)) {
                seconds[size] = readings.secondsAt(i) - start;
                values[size++] = value;
            }
        }
        return new Samples(Arrays.copyOf(seconds, size), Arrays.copyOf(values, size));
    }

    private static final class Samples {
        private final double[] seconds;
        private final double[] values;

        Samples(double[] seconds, double[] values) {
            this.seconds = seconds;
            this.values = values;
        }

        Samples in(TemperatureUnit unit) {
            if (unit == TemperatureUnit.CELSIUS) {
                return this;
            }
            return new Samples(
                    seconds, Arrays.stream(values).map(unit::toCelsius).toArray());
        }

        Curve curve(String name, Unit unit) {
            return Curve.of(name, unit, seconds, values);
        }

        /** Returns the reading that one in twenty exceeds: a probe that spikes does not make a column contradict its unit. */
        double highButForSpikes() {
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            return sorted[(int) Math.floor((sorted.length - 1) * (1 - WRONG_SHARE))];
        }
    }
}
