package parchment.feature.path;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.curve.CleanCurve;
import parchment.curve.ControlSteps;
import parchment.curve.Curve;
import parchment.curve.SmoothCurve;
import parchment.curve.measured.Passage;
import parchment.display.Interruption;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;

/**
 * Everything that features read of one batch, worked out once: marks, smoothed curves, control steps, its place in the day.
 *
 * <pre>{@code
 * BatchPath.of(logbook.lastWithCurve()).rateAtTemperature(150)
 * }</pre>
 *
 * <p>All times are in seconds since charge, temperatures in °C, rates in °C/min.
 */
public final class BatchPath {
    private final Phases phases;
    private final DayFacts day;
    private final Map<Quantity, String> usualLabels;
    private final Map<MarkKind, Mark> marks;
    private final Optional<SmoothCurve> air;
    private final Map<Quantity, ControlSteps> steps;

    private BatchPath(
            Phases phases,
            DayFacts day,
            Map<Quantity, String> usualLabels,
            Map<MarkKind, Mark> marks,
            Optional<SmoothCurve> air,
            Map<Quantity, ControlSteps> steps) {
        this.phases = phases;
        this.day = day;
        this.usualLabels = usualLabels;
        this.marks = marks;
        this.air = air;
        this.steps = steps;
    }

    /** Returns the path of one batch without its logbook: what depends on other batches is missing. */
    public static BatchPath of(Batch batch) {
        return of(Phases.of(batch), DayFacts.ALONE, Map.of());
    }

    /** Returns the paths of all batches of a logbook, in its order; worked out in parallel. */
    public static List<BatchPath> of(Logbook logbook) {
        List<Phases> phases = Phases.of(logbook);
        List<DayFacts> days = DayFacts.of(logbook, phases);
        Map<Quantity, String> labels = UsualLabels.of(logbook);
        Interruption caller = Interruption.ofCaller();
        return IntStream.range(0, phases.size())
                .parallel()
                .peek(i -> caller.check())
                .mapToObj(i -> of(phases.get(i), days.get(i), labels))
                .toList();
    }

    private static BatchPath of(Phases phases, DayFacts day, Map<Quantity, String> labels) {
        Map<MarkKind, Mark> marks = new EnumMap<>(MarkKind.class);
        phases.marks().forEach(mark -> marks.put(mark.kind(), mark));
        Mark drop = marks.get(MarkKind.DROP);
        double end = drop == null ? Double.POSITIVE_INFINITY : drop.seconds();
        Optional<SmoothCurve> air = phases.curve(Quantity.AIR_TEMPERATURE)
                .map(CleanCurve::of)
                .map(clean -> clean.between(0, end))
                .filter(clean -> !clean.kept().isEmpty())
                .map(SmoothCurve::of);
        Map<Quantity, ControlSteps> steps = new EnumMap<>(Quantity.class);
        for (Quantity quantity : Quantity.values()) {
            if (quantity.isControl()) {
                phases.curve(quantity)
                        .map(curve -> curve.between(0, end))
                        .filter(curve -> !curve.isEmpty())
                        .ifPresent(curve -> steps.put(quantity, ControlSteps.of(curve)));
            }
        }
        return new BatchPath(phases, day, labels, marks, air, steps);
    }

    /** Returns the batch. */
    public Batch batch() {
        return phases.batch();
    }

    /** Returns the marks and phases as they are, whatever marks were moved here. */
    public Phases phases() {
        return phases;
    }

    /** Returns one mark, or nothing if it was neither written nor found. */
    public Optional<Mark> mark(MarkKind kind) {
        return Optional.ofNullable(marks.get(kind));
    }

    /** Returns the time of a mark, or the sentence that says it is missing. */
    public Measured seconds(MarkKind kind) {
        Mark mark = marks.get(kind);
        return mark == null ? Measured.missing(kind.words() + " is missing.") : Measured.exact(mark.seconds());
    }

    /** Returns the time from one mark to a later one, in seconds. */
    public Measured secondsBetween(MarkKind from, MarkKind to) {
        Mark start = marks.get(from);
        Mark end = marks.get(to);
        if (start == null || end == null) {
            return Measured.missing((start == null ? from : to).words() + " is missing.");
        }
        double seconds = end.seconds() - start.seconds();
        return seconds > 0
                ? Measured.exact(seconds)
                : Measured.missing(to.words() + " (" + end.at() + ") does not lie after " + from.words() + " ("
                        + start.at() + ").");
    }

    /** Returns the same path with one mark moved by some seconds, the probe read again there. */
    public BatchPath withMarkMoved(MarkKind kind, double seconds) {
        Mark mark = marks.get(kind);
        if (mark == null || seconds == 0) {
            return this;
        }
        Map<MarkKind, Mark> moved = new EnumMap<>(marks);
        moved.put(
                kind,
                new Mark(
                        kind,
                        Elapsed.seconds(mark.seconds() + seconds),
                        mark.standardError(),
                        mark.source(),
                        mark.probe().map(p -> p.extended(seconds)),
                        mark.how()));
        return new BatchPath(phases, day, usualLabels, moved, air, steps);
    }

    /** Returns the smoothed bean temperature from charge to drop. */
    public Optional<SmoothCurve> bean() {
        return phases.bean();
    }

    /** Returns the smoothed air temperature from charge to drop. */
    public Optional<SmoothCurve> air() {
        return air;
    }

    /** Returns the smoothed bean temperature at a time, in °C. */
    public Measured beanTemperatureAt(double seconds) {
        return bean().map(curve -> Measured.of(curve.valueAt(seconds))).orElseGet(this::noBean);
    }

    /** Returns the rate of rise at a time, in °C/min. */
    public Measured rateAt(double seconds) {
        return bean().map(curve -> Measured.of(curve.slopeAt(seconds))).orElseGet(this::noBean);
    }

    /** Returns the smoothed bean temperature at a mark, in °C, the mark's time taken as exact. */
    public Measured beanTemperatureAt(MarkKind kind) {
        Mark mark = marks.get(kind);
        if (mark == null) {
            return Measured.missing(kind.words() + " is missing.");
        }
        return mark.probe()
                .map(p -> Measured.of(p.celsius(), p.standardError()))
                .orElseGet(() -> whyNothingAt(kind).orElseGet(() -> beanTemperatureAt(mark.seconds())));
    }

    /** Returns why nothing of the bean probe can be told at a mark; empty where it can be, or was not looked for. */
    public Optional<Measured> whyNothingAt(MarkKind kind) {
        return mark(kind)
                .flatMap(Mark::whyNoTemperature)
                .map(why -> Measured.missing("no bean temperature at " + kind.words() + ": " + why + "."));
    }

    /** Returns when the beans first rose to a temperature after the turning point, in seconds. */
    public Measured secondsAtTemperature(double celsius) {
        return bean().map(curve -> Measured.of(Passage.rising(curve, celsius, reader())))
                .orElseGet(this::noBean);
    }

    /** Returns the rate of rise where the beans first rose to a temperature, in °C/min. */
    public Measured rateAtTemperature(double celsius) {
        Measured at = secondsAtTemperature(celsius);
        return at.isMissing() ? at : rateAt(at.value());
    }

    /** Returns the moves of a control between charge and drop; empty if it was not logged. */
    public Optional<ControlSteps> steps(Quantity control) {
        return Optional.ofNullable(steps.get(control));
    }

    /** Returns a control's readings, or the reason why they cannot be compared with those of the other batches. */
    public Optional<String> whyNotComparable(Quantity control) {
        ControlSteps there = steps.get(control);
        if (there == null) {
            return Optional.of(control.words() + " was not logged.");
        }
        String label = there.control().unit().toString();
        String usual = usualLabels.getOrDefault(control, label);
        return label.equals(usual)
                ? Optional.empty()
                : Optional.of(control.words() + " is logged in '" + label + "' here, but in '" + usual
                        + "' in most batches; scales are not mixed.");
    }

    /** Returns where the batch stands in its day and season. */
    public DayFacts day() {
        return day;
    }

    /** Returns what was logged of a quantity, since charge. */
    public Optional<Curve> curve(Quantity quantity) {
        return phases.curve(quantity);
    }

    /** Returns the scale the reader wants temperatures on. */
    public TemperatureUnit reader() {
        return batch().readerUnit();
    }

    /** A few readings were logged, but no path. */
    public Measured noBean() {
        int readings = batch().beanTemperature().map(Curve::size).orElse(0);
        return Measured.missing(
                readings == 0
                        ? "no bean temperature was logged."
                        : "too little bean temperature was logged for a path (" + readings
                                + (readings == 1 ? " reading)." : " readings)."));
    }

    @Override
    public String toString() {
        return "Path of " + batch();
    }
}
