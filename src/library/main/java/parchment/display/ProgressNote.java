package parchment.display;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;

/** How far some work has come, as a sentence and as a bar. */
record ProgressNote(String what, long done, long total, Duration took, State state) implements Showable {
    private static final double SECONDS_PER_MINUTE = 60;
    private static final double SECONDS_PER_HOUR = 3600;

    /** From this many seconds on an estimate is told in steps of five. */
    private static final double COARSE_FROM = 15;

    /** Where the work stands. */
    enum State {
        RUNNING,
        DONE,
        STOPPED
    }

    @Override
    public String text() {
        return switch (state) {
            case RUNNING -> String.format(Locale.ROOT, "%s: %,d of %,d, %s", what, done, total, left());
            case DONE -> String.format(Locale.ROOT, "%s: all %,d in %s", what, total, span(seconds()));
            case STOPPED ->
                String.format(Locale.ROOT, "%s: stopped at %,d of %,d after %s", what, done, total, span(seconds()));
        };
    }

    @Override
    public Optional<String> html() {
        String words = Html.escape(text());
        String bar = state != State.RUNNING
                ? ""
                : String.format(
                        Locale.ROOT,
                        "<progress value=\"%d\" max=\"%d\" aria-label=\"%s\"></progress> ",
                        Math.min(done, total),
                        Math.max(1, total),
                        Html.escape(what));
        return Optional.of("<div style=\"font-family:sans-serif;font-size:0.9em\">" + bar + words + "</div>");
    }

    private double seconds() {
        return took.toMillis() / 1000.0;
    }

    /** Supposes that the steps to come take as long as those done. */
    private String left() {
        return done == 0 ? "time left not known yet" : "about " + span(seconds() / done * (total - done)) + " left";
    }

    private static String span(double seconds) {
        if (seconds < SECONDS_PER_MINUTE - 2) {
            long count = Math.max(1, seconds < COARSE_FROM ? Math.round(seconds) : 5 * Math.round(seconds / 5));
            return counted(count, "second");
        }
        if (seconds < SECONDS_PER_HOUR - 30) {
            return counted(Math.round(seconds / SECONDS_PER_MINUTE), "minute");
        }
        return counted(Math.round(seconds / SECONDS_PER_HOUR), "hour");
    }

    private static String counted(long count, String unit) {
        return count + " " + unit + (count == 1 ? "" : "s");
    }

    @Override
    public String toString() {
        return text();
    }
}
