package parchment.gather;

import java.time.LocalDate;
import java.util.Optional;
import parchment.sheet.DateOrder;

/**
 * Lets the dates of one recording be read the same way throughout: those in its lines and cells, and one in its name.
 *
 * @param order the order of day and month
 * @param names how a name such as 31-01-05 is read
 * @param folders what the names of its folders say of its day
 */
record FileDates(DateOrder order, NameDates names, FolderDays folders) {
    /** Returns the reading in which a name's year stands last, as elsewhere. */
    static FileDates of(DateOrder order) {
        return new FileDates(order, new NameDates(NameDates.Reads.LIKE_THE_REST), FolderDays.NONE);
    }

    /** Returns the day that is written; empty if it can be read two ways, or there is no such day. */
    Optional<LocalDate> day(WrittenDay written) {
        if (written.yearFirst().isEmpty()) {
            return written.on(order);
        }
        return switch (names.reads()) {
            case YEAR_FIRST -> written.yearFirst();
            case DAY_FIRST -> written.on(DateOrder.DAY_MONTH_YEAR);
            case MONTH_FIRST -> written.on(DateOrder.MONTH_DAY_YEAR);
            case LIKE_THE_REST -> written.on(order);
            case NOT -> Optional.empty();
        };
    }
}
