package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The batches that a cup can be of, before one is chosen or a person is asked.
 *
 * @param batches the names, the likeliest first
 * @param sure whether the first may be taken
 * @param reason why, or what was looked for, in a sentence
 * @param nearest the name that is a slip away, where no batch is found
 */
record FoundBatch(List<String> batches, Sure sure, String reason, Optional<String> nearest) {
    /** Says whether the first batch may be taken. */
    enum Sure {
        /** Without asking. */
        CERTAIN,
        /** It is asked about, and stands until it is answered: the cup names it and no other. */
        LIKELY,
        /** It is asked about, and no batch stands until it is answered: it is one of several, or called like a code by chance. */
        GUESS
    }

    FoundBatch {
        batches = List.copyOf(batches);
    }

    static FoundBatch one(String batch, String reason) {
        return new FoundBatch(List.of(batch), Sure.CERTAIN, reason, Optional.empty());
    }

    static FoundBatch several(List<String> batches, String reason) {
        return new FoundBatch(batches, batches.size() == 1 ? Sure.LIKELY : Sure.GUESS, reason, Optional.empty());
    }

    static FoundBatch none(String reason, Optional<String> nearest) {
        return new FoundBatch(List.of(), Sure.GUESS, reason, nearest);
    }

    boolean isNone() {
        return batches.isEmpty();
    }

    boolean isCertain() {
        return sure == Sure.CERTAIN && batches.size() == 1;
    }

    /** Returns the batches of both, these first. */
    List<String> with(FoundBatch other) {
        Set<String> both = new LinkedHashSet<>(batches);
        both.addAll(other.batches);
        return new ArrayList<>(both);
    }

    /** Returns the same, to be asked about. */
    FoundBatch doubted(String why) {
        return new FoundBatch(batches, batches.size() == 1 ? Sure.LIKELY : Sure.GUESS, why, nearest);
    }

    /** Returns the same, to be asked about and not to be taken until it is answered. */
    FoundBatch guessed(String why) {
        return new FoundBatch(batches, Sure.GUESS, why, nearest);
    }
}
