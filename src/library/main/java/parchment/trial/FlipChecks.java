package parchment.trial;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.feature.BatchTable;
import parchment.feature.Features;
import parchment.feature.path.BatchPath;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;
import parchment.logbook.written.BatchPlan;
import parchment.logbook.written.Machine;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.trial.sealed.DrawnLine;
import parchment.trial.sealed.TrialControl;

/**
 * Holds both ends of a draw against what was tried, what can be sold, and what the maker allows: a reason in the roaster's words for each that
 * does not hold, and a line for the plan for each that does.
 */
final class FlipChecks {
    /** How many batches must have come out at an end or beyond it: three, a choice of this project. */
    static final int TRIED_AT_LEAST = 3;

    /** How many batches with a written aim tell how closely it is hit: ten, a choice of this project. */
    static final int AIMS_AT_LEAST = 10;

    /** A step is at least so many of the roaster's own errors. */
    static final double ERRORS_IN_A_STEP = 3;

    private static final double ROUNDING = 1e-9;

    private final TrialControl control;
    private final String unit;
    private final double low;
    private final double high;
    private final double step;
    private final FlipLimits limits;
    private final Logbook logbook;
    private final TemperatureUnit reader;
    private final List<String> reasons = new ArrayList<>();
    private final List<String> held = new ArrayList<>();

    private FlipChecks(
            TrialControl control, String unit, double middle, double step, FlipLimits limits, Logbook logbook) {
        this.control = control;
        this.unit = unit;
        this.low = middle - step;
        this.high = middle + step;
        this.step = step;
        this.limits = limits;
        this.logbook = logbook;
        this.reader = logbook.readerUnit();
    }

    static FlipChecks of(
            TrialControl control, String unit, double middle, double step, FlipLimits limits, Logbook logbook) {
        FlipChecks checks = new FlipChecks(control, unit, middle, step, limits, logbook);
        checks.tried();
        checks.sellable();
        checks.allowed();
        checks.air();
        checks.hits();
        return checks;
    }

    /** Returns why nothing may be drawn, a sentence or two each; empty if all holds. */
    List<String> reasons() {
        return List.copyOf(reasons);
    }

    /** Returns what was held, a line each. */
    List<String> held() {
        return List.copyOf(held);
    }

    private boolean isGas() {
        return control == TrialControl.FIRST_GAS;
    }

    private String told(double value) {
        return isGas()
                ? (DrawnLine.target(value) + " " + unit).strip()
                : Temperature.celsius(value).format(reader);
    }

    private String toldStep(double value) {
        return isGas()
                ? (DrawnLine.target(value) + " " + unit).strip()
                : String.format(
                        Locale.ROOT, "%.2f %s", reader.fromCelsius(value) - reader.fromCelsius(0), reader.symbol());
    }

    /** What the control came out at in each batch; NaN where that cannot be read. */
    private double[] values() {
        return switch (control) {
            case DROP_TEMPERATURE ->
                BatchTable.of(logbook, Features.dropTemperature()).values(Features.dropTemperature());
            case CHARGE_TEMPERATURE ->
                BatchTable.of(logbook, Features.chargeTemperature()).values(Features.chargeTemperature());
            case FIRST_GAS ->
                paths(path -> path.curve(Quantity.GAS)
                        .filter(curve -> !curve.isEmpty())
                        .filter(curve -> curve.unit().symbol(reader).equals(unit))
                        .map(FlipChecks::first)
                        .orElse(Double.NaN));
        };
    }

    private static double first(Curve gas) {
        double[] seconds = gas.seconds();
        for (int i = 0; i < seconds.length; i++) {
            if (seconds[i] >= 0 && Double.isFinite(gas.valueAt(i))) {
                return gas.valueAt(i);
            }
        }
        return Double.NaN;
    }

    private double[] paths(ToDoubleFunction<BatchPath> value) {
        return BatchPath.of(logbook).stream().mapToDouble(value).toArray();
    }

    private void tried() {
        double[] known =
                DoubleStream.of(values()).filter(Double::isFinite).sorted().toArray();
        long below =
                DoubleStream.of(known).filter(value -> value <= low + ROUNDING).count();
        long above =
                DoubleStream.of(known).filter(value -> value >= high - ROUNDING).count();
        if (below >= TRIED_AT_LEAST && above >= TRIED_AT_LEAST) {
            held.add("tried: " + below + " batches at " + DrawnLine.target(low) + " or below, " + above + " at "
                    + DrawnLine.target(high) + " or above");
            return;
        }
        String range = known.length == 0
                ? "no " + control.words() + " can be read in it"
                : "its batches came out between " + told(known[0]) + " and " + told(known[known.length - 1]);
        reasons.add("The logbook '" + logbook.name() + "' has not tried " + told(below < TRIED_AT_LEAST ? low : high)
                + (below < TRIED_AT_LEAST && above < TRIED_AT_LEAST ? " or " + told(high) : "")
                + ": three batches must have come out there or beyond, and " + range
                + ". Take another middle or a smaller step.");
    }

    private void sellable() {
        if (limits.sellLow().isEmpty()) {
            reasons.add("You have not said between which settings the coffee can be sold. Say it with"
                    + " sellableBetween(...): every batch of a trial is coffee that somebody drinks.");
            return;
        }
        within("can be sold", limits.sellLow().getAsDouble(), limits.sellHigh().getAsDouble());
    }

    private void within(String what, double from, double to) {
        if (low < from - ROUNDING || high > to + ROUNDING) {
            reasons.add("You said that " + told(from) + " to " + told(to) + " " + what + ", but the draw would reach "
                    + told(low < from - ROUNDING ? low : high) + ". Take another middle or a smaller step.");
        } else {
            held.add(what + ": " + DrawnLine.target(from) + " to " + DrawnLine.target(to));
        }
    }

    private void allowed() {
        if (limits.makerLow().isEmpty()) {
            reasons.add("You have not said what the machine's maker allows for the " + control.words()
                    + ". Look into the manual, and say it with makerAllowsBetween(...).");
            return;
        }
        within(
                "is allowed by the maker",
                limits.makerLow().getAsDouble(),
                limits.makerHigh().getAsDouble());
    }

    private OptionalDouble highestAir() {
        return limits.air().isPresent()
                ? limits.air()
                : logbook.machines().stream()
                        .map(Machine::highestAirTemperature)
                        .flatMap(found -> found.stream())
                        .mapToDouble(Temperature::celsius)
                        .min();
    }

    /** The highest reading that is no spike, smoothed by nothing: a limit is one for every second. */
    private static double hottestAir(BatchPath path) {
        return path.curve(Quantity.AIR_TEMPERATURE)
                .map(curve -> DoubleStream.of(CleanCurve.of(curve).kept().values())
                        .filter(Double::isFinite)
                        .max()
                        .orElse(Double.NaN))
                .orElse(Double.NaN);
    }

    /** The air runs ahead of the beans, and more so the hotter a roast ends or the more gas it gets. */
    private void air() {
        OptionalDouble highest = highestAir();
        if (highest.isEmpty()) {
            reasons.add(
                    "Neither the logbook's machines.csv nor you say how hot the air may become by the maker's limits."
                            + " Say it with makerAllowsAirUpTo(...).");
            return;
        }
        double[] values = values();
        double[] air = paths(FlipChecks::hottestAir);
        double hottest = Double.NaN;
        for (int i = 0; i < values.length; i++) {
            if (values[i] >= high - step - ROUNDING && Double.isFinite(air[i])) {
                hottest = Double.isNaN(hottest) ? air[i] : Math.max(hottest, air[i]);
            }
        }
        if (hottest > highest.getAsDouble()) {
            reasons.add("At " + told(high - step) + " and above the air has reached "
                    + Temperature.celsius(hottest).format(reader) + " in this logbook, but the maker allows "
                    + Temperature.celsius(highest.getAsDouble()).format(reader)
                    + ". Do not draw targets there: take a lower middle.");
        } else {
            held.add("air: at most " + DrawnLine.target(highest.getAsDouble()) + " °C allowed, "
                    + (Double.isNaN(hottest)
                            ? "and not logged: watch it"
                            : DrawnLine.target(hottest) + " °C reached from the middle up"));
        }
    }

    private void hits() {
        OptionalDouble error = limits.hits().isPresent() ? limits.hits() : ownError();
        if (error.isEmpty()) {
            reasons.add(
                    "The logbook has fewer than ten batches with a written aim of the " + control.words()
                            + ", so it does not tell how closely you hit it. Say it with hittingWithin(...), the usual miss to either side.");
        } else if (step < ERRORS_IN_A_STEP * error.getAsDouble() - ROUNDING) {
            double least = Math.ceil(ERRORS_IN_A_STEP * error.getAsDouble() * 10 - ROUNDING) / 10;
            reasons.add("You usually miss your aim by " + toldStep(error.getAsDouble())
                    + ", and a step must be at least three"
                    + " times that, or batches of different targets come out alike: take a step of " + toldStep(least)
                    + " or more, not " + toldStep(step) + ".");
        } else {
            held.add("usual miss of an aim: " + String.format(Locale.ROOT, "%.2f", error.getAsDouble())
                    + ", a third of the step or less");
        }
    }

    /** Where ten aims or more were drawn these count alone: an aim of one's own is often given up for what the nose says. */
    private OptionalDouble ownError() {
        OptionalDouble drawn = ownError(List.of(BatchPlan.PlannedBy.CHANCE));
        return drawn.isPresent() ? drawn : ownError(List.of(BatchPlan.PlannedBy.values()));
    }

    /** The middle size of a miss, scaled to a standard deviation as for a normal law: one lost batch does not count. */
    private OptionalDouble ownError(List<BatchPlan.PlannedBy> by) {
        double[] values = values();
        List<Batch> batches = logbook.batches();
        double[] misses = new double[values.length];
        Arrays.fill(misses, Double.NaN);
        for (int i = 0; i < values.length; i++) {
            double came = values[i];
            BatchPlan plan = batches.get(i).plan();
            misses[i] = plan.planned(control.words())
                    .filter(planned -> by.contains(plan.plannedBy()))
                    .map(planned -> Math.abs(came - planned.value()))
                    .orElse(Double.NaN);
        }
        double[] known =
                DoubleStream.of(misses).filter(Double::isFinite).sorted().toArray();
        return known.length < AIMS_AT_LEAST
                ? OptionalDouble.empty()
                : OptionalDouble.of(1.4826 * (known[(known.length - 1) / 2] + known[known.length / 2]) / 2);
    }
}
