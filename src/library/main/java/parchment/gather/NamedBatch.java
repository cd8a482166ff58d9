package parchment.gather;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;

/**
 * Lets a cup find its batch of the new logbook by any of the names that the batch has.
 *
 * @param name its name in the new logbook
 * @param otherNames what files and lists call it
 * @param day the day of its charge, if it is known
 * @param time the time of day of its charge, if it is known
 * @param lot its lot; "" if it is not known
 */
record NamedBatch(String name, List<String> otherNames, Optional<LocalDate> day, Optional<LocalTime> time, String lot) {
    NamedBatch {
        otherNames = List.copyOf(otherNames);
    }
}
