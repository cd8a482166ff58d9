package parchment.phase;

import java.util.Locale;
import java.util.Optional;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.curve.SmoothCurve;
import parchment.curve.measured.Smoothed;
import parchment.logbook.MarkKind;
import parchment.phase.found.Mark;
import parchment.phase.found.ProbeReading;
import parchment.phase.found.Source;

/**
 * Reads the smoothed probe at a mark. A mark a moment past the last reading is read along the straight line, with the error of that; where
 * that would be a guess, the temperature is missing and the mark says why.
 */
final class ProbeAtMark {
    /** A mark so many seconds past the last reading is read along the line whatever the logger's interval; common practice, no source. */
    private static final double ALWAYS_CARRIED_SECONDS = 5;

    /** No mark further past the end of the log is read along the line, however slow the logger; common practice, no source. */
    static final double LONGEST_CARRIED_SECONDS = 10;

    /** A logger that reads more seldom, in seconds, tells no temperature at a mark: a parabola over six intervals is none of a roast. */
    static final double SLOWEST_INTERVAL_SECONDS = 45;

    /** A temperature that is off by more, as a standard error in °C, tells nothing of a roast; common practice, no source. */
    static final double LARGEST_ERROR = 10;

    /** How much the rate of rise may change within a minute, in °C/min, to either side; common practice, no source. */
    private static final double BEND_PER_MINUTE = 10;

    private final CleanCurve since;
    private final SmoothCurve smooth;
    private final Optional<OnCurve.Found> fall;

    ProbeAtMark(CleanCurve since, SmoothCurve smooth, Optional<OnCurve.Found> fall) {
        this.since = since;
        this.smooth = smooth;
        this.fall = fall;
    }

    /** What was read, or why nothing was; words are empty where there is nothing to say. */
    private record Read(Optional<ProbeReading> probe, String words) {
        static Read missing(String why, Object... values) {
            return new Read(Optional.empty(), Mark.NO_TEMPERATURE + String.format(Locale.ROOT, why, values));
        }
    }

    /** Returns the mark with what the probe read then. */
    Mark of(Mark mark) {
        if (smooth.atReadings().isEmpty() || mark.kind() == MarkKind.CHARGE) {
            return mark;
        }
        // The beans were as hot as they got when the curve began to fall, however late the hand was that wrote the
        // drop.
        boolean shown = mark.kind() == MarkKind.DROP && fall.isPresent();
        double at = shown ? fall.map(OnCurve.Found::seconds).orElse(mark.seconds()) : mark.seconds();
        Read read = at(at);
        if (read.probe().isPresent()) {
            read = isTooSlow(since)
                    ? Read.missing("read every %.0f s, which is too seldom to tell one", since.interval())
                    : withinErrors(read);
        }
        Optional<ProbeReading> probe = read.probe();
        String words = shown && probe.isPresent() ? "" : read.words();
        if (shown && mark.source() == Source.WRITTEN) {
            double error = fall.map(OnCurve.Found::standardError).orElse(0.0);
            double share = mark.standardError() > 0 ? Math.min(1, error / mark.standardError()) : 1;
            probe = probe.map(reading -> reading.following(share));
            double off = mark.seconds() - at;
            words = probe.isEmpty() || Math.abs(off) < 0.5
                    ? words
                    : String.format(
                            Locale.ROOT,
                            "temperature read where the curve begins to fall, %.0f s %s",
                            Math.abs(off),
                            off > 0 ? "earlier" : "later");
        }
        String how = mark.how().isEmpty() || words.isEmpty() ? mark.how() + words : mark.how() + "; " + words;
        return new Mark(mark.kind(), mark.at(), mark.standardError(), mark.source(), probe, how);
    }

    /** Whether the logger reads too seldom for anything between two readings; common practice, no source. */
    static boolean isTooSlow(CleanCurve curve) {
        return curve.interval() > SLOWEST_INTERVAL_SECONDS;
    }

    /** With few readings their noise cannot be told from the roast, and the error is as large as the roast. */
    private static Read withinErrors(Read read) {
        return read.probe()
                .filter(probe -> !(probe.standardError() <= LARGEST_ERROR))
                .map(probe ->
                        Read.missing("it could be off by %.0f °C, more than tells anything", probe.standardError()))
                .orElse(read);
    }

    private Read at(double seconds) {
        Smoothed there = smooth.at(seconds);
        if (!there.isMissing()) {
            return new Read(Optional.of(ProbeReading.of(there)), "");
        }
        Curve kept = smooth.clean().kept();
        double beyond = seconds - kept.secondsAt(kept.size() - 1);
        Smoothed last = smooth.atReadings().get(smooth.atReadings().size() - 1);
        if (beyond <= 0 || last.isMissing()) {
            return new Read(Optional.empty(), "");
        }
        double interval = Double.isNaN(since.interval()) ? 0 : since.interval();
        double longest = Math.min(LONGEST_CARRIED_SECONDS, Math.max(ALWAYS_CARRIED_SECONDS, 2 * interval));
        // Where the log goes on, the roast ended between two readings, and no reading is lacking.
        boolean goesOn = since.kept().secondsAt(since.kept().size() - 1) > seconds;
        if (beyond > (goesOn ? Math.max(longest, 1.5 * interval) : longest)) {
            return Read.missing(goesOn ? "the last reading is %.0f s before" : "the log ends %.0f s before", beyond);
        }
        return new Read(
                Optional.of(ProbeReading.of(last).carriedOn(beyond, bend(beyond, interval))),
                beyond < 0.5
                        ? ""
                        : String.format(
                                Locale.ROOT,
                                "temperature carried on along the line for %.0f s after the last reading",
                                beyond));
    }

    /** A rate that is known an interval before the last reading changes until there, and on: an even spread of what it may come to. */
    private static double bend(double seconds, double interval) {
        double perSecond = BEND_PER_MINUTE / 3600;
        return perSecond * (interval * seconds + 0.5 * seconds * seconds) / Math.sqrt(3);
    }
}
