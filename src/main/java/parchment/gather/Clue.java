package parchment.gather;

/**
 * Holds one reason for, or against, a recording being a row of a list.
 *
 * @param kind what it rests on
 * @param points how much it weighs; below 0 against
 * @param words the reason, as the rest of a sentence
 */
record Clue(Kind kind, int points, String words) {
    enum Kind {
        /** A name or number that both have. */
        NAME,
        /** The date and time of the charge. */
        TIME,
        /** The day alone. */
        DAY,
        /** The place in the order of the day. */
        ORDER,
        /** Times of marks, and how long the recording is. */
        LENGTH;

        /** Returns whether this alone can tell one batch of a day from another. */
        boolean identifies() {
            return this == NAME || this == TIME;
        }
    }

    boolean against() {
        return points < 0;
    }
}
