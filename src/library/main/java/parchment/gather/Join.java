package parchment.gather;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Which row of the lists a recording is taken for, with how sure that is and why, so that a person can agree or not.
 *
 * @param curve the recording
 * @param roast the rows
 * @param sure how sure it is
 * @param clues what speaks for it and against it
 * @param otherwise what else could be meant, as a sentence; "" if nothing could
 * @param key the key under which it is answered; "" before there is one
 */
record Join(GatheredBatch curve, ListedRoast roast, Sure sure, List<Clue> clues, String otherwise, String key) {
    enum Sure {
        DOUBTFUL,
        LIKELY,
        CERTAIN
    }

    Join {
        clues = List.copyOf(clues);
    }

    Join(GatheredBatch curve, ListedRoast roast, Sure sure, List<Clue> clues, String otherwise) {
        this(curve, roast, sure, clues, otherwise, "");
    }

    /** Returns it with the key under which it is answered. */
    Join under(String itsKey) {
        return new Join(curve, roast, sure, clues, otherwise, itsKey);
    }

    /**
     * Returns whether the two are put together unless a person says otherwise: nothing makes it doubtful, or a name says so all the same, or they were before.
     */
    boolean joinedUnlessTold() {
        return sure != Sure.DOUBTFUL
                || clues.stream()
                        .anyMatch(clue ->
                                !clue.against() && (clue.kind() == Clue.Kind.NAME || clue.kind() == Clue.Kind.BEFORE));
    }

    /** Returns the reasons for it. */
    String because() {
        return words(false);
    }

    /** Returns the reasons against it; "" if there are none. */
    String but() {
        String against = words(true);
        return against.isEmpty() ? otherwise : otherwise.isEmpty() ? against : against + "; " + otherwise;
    }

    private String words(boolean against) {
        boolean identified = clues.stream().anyMatch(clue -> clue.kind().identifies() && !clue.against());
        return clues.stream()
                .filter(clue -> clue.against() == against)
                // Where a name or a time tells, the place in the day adds nothing.
                .filter(clue ->
                        !identified || clue.kind() != Clue.Kind.ORDER && clue.kind() != Clue.Kind.ORDER_WITH_DROPS)
                .map(Clue::words)
                .collect(Collectors.joining(", "));
    }
}
