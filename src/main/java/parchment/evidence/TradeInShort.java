package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import parchment.display.InShort;
import parchment.stats.Interval;

/** Puts a trade-off into three sentences. */
final class TradeInShort {
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
            String beside = asked.twins().get(0).name();
            return new InShort(
                    "No compromise between " + attributes + " can be told.",
                    "The " + feature + " moved together with " + beside + ", so the scores may have gone with either.",
                    "Roast some batches with another " + feature + " and leave " + beside + " as it was.");
        }
        if (!found.seen()) {
            return new InShort(
                    "Between " + ends + " of " + feature + " there is nothing to trade.",
                    "None of " + attributes + " went with it more closely than luck explains.",
                    "Choose the " + feature + " for other reasons.");
        }
        boolean named = asked.verdict() == Verdict.SUGGESTIVE;
        return new InShort(
                named
                        ? "The best compromise of " + attributes + " lies "
                                + where(asked.measure(), round, found.bestSet(), range) + " of " + feature + "."
                        : "Where between " + ends + " of " + feature + " the best compromise lies cannot be told.",
                named
                        ? "This is more than luck, but something that moved along with the " + feature
                                + " may be the cause."
                        : "Anywhere from " + round.words(found.bestSet().lower()) + " to "
                                + round.words(found.bestSet().upper()) + " agrees with the scores.",
                named
                        ? "To know, let chance choose between " + ends + " before each charge, and cup blind."
                        : "Say what each score must reach at least, or cup more batches near both ends.");
    }

    /** Beyond an end of what was tried nothing was looked at, so a set that touches it is open there. */
    private static String where(Measure measure, RoundReadings round, Interval set, TriedRange range) {
        double little = range.width() / 100;
        List<String> words = new ArrayList<>();
        if (set.lower() <= range.low() + little || set.upper() >= range.high() - little) {
            return TradeOffPage.where(measure, set, range);
        }
        words.add(round.words(set.lower()));
        if (!round.words(set.upper()).equals(words.get(0))) {
            words.add(round.words(set.upper()));
        }
        return words.size() == 1 ? "near " + words.get(0) : "between " + words.get(0) + " and " + words.get(1);
    }
}
