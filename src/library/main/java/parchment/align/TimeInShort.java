package parchment.align;

import java.util.Comparator;
import java.util.List;
import parchment.display.answer.InShort;
import parchment.quantity.TemperatureUnit;

/** Puts where a batch's time went into three sentences. */
final class TimeInShort {
    /** A step is out of the usual if it lies so many times the middle half's width beyond it (Tukey 1977, Exploratory Data Analysis, from memory). */
    private static final double FENCE = 1.5;

    private TimeInShort() {}

    /**
     * Says where the time went.
     *
     * @param steps the steps of temperature; those that the batch did not pass whole count for nothing
     * @param others how many batches it is held against
     */
    static InShort of(String batch, List<WhereTimeWent.Step> steps, int others, TemperatureUnit reader) {
        List<WhereTimeWent.Step> known =
                steps.stream().filter(step -> Double.isFinite(step.more())).toList();
        if (known.isEmpty()) {
            return new InShort(
                    "Where the time of batch " + batch + " went cannot be told.",
                    others < WhereTimeWent.FEWEST
                            ? "There " + (others == 1 ? "is 1 other batch" : "are " + others + " other batches")
                                    + " of its kind, and " + WhereTimeWent.FEWEST + " are needed."
                            : "It passed no step of temperature whole that " + WhereTimeWent.FEWEST + " others passed.",
                    "Ask again when more such batches have been roasted.");
        }
        double sum = known.stream().mapToDouble(WhereTimeWent.Step::more).sum();
        String way = "From " + Stretches.whole(known.get(0).from(), reader) + " to "
                + Stretches.whole(known.get(known.size() - 1).to(), reader) + " batch " + batch + " took ";
        WhereTimeWent.Step most = known.stream()
                .max(Comparator.comparingDouble(step -> Math.abs(step.more())))
                .orElseThrow();
        double reach = FENCE * (most.high() - most.low());
        boolean usual = most.seconds() >= most.low() - reach && most.seconds() <= most.high() + reach;
        return new InShort(
                way
                        + (Math.round(Math.abs(sum)) == 0
                                ? "as long as usual."
                                : Stretches.length(sum) + (sum < 0 ? " less" : " more") + " than usual."),
                Math.round(Math.abs(most.more())) == 0
                        ? "In no step of temperature was it faster or slower by a second."
                        : "Most of all it was " + Stretches.length(most.more())
                                + (most.more() < 0 ? " faster " : " slower ")
                                + Stretches.between(most.from(), most.to(), reader)
                                + ", " + (usual ? "inside" : "outside") + " what is usual for " + others + " others.",
                usual
                        ? "Nothing to do; the cup decides."
                        : "Look at gas and air just before that temperature in its picture.");
    }
}
