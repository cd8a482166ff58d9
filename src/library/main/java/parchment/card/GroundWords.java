package parchment.card;

import java.util.List;
import java.util.Set;
import parchment.display.answer.FirstFew;

/** Tells by what batches were taken for good ones. */
final class GroundWords {
    private GroundWords() {}

    /** Returns the ground in a few words, for a table. */
    static String shortly(GoodBatches good) {
        return switch (good.ground()) {
            case BLIND_SCORES -> "blind scores of " + attribute(good);
            case OTHER_SCORES -> "scores of " + attribute(good) + ", not known to be blind";
            case AS_USUAL -> "no scores; as usual";
            case THE_LAST -> "nothing known; the last";
        };
    }

    private static String attribute(GoodBatches good) {
        return good.scored().map(ScoredLot::attribute).orElse("");
    }

    /** Says in a short sentence how sure it is that these batches went well. */
    static String howSure(GoodBatches good) {
        int shown = good.batches().size();
        return switch (good.ground()) {
            case BLIND_SCORES, OTHER_SCORES ->
                !good.isParted()
                        ? "By " + (good.ground() == GoodBatches.Ground.BLIND_SCORES ? "blind scores" : "scores")
                                + " none of the lot's " + good.held()
                                + " scored batches is better than another; these are the last of them."
                        : (shown == 1 ? "Its" : "Their") + " cups scored highest in " + attribute(good)
                                + (good.ground() == GoodBatches.Ground.BLIND_SCORES ? ", blind: " : ": ")
                                + (good.good() == 1
                                        ? "none of the other " + (good.held() - 1) + " lies"
                                        : good.good() + " of " + good.held() + " lie")
                                + " within the luck of tasting of the very best"
                                + (shown < good.good() ? ", here the last " + shown + "." : ".");
            case AS_USUAL -> "No scores tell which went well, so these are the last that were as usual.";
            case THE_LAST ->
                shown == 0
                        ? "There is nothing of it to lay side by side."
                        : shown < ScoredLot.ENOUGH
                                ? "Too few to say what repeats, or which went well."
                                : "Nothing tells which went well, so these are simply the last.";
        };
    }

    /** Names the batches that are none of the good ones because their cups were low. */
    private static String low(GoodBatches good) {
        Set<String> low = good.scored().map(ScoredLot::low).orElse(Set.of());
        return low.isEmpty()
                ? ""
                : "; " + (low.size() == 1 ? "batch " : "batches ") + FirstFew.of(List.copyOf(low))
                        + (low.size() == 1 ? " is" : " are")
                        + " left out, with cups clearly below the lot's others by the same cuppers";
    }

    /** Says at length how the batches were chosen. */
    static String atLength(GoodBatches good) {
        String from = good.among().isEmpty()
                ? ""
                : " Only batches roasted " + good.among() + " were looked at, "
                        + (good.asked().isEmpty()
                                ? "as the lot's newest was."
                                : good.askedWords()
                                        .map(asked ->
                                                "as you asked for " + asked + " and that is the nearest charge used.")
                                        .orElse("as you asked for that charge."));
        return switch (good.ground()) {
            case BLIND_SCORES, OTHER_SCORES ->
                good.held() + " batches of the lot have scores of " + attribute(good)
                        + (good.ground() == GoodBatches.Ground.BLIND_SCORES
                                ? " from blind cuppings."
                                : ". Fewer than " + ScoredLot.ENOUGH
                                        + " have them from cuppings written down as blind, so all scores count; who knows what is in the cup may"
                                        + " score what was hoped for.")
                        + " Each mean was drawn towards that of all batches, the more so the fewer scores there are, with cuppers and"
                        + " cuppings allowed for. " + good.good()
                        + " lie so near the lot's highest that the luck of tasting alone may part them (within "
                        + ScoredLot.APART
                        + " standard errors of the difference)"
                        + low(good) + "; the last " + good.batches().size() + " are shown." + from;
            case AS_USUAL ->
                "No scores of overall, liking or sweetness tell at least " + ScoredLot.ENOUGH
                        + " batches of the lot apart. Shown are the last "
                        + good.batches().size()
                        + " that were as usual beside the lot's others. Usual is not good: it is what was repeated."
                        + from;
            case THE_LAST ->
                good.held() == 0
                        ? "The logbook has no batch of this lot."
                        : "Neither scores nor at least 8 others of the lot tell which batches went well. "
                                + (good.batches().size() == 1
                                        ? "Shown is the one there is."
                                        : "Shown are the last " + good.batches().size() + ".")
                                + from;
        };
    }
}
