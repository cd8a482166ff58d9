package parchment.gather;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.sheet.Numbers;

/** Reads the times that lists hold: how long after the charge, in whatever way a person or a spreadsheet wrote it. */
final class ColumnTimes {
    /** Seconds, minutes with decimals, minutes and seconds. */
    static final String SECONDS = "s";

    static final String MINUTES = "min";
    static final String MINUTES_AND_SECONDS = "min:s";

    /** Hours, minutes and zero seconds where minutes and seconds are meant: what spreadsheets make of 9:19. */
    static final String SPREADSHEET = "min:s, as h:mm:ss";

    /** Hours, minutes and seconds that begin with zero hours. */
    static final String HOURS = "h:min:s";

    /** Times of day of which those from 1:00 to before 7:00 are after noon. */
    static final String TWELVE_HOURS = "12 h";

    /** A share of a day that is hours and minutes where minutes and seconds are meant: 0.388 for 9:19. */
    static final String SHARE_OF_DAY_AS_HOURS = "share of a day, as h:mm";

    /** A share of a day: 0.00647 for 9:19. */
    static final String SHARE_OF_DAY = "share of a day";

    private static final Pattern CLOCK =
            Pattern.compile("(\\d{1,3}):([0-5]?\\d)(?::([0-5]?\\d))?(?:[.,](\\d+))?(?:\\s?min)?");
    private static final Pattern QUOTES = Pattern.compile(
            "(?i)(\\d{1,3})\\s?(?:min|m|['\\u2019\\u2032])\\s?(\\d{1,2})\\s?(?:s|sec|sek|seg|\"|''|\\u2033|\\u201D)?");

    private ColumnTimes() {}

    /** Returns the seconds of a time with signs for minutes and seconds, such as 9m19s, 9'19" or -0m10s; NaN if it is none. */
    static double signed(String cell) {
        String text = cell.strip();
        boolean before = text.startsWith("-");
        Matcher quotes = QUOTES.matcher(before || text.startsWith("+") ? text.substring(1) : text);
        if (!quotes.matches() || Integer.parseInt(quotes.group(2)) > 59) {
            return Double.NaN;
        }
        double seconds = 60.0 * Integer.parseInt(quotes.group(1)) + Integer.parseInt(quotes.group(2));
        return before ? -seconds : seconds;
    }

    /** Returns seconds, or NaN if the cell does not hold a time of that form. */
    static double seconds(String cell, String form, Numbers.Decimal decimal) {
        String text = cell.strip();
        Matcher quotes = QUOTES.matcher(text);
        if (quotes.matches()) {
            return 60.0 * Integer.parseInt(quotes.group(1)) + Integer.parseInt(quotes.group(2));
        }
        Matcher clock = CLOCK.matcher(text);
        if (clock.matches()) {
            return clock(clock, form);
        }
        double number = CellNumber.of(text, decimal).map(CellNumber::value).orElse(Double.NaN);
        return switch (form) {
            case SECONDS -> number;
            case MINUTES -> 60 * number;
            case SHARE_OF_DAY -> Math.round(86_400 * number);
            case SHARE_OF_DAY_AS_HOURS -> Math.round(1_440 * number);
            // 9.30 in a column of minutes and seconds with a point is nine minutes and thirty seconds.
            case MINUTES_AND_SECONDS -> pointed(text);
            default -> Double.NaN;
        };
    }

    private static double clock(Matcher clock, String form) {
        double first = Integer.parseInt(clock.group(1));
        double second = Integer.parseInt(clock.group(2));
        double part = clock.group(4) == null ? 0 : Double.parseDouble("0." + clock.group(4));
        if (clock.group(3) == null) {
            return 60 * first + second + part;
        }
        double third = Integer.parseInt(clock.group(3));
        return form.equals(SPREADSHEET) && third == 0 && first > 0
                ? 60 * first + second
                : 3600 * first + 60 * second + third + part;
    }

    private static double pointed(String text) {
        if (!text.matches("\\d{1,2}([.,][0-5]\\d)?")) {
            return Double.NaN;
        }
        String[] parts = text.split("[.,]");
        return 60.0 * Integer.parseInt(parts[0]) + (parts.length > 1 ? Integer.parseInt(parts[1]) : 0);
    }
}
