package parchment.sheet;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads one written value: a time on the roast clock, a date, an instant. Nothing here guesses: what is not certain is empty. */
public final class Value {
    private static final Pattern CLOCK = Pattern.compile("([+-]?)(\\d{1,4}):(\\d{1,2})(?::(\\d{1,2}))?([.,]\\d{1,6})?");
    private static final Pattern DATE_IN_PARTS = Pattern.compile("(\\d{1,2})[/.-](\\d{1,2})[/.-](\\d{4}|\\d{2})");

    /** Names a unit of time that a column may be written in. */
    public enum TimeUnit {
        SECONDS("s"),
        MINUTES("min"),
        MINUTES_AND_SECONDS("min:s"),
        HOURS_MINUTES_SECONDS("h:min:s");

        private final String symbol;

        TimeUnit(String symbol) {
            this.symbol = symbol;
        }

        public String symbol() {
            return symbol;
        }

        public static Optional<TimeUnit> of(String plainUnit) {
            for (TimeUnit unit : values()) {
                if (unit.symbol.equals(plainUnit)) {
                    return Optional.of(unit);
                }
            }
            return Optional.empty();
        }
    }

    private Value() {}

    /** Returns a time in seconds, or NaN if it is not written in that unit. */
    public static double seconds(String text, TimeUnit unit, Numbers.Decimal decimal) {
        if (unit == TimeUnit.SECONDS) {
            return Numbers.parse(text, decimal);
        }
        if (unit == TimeUnit.MINUTES) {
            return 60 * Numbers.parse(text, decimal);
        }
        Matcher clock = CLOCK.matcher(text.strip());
        if (!clock.matches() || (clock.group(4) != null) != (unit == TimeUnit.HOURS_MINUTES_SECONDS)) {
            return Double.NaN;
        }
        int first = Integer.parseInt(clock.group(2));
        int second = Integer.parseInt(clock.group(3));
        int third = clock.group(4) == null ? 0 : Integer.parseInt(clock.group(4));
        if (second > 59 || third > 59) {
            return Double.NaN;
        }
        double whole = clock.group(4) == null ? 60.0 * first + second : 3600.0 * first + 60.0 * second + third;
        double part = clock.group(5) == null
                ? 0
                : Double.parseDouble("0." + clock.group(5).substring(1));
        return clock.group(1).equals("-") ? -(whole + part) : whole + part;
    }

    /** Returns whether the text is minutes and seconds as a spreadsheet writes them back: 9:19:00 for 9:19. */
    public static boolean looksLikeSpreadsheetMinutes(String text) {
        return text.strip().matches("\\d{1,2}:[0-5]\\d:00(\\.0+)?");
    }

    /** Returns 9 minutes 19 seconds for 9:19:00. */
    public static double spreadsheetMinutes(String text) {
        String[] parts = text.strip().split(":");
        return 60.0 * Integer.parseInt(parts[0]) + Integer.parseInt(parts[1]);
    }

    /** Returns a date in ISO form, or one in the order that the settings state. */
    public static Optional<LocalDate> date(String text, DateOrder order) {
        String stripped = text.strip();
        try {
            if (stripped.matches("\\d{4}-\\d{2}-\\d{2}")) {
                return plausible(LocalDate.parse(stripped));
            }
            Matcher parts = DATE_IN_PARTS.matcher(stripped);
            if (order == DateOrder.ISO_ONLY || !parts.matches()) {
                return Optional.empty();
            }
            int first = Integer.parseInt(parts.group(1));
            int second = Integer.parseInt(parts.group(2));
            int year = Integer.parseInt(parts.group(3)) + (parts.group(3).length() == 2 ? 2000 : 0);
            boolean dayFirst = order == DateOrder.DAY_MONTH_YEAR;
            return plausible(LocalDate.of(year, dayFirst ? second : first, dayFirst ? first : second));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    // A year such as 0024 or 20244 is a slip of the finger, and would stretch every axis of dates.
    private static Optional<LocalDate> plausible(LocalDate date) {
        return date.getYear() >= 1950 && date.getYear() < 2200 ? Optional.of(date) : Optional.empty();
    }

    /** Returns an instant in ISO form (a blank may stand for the T); one without an offset is in the given zone. */
    public static Optional<OffsetDateTime> instant(String text, ZoneId zone, DateOrder order) {
        return local(text, order)
                .map(local -> local.atZone(zone).toOffsetDateTime())
                .or(() -> {
                    try {
                        OffsetDateTime at = OffsetDateTime.parse(
                                text.strip().replace(' ', 'T').toUpperCase(Locale.ROOT));
                        return plausible(at.toLocalDate()).map(day -> at);
                    } catch (DateTimeException e) {
                        return Optional.empty();
                    }
                });
    }

    /** Returns a date and time of day without an offset. */
    public static Optional<LocalDateTime> local(String text, DateOrder order) {
        String stripped = text.strip();
        int border = Math.max(stripped.indexOf('T'), stripped.indexOf(' '));
        if (border < 0) {
            return Optional.empty();
        }
        Optional<LocalTime> time = timeOfDay(stripped.substring(border + 1));
        return time.flatMap(t -> date(stripped.substring(0, border), order).map(d -> d.atTime(t)));
    }

    /** Returns a time of day such as 9:15, 09:15:30.5 or 9:15:30 PM. */
    public static Optional<LocalTime> timeOfDay(String text) {
        String plain = text.strip().toUpperCase(Locale.ROOT).replace(',', '.');
        boolean morning = plain.endsWith("AM");
        boolean afternoon = plain.endsWith("PM");
        if (morning || afternoon) {
            plain = plain.substring(0, plain.length() - 2).strip();
        }
        if (!plain.matches("\\d{1,2}:\\d{2}(:\\d{2}(\\.\\d{1,9})?)?")) {
            return Optional.empty();
        }
        try {
            LocalTime time = LocalTime.parse(plain.indexOf(':') == 1 ? "0" + plain : plain);
            if (!morning && !afternoon) {
                return Optional.of(time);
            }
            if (time.getHour() == 0 || time.getHour() > 12) {
                return Optional.empty();
            }
            return Optional.of(time.withHour(time.getHour() % 12 + (afternoon ? 12 : 0)));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
