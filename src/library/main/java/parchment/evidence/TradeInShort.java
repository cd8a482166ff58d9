package parchment.evidence;

import java.util.List;
import parchment.display.answer.InShort;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.stats.Interval;

/** Puts a trade-off into three sentences. */
final class TradeInShort {
    /** A set narrower than this part of what was tried is told no finer. */
    private static final int LEAST_PART = 10;

    private TradeInShort() {}

    static InShort of(TradeOff asked) {
        String attributes = Wording.list(asked.attributes());
        String feature = asked.measure().name();
        if (asked.found().isEmpty()) {
            return new InShort(
                    "No compromise can be told along the " + feature + ".",
                    Wording.sentence(asked.whyNot()) + ".",
                    "Cup at least " + Analysis.FEWEST_BATCHES + " batches from " + Analysis.FEWEST_DAYS
                            + " roast days, then ask again.");
        }
        TradeOff.Found found = asked.found().get();
        TriedRange range = found.courses().range();
        RoundReadings round = RoundReadings.of(asked.measure(), range.low(), range.high());
        String ends = round.words(round.from(range.low())) + " and " + round.words(round.to(range.high()));
        if (!asked.twins().isEmpty()) {
            return movedTogether(
                    attributes,
                    asked.measure(),
                    asked.twins().stream().map(Collinearity.Twin::name).toList());
        }
        if (!found.seen()) {
            return notSeen(attributes, asked.measure(), ends);
        }
        boolean named = asked.verdict() == Verdict.SUGGESTIVE;
        return new InShort(
                named
                        ? "The best compromise of " + attributes + " lies "
                                + where(asked.measure(), found.bestSet(), range) + "."
                        : "Where between " + asked.measure().at(ends) + " the best compromise lies cannot be told.",
                named
                        ? "This is more than luck, but something that moved along with the " + feature
                                + " may be the cause."
                        : "Anywhere from " + String.join(" to ", told(asked.measure(), found.bestSet(), range))
                                + " agrees with the scores.",
                named
                        ? "To know, toss a coin between " + ends + " before each charge, and cup blind."
                        : "Say what each score must reach at least, or cup more batches near both ends.");
    }

    static InShort movedTogether(String attributes, Measure measure, List<String> beside) {
        return new InShort(
                "No compromise between " + attributes + " can be told.",
                "The " + measure.name() + " moved together with "
                        + Wording.list(
                                beside.stream().limit(2).map(Wording::spoken).toList())
                        + ", so the scores may have gone with " + FirstWords.eitherOrAny(beside) + ".",
                FirstWords.apart(measure, "", beside));
    }

    static InShort notSeen(String attributes, Measure measure, String ends) {
        return new InShort(
                "Where between " + measure.at(ends) + " the best compromise lies cannot be told.",
                "None of " + attributes + " went with it more closely than luck explains.",
                "Ask each score by itself: its answer says whether a difference that matters is ruled out.");
    }

    /** Beyond an end of what was tried nothing was looked at, so a set that touches it is open there. */
    static String where(Measure measure, Interval set, TriedRange range) {
        double little = range.width() / 100;
        List<String> ends = told(measure, set, range);
        if (set.lower() <= range.low() + little) {
            return "at " + measure.at(ends.get(1)) + " or below, perhaps lower than was tried";
        }
        if (set.upper() >= range.high() - little) {
            return "at " + measure.at(ends.get(0)) + " or above, perhaps higher than was tried";
        }
        return ends.get(0).equals(ends.get(1))
                ? "near " + measure.at(ends.get(0))
                : "between " + measure.at(String.join(" and ", ends));
    }

    /**
     * Returns the two ends of a set in words, rounded outwards by steps of the set's own width, so that nothing of it is lost; inwards
     * where the round reading beyond was not tried.
     */
    static List<String> told(Measure measure, Interval set, TriedRange range) {
        double width = Math.max(set.width(), range.width() / LEAST_PART);
        RoundReadings round = RoundReadings.of(measure, set.lower(), set.lower() + width);
        double below = round.to(set.lower());
        double above = round.from(set.upper());
        return List.of(
                round.words(below < range.lowest() ? round.from(set.lower()) : below),
                round.words(above > range.highest() ? round.to(set.upper()) : above));
    }
}
