package parchment.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.quantity.Elapsed;
import parchment.stats.linear.Robust;

/**
 * Lists when a control was moved, from what to what.
 *
 * <p>A move that is under way (a slow turn of a valve, a slider that is dragged) counts as one step, from the level that was held
 * before to the one held after. A change that comes back within {@value #SETTLED_SECONDS} seconds is no step. Changes smaller than
 * half the control's own resolution, or than four times its noise, are not seen.
 */
public final class ControlSteps implements Showable {
    /** Seconds that a control must be held for a level to count; common practice, no source. */
    public static final double SETTLED_SECONDS = 15;

    private static final double NOISE_FACTOR = 4;

    /**
     * Holds one move of a control.
     *
     * @param atSeconds when it began to move
     * @param untilSeconds when it had settled; the same as {@code atSeconds} for a sudden move
     * @param from the level held before
     * @param to the level held after
     */
    public record Step(double atSeconds, double untilSeconds, double from, double to) {

        /** Returns the size of the move, negative for a reduction. */
        public double change() {
            return to - from;
        }
    }

    private final Curve control;
    private final double smallestChange;
    private final List<Step> list;

    private ControlSteps(Curve control, double smallestChange, List<Step> list) {
        this.control = control;
        this.smallestChange = smallestChange;
        this.list = List.copyOf(list);
    }

    /** Finds the steps of a control, with the smallest change that counts taken from the readings. */
    public static ControlSteps of(Curve control) {
        double[] values = control.values();
        double[] changes = new double[Math.max(0, values.length - 1)];
        for (int i = 0; i < changes.length; i++) {
            changes[i] = values[i + 1] - values[i];
        }
        // Differences of two noisy readings are wider than the noise by the root of two; a held control has none at
        // all.
        double noise = changes.length == 0 ? 0 : Robust.medianAbsoluteDeviation(changes) / Math.sqrt(2);
        return of(control, Math.max(NOISE_FACTOR * noise, 0.5 * LoggerStep.of(values)));
    }

    /**
     * Finds the steps of a control that are larger than the given change, on the control's own scale.
     *
     * @throws IllegalArgumentException if the change is negative or missing
     */
    public static ControlSteps of(Curve control, double smallestChange) {
        if (!(smallestChange >= 0)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "The steps of a control need a smallest change of 0 or more; it was given %s.",
                    smallestChange));
        }
        List<Step> steps = new ArrayList<>();
        double[] values = control.values();
        int held = 0;
        int i = 1;
        while (i < control.size()) {
            if (values[i] == values[i - 1] && i - 1 > held) {
                i++;
                continue;
            }
            double level = level(values, held, i);
            if (Math.abs(control.valueAt(i) - level) <= smallestChange) {
                i++;
                continue;
            }
            int settled = i;
            while (settled < control.size() && !holds(control, settled, smallestChange)) {
                settled++;
            }
            if (settled >= control.size()) {
                settled = control.size() - 1;
            }
            double to = level(values, settled, heldUntil(control, settled, smallestChange));
            if (Math.abs(to - level) > smallestChange) {
                steps.add(new Step(control.secondsAt(i), control.secondsAt(settled), level, to));
                held = settled;
            }
            i = Math.max(i + 1, settled);
        }
        return new ControlSteps(control, smallestChange, steps);
    }

    /** Tells whether the control stays where it is at a reading for long enough, or until the log ends. */
    private static boolean holds(Curve control, int at, double tolerance) {
        double until = control.secondsAt(at) + SETTLED_SECONDS;
        for (int i = at + 1; i < control.size() && control.secondsAt(i) < until; i++) {
            if (Math.abs(control.valueAt(i) - control.valueAt(at)) > tolerance) {
                return false;
            }
        }
        return true;
    }

    private static int heldUntil(Curve control, int from, double tolerance) {
        int to = from + 1;
        while (to < control.size()
                && control.secondsAt(to) <= control.secondsAt(from) + SETTLED_SECONDS
                && Math.abs(control.valueAt(to) - control.valueAt(from)) <= tolerance) {
            to++;
        }
        return to;
    }

    /** The median of the last readings held, so that a noisy gauge has one level. */
    private static double level(double[] values, int from, int to) {
        int first = Math.max(from, to - 15);
        return Robust.median(Arrays.copyOfRange(values, first, to));
    }

    /** Returns the steps in order of time. */
    public List<Step> list() {
        return list;
    }

    /** Returns the steps from one time to another, both included. */
    public ControlSteps between(double fromSeconds, double toSeconds) {
        return new ControlSteps(
                control,
                smallestChange,
                list.stream()
                        .filter(s -> s.atSeconds() >= fromSeconds && s.atSeconds() <= toSeconds)
                        .toList());
    }

    /** Returns the control's readings. */
    public Curve control() {
        return control;
    }

    /** Returns the change that a move must exceed to count, on the control's own scale. */
    public double smallestChange() {
        return smallestChange;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT, "%s: moved %d %s", control.name(), list.size(), list.size() == 1 ? "time" : "times");
    }

    private Table table() {
        String unit = control.unit().toString();
        return Table.titled(toString())
                .withText("at", list, s -> Elapsed.seconds(s.atSeconds()).toString())
                .withNumber("from", unit, control.unit().digits(), list, Step::from)
                .withNumber("to", unit, control.unit().digits(), list, Step::to)
                .withNumber("took", "s", 0, list, s -> s.untilSeconds() - s.atSeconds());
    }

    @Override
    public String text() {
        return list.isEmpty() ? toString() : table().text();
    }

    @Override
    public java.util.Optional<String> html() {
        return table().html();
    }
}
