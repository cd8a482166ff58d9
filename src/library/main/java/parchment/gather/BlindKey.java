package parchment.gather;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Tells which batch was served under a blind code, so that a score sheet that names codes only finds its batches.
 *
 * @param entries the pairs, in the order of the sheet
 * @param reason why the table is taken for a key
 * @param told what was left out, a sentence each
 */
record BlindKey(List<Entry> entries, String reason, List<String> told) {
    /**
     * Holds one pair.
     *
     * @param code the code
     * @param batch the batch as the key names it; "" if the key names a lot alone
     * @param lot the lot as the key names it; "" if it does not
     * @param day the day the code was served, if the key says it
     * @param table where it stands
     * @param line the line in its sheet, counted from 1
     */
    record Entry(String code, String batch, String lot, Optional<LocalDate> day, FoundTable table, int line) {}

    BlindKey {
        entries = List.copyOf(entries);
        told = List.copyOf(told);
    }

    /** Returns the pairs of a table that has a column of codes and one of batches, each code once on a day. */
    static Optional<BlindKey> of(FoundTable table, ScoreClues clues) {
        return BlindKeys.of(table, clues);
    }
}
