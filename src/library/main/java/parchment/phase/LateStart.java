package parchment.phase;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.quantity.Elapsed;

/**
 * Decides what the clock of a log counts from, where the log shows no charge and its first reading lies well above 0: was the logger
 * switched on late, or does its clock not begin at charge?
 *
 * <p>The written drop decides where it can. All numbers here are common practice, no source.
 */
final class LateStart {
    /** A log whose first reading lies later than this, in seconds, does not hold the charge. */
    static final double LATE_SECONDS = 15;

    /** Without a written drop that fits, a clock that begins later than this, in seconds, is not taken to count from charge. */
    static final double LATEST_SECONDS = 180;

    /** Standard error in seconds of a charge that stands on the file's clock alone. */
    static final double CLOCK_ERROR_SECONDS = 4;

    /** What is known of the clock. */
    enum Verdict {
        /** The log begins at charge, or so near to it that nothing is late. */
        NOT_LATE,
        /** The clock counts from charge, and the written drop bears it out. */
        CONFIRMED,
        /** The clock counts from charge; no written drop says yes or no. */
        BELIEVED,
        /** The written drop fits a log that begins at charge, and not the clock. */
        CONTRADICTED,
        /** The clock begins so late that it counts from something else. */
        TOO_LATE
    }

    private final double first;
    private final double end;
    private final Optional<Elapsed> drop;
    private final Verdict verdict;

    private LateStart(double first, double end, Optional<Elapsed> drop, Verdict verdict) {
        this.first = first;
        this.end = end;
        this.drop = drop;
        this.verdict = verdict;
    }

    /** Looks at a log that shows no charge, on its own clock. */
    static LateStart of(Batch batch, CleanCurve logged, MarkHabit habit) {
        Curve kept = logged.kept();
        double first = kept.secondsAt(0);
        Optional<OnCurve.Found> fall = OnCurve.drop(logged, first + LATE_SECONDS);
        double end = fall.map(OnCurve.Found::seconds).orElse(kept.secondsAt(kept.size() - 1));
        double endError = fall.map(OnCurve.Found::standardError).orElse(EndOfRoast.STOPPED_LATE_SECONDS);
        double near = MarkFinder.ERRORS_APART * Math.hypot(endError, habit.standardError(MarkKind.DROP, batch));
        Optional<Elapsed> drop = batch.writtenMark(MarkKind.DROP);
        return new LateStart(first, end, drop, verdict(batch, first, end, near));
    }

    private static Verdict verdict(Batch batch, double first, double end, double near) {
        // A clock that runs before the bean probe is read says by itself where it began.
        boolean late = first > LATE_SECONDS
                && Stream.of(Quantity.values())
                        .flatMap(quantity -> batch.curve(quantity).stream())
                        .noneMatch(curve -> !curve.isEmpty() && curve.secondsAt(0) <= LATE_SECONDS);
        if (!late) {
            return Verdict.NOT_LATE;
        }
        Optional<Elapsed> drop = batch.writtenMark(MarkKind.DROP);
        if (drop.isPresent() && Math.abs(drop.get().seconds() - end) <= near) {
            return Verdict.CONFIRMED;
        }
        if (drop.isPresent() && Math.abs(drop.get().seconds() - (end - first)) <= near) {
            return Verdict.CONTRADICTED;
        }
        return first <= LATEST_SECONDS ? Verdict.BELIEVED : Verdict.TOO_LATE;
    }

    Verdict verdict() {
        return verdict;
    }

    /** Whether charge is at 0 of the file's clock although the log does not hold it. */
    boolean isByTheClock() {
        return verdict == Verdict.CONFIRMED || verdict == Verdict.BELIEVED;
    }

    /** Returns where the charge comes from, in a few words. */
    String how() {
        return "by the file's clock; the log starts " + Elapsed.seconds(first) + " late"
                + (verdict == Verdict.CONFIRMED ? ", and the written drop fits" : "");
    }

    /** Returns what is to be said of the clock, in a sentence or two; empty if nothing. */
    Optional<String> note() {
        if (isByTheClock()) {
            return Optional.of("The log starts " + Elapsed.seconds(first)
                    + " after charge, by the file's clock; what came before that is missing.");
        }
        return verdict != Verdict.CONTRADICTED
                ? Optional.empty()
                : drop.map(written -> String.format(
                        Locale.ROOT,
                        "The drop is written at %s, which fits a log that starts at charge; by the file's clock, which starts at %s, it"
                                + " would be at %s. Please check the clock of the file.",
                        written,
                        Elapsed.seconds(first),
                        Elapsed.seconds(end)));
    }

    /** Whether a log, since charge, begins early enough to hold what happened at charge. */
    static boolean holdsTheCharge(CleanCurve since) {
        return since.kept().secondsAt(0) <= LATE_SECONDS;
    }

    /** Returns the turning point where the log has seen the fall before it: a smooth needs readings on both sides of a turn. */
    static Optional<OnCurve.Found> seen(OnCurve.Found turn, CleanCurve since, double windowSeconds) {
        return holdsTheCharge(since) || turn.seconds() - since.kept().secondsAt(0) > windowSeconds
                ? Optional.of(turn)
                : Optional.empty();
    }
}
