package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Lets the reading of one table use what is known of the rest of its folder.
 *
 * @param recordings the curves, one for each batch that was recorded
 * @param scale the scale of the folder where a list does not show its own: °F if the curves are in °F and the dates month/day
 */
record Clues(List<Recorded> recordings, ListScale scale) {
    static final Clues NONE = new Clues(List.of(), ListScale.UNKNOWN);

    Clues {
        recordings = List.copyOf(recordings);
    }

    Clues(List<Recorded> recordings) {
        this(recordings, ListScale.UNKNOWN);
    }

    /**
     * Holds what is known of one recorded batch.
     *
     * @param stem the name of its file without the ending
     * @param written the name that stands in the file; "" if none does
     * @param chargedAt when it was charged, if that can be told
     * @param day the day, if that can be told
     */
    record Recorded(String stem, String written, Optional<LocalDateTime> chargedAt, Optional<LocalDate> day) {}

    /** Returns the names and numbers that a row may use for a recorded batch, in plain form. */
    Set<String> names() {
        Set<String> names = new HashSet<>();
        for (Recorded recorded : recordings) {
            for (String name : List.of(recorded.stem(), recorded.written())) {
                if (!name.isBlank()) {
                    names.add(plain(name));
                    names.add(number(name));
                }
            }
        }
        names.remove("");
        return names;
    }

    private static final Pattern ZEROS = Pattern.compile("(?<!\\d)0+(?=\\d)");

    /** Returns a name as names are compared: without capitals, accents, signs and zeros in front of numbers. */
    static String plain(String name) {
        return ZEROS.matcher(TradeWords.plain(name)).replaceAll("");
    }

    /** Returns the last number in a name, be it part of a date or not, zeros in front dropped; "" if there is none. */
    static String number(String name) {
        String last = "";
        for (String part : plain(name).split("[^0-9]+")) {
            last = part.isEmpty() ? last : part;
        }
        return last;
    }
}
