package parchment.learning;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.sheet.Words;

/** Tells in short sentences whether lines and bends miss something. */
final class YardstickInShort {
    private YardstickInShort() {}

    static InShort of(
            String attribute,
            Yardstick.Missed missed,
            Optional<HeldOutDays> judged,
            Optional<PlantedStep.Result> planted,
            List<Yardstick.Share> shares,
            ScoredRows scored) {
        if (judged.isEmpty()) {
            return refused(attribute, scored);
        }
        HeldOutDays days = judged.get();
        return switch (missed) {
            case YES ->
                new InShort(
                        "Something in the roast goes with the " + attribute + " in a way that lines and bends miss.",
                        String.format(
                                Locale.ROOT,
                                "With it, %d roast days left out were missed by %.2f points, with lines and bends alone by %.2f: likely %.2f to %.2f nearer.",
                                days.days(),
                                days.both(),
                                days.smooth(),
                                nearer(days, days.low()),
                                nearer(days, days.high())),
                        "Look first at the " + shares.get(0).feature()
                                + ": it may act in a step, or with another number.");
            case NO ->
                new InShort(
                        "Nothing was found in the roast that lines and bends miss about the " + attribute + ".",
                        "A hidden step of " + points(planted) + " points would have been found; it was in all "
                                + PlantedStep.TRIALS + " trials.",
                        "Ask the single questions; lines and bends serve them here.");
            case CANNOT_TELL ->
                new InShort(
                        "Whether lines and bends miss something about the " + attribute + " cannot be told.",
                        "Nothing was found, but a hidden step of " + points(planted) + " points was found in "
                                + planted.map(PlantedStep.Result::found)
                                        .filter(found -> found > 0)
                                        .map(found -> "only " + found)
                                        .orElse("none")
                                + " of " + PlantedStep.TRIALS + " trials.",
                        "Ask again with more scored batches; smaller things may hide as well.");
        };
    }

    /** What is missing, and what to do. */
    private static InShort refused(String attribute, ScoredRows scored) {
        String found = "Whether lines and bends miss something about the " + attribute + " cannot be told.";
        int batches = scored.rows().size();
        long days = scored.days().stream().distinct().count();
        if (batches == 0) {
            return new InShort(
                    found,
                    scored.notDated() == 0
                            ? "No batch is scored."
                            : Words.count(scored.notDated(), "batch is", "batches are")
                                    + " scored, but none has a roast day.",
                    scored.notDated() == 0
                            ? "Write scores into cuppings.csv, one row per cup and cupper, and ask again."
                            : "Write the roast days into batches.csv and ask again.");
        }
        if (batches < Yardstick.FEWEST_BATCHES || days < Yardstick.FEWEST_DAYS) {
            return new InShort(
                    found,
                    "That takes " + Yardstick.FEWEST_BATCHES + " scored batches of " + Yardstick.FEWEST_DAYS
                            + " roast days; there " + (batches == 1 ? "is " : "are ") + batches + " of " + days + ".",
                    "Ask again when more are scored.");
        }
        return scored.differ()
                ? new InShort(
                        found,
                        "That takes two features that are known of the scored batches and differ between them.",
                        "Look which marks and readings are missing: write the ones and log the others.")
                : new InShort(
                        found,
                        "All " + batches + " scored batches have the same score.",
                        "Ask about a score that differs from batch to batch.");
    }

    /** By how many points roast days are missed less where this share of the squared misses is taken away. */
    private static double nearer(HeldOutDays days, double gain) {
        return days.smooth() * (1 - Math.sqrt(Math.max(0, 1 - gain)));
    }

    /** Says the gain with its interval. */
    static String gain(HeldOutDays days) {
        return String.format(
                Locale.ROOT,
                "Drawing lines and bends towards the trees made the squared misses %s %s (90 %% interval of the change for the better: %s to %s, over"
                        + " %d roast days).",
                percent(Math.abs(days.gain())),
                days.gain() < 0 ? "larger" : "smaller",
                percent(days.low()),
                percent(days.high()),
                days.days());
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * share + 0.0).replace("-0.0 %", "0.0 %");
    }

    private static String points(Optional<PlantedStep.Result> planted) {
        return String.format(
                Locale.ROOT, "%.1f", planted.map(PlantedStep.Result::points).orElse(Double.NaN));
    }

    /** Adds how it was worked out, and what was left out. */
    static Report method(Report page, ScoredRows scored, Optional<PlantedStep.Result> planted, long seed) {
        CentredRows features = scored.features();
        Report longer = page.say(
                "Each feature counts from the mean of its lot and probe period; of each score strict and mild cuppers, and good and bad"
                        + " cuppings, were taken out. Roast days were left out in eight parts. How far lines and bends were drawn"
                        + " towards the trees on a part is what served best on the other parts.");
        if (planted.isPresent()) {
            longer = longer.say("The trials: batches in the upper half of two features, picked by chance, were made "
                    + points(planted) + " points better, and the same search was run; it found this in "
                    + planted.get().found() + " of " + PlantedStep.TRIALS + ".");
        }
        if (features.filled() > 0) {
            longer = longer.say(Words.count(features.filled(), "missing number counts", "missing numbers count")
                    + " as the mean of its lot and probe period.");
        }
        if (!features.leftOut().isEmpty()) {
            longer = longer.say("Left out, missing in more than a fifth of the batches or the same in all: "
                    + String.join(", ", features.leftOut()) + ".");
        }
        if (scored.notDated() > 0) {
            longer = longer.say(Words.count(scored.notDated(), "scored batch has", "scored batches have")
                    + " no roast day and" + (scored.notDated() == 1 ? " is" : " are") + " left out.");
        }
        return longer.say(
                "Seed of the draws: " + seed
                        + ". This is a yardstick for other answers: it names no best place, and what goes with a score need not cause it.");
    }
}
