package parchment.gather;

/**
 * One thing that a column could mean, to be weighed against the others, and what speaks for it.
 *
 * @param place the column
 * @param meaning what it could mean
 * @param unit its unit then
 * @param score how much speaks for it, from 0 to 1
 * @param unitOpen whether the unit is a guess that a person should confirm
 * @param reason why, as the rest of a sentence that begins with the column
 */
record ColumnClaim(int place, ListMeaning meaning, String unit, double score, UnitDoubt unitOpen, String reason) {
    /** Says whether the unit is known. */
    enum UnitDoubt {
        KNOWN,
        OPEN
    }

    static ColumnClaim of(ColumnValues column, ListMeaning meaning, String unit, double score, String reason) {
        return new ColumnClaim(column.place(), meaning, unit, score, UnitDoubt.KNOWN, reason);
    }
}
