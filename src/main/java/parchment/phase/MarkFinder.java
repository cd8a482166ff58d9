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
import parchment.curve.Smoothed;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;
import parchment.stats.Autocovariance;

/** Puts the marks of one batch together: what was written, what the logger's clock says, what shows on the curve. */
final class MarkFinder {
    /** A logger's zero this close to the charge on the curve is taken as charge; common practice, no source. */
    private static final double SAME_CLOCK_SECONDS = 6;

    /** How late a logger may be stopped after the drop; common practice, no source. */
    private static final double STOPPED_LATE_SECONDS = 5;

    private final Batch batch;
    private final MarkHabit habit;
    private final Map<MarkKind, Mark> marks = new EnumMap<>(MarkKind.class);
    private final List<String> notes = new ArrayList<>();
    private double zeroOnLogger;
    private @Nullable CleanCurve clean;
    private @Nullable SmoothCurve bean;

    private MarkFinder(Batch batch, MarkHabit habit) {
        this.batch = batch;
        this.habit = habit;
    }

    /** What was found: marks in order of kind, remarks, the logger's time of charge and the smoothed roast, if it was logged. */
    record Result(
            Map<MarkKind, Mark> marks,
            List<String> notes,
            double zeroOnLogger,
            Optional<CleanCurve> clean,
            Optional<SmoothCurve> bean) {

        Result withNoise(Autocovariance noise) {
            return new Result(marks, notes, zeroOnLogger, clean, bean.map(smooth -> smooth.withNoise(noise)));
        }
    }

    /** Finds charge and drop and smooths the roast between them; what depends on the noise comes with {@link #read}. */
    static Result begin(Batch batch, MarkHabit habit) {
        MarkFinder finder = new MarkFinder(batch, habit);
        finder.run();
        return finder.result();
    }

    /** Reads the turning point, and the probe at every mark, off the smoothed roast. */
    static Result read(Batch batch, MarkHabit habit, Result begun) {
        if (begun.clean().isEmpty() || begun.bean().isEmpty()) {
            return begun;
        }
        MarkFinder finder = new MarkFinder(batch, habit);
        finder.marks.putAll(begun.marks());
        finder.notes.addAll(begun.notes());
        finder.zeroOnLogger = begun.zeroOnLogger();
        finder.clean = begun.clean().get();
        finder.read(begun.clean().get(), begun.bean().get());
        return finder.result();
    }

    private void run() {
        Optional<CleanCurve> logged = batch.beanTemperature()
                .filter(curve -> !curve.isEmpty())
                .map(curve -> CleanCurve.of(curve).in(batch.readerUnit()))
                .filter(curve -> !curve.kept().isEmpty());
        if (logged.isEmpty()) {
            put(
                    MarkKind.CHARGE,
                    0,
                    habit.standardError(MarkKind.CHARGE, batch),
                    Source.WRITTEN,
                    "written times count from it");
            written();
            return;
        }
        charge(logged.get());
        CleanCurve since = logged.get().withZeroAt(zeroOnLogger);
        clean = since;
        written();
        if (!marks.containsKey(MarkKind.DROP)) {
            drop(since);
        }
        double end = seconds(MarkKind.DROP);
        bean = SmoothCurve.of(since.between(0, end > 0 ? end : Double.POSITIVE_INFINITY));
    }

    private void read(CleanCurve since, SmoothCurve roast) {
        bean = roast;
        if (!marks.containsKey(MarkKind.TURNING_POINT)) {
            OnCurve.turningPoint(roast, seconds(MarkKind.DROP))
                    .ifPresent(found -> put(
                            MarkKind.TURNING_POINT,
                            found.seconds(),
                            found.standardError(),
                            Source.FOUND,
                            "lowest smoothed reading"));
        }
        SmoothCurve sharp = OnCurve.narrow(roast);
        marks.replaceAll((kind, mark) -> withProbe(mark, since, kind == MarkKind.TURNING_POINT ? sharp : roast));
    }

    private Result result() {
        return new Result(marks, notes, zeroOnLogger, Optional.ofNullable(clean), Optional.ofNullable(bean));
    }

    private void charge(CleanCurve logged) {
        Curve kept = logged.kept();
        double first = kept.secondsAt(0);
        Optional<OnCurve.Found> found = OnCurve.charge(logged);
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
    }

    private void written() {
        for (MarkKind kind : MarkKind.values()) {
            Optional<Elapsed> at = batch.writtenMark(kind);
            if (at.isPresent() && kind != MarkKind.CHARGE) {
                put(kind, at.get().seconds(), habit.standardError(kind, batch), Source.WRITTEN, "");
            }
        }
    }

    private void drop(CleanCurve since) {
        Optional<OnCurve.Found> found = OnCurve.drop(since, 60);
        if (found.isPresent()) {
            put(
                    MarkKind.DROP,
                    found.get().seconds(),
                    found.get().standardError(),
                    Source.FOUND,
                    "onset of the fall at the end");
            return;
        }
        Curve kept = since.kept();
        double last = kept.secondsAt(kept.size() - 1);
        if (last > 60) {
            put(MarkKind.DROP, last, STOPPED_LATE_SECONDS, Source.ASSUMED, "the log ends");
        }
    }

    /** Reads the probe at a mark; a mark a moment past the last reading is read along the straight line, and says so. */
    private Mark withProbe(Mark mark, CleanCurve since, SmoothCurve smooth) {
        if (smooth.atReadings().isEmpty() || mark.kind() == MarkKind.CHARGE) {
            return mark;
        }
        Smoothed there = smooth.at(mark.seconds());
        String how = mark.how();
        Optional<ProbeReading> probe = Optional.empty();
        Curve kept = smooth.clean().kept();
        double beyond = mark.seconds() - kept.secondsAt(kept.size() - 1);
        double slack = Math.max(5, 2 * since.interval());
        if (!there.isMissing()) {
            probe = Optional.of(ProbeReading.of(there));
        } else if (beyond > 0 && beyond <= slack) {
            Smoothed last = smooth.atReadings().get(smooth.atReadings().size() - 1);
            if (!last.isMissing()) {
                probe = Optional.of(ProbeReading.of(last).extended(beyond));
                how = String.format(Locale.ROOT, "temperature read %.0f s before", beyond);
            }
        }
        return new Mark(mark.kind(), mark.at(), mark.standardError(), mark.source(), probe, how);
    }

    private void put(MarkKind kind, double seconds, double standardError, Source source, String how) {
        marks.put(kind, new Mark(kind, Elapsed.seconds(seconds), standardError, source, Optional.empty(), how));
    }

    private double seconds(MarkKind kind) {
        Mark mark = marks.get(kind);
        return mark == null ? Double.NaN : mark.seconds();
    }
}
