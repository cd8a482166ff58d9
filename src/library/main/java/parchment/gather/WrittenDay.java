package parchment.gather;

import java.text.Normalizer;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.sheet.DateOrder;
import parchment.sheet.Value;

/**
 * Keeps a date as it is written until it is known which number is the day.
 *
 * @param written the date as it stands
 * @param first the first of day and month as written
 * @param second the second of them
 * @param year the year, four digits
 * @param order the order its style states: ISO_ONLY where the year stands first (the month comes before the day), DAY_MONTH_YEAR where a month's
 *     name or dots stand; empty if it does not say
 * @param clock the time of day beside it
 * @param yearFirst the day it is if its first number is the year, as 31-01-05 in the name of a file may be; empty if it cannot be, or stands in no name
 */
record WrittenDay(
        String written,
        int first,
        int second,
        int year,
        Optional<DateOrder> order,
        Optional<LocalTime> clock,
        Optional<LocalDate> yearFirst) {
    private static final Pattern YEAR_FIRST =
            Pattern.compile("(?<!\\d)((?:19|20)\\d{2})([-_./]?)(\\d{1,2})\\2(\\d{1,2})(?!\\d)");
    private static final Pattern YEAR_LAST =
            Pattern.compile("(?<!\\d)(\\d{1,2})([-_./])\\s?(\\d{1,2})\\2\\s?((?:19|20)?\\d{2})(?!\\d)");
    private static final Pattern TWO_DIGITS = Pattern.compile("(\\d{2})[-_](\\d{2})[-_](\\d{2})");
    private static final Pattern DAY_NAME_YEAR = Pattern.compile(
            "(?<![\\d])(\\d{1,2})(?:st|nd|rd|th|er|º|\\.)?[\\s_/-]*(?:de |of )?(\\p{L}{3,10})\\.?,?[\\s_/-]*(?:de |del |of )?((?:19|20)?\\d{2})(?!\\d)");
    private static final Pattern NAME_DAY_YEAR = Pattern.compile(
            "(?<!\\p{L})(\\p{L}{3,10})\\.?[\\s_-]+(\\d{1,2})(?:st|nd|rd|th)?,?[\\s_-]+((?:19|20)\\d{2})(?!\\d)");
    private static final Pattern CLOCK = Pattern.compile(
            "(?<![\\d:])(\\d{1,2}[:h]\\d{2}(?::\\d{2}(?:[.,]\\d+)?)?(?:\\s?[AaPp]\\.?[Mm]\\.?)?)(?![\\d:])");
    private static final Pattern FILE_CLOCK =
            Pattern.compile("^[T_ -]+(\\d{2})[-h_.]?(\\d{2})(?:[-m_.]?(\\d{2}))?(?!\\d)");
    private static final Pattern LIKE_A_DATE = Pattern.compile(
            "(?<![\\p{L}\\d])(?:\\p{L}{2,12},?\\s)?(?:\\d{1,2}\\.?[\\s-]\\p{L}{3,12}\\.?,?[\\s-]|\\p{L}{3,12}\\.?\\s\\d{1,2},?\\s)(?:19|20)\\d{2}(?!\\d)");
    private static final int LONGEST = 300;
    private static final Map<String, Integer> MONTHS = months();

    /** Finds the first date in a text: a cell, a line, a file's name; of a long text in its beginning. */
    static Optional<WrittenDay> find(String whole) {
        String text = whole.length() <= LONGEST ? whole : whole.substring(0, LONGEST);
        if (text.length() < 6 || text.chars().noneMatch(c -> c >= '0' && c <= '9')) {
            return Optional.empty();
        }
        Matcher yearFirst = YEAR_FIRST.matcher(text);
        // Without signs, 20310601 is a date only if all its digits stand there.
        if (yearFirst.find()
                && (!yearFirst.group(2).isEmpty() || yearFirst.group().length() == 8)) {
            return day(
                    text,
                    yearFirst,
                    number(yearFirst, 3),
                    number(yearFirst, 4),
                    number(yearFirst, 1),
                    Optional.of(DateOrder.ISO_ONLY));
        }
        Matcher yearLast = YEAR_LAST.matcher(text);
        if (yearLast.find()) {
            Optional<DateOrder> order =
                    yearLast.group(2).equals(".") ? Optional.of(DateOrder.DAY_MONTH_YEAR) : Optional.empty();
            return day(text, yearLast, number(yearLast, 1), number(yearLast, 3), year(yearLast.group(4)), order);
        }
        Matcher dayFirst = DAY_NAME_YEAR.matcher(text);
        while (dayFirst.find()) {
            Optional<Integer> month = month(dayFirst.group(2));
            if (month.isPresent()) {
                return day(
                        text,
                        dayFirst,
                        number(dayFirst, 1),
                        month.get(),
                        year(dayFirst.group(3)),
                        Optional.of(DateOrder.DAY_MONTH_YEAR));
            }
        }
        Matcher nameFirst = NAME_DAY_YEAR.matcher(text);
        while (nameFirst.find()) {
            Optional<Integer> month = month(nameFirst.group(1));
            if (month.isPresent()) {
                return day(
                        text,
                        nameFirst,
                        number(nameFirst, 2),
                        month.get(),
                        year(nameFirst.group(3)),
                        Optional.of(DateOrder.DAY_MONTH_YEAR));
            }
        }
        return Optional.empty();
    }

    /** Finds the first date in the name of a file or a tab, where the year may stand first with two digits only. */
    static Optional<WrittenDay> inName(String name) {
        return find(name).map(day -> {
            Matcher twoDigits = TWO_DIGITS.matcher(day.written);
            return day.order.isEmpty() && twoDigits.matches()
                    ? new WrittenDay(
                            day.written,
                            day.first,
                            day.second,
                            day.year,
                            day.order,
                            day.clock,
                            date(year(twoDigits.group(1)), number(twoDigits, 2), number(twoDigits, 3)))
                    : day;
        });
    }

    /** Returns whether all three numbers have two digits, so that in a name the first one may be the year. */
    boolean isShort() {
        return TWO_DIGITS.matcher(written).matches();
    }

    private static Optional<LocalDate> date(int year, int month, int day) {
        try {
            return Optional.of(LocalDate.of(year, month, day));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** Returns what looks like a date with a month's name, and is none that is known; empty if the text has a known date or none. */
    static Optional<String> unknown(String text) {
        if (find(text).isPresent()) {
            return Optional.empty();
        }
        Matcher matcher = LIKE_A_DATE.matcher(text.substring(0, Math.min(text.length(), LONGEST)));
        return matcher.find() ? Optional.of(matcher.group().strip()) : Optional.empty();
    }

    /** Reads a cell that holds a date and perhaps a time, and nothing else. */
    static Optional<WrittenDay> ofCell(String cell) {
        if (cell.length() > LONGEST) {
            return Optional.empty();
        }
        return find(cell).filter(day -> {
            String rest = cell.replace(day.written(), " ");
            rest = CLOCK.matcher(rest).replaceFirst(" ");
            rest = rest.replaceAll("(?i)[\\s,]|^\\s*T\\s*$|uhr|z$|[+-]\\d{2}:?\\d{2}$|^\\p{L}{2,10}\\.?,?$", "")
                    .replaceAll(
                            "(?i)^(mo|tu|we|th|fr|sa|su|di|mi|do|so|lu|ma|me|je|ve|lun|mar|mer|gio|ven|sab|dom"
                                    + "|mie|jue|vie|seg|ter|qua|qui|sex|mon|tue|wed|thu|fri|sat|sun|ma|wo|vr|za|zo)\\p{L}*\\.?,?$",
                            "");
            return rest.isEmpty();
        });
    }

    /** Returns the day under an order of day and month for the dates that do not say it themselves; empty if there is no such day. */
    Optional<LocalDate> on(DateOrder asked) {
        DateOrder used = order.orElse(asked);
        // A month's place that holds more than 12 leaves one reading only.
        boolean dayFirst = order.isEmpty() && first > 12 || used == DateOrder.DAY_MONTH_YEAR && second <= 12;
        if (order.isEmpty() && first <= 12 && second <= 12 && first != second && asked == DateOrder.ISO_ONLY) {
            return Optional.empty();
        }
        try {
            LocalDate day = LocalDate.of(year, dayFirst ? second : first, dayFirst ? first : second);
            return day.getYear() >= 1950 && day.getYear() < 2200 ? Optional.of(day) : Optional.empty();
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** Returns the order that this date proves, if only one is possible. */
    Optional<DateOrder> proves() {
        if (order.isPresent() && order.get() == DateOrder.ISO_ONLY || first > 12 == second > 12) {
            return Optional.empty();
        }
        return Optional.of(first > 12 ? DateOrder.DAY_MONTH_YEAR : DateOrder.MONTH_DAY_YEAR);
    }

    /** Returns whether only an order decided elsewhere tells which is the day. */
    boolean needsOrder() {
        return order.isEmpty() && first <= 12 && second <= 12 && first != second;
    }

    private static Optional<WrittenDay> day(
            String text, Matcher found, int first, int second, int year, Optional<DateOrder> order) {
        boolean possible = first >= 1 && second >= 1 && first <= 31 && second <= 31 && (first <= 12 || second <= 12);
        if (!possible || order.equals(Optional.of(DateOrder.ISO_ONLY)) && first > 12) {
            return Optional.empty();
        }
        String rest = text.substring(0, found.start()) + " " + text.substring(found.end());
        Matcher clock = CLOCK.matcher(rest);
        Optional<LocalTime> time = clock.find() ? timeOfDay(clock.group(1)) : Optional.empty();
        if (time.isEmpty()) {
            Matcher joined = FILE_CLOCK.matcher(text.substring(found.end()));
            time = joined.find()
                    ? Value.timeOfDay(joined.group(1) + ":" + joined.group(2)
                            + (joined.group(3) == null ? "" : ":" + joined.group(3)))
                    : Optional.empty();
        }
        return Optional.of(new WrittenDay(found.group(), first, second, year, order, time, Optional.empty()));
    }

    /** Returns a time of day such as 9:15, 9h15, 9:15:30 PM or 9:15 a.m. */
    static Optional<LocalTime> timeOfDay(String text) {
        return Value.timeOfDay(text.strip()
                .replaceAll("(?i)\\s*(uhr|h)$", "")
                .replaceAll("(?i)(?<=\\d)h(?=\\d)", ":")
                .replaceAll("(?i)^(\\d{1,2})\\.(\\d{2})(?=\\s?[ap]\\.?m)", "$1:$2")
                .replaceAll("(?i)([ap])\\.?m\\.?$", "$1m")
                .replaceAll("^(\\d{1,2})$", "$1:00"));
    }

    private static int number(Matcher matcher, int group) {
        return Integer.parseInt(matcher.group(group));
    }

    private static int year(String written) {
        return Integer.parseInt(written) + (written.length() == 2 ? 2000 : 0);
    }

    private static Optional<Integer> month(String name) {
        String plain = Normalizer.normalize(name.toLowerCase(Locale.ROOT), Normalizer.Form.NFD)
                .replaceAll("\\p{M}+", "");
        return Optional.ofNullable(MONTHS.get(plain));
    }

    private static Map<String, Integer> months() {
        String[] names = {
            "january januar janner enero janeiro janvier gennaio januari jan ene janv gen",
            "february februar febrero fevereiro fevrier febbraio februari feb febr fev fevr",
            "march marz maerz marzo marco mars maart mar mrz mrt mae",
            "april abril avril aprile apr abr avr",
            "may mai mayo maio maggio mei mag",
            "june juni junio junho juin giugno jun giu",
            "july juli julio julho juillet luglio jul juil lug",
            "august agosto augustus aout aug ago",
            "september septiembre setiembre setembro septembre settembre sep sept set",
            "october oktober octubre outubro octobre ottobre oct okt out ott",
            "november noviembre novembro novembre nov",
            "december dezember diciembre dezembro decembre dicembre dec dez dic"
        };
        Map<String, Integer> months = new TreeMap<>();
        for (int i = 0; i < names.length; i++) {
            for (String name : names[i].split(" ")) {
                months.put(name, i + 1);
            }
        }
        return months;
    }
}
