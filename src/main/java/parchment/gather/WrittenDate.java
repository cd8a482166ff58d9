package parchment.gather;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.sheet.DateOrder;
import parchment.sheet.Value;

/**
 * Finds the date that a file's name or its first lines state.
 *
 * @param day the date, if its parts can be told
 * @param time the time of day beside it
 * @param written the date as it stands
 */
record WrittenDate(Optional<LocalDate> day, Optional<LocalTime> time, String written) {
    private static final Pattern YEAR_FIRST =
            Pattern.compile("(?<!\\d)((?:19|20)\\d{2})[-_.]?(\\d{2})[-_.]?(\\d{2})(?!\\d)");
    private static final Pattern YEAR_LAST =
            Pattern.compile("(?<!\\d)(\\d{1,2})[-_./](\\d{1,2})[-_./]((?:19|20)?\\d{2})(?!\\d)");
    private static final Pattern TIME =
            Pattern.compile("(?<![\\d:])(\\d{1,2}:\\d{2}(?::\\d{2})?(?:\\s?[AaPp][Mm])?)(?![\\d:])");

    static Optional<WrittenDate> find(List<String> lines, DateOrder order) {
        for (String line : lines) {
            Matcher first = YEAR_FIRST.matcher(line);
            Matcher last = YEAR_LAST.matcher(line);
            Optional<LocalDate> day = Optional.empty();
            String written = "";
            if (first.find()) {
                written = first.group(1) + "-" + first.group(2) + "-" + first.group(3);
                day = Value.date(written, order);
            } else if (last.find()) {
                written = last.group().replace('_', '/').replace('-', '/').replace('.', '/');
                day = Value.date(written, order);
            }
            if (!written.isEmpty()) {
                Matcher clock = TIME.matcher(line);
                Optional<LocalTime> time = clock.find() ? Value.timeOfDay(clock.group(1)) : Optional.empty();
                return Optional.of(new WrittenDate(day, time, written));
            }
        }
        return Optional.empty();
    }
}
