package parchment.gather;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.sheet.DateOrder;
import parchment.sheet.Words;

/**
 * Decides what the first number of dates such as 31-01-05 in the names of files is: the year, the day or the month. A day that does not exist rules a reading
 * out, and so does a year that is none of the rest of the folder, nor next to one; what is left over is asked.
 *
 * @param reads how such a name is read
 */
record NameDates(Reads reads) {
    static final String KEY = "date.order.names";

    /** Says how it is read. */
    enum Reads {
        YEAR_FIRST("year/month/day"),
        DAY_FIRST(DateOrder.DAY_MONTH_YEAR.words()),
        MONTH_FIRST(DateOrder.MONTH_DAY_YEAR.words()),
        /** As dates that are written otherwise: the year stands last. */
        LIKE_THE_REST(""),
        /** Not at all: nobody said. */
        NOT(GatherDates.AS_WRITTEN);

        private final String words;

        Reads(String words) {
            this.words = words;
        }
    }

    private static final List<Reads> READINGS = List.of(Reads.YEAR_FIRST, Reads.DAY_FIRST, Reads.MONTH_FIRST);

    /**
     * Decides it.
     *
     * @param names the dates in names
     * @param others all other dates
     */
    static NameDates decide(List<WrittenDay> names, List<WrittenDay> others, GatherQuestions questions) {
        List<WrittenDay> inShort = names.stream()
                .filter(day -> day.isShort() && day.order().isEmpty())
                .toList();
        Set<Reads> possible = EnumSet.noneOf(Reads.class);
        READINGS.stream()
                .filter(reads -> inShort.stream().allMatch(day -> at(day, reads) > 0))
                .forEach(possible::add);
        if (inShort.isEmpty() || !possible.contains(Reads.YEAR_FIRST)) {
            return new NameDates(Reads.LIKE_THE_REST);
        }
        String sample = Words.quote(inShort.get(0).written()) + " in " + GatherDates.NAMES;
        String reason = "no other order gives days that exist";
        if (possible.size() > 1) {
            List<WrittenDay> known = new ArrayList<>(others);
            names.stream().filter(day -> !inShort.contains(day)).forEach(known::add);
            Set<Reads> ofTheFolder = EnumSet.copyOf(possible);
            ofTheFolder.removeIf(reads -> inShort.stream().anyMatch(day -> !isOfTheFolder(at(day, reads), known)));
            if (!known.isEmpty() && !ofTheFolder.isEmpty()) {
                possible = ofTheFolder;
                reason = "the other dates of the folder are of " + years(known);
            }
        }
        if (!possible.contains(Reads.YEAR_FIRST)) {
            return new NameDates(Reads.LIKE_THE_REST);
        }
        String choices = possible.stream().map(reads -> reads.words).collect(Collectors.joining(", ")) + ", "
                + GatherDates.AS_WRITTEN + " (leave out what can be read two ways)";
        String answer = possible.size() == 1
                ? questions.tell(
                        KEY,
                        "The date " + sample + " is read so, because " + reason,
                        Reads.YEAR_FIRST.words,
                        NameDates::isAnswer,
                        choices)
                : questions.ask(
                        KEY,
                        "What comes first in " + sample + ": the year, the day or the month? Answer with "
                                + possible.stream().map(reads -> reads.words).collect(Collectors.joining(" or "))
                                + ". Enter leaves out the dates of such names, and it can be answered later.",
                        GatherDates.AS_WRITTEN,
                        NameDates::isAnswer,
                        choices,
                        inShort.size());
        NameDates decided = new NameDates(List.of(Reads.values()).stream()
                .filter(reads -> !reads.words.isEmpty() && reads.words.equals(answer.toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElse(Reads.NOT));
        if (decided.reads == Reads.NOT) {
            questions.leaveOut("Nobody said what comes first in " + sample + ": "
                    + Words.count(inShort.size(), "date", "dates") + " in names "
                    + (inShort.size() == 1 ? "is" : "are") + " left out. To take "
                    + (inShort.size() == 1 ? "it" : "them") + " in, answer " + KEY + ".");
        }
        return decided;
    }

    private static boolean isAnswer(String text) {
        return List.of(Reads.values()).stream().anyMatch(reads -> reads.words.equals(text));
    }

    private static boolean isOfTheFolder(int year, List<WrittenDay> known) {
        return known.stream().anyMatch(day -> Math.abs(day.year() - year) <= 1);
    }

    private static String years(List<WrittenDay> known) {
        int first = known.stream().mapToInt(WrittenDay::year).min().orElseThrow();
        int last = known.stream().mapToInt(WrittenDay::year).max().orElseThrow();
        return first == last ? Integer.toString(first) : first + " to " + last;
    }

    /** Returns the year that a reading gives a date; 0 if there is no such day. */
    private static int at(WrittenDay day, Reads reads) {
        return switch (reads) {
            case YEAR_FIRST -> day.yearFirst().map(date -> date.getYear()).orElse(0);
            case DAY_FIRST -> day.second() <= 12 ? year(day, DateOrder.DAY_MONTH_YEAR) : 0;
            case MONTH_FIRST -> day.first() <= 12 ? year(day, DateOrder.MONTH_DAY_YEAR) : 0;
            default -> 0;
        };
    }

    private static int year(WrittenDay day, DateOrder order) {
        return day.on(order).map(date -> date.getYear()).orElse(0);
    }

    /** Returns the dates of names that tell the order of day and month, or need it. */
    List<WrittenDay> withDayAndMonth(List<WrittenDay> names) {
        return names.stream()
                .filter(day -> reads == Reads.LIKE_THE_REST
                        || !day.isShort()
                        || day.order().isPresent())
                .toList();
    }
}
