package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Holds which batches a cup can be of.
 *
 * @param batches the names, the likeliest first
 * @param certain whether the first may be taken without asking
 * @param reason why, or what was looked for, in a sentence
 * @param nearest the name that is a slip away, where no batch is found
 */
record FoundBatch(List<String> batches, boolean certain, String reason, Optional<String> nearest) {
    FoundBatch {
        batches = List.copyOf(batches);
    }

    static FoundBatch one(String batch, String reason) {
        return new FoundBatch(List.of(batch), true, reason, Optional.empty());
    }

    static FoundBatch several(List<String> batches, String reason) {
        return new FoundBatch(batches, false, reason, Optional.empty());
    }

    static FoundBatch none(String reason, Optional<String> nearest) {
        return new FoundBatch(List.of(), false, reason, nearest);
    }

    boolean isNone() {
        return batches.isEmpty();
    }

    boolean isCertain() {
        return certain && batches.size() == 1;
    }

    /** Returns the batches of both, these first. */
    List<String> with(FoundBatch other) {
        Set<String> both = new LinkedHashSet<>(batches);
        both.addAll(other.batches);
        return new ArrayList<>(both);
    }

    /** Returns the same, to be asked about. */
    FoundBatch doubted(String why) {
        return new FoundBatch(batches, false, why, nearest);
    }
}
