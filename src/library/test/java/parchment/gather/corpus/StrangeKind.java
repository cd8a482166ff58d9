package parchment.gather.corpus;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/** Writes a roastery down the way some roaster keeps files: one kind of strange folder. */
public interface StrangeKind {
    /** Names what of the truth a folder holds; what it does not hold is not asked of whoever gathers it. */
    enum Fact {
        /** The readings of the bean probe, by time since the charge. */
        BEAN_CURVES,
        /** The readings of the air probe. */
        AIR_CURVES,
        /** The gas. */
        GAS,
        /** One batch for each roast, with a name that tells which it was (its running number is in it). */
        BATCHES,
        /** The day of each roast. */
        DAYS,
        /** The minute of each charge, at least. */
        TIMES,
        LOTS,
        GREEN_MASSES,
        ROASTED_MASSES,
        YELLOWING,
        FIRST_CRACK,
        DROP,
        /** The bean probe just before the charge, as it was written down. */
        CHARGE_TEMPERATURES,
        /** Each cupper's score of each attribute of each batch. */
        SCORES,
        /** The mean over the cuppers of each attribute of each batch. */
        MEAN_SCORES
    }

    /** Returns the kind in a few words, such as "one workbook with a tab a batch". */
    String name();

    /** Returns what a folder of this kind holds. */
    Set<Fact> facts();

    /** Returns whether the folder tells a fact of one roast; where a curve or a row is missing on purpose, it does not. */
    default boolean tells(Roastery roastery, Roastery.Roast roast, Fact fact) {
        return facts().contains(fact);
    }

    /** Returns what happened in the roastery that keeps files so, where a kind only comes about if something did. */
    default Roastery in(Roastery roastery) {
        return roastery;
    }

    /**
     * Returns what a roaster would answer, where a folder of this kind leaves something truly open; most kinds need nothing.
     *
     * @return answers by a question's key, such as "date.order", or by words of the question
     */
    default Map<String, String> answers() {
        return Map.of();
    }

    /** Returns what a roaster would answer who knows what happened. */
    default Map<String, String> answers(Roastery roastery) {
        return answers();
    }

    /**
     * Writes the folder.
     *
     * @param roastery what happened
     * @param folder an empty folder
     * @param random for whatever differs from folder to folder of the kind
     */
    void write(Roastery roastery, Path folder, Random random) throws IOException;
}
