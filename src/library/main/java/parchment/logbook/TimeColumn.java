package parchment.logbook;

import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Optional;
import parchment.logbook.written.RoastLength;
import parchment.sheet.DateOrder;
import parchment.sheet.Numbers;
import parchment.sheet.Value;

/** Reads the times of a curve file; where the heading has no unit, the first time shows it and that is said. */
final class TimeColumn {
    private final CurveLayout.TimeForm form;
    private final Numbers.Decimal decimal;
    private Optional<Value.TimeUnit> unit;
    private final boolean stated;

    TimeColumn(CurveColumns columns, CurveLayout layout, Numbers.Decimal decimal) {
        this.form = layout.timeForm();
        this.unit = columns.timeUnit();
        this.stated = unit.isPresent();
        this.decimal = decimal;
    }

    /** Returns the seconds since zero or since midnight, or NaN. */
    double seconds(char[] text, int from, int to) {
        if (unit.isPresent() && form == CurveLayout.TimeForm.ELAPSED) {
            switch (unit.get()) {
                case SECONDS:
                    return Numbers.parse(text, from, to, decimal);
                case MINUTES:
                    return 60 * Numbers.parse(text, from, to, decimal);
                default:
                    break;
            }
        }
        String written = new String(text, from, to - from).strip();
        if (form == CurveLayout.TimeForm.TIME_OF_DAY) {
            return timeOfDay(written);
        }
        if (unit.isEmpty()) {
            unit = shown(written);
        }
        return unit.map(u -> Value.seconds(written, u, decimal)).orElse(Double.NaN);
    }

    private static double timeOfDay(String written) {
        Optional<LocalTime> time = Value.timeOfDay(written);
        if (time.isPresent()) {
            return time.get().toNanoOfDay() / 1e9;
        }
        Optional<LocalDateTime> local = Value.local(written, DateOrder.DAY_MONTH_YEAR);
        if (local.isPresent()) {
            return local.get().toEpochSecond(ZoneOffset.UTC) + local.get().getNano() / 1e9;
        }
        return Value.instant(written, ZoneOffset.UTC, DateOrder.ISO_ONLY)
                .map(at -> at.toEpochSecond() + at.getNano() / 1e9)
                .orElse(Double.NaN);
    }

    private Optional<Value.TimeUnit> shown(String written) {
        int colons = (int) written.chars().filter(c -> c == ':').count();
        Value.TimeUnit guess = switch (colons) {
            case 0 -> Value.TimeUnit.SECONDS;
            case 1 -> Value.TimeUnit.MINUTES_AND_SECONDS;
            default -> Value.TimeUnit.HOURS_MINUTES_SECONDS;
        };
        return Double.isNaN(Value.seconds(written, guess, decimal)) ? Optional.empty() : Optional.of(guess);
    }

    /** Whether nobody wrote the unit of elapsed times. */
    boolean isGuessed() {
        return !stated && form == CurveLayout.TimeForm.ELAPSED;
    }

    /** Returns what a roast of less than a minute may have been logged in, in words that ask. */
    String perhapsLonger() {
        return form == CurveLayout.TimeForm.ELAPSED && unit.equals(Optional.of(Value.TimeUnit.SECONDS))
                ? "Are these minutes? Write 'time [min]'"
                : "Is the unit right? Write the times in seconds, under 'time [s]'";
    }

    /** Returns what a roast of more than two hours may have been logged in, in words that ask; the format has no milliseconds. */
    String perhapsShorter() {
        return form == CurveLayout.TimeForm.ELAPSED && unit.equals(Optional.of(Value.TimeUnit.SECONDS))
                ? "Are these milliseconds? Divide them by 1,000, or let 'gather' read the file"
                : "Is the unit right? Write the times in seconds, under 'time [s]'";
    }

    /** Says what was taken for the unit; a roast of less than a minute shows that seconds were minutes. */
    void report(String heading, Readings readings, ProblemLog problems) {
        if (stated || unit.isEmpty() || form == CurveLayout.TimeForm.TIME_OF_DAY) {
            return;
        }
        double span = 0;
        for (int i = 0; i < readings.size(); i++) {
            span = Math.max(span, Math.abs(readings.secondsAt(i) - readings.secondsAt(0)));
        }
        boolean minutes =
                unit.get() == Value.TimeUnit.SECONDS && span < RoastLength.SHORTEST_SECONDS && readings.size() > 1;
        problems.add(
                1,
                heading,
                "no unit",
                Field.Kind.TIME.units(),
                minutes
                        ? "read in s, which makes the roast shorter than a minute: is it [min]?"
                        : "read in " + unit.get().symbol() + ", as the first time shows");
    }
}
