package parchment.gather;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import parchment.sheet.DateOrder;

/**
 * Finds the date that lines of text state.
 *
 * @param day the date, if its parts can be told
 * @param time the time of day beside it
 * @param written the date as it stands
 */
record WrittenDate(Optional<LocalDate> day, Optional<LocalTime> time, String written) {
    static Optional<WrittenDate> find(List<String> lines, DateOrder order) {
        return lines.stream()
                .flatMap(line -> WrittenDay.find(line).stream())
                .findFirst()
                .map(found -> new WrittenDate(found.on(order), found.clock(), found.written()));
    }
}
