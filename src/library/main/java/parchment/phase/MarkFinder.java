package parchment.phase;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.curve.SmoothCurve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.written.RoastLength;
import parchment.phase.found.Mark;
import parchment.phase.found.Source;
import parchment.quantity.Elapsed;
import parchment.stats.local.Autocovariance;

/** Puts the marks of one batch together: what was written, what the logger's clock says, what shows on the curve. */
final class MarkFinder {
    /** A logger's zero this close to the charge on the curve is taken as charge; common practice, no source. */
    static final double SAME_CLOCK_SECONDS = 6;

    /** Two marks, or a mark and the curve, contradict each other where they are this many joint standard errors apart: once in 370. */
    static final double ERRORS_APART = 3;

    private final Batch batch;
    private final MarkHabit habit;
    private final Map<MarkKind, Mark> marks = new EnumMap<>(MarkKind.class);
    private final Map<MarkKind, Mark> setAside = new EnumMap<>(MarkKind.class);
    private final List<String> notes = new ArrayList<>();
    private double zeroOnLogger;
    private Optional<OnCurve.Found> fall = Optional.empty();
    private CurveUse curve = CurveUse.USED;
    private @Nullable CleanCurve clean;
    private @Nullable SmoothCurve bean;

    private MarkFinder(Batch batch, MarkHabit habit) {
        this.batch = batch;
        this.habit = habit;
    }

    /** Whether what a batch's logger wrote is used. */
    enum CurveUse {
        USED,
        /** The clock of the log cannot be that of a roast. */
        SET_ASIDE
    }

    /**
     * What was found.
     *
     * @param marks marks in order of kind
     * @param setAside written marks that cannot be true beside another, and are not used
     * @param notes remarks
     * @param zeroOnLogger the logger's time of charge
     * @param curve whether what was logged is used
     * @param fall when the curve begins to fall at its end, since charge
     * @param clean the whole curve since charge
     * @param bean the smoothed roast, if it was logged
     */
    record Result(
            Map<MarkKind, Mark> marks,
            Map<MarkKind, Mark> setAside,
            List<String> notes,
            double zeroOnLogger,
            CurveUse curve,
            Optional<OnCurve.Found> fall,
            Optional<CleanCurve> clean,
            Optional<SmoothCurve> bean) {

        Result withNoise(Autocovariance noise) {
            return new Result(
                    marks,
                    setAside,
                    notes,
                    zeroOnLogger,
                    curve,
                    fall,
                    clean,
                    bean.map(smooth -> smooth.withNoise(noise)));
        }
    }

    /** Finds charge and the fall at the end, and takes what was written; the other batches' ends are needed to go on with {@link #place}. */
    static Result begin(Batch batch, MarkHabit habit) {
        MarkFinder finder = new MarkFinder(batch, habit);
        finder.run();
        return finder.result();
    }

    /** Decides on the drop, sets aside what cannot be true beside it, and smooths the roast from charge to drop. */
    static Result place(Batch batch, MarkHabit habit, Result begun, EndOfRoast ends) {
        MarkFinder finder = new MarkFinder(batch, habit).from(begun);
        finder.drop(ends);
        finder.contradictions();
        begun.clean().ifPresent(since -> {
            double end = finder.seconds(MarkKind.DROP);
            // Up to the fall the beans were in the drum, whether the pen was late or early.
            double until = finder.fall.map(OnCurve.Found::seconds).orElse(end);
            finder.bean = SmoothCurve.of(since.between(0, until > 0 ? until : Double.POSITIVE_INFINITY));
        });
        return finder.result();
    }

    /** Reads the turning point, and the probe at every mark, off the smoothed roast. */
    static Result read(Batch batch, MarkHabit habit, Result placed) {
        if (placed.clean().isEmpty() || placed.bean().isEmpty()) {
            return placed;
        }
        MarkFinder finder = new MarkFinder(batch, habit).from(placed);
        finder.read(placed.clean().get(), placed.bean().get());
        return finder.result();
    }

    private MarkFinder from(Result before) {
        marks.putAll(before.marks());
        setAside.putAll(before.setAside());
        notes.addAll(before.notes());
        zeroOnLogger = before.zeroOnLogger();
        curve = before.curve();
        fall = before.fall();
        clean = before.clean().orElse(null);
        bean = before.bean().orElse(null);
        return this;
    }

    private void run() {
        Optional<CleanCurve> cleaned = batch.beanTemperature()
                .filter(curve -> !curve.isEmpty())
                .map(curve -> CleanCurve.of(curve).in(batch.readerUnit()));
        Optional<CleanCurve> logged = cleaned.filter(curve -> curve.kept().size() >= SmoothCurve.FEWEST_READINGS);
        if (logged.isEmpty()) {
            cleaned.ifPresent(curve -> notes.add(String.format(
                    Locale.ROOT,
                    "Too few readings of the bean temperature can be used (%d, %d are needed): no mark is looked for on the curve.",
                    curve.kept().size(),
                    SmoothCurve.FEWEST_READINGS)));
            withoutACurve();
            return;
        }
        charge(logged.get());
        CleanCurve since = logged.get().withZeroAt(zeroOnLogger);
        fall = OnCurve.drop(since, RoastLength.SHORTEST_SECONDS);
        if (isNoRoast(since)) {
            return;
        }
        clean = since;
        written();
    }

    private void withoutACurve() {
        put(
                MarkKind.CHARGE,
                0,
                habit.standardError(MarkKind.CHARGE, batch),
                Source.WRITTEN,
                "written times count from it");
        written();
    }

    /** Sets a curve aside on which the roast would be shorter or longer than any: its clock counts something else than seconds. */
    private boolean isNoRoast(CleanCurve since) {
        double last = since.kept().secondsAt(since.kept().size() - 1);
        double drop = fall.map(OnCurve.Found::seconds).orElse(last);
        boolean isShort = last < RoastLength.SHORTEST_SECONDS;
        if (!isShort && drop <= RoastLength.LONGEST_SECONDS) {
            return false;
        }
        fall = Optional.empty();
        zeroOnLogger = 0;
        curve = CurveUse.SET_ASIDE;
        notes.clear();
        notes.add(String.format(
                Locale.ROOT,
                "By its curve this roast takes %s from charge to the end, %s: the curve is set aside, and only what was written counts."
                        + " Please check the unit of the times in its file.",
                Elapsed.seconds(drop),
                isShort ? "less than a minute" : "more than two hours"));
        withoutACurve();
        return true;
    }

    private void read(CleanCurve since, SmoothCurve roast) {
        bean = roast;
        if (!marks.containsKey(MarkKind.TURNING_POINT) && !ProbeAtMark.isTooSlow(since)) {
            TurningPoint.of(roast, seconds(MarkKind.DROP))
                    .flatMap(turn -> LateStart.seen(
                            turn, since, TurningPoint.narrow(roast).bandwidthSeconds()))
                    .ifPresent(found -> put(
                            MarkKind.TURNING_POINT,
                            found.seconds(),
                            found.standardError(),
                            Source.FOUND,
                            "lowest smoothed reading"));
        }
        SmoothCurve sharp = TurningPoint.narrow(roast);
        marks.replaceAll(
                (kind, mark) -> new ProbeAtMark(since, kind == MarkKind.TURNING_POINT ? sharp : roast, fall).of(mark));
    }

    private Result result() {
        return new Result(
                marks,
                setAside,
                notes,
                zeroOnLogger,
                curve,
                fall,
                Optional.ofNullable(clean),
                Optional.ofNullable(bean));
    }

    private void charge(CleanCurve logged) {
        Curve kept = logged.kept();
        double half = Double.isNaN(logged.interval()) ? 0 : 0.5 * logged.interval();
        Optional<Double> rough = OnCurve.atCharge(logged).map(last -> last + half);
        // Close to the logger's zero the exact onset decides nothing.
        Optional<OnCurve.Found> found = rough.flatMap(at -> Math.abs(at) > 0.5 * SAME_CLOCK_SECONDS
                ? OnCurve.charge(logged)
                : Optional.of(new OnCurve.Found(at, half)));
        double loggedError = habit.standardError(MarkKind.CHARGE, batch);
        if (found.isPresent() && Math.abs(found.get().seconds()) > SAME_CLOCK_SECONDS) {
            zeroOnLogger = found.get().seconds();
            notes.add(String.format(
                    Locale.ROOT,
                    "The curve shows the charge at %s on the logger's clock, not at 0:00; times here count from the charge on the"
                            + " curve, and written times are taken to count from it too.",
                    Elapsed.seconds(zeroOnLogger)));
            put(MarkKind.CHARGE, 0, found.get().standardError(), Source.FOUND, "onset of the sharp fall");
        } else if (found.isPresent()) {
            put(MarkKind.CHARGE, 0, loggedError, Source.LOGGED, "the curve falls there too");
        } else {
            unseenCharge(kept, loggedError, LateStart.of(batch, logged, habit));
        }
    }

    private void unseenCharge(Curve kept, double loggedError, LateStart late) {
        double first = kept.secondsAt(0);
        if (late.isByTheClock()) {
            put(MarkKind.CHARGE, 0, LateStart.CLOCK_ERROR_SECONDS, Source.LOGGED, late.how());
        } else if (first <= 60 && kept.secondsAt(kept.size() - 1) > 0) {
            put(MarkKind.CHARGE, 0, loggedError, Source.LOGGED, "");
            if (first < -SAME_CLOCK_SECONDS) {
                notes.add("No sharp fall shows at charge; the logger's time zero is taken as charge.");
            }
        } else {
            zeroOnLogger = first;
            notes.add(String.format(
                    Locale.ROOT,
                    "The log starts at %s on the logger's clock and shows no sharp fall; its first reading is taken as charge.",
                    Elapsed.seconds(first)));
            put(MarkKind.CHARGE, 0, 15, Source.ASSUMED, "first reading");
        }
        late.note().ifPresent(notes::add);
    }

    private void written() {
        for (MarkKind kind : MarkKind.values()) {
            Optional<Elapsed> at = batch.writtenMark(kind);
            if (at.isPresent() && kind != MarkKind.CHARGE) {
                put(kind, at.get().seconds(), habit.standardError(kind, batch), Source.WRITTEN, "");
            }
        }
    }

    /** A written drop stands unless the curve says otherwise by more than both may be off; unwritten, the curve or its end tells. */
    private void drop(EndOfRoast ends) {
        Mark written = marks.get(MarkKind.DROP);
        if (written != null) {
            double error = ends.writtenError(written.standardError());
            marks.put(
                    MarkKind.DROP,
                    new Mark(written.kind(), written.at(), error, written.source(), written.probe(), ""));
            double apart = fall.map(found -> Math.abs(found.seconds() - written.seconds()))
                    .orElse(0.0);
            double joint =
                    Math.hypot(error, fall.map(OnCurve.Found::standardError).orElse(0.0));
            if (apart <= ERRORS_APART * joint) {
                return;
            }
            setAside.put(MarkKind.DROP, written);
        }
        if (fall.isPresent()) {
            put(
                    MarkKind.DROP,
                    fall.get().seconds(),
                    fall.get().standardError(),
                    Source.FOUND,
                    "onset of the fall at the end" + (written == null ? "" : ", written at " + written.at()));
        } else if (clean != null) {
            Curve kept = clean.kept();
            double last = kept.secondsAt(kept.size() - 1);
            if (last > RoastLength.SHORTEST_SECONDS) {
                put(MarkKind.DROP, last - ends.lateSeconds(), ends.lateError(), Source.ASSUMED, ends.how());
            }
        }
    }

    /**
     * Sets aside what cannot be true beside another mark: what lies after the drop by more than both may be off, and both of two other
     * marks that are so much in the wrong order, for neither can be told to be the right one. Less than that is questioned and kept.
     */
    private void contradictions() {
        Mark drop = marks.get(MarkKind.DROP);
        marks.values().stream()
                .filter(mark -> MarkOrder.isAfterTheDrop(mark, drop))
                .forEach(mark -> setAside.put(mark.kind(), mark));
        setAside.keySet().stream().filter(kind -> kind != MarkKind.DROP).forEach(marks::remove);
        for (List<Mark> pair : MarkOrder.wrong(marks)) {
            if (MarkOrder.isBeyondErrors(pair.get(0), pair.get(1))
                    && pair.get(1).kind() != MarkKind.DROP) {
                pair.forEach(mark -> setAside.put(mark.kind(), mark));
            }
        }
        setAside.keySet().stream().filter(kind -> kind != MarkKind.DROP).forEach(marks::remove);
    }

    private void put(MarkKind kind, double seconds, double standardError, Source source, String how) {
        marks.put(kind, new Mark(kind, Elapsed.seconds(seconds), standardError, source, Optional.empty(), how));
    }

    private double seconds(MarkKind kind) {
        Mark mark = marks.get(kind);
        return mark == null ? Double.NaN : mark.seconds();
    }
}
