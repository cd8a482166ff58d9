package parchment.gather;

/**
 * One reason for, or against, a recording being a row of a list, with what it weighs and how it is told.
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
        /** A time of the charge that is some minutes off. */
        NEAR_TIME,
        /** The day alone. */
        DAY,
        /** A machine, a lot or a person that both name. */
        WORD,
        /** The place in the order of the day. */
        ORDER,
        /** The place in the order of the day, where every drop of the day fits too. */
        ORDER_WITH_DROPS,
        /** Times of marks, and how long the recording is. */
        LENGTH,
        /** That an earlier gathering put them together. */
        BEFORE;

        /** Returns whether this alone can tell one batch of a day from another. */
        boolean identifies() {
            return this == NAME || this == TIME;
        }
    }

    boolean against() {
        return points < 0;
    }
}
