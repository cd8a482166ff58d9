package parchment.gather.corpus;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** Writes the numbers and spans of time of a cell. */
final class Cells {
    private Cells() {}

    /**
     * Holds a span of time as a spreadsheet keeps it: a share of a day that is shown in a pattern.
     *
     * @param seconds how long
     * @param text as it is shown
     * @param pattern the spreadsheet's pattern
     */
    record Span(double seconds, String text, String pattern) {}

    static String number(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    /** Returns days since the 30th of December 1899, as spreadsheets count. */
    static double serial(LocalDateTime at) {
        double days = LocalDate.of(1899, 12, 30).until(at.toLocalDate(), ChronoUnit.DAYS);
        return rounded(days + at.toLocalTime().toSecondOfDay() / 86_400.0, 6);
    }

    static double rounded(double value, int places) {
        return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).doubleValue();
    }

    /** Returns minutes and seconds, as in 9:05. */
    static Span minutes(double seconds) {
        long whole = Math.round(seconds);
        return new Span(whole, String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60), "[m]:ss");
    }

    /** Returns hours, minutes and seconds, as in 0:09:05. */
    static Span hours(double seconds) {
        long whole = Math.round(seconds);
        return new Span(
                whole,
                String.format(Locale.ROOT, "%d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60),
                "h:mm:ss");
    }
}
