package parchment.sheet;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Tells dates and times from other numbers of a workbook: it keeps them as numbers of days, and only the format shows which they are.
 *
 * @see <a href="https://ecma-international.org/publications-and-standards/standards/ecma-376/">ECMA-376 part 1, 18.8.30 numFmt and 18.17.4
 *     dates and times</a> (numbers of clauses from memory)
 */
enum CellFormat {
    NUMBER,
    PERCENT,
    DATE,
    DATE_AND_TIME,
    TIME;

    private static final long MILLISECONDS_A_DAY = 86_400_000L;

    /** A time of day or duration of so many days is a date whose format hides the day. */
    private static final int LONGEST_DURATION = 366;

    private static final int LAST_DAY = 2_958_465;

    /** Returns what a number with a format is; the numbers are those of the formats that a workbook need not write out. */
    static CellFormat of(@Nullable Integer id, @Nullable String format) {
        if (id != null) {
            if (id >= 14 && id <= 17
                    || id >= 27 && id <= 31
                    || id == 36
                    || id >= 50 && id <= 54
                    || id >= 57 && id <= 58) {
                return DATE;
            }
            if (id >= 18 && id <= 21 || id >= 45 && id <= 47 || id >= 32 && id <= 35) {
                return TIME;
            }
            if (id == 22) {
                return DATE_AND_TIME;
            }
            if (id == 9 || id == 10) {
                return PERCENT;
            }
        }
        return format == null ? NUMBER : of(format);
    }

    private static CellFormat of(String format) {
        String plain = format.toLowerCase(Locale.ROOT)
                .replaceAll("\"[^\"]*\"", "")
                .replaceAll("[\\\\_*].", "")
                .replaceAll("\\[(h+|m+|s+)]", "$1")
                .replaceAll("\\[[^\\]]*]", "")
                .replace("general", "");
        int section = plain.indexOf(';');
        String first = section < 0 ? plain : plain.substring(0, section);
        boolean day = first.indexOf('y') >= 0 || first.indexOf('d') >= 0;
        boolean clock = first.indexOf('h') >= 0 || first.indexOf('s') >= 0;
        if (day || clock) {
            return day && clock ? DATE_AND_TIME : day ? DATE : TIME;
        }
        if (first.matches("m+")) {
            return first.length() > 2 ? DATE : TIME;
        }
        return first.indexOf('%') >= 0 ? PERCENT : NUMBER;
    }

    /** Returns a stored number as it is written in a {@link Sheet}. */
    String text(String stored, DayZero zero) {
        double number;
        try {
            number = Double.parseDouble(stored.strip());
        } catch (NumberFormatException e) {
            return stored;
        }
        if (!Double.isFinite(number)) {
            return stored;
        }
        if (this == TIME && Math.abs(number) < LONGEST_DURATION) {
            return clock(Math.round(number * MILLISECONDS_A_DAY));
        }
        boolean days = this == DATE || this == DATE_AND_TIME || this == TIME;
        return days && number >= 0 && number <= LAST_DAY ? date(number, zero) : number(number);
    }

    /** Returns a number without an exponent and without digits that its 64 bits do not have. */
    static String number(double number) {
        if (number == 0) {
            return "0";
        }
        return new BigDecimal(Double.toString(number)).stripTrailingZeros().toPlainString();
    }

    private String date(double number, DayZero zero) {
        long day = (long) Math.floor(number);
        long rest = Math.round((number - day) * MILLISECONDS_A_DAY);
        LocalDateTime at = zero.day(day).atStartOfDay().plusNanos(rest * 1_000_000L);
        return written(at, this == DATE);
    }

    /** Returns a date, with its time of day unless it is midnight and only the date was meant. */
    static String written(LocalDateTime at, boolean dateOnly) {
        long milliseconds = at.toLocalTime().toNanoOfDay() / 1_000_000L;
        LocalDate day = at.toLocalDate();
        if (dateOnly && milliseconds == 0) {
            return day.toString();
        }
        String clock = clock(milliseconds);
        return day + " " + (clock.indexOf(':') == 1 ? "0" : "") + clock;
    }

    /** Returns h:mm:ss, with thousandths where there are any. */
    static String clock(long milliseconds) {
        long rest = Math.abs(milliseconds);
        String whole = String.format(
                Locale.ROOT,
                "%s%d:%02d:%02d",
                milliseconds < 0 ? "-" : "",
                rest / 3_600_000L,
                rest / 60_000L % 60,
                rest / 1000L % 60);
        if (rest % 1000L == 0) {
            return whole;
        }
        BigDecimal part = BigDecimal.valueOf(rest % 1000L, 3).setScale(3, RoundingMode.UNNECESSARY);
        return whole + part.stripTrailingZeros().toPlainString().substring(1);
    }

    /** Is the day that a workbook counts from. */
    enum DayZero {
        IN_1900,
        IN_1904;

        LocalDate day(long number) {
            if (this == IN_1904) {
                return LocalDate.of(1904, 1, 1).plusDays(number);
            }
            // Workbooks that count from 1900 hold a 29 February of that year, day 60, which never was.
            return LocalDate.of(1899, 12, number < 60 ? 31 : 30).plusDays(number);
        }
    }
}
