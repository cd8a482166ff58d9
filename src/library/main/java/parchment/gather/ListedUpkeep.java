package parchment.gather;

import java.time.LocalDate;

/**
 * One piece of work on a machine, as a row of a list tells it and as it will be written.
 *
 * @param machine the machine; "" if the row names none
 * @param doneOn the day
 * @param what what was done, in the roaster's words
 * @param kind the kind, only where one was typed; ""
 * @param note what else the row says
 * @param line the line in its sheet, counted from 1
 */
record ListedUpkeep(String machine, LocalDate doneOn, String what, String kind, String note, int line) {
    /** Returns the work with a machine, where it names none. */
    ListedUpkeep on(String only) {
        return machine.isEmpty() ? new ListedUpkeep(only, doneOn, what, kind, note, line) : this;
    }
}
