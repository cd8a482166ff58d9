package parchment.feature;

import static parchment.logbook.MarkKind.CHARGE;
import static parchment.logbook.MarkKind.DROP;
import static parchment.logbook.MarkKind.FIRST_CRACK_START;
import static parchment.logbook.MarkKind.YELLOWING;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.curve.ControlSteps;
import parchment.curve.ControlSteps.Step;
import parchment.feature.kind.Family;
import parchment.feature.kind.Need;
import parchment.feature.kind.Role;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.quantity.Unit;

/** What the roaster moved, when, and how it stood. Levels are on the machine's own scale and never mixed across scales. */
final class ControlFeatures {
    private static final String OWN_SCALE = ", on the machine's own scale";

    static final Feature GAS_CUT_AFTER_YELLOWING = NamedFeature.of(
                    "first gas cut after yellowing",
                    Unit.SECONDS.withNaturalStep(30),
                    Family.CONTROLS,
                    "time from yellowing to the first reduction of the gas; negative where the gas was cut before yellowing",
                    path -> sinceMark(path, Quantity.GAS, YELLOWING, ControlFeatures::firstReduction))
            .using(YELLOWING)
            .needing(Need.GAS);
    // Counted back from the drop, a move's time follows from when the beans were dropped.
    static final Feature LAST_GAS_CUT_BEFORE_DROP = NamedFeature.of(
                    "last gas cut before drop",
                    Unit.SECONDS.withNaturalStep(30),
                    Family.CONTROLS,
                    "time from the last reduction of the gas to the drop",
                    path -> negated(sinceMark(path, Quantity.GAS, DROP, ControlFeatures::lastReduction)))
            .as(Role.FOLLOWS)
            .using(DROP)
            .needing(Need.GAS);
    static final Feature CONTROL_CHANGES = NamedFeature.of(
                    "number of control changes",
                    Unit.COUNT,
                    Family.CONTROLS,
                    "how often gas, heater, airflow or drum speed was moved between charge and drop, as far as they were logged",
                    ControlFeatures::count)
            .needing(Need.CONTROL, Need.DROP);
    static final Feature LAST_CHANGE_BEFORE_DROP = NamedFeature.of(
                    "last control change before drop",
                    Unit.SECONDS.withNaturalStep(30),
                    Family.CONTROLS,
                    "time from the last move of any logged control to the drop; short where the roaster corrected late",
                    ControlFeatures::lastChange)
            .as(Role.FOLLOWS)
            .using(DROP)
            .needing(Need.CONTROL);
    static final Feature GAS_IN_DRYING =
            level("gas in drying", Quantity.GAS, Need.GAS, CHARGE, YELLOWING, "from charge to yellowing");
    static final Feature GAS_IN_DEVELOPMENT = level(
            "gas in development",
            Quantity.GAS,
            Need.GAS,
            FIRST_CRACK_START,
            DROP,
            "from the start of first crack to the drop");
    static final Feature AIRFLOW_IN_DEVELOPMENT = level(
            "airflow in development",
            Quantity.AIRFLOW,
            Need.AIRFLOW,
            FIRST_CRACK_START,
            DROP,
            "from the start of first crack to the drop");
    static final Feature AIRFLOW_STEP_AFTER_FIRST_CRACK = NamedFeature.of(
                    "airflow opened after first crack",
                    Unit.SECONDS.withNaturalStep(30),
                    Family.CONTROLS,
                    "time from the start of first crack to the largest increase of the airflow; negative where the air was opened before",
                    path -> sinceMark(path, Quantity.AIRFLOW, FIRST_CRACK_START, ControlFeatures::largestIncrease))
            .using(FIRST_CRACK_START)
            .needing(Need.AIRFLOW);

    private ControlFeatures() {}

    static List<Feature> all() {
        return List.of(
                GAS_CUT_AFTER_YELLOWING,
                LAST_GAS_CUT_BEFORE_DROP,
                CONTROL_CHANGES,
                LAST_CHANGE_BEFORE_DROP,
                GAS_IN_DRYING,
                GAS_IN_DEVELOPMENT,
                AIRFLOW_IN_DEVELOPMENT,
                AIRFLOW_STEP_AFTER_FIRST_CRACK);
    }

    private static Feature level(String name, Quantity control, Need need, MarkKind from, MarkKind to, String words) {
        return NamedFeature.of(
                        name,
                        Unit.NONE.withDigits(1).withNaturalStep(1),
                        Family.CONTROLS,
                        "mean over time of the " + control.words() + " " + words + OWN_SCALE,
                        path -> {
                            Optional<String> why = path.whyNotComparable(control);
                            Measured stretch = path.secondsBetween(from, to);
                            if (why.isPresent() || stretch.isMissing()) {
                                return why.isPresent() ? Measured.missing(why.get()) : stretch;
                            }
                            return PathMeans.mean(
                                    path.steps(control).orElseThrow(),
                                    path.seconds(from).value(),
                                    path.seconds(to).value());
                        })
                .using(from, to)
                .needing(need);
    }

    private interface Pick {
        Optional<Step> from(List<Step> steps);
    }

    private static Optional<Step> firstReduction(List<Step> steps) {
        return steps.stream().filter(s -> s.change() < 0).findFirst();
    }

    private static Optional<Step> lastReduction(List<Step> steps) {
        return steps.stream().filter(s -> s.change() < 0).reduce((a, b) -> b);
    }

    private static Optional<Step> largestIncrease(List<Step> steps) {
        return steps.stream().filter(s -> s.change() > 0).max((a, b) -> Double.compare(a.change(), b.change()));
    }

    private static Measured sinceMark(BatchPath path, Quantity control, MarkKind kind, Pick pick) {
        Measured at = path.seconds(kind);
        Optional<ControlSteps> steps = path.steps(control);
        if (at.isMissing() || steps.isEmpty()) {
            return at.isMissing() ? at : Measured.missing(control.words() + " was not logged.");
        }
        return pick.from(steps.get().list())
                .map(step -> Measured.of(step.atSeconds() - at.value(), resolution(steps.get())))
                .orElseGet(() -> Measured.missing(String.format(
                        Locale.ROOT, "the %s was never moved that way between charge and drop.", control.words())));
    }

    /** A move is seen at the first reading after it. */
    private static double resolution(ControlSteps steps) {
        int n = steps.control().size();
        return n < 2 ? 0 : (steps.control().secondsAt(n - 1) - steps.control().secondsAt(0)) / (n - 1) / Math.sqrt(12);
    }

    private static Measured negated(Measured measured) {
        return measured.isMissing() ? measured : Measured.of(-measured.value(), measured.standardError());
    }

    private static Measured count(BatchPath path) {
        int logged = 0;
        int moves = 0;
        for (Quantity quantity : Quantity.values()) {
            Optional<ControlSteps> steps = path.steps(quantity);
            if (steps.isPresent()) {
                logged++;
                moves += steps.get().list().size();
            }
        }
        if (logged == 0) {
            return Measured.missing("no control was logged.");
        }
        Measured drop = path.seconds(DROP);
        return drop.isMissing() ? drop : Measured.exact(moves);
    }

    private static Measured lastChange(BatchPath path) {
        Measured drop = path.seconds(DROP);
        if (drop.isMissing()) {
            return drop;
        }
        Measured last = Measured.missing("no control was logged.");
        for (Quantity quantity : Quantity.values()) {
            Optional<ControlSteps> steps = path.steps(quantity);
            if (steps.isEmpty()) {
                continue;
            }
            if (steps.get().list().isEmpty()) {
                last = last.isMissing() ? Measured.missing("no control was moved between charge and drop.") : last;
                continue;
            }
            List<Step> list = steps.get().list();
            double since = drop.value() - list.get(list.size() - 1).atSeconds();
            if (last.isMissing() || since < last.value()) {
                last = Measured.of(since, resolution(steps.get()));
            }
        }
        return last;
    }
}
