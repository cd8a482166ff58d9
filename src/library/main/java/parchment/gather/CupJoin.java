package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import parchment.file.NameForms;
import parchment.sheet.Words;

/**
 * Leads each cup to its batch, and keeps why.
 *
 * @param joined the cups whose batch is certain
 * @param doubtful the cups that several batches can be meant by
 * @param unjoined the cups that no batch is found for
 * @param told what was read another way than it stands, a sentence each
 */
record CupJoin(List<Joined> joined, List<Doubtful> doubtful, List<Unjoined> unjoined, List<String> told) {
    /** Holds a cup, the name of its batch, and a sentence that says why. */
    record Joined(TastedCup cup, String batch, String reason) {}

    /** Holds a cup, and which batches it can be of. */
    record Doubtful(TastedCup cup, FoundBatch found) {
        /** Returns the likeliest batch. */
        String likeliest() {
            return found.batches().get(0);
        }

        /** Returns the other batches. */
        List<String> alternatives() {
            return found.batches().subList(1, found.batches().size());
        }

        /** Returns a sentence that says why it is not certain. */
        String reason() {
            return found.reason();
        }

        /** Returns the batch that stands until it is answered; "" where every batch would be a guess. */
        String unlessTold() {
            return found.sure() == FoundBatch.Sure.LIKELY ? likeliest() : "";
        }

        /** Returns the cup as the roaster settles it. */
        Joined settled(String batch) {
            return new Joined(cup, batch, CupSearch.place(cup) + " is batch " + batch + ": by your answer.");
        }
    }

    /** Holds a cup, the nearest batch if one is near, and a sentence that says what was looked for. */
    record Unjoined(TastedCup cup, Optional<String> nearest, String reason) {}

    CupJoin {
        joined = List.copyOf(joined);
        doubtful = List.copyOf(doubtful);
        unjoined = List.copyOf(unjoined);
        told = List.copyOf(told);
    }

    /** Joins cups to batches by name, by key, by day and by lot. */
    static CupJoin of(List<TastedCup> cups, List<BlindKey> keys, List<NamedBatch> batches) {
        CupSearch search = new CupSearch(keys, batches, cups);
        List<Joined> joined = new ArrayList<>();
        List<Doubtful> doubtful = new ArrayList<>();
        List<Unjoined> unjoined = new ArrayList<>();
        Set<String> told = new LinkedHashSet<>();
        for (TastedCup cup : cups) {
            FoundBatch found = search.find(cup);
            if (found.isCertain()) {
                String batch = found.batches().get(0);
                TastedCup served = search.served(cup, batch);
                joined.add(new Joined(served, batch, found.reason()));
                if (served != cup && search.isAlsoABatch(served.code())) {
                    told.add(served.table().sheet().name() + ": " + Words.quote(served.code())
                            + " is read as a blind code, of batch " + batch
                            + " by the key; a batch is called so too.");
                }
            } else if (!found.batches().isEmpty()) {
                doubtful.add(new Doubtful(cup, found));
            } else {
                unjoined.add(new Unjoined(cup, found.nearest(), found.reason()));
            }
        }
        return new CupJoin(joined, doubtful, unjoined, List.copyOf(told));
    }

    /** Returns a name as it is compared: lower case, one blank between words, any form of a letter. */
    static String plain(String name) {
        return NameForms.composed(name)
                .toLowerCase(Locale.ROOT)
                .replaceAll("[\\s_]+", " ")
                .strip();
    }
}
