package parchment.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import parchment.display.answer.Report;
import parchment.logbook.contents.Cautions;
import parchment.stats.Estimate;
import parchment.stats.Fieller;
import parchment.stats.Interval;
import parchment.trial.sealed.TrialTerms;

/** Writes the answer of a trial as a page: the answer, what was stated beforehand, the seal, and folded how it was worked out. */
final class TrialPage {
    private final TrialAnswer answer;
    private final TrialTerms terms;

    private TrialPage(TrialAnswer answer) {
        this.answer = answer;
        this.terms = answer.terms();
    }

    static Report of(TrialAnswer answer) {
        return new TrialPage(answer).page();
    }

    private Report page() {
        Report page = Report.titled("What did the " + terms.control().words() + " do to the " + terms.score()
                        + "? Trial " + terms.trial())
                .add(answer.inShort())
                .add(TrialPictures.sets(answer));
        for (String words : face()) {
            page = page.say(words);
        }
        return page.caution(Cautions.BESIDE_A_READING).fold(workedOut());
    }

    private List<String> face() {
        List<String> words = new ArrayList<>();
        words.add(stated());
        words.add("Seal of plan and draw: " + answer.seal() + ".");
        words.add(whose());
        words.add(notStated());
        words.add(answer.missing().words());
        words.add(bounds());
        words.add(unblinded());
        words.add(unfinished());
        words.removeIf(String::isEmpty);
        return words;
    }

    /** Says what was stated before anything was drawn. */
    private String stated() {
        return "Stated beforehand: what the " + terms.control().words() + " does to " + terms.score() + ", targets "
                + TrialWords.list(terms.targets().stream()
                        .map(target -> TrialWords.reading(terms, target))
                        .toList())
                + "; smallest difference that matters " + TrialWords.points(terms.smallestDifference())
                + " points from the lowest target to the highest; as assigned, by shuffles inside sets; "
                + (terms.looks() == 1 ? "one look" : "two looks at 0.0294 each") + "; a lost batch within "
                + TrialWords.points(terms.lostBatch()) + " points of its set's mean; "
                + TrialWords.count(terms.cuppers().size(), "cupper", "cuppers") + ", "
                + TrialWords.count(terms.cups(), "cup", "cups") + " each. This is look " + answer.look() + ".";
    }

    private String whose() {
        int cuppers = answer.assigned().map(AsAssigned::cuppers).orElse(0);
        return cuppers == 0
                ? ""
                : "The points are those of "
                        + (cuppers == 1 ? "this one cupper" : "these " + cuppers + " cuppers")
                        + "; others may put the same cups closer together or further apart.";
    }

    /** Says who cupped without having been named beforehand; their scores count, and a reader may ask why they came. */
    private String notStated() {
        List<String> others = answer.batches().stream()
                .flatMap(batch -> batch.scores().stream())
                .map(AssignedBatch.GivenScore::cupper)
                .distinct()
                .sorted()
                .filter(cupper -> !terms.cuppers().contains(cupper))
                .toList();
        return others.isEmpty()
                ? ""
                : "Cupped without having been named beforehand: " + TrialWords.list(others)
                        + ". Their scores are in the answer.";
    }

    private String bounds() {
        if (answer.missing().count() == 0) {
            return "";
        }
        Optional<MissingScores.Bounds> bounds = answer.missing().bounds();
        if (bounds.isEmpty()) {
            return "";
        }
        String within = "With every missing score within " + TrialWords.points(terms.lostBatch())
                + " points of its set's mean: "
                + TrialWords.anything(bounds.get().interval());
        return answer.missing().rule()
                ? within
                        + String.format(
                                Locale.ROOT,
                                " As %.0f %% of the scores are missing, more than %.0f %%, this is the answer above.",
                                100 * answer.missing().share(),
                                100 * MissingScores.MOST_MISSING)
                : within;
    }

    private String unblinded() {
        return answer.blindOnly()
                .map(second -> "Had seen targets and cupped all the same: "
                        + TrialWords.list(List.copyOf(answer.sawTargets())) + ". Without their scores the answer is: "
                        + second.verdictWords() + ". " + second.inShort().found())
                .orElse("");
    }

    private String unfinished() {
        long left = answer.missing().neverBegun();
        return left == 0
                ? ""
                : TrialWords.count(left, "place lies in a set", "places lie in sets")
                        + " of which nothing was charged; no target of theirs was seen, so leaving them out favours no answer.";
    }

    private Report workedOut() {
        Report page = Report.titled("How this was worked out").say("Verdict: " + answer.verdictWords() + ". " + why());
        if (answer.assigned().isEmpty()) {
            return page;
        }
        AsAssigned found = answer.assigned().get();
        page = page.heading("As assigned")
                .say(asAssigned(found))
                .add(TrialPictures.shuffles(answer, found))
                .say(beside(found))
                .heading("As achieved")
                .say(followed(found));
        Optional<AsAchieved> achieved = answer.achieved();
        if (achieved.isEmpty()) {
            return page.say("Too few scored batches were read to take them as they came out.");
        }
        return page.say(asAchieved(achieved.get()))
                .say(terms.control().assumption())
                .add(TrialPictures.achieved(answer, achieved.get()));
    }

    private String why() {
        TrialJudgement judgement = answer.judgement();
        return switch (judgement.why()) {
            case NOTHING_TO_COMPARE -> "No set has two scored batches with different targets.";
            case ONE_LOOK_TOO_MANY ->
                "Look " + answer.look()
                        + " was not planned: a look a day finds something in 18 of 100 trials without any difference.";
            case SEEN -> "Chance shows as much in no more than " + chance() + " of 100 trials without any difference.";
            case NONE_AS_LARGE ->
                "No difference of " + TrialWords.points(terms.smallestDifference())
                        + " points or more is left, on either side.";
            case SEEN_BUT_SMALLER ->
                "Zero is ruled out, and so is every difference of " + TrialWords.points(terms.smallestDifference())
                        + " points or more: it did something, and less than matters.";
            case TOO_FEW_SETS -> "In so few sets no outcome is rare enough.";
            case NOT_RARE_ENOUGH ->
                "The interval leaves zero out, but chance shows as much in more than " + chance()
                        + " of 100 trials without any difference.";
            case OPEN -> "Zero and differences large enough to matter both agree with the scores.";
        };
    }

    private String chance() {
        return String.format(Locale.ROOT, terms.looks() == 1 ? "%.0f" : "%.2f", 100 * terms.chance());
    }

    private String asAssigned(AsAssigned found) {
        return String.format(
                Locale.ROOT,
                "%s in %s, each batch the mean over its cups and cuppers, taken from its set's mean. From the lowest target to the highest: %s points (%s),"
                        + " two-sided p %s among %s.",
                TrialWords.count(found.batches().size(), "batch", "batches"),
                TrialWords.count(found.setCount(), "set", "sets"),
                signed(found.difference()),
                ends(found.interval()),
                found.chance() < 0.001 ? "below 0.001" : String.format(Locale.ROOT, "%.3f", found.chance()),
                found.slope().shuffle().words());
    }

    private String beside(AsAssigned found) {
        Interval plain = found.plainInterval();
        Optional<Estimate> mixed = TrialMixedModel.slope(found);
        return "Beside it, the same by Student's t: " + ends(plain) + "."
                + mixed.map(slope ->
                                " From every single score, with sets, batches, cuppers and cuppers in a set free to differ: "
                                        + signed(slope.estimate() * terms.span()) + " points ("
                                        + ends(over(slope.interval(found.level()))) + ").")
                        .orElse(" The single scores allow no model of their own.");
    }

    private Interval over(Interval slope) {
        return new Interval(slope.lower() * terms.span(), slope.upper() * terms.span(), slope.level());
    }

    /** Says how many targets were missed; a missed one counts as it was assigned. */
    private String followed(AsAssigned found) {
        double half = halfAStep();
        List<AssignedBatch> read = found.batches().stream()
                .filter(batch -> batch.achieved().isPresent())
                .toList();
        long missed = read.stream()
                .filter(batch -> Math.abs(batch.achieved().orElseThrow() - batch.target()) > half + 1e-9)
                .count();
        return missed + " of " + read.size() + " targets were missed by more than "
                + terms.control().unit().withDigits(2).formatStep(half, terms.reader())
                + ", half a step between targets; they count above as they were assigned."
                + (read.size() < found.batches().size()
                        ? " Of " + TrialWords.count(found.batches().size() - read.size(), "batch", "batches") + " the "
                                + terms.control().words() + " could not be read."
                        : "");
    }

    private double halfAStep() {
        double least = terms.span();
        for (int i = 1; i < terms.targets().size(); i++) {
            least = Math.min(least, terms.targets().get(i) - terms.targets().get(i - 1));
        }
        return least / 2;
    }

    private String asAchieved(AsAchieved achieved) {
        double step = terms.control().unit().naturalStep();
        String unit = terms.control().unit().formatStep(step, terms.reader());
        Fieller set = achieved.set();
        String slopes = switch (set.form()) {
            case BETWEEN ->
                Double.isInfinite(set.lower()) || Double.isInfinite(set.upper())
                        ? "no end on one side"
                        : signed(set.lower() * step) + " to " + signed(set.upper() * step) + " points";
            case OUTSIDE ->
                "below " + signed(set.lower() * step) + " or above " + signed(set.upper() * step)
                        + " points: no end on either side";
            case EVERYTHING -> "any number of points: the targets hardly moved the reading";
        };
        return String.format(
                Locale.ROOT,
                "Per %s more in the %s as it came out, the target taken as the only reason that counts: %s (%.0f %%, Anderson and Rubin's set). By shuffles:"
                        + " %s points per %s. The reading moved by %.2f per 1.00 of the target.",
                unit,
                terms.control().words(),
                slopes,
                100 * set.level(),
                perStep(achieved, step),
                unit,
                achieved.pull());
    }

    private static String perStep(AsAchieved achieved, double step) {
        List<Interval> parts = achieved.twin().parts();
        return parts.isEmpty()
                ? "no number at all"
                : parts.stream()
                        .map(part -> stretch(part.lower() * step, part.upper() * step))
                        .collect(Collectors.joining(" or "));
    }

    private static String stretch(double lower, double upper) {
        if (Double.isInfinite(lower) && Double.isInfinite(upper)) {
            return "any number of";
        }
        return Double.isInfinite(lower)
                ? "below " + signed(upper)
                : Double.isInfinite(upper) ? "above " + signed(lower) : signed(lower) + " to " + signed(upper);
    }

    private static String ends(Interval interval) {
        if (Double.isNaN(interval.lower())) {
            return "no interval";
        }
        return Double.isInfinite(interval.lower())
                ? String.format(Locale.ROOT, "no end on either side at %.0f %%", 100 * interval.level())
                : String.format(
                        Locale.ROOT,
                        "%.0f %% interval %s to %s",
                        100 * interval.level(),
                        signed(interval.lower()),
                        signed(interval.upper()));
    }

    private static String signed(double points) {
        String text = String.format(Locale.ROOT, "%.2f", points);
        return text.equals("-0.00") ? "0.00" : text.startsWith("-") || text.equals("0.00") ? text : "+" + text;
    }
}
