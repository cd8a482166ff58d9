package parchment.evidence;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;

/**
 * Writes what stands below the picture of an answer: which batches it is about and what could be wrong with it, in plain sentences.
 *
 * <p>All of it is about the same batches as the sentence above and the picture: those that the verdict rests on.
 *
 * @param verdict the answer's verdict
 * @param measure the feature asked about
 * @param behind from how much the verdict is
 * @param lots the batches of each lot, in the order of the logbook
 * @param sameness whether the lots agree
 * @param furthest the lot that differs most, if one does
 * @param bests the best place of each lot; empty if none may be told
 * @param range what was tried; empty if nothing could be fitted
 * @param differingAmong of how many batches the lots differ where all scored ones count, drawn or not; empty if they do not, or if all count anyway
 * @param alongside what moved along and may be behind the scores, by name; empty where chance set the targets
 * @param partOfIt what a roast with more of the feature is by nature, in a sentence; empty where nothing of the kind moved along
 */
record FirstScreen(
        Verdict verdict,
        Measure measure,
        Behind behind,
        Map<String, Integer> lots,
        Sameness sameness,
        Optional<String> furthest,
        List<LotBest> bests,
        Optional<TriedRange> range,
        OptionalInt differingAmong,
        List<String> alongside,
        String partOfIt) {
    private static final int MOST_LOTS = 4;

    private static final int MOST_NAMED = 2;

    private static final String OPEN_BELOW = "open \"How this was worked out\" below.";

    /** Whether all lots have one slope. */
    enum Sameness {
        NOT_COMPARED,
        ALIKE,
        DIFFERENT
    }

    /** Whether cuppers knew what they tasted. */
    enum Cups {
        NONE,
        BLIND,
        OPEN
    }

    /** Counts what a verdict rests on. */
    record Behind(long roastDays, long cuppers, Cups cups) {}

    FirstScreen {
        lots = new LinkedHashMap<>(lots);
        bests = List.copyOf(bests);
        alongside = List.copyOf(alongside);
    }

    static FirstScreen of(Evidence evidence) {
        ModelFrame material = evidence.judgedMaterial();
        Map<String, Integer> lots = new LinkedHashMap<>();
        material.batches().forEach(batch -> lots.merge(TastedBatch.lotWords(batch.lot()), 1, Integer::sum));
        Optional<LotsApart> apart = evidence.judged().map(Analysis::lotsApart);
        Measure measure = evidence.question().measure();
        PartOfIt moved = new PartOfIt(measure, evidence.movedTogether().notable());
        boolean othersDiffer = evidence.judgedByChance()
                && evidence.lotsApart().map(LotsApart::differ).orElse(false);
        return new FirstScreen(
                evidence.verdict(),
                measure,
                new Behind(
                        material.roastDays(),
                        material.cuppers().size(),
                        material.scores().isEmpty()
                                ? Cups.NONE
                                : evidence.judgedBlindness().enough() ? Cups.BLIND : Cups.OPEN),
                lots,
                apart.map(found -> found.differ() ? Sameness.DIFFERENT : Sameness.ALIKE)
                        .orElse(Sameness.NOT_COMPARED),
                apart.flatMap(LotsApart::furthest),
                evidence.judged()
                        .flatMap(Analysis::bests)
                        .map(found -> found.told(evidence.attribute(), measure).lots())
                        .orElse(List.of()),
                evidence.judged().map(Analysis::range),
                othersDiffer ? OptionalInt.of(evidence.batches()) : OptionalInt.empty(),
                evidence.judgedByChance() ? List.of() : movedAlong(moved, evidence.facts()),
                evidence.judgedByChance() ? "" : moved.words());
    }

    private static List<String> movedAlong(PartOfIt moved, Facts facts) {
        List<String> along = new ArrayList<>(moved.others());
        facts.notable().stream()
                .limit(MOST_NAMED)
                .map(Facts.Fact::name)
                .filter(fact -> !along.contains(fact))
                .forEach(along::add);
        return List.copyOf(along);
    }

    /** Says from which lots, days and cuppers the answer is, and whether the lots agree. */
    String forWhich() {
        if (lots.isEmpty()) {
            return "No scored batch stands behind it.";
        }
        List<String> largest = lots.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                .map(lot -> lot.getKey() + " " + lot.getValue())
                .toList();
        List<String> named =
                new ArrayList<>(largest.subList(0, largest.size() > MOST_LOTS + 1 ? MOST_LOTS : largest.size()));
        if (named.size() < largest.size()) {
            named.add((largest.size() - named.size()) + " more lots");
        }
        // A difference of lots is an answer of its own, so it comes first.
        boolean differ = sameness == Sameness.DIFFERENT;
        return (differ ? whetherLotsAgree() : "") + "From "
                + Wording.count(batches(), "scored batch", "scored batches") + " on "
                + Wording.count(behind.roastDays(), "roast day", "roast days") + ", tasted by "
                + Wording.count(behind.cuppers(), "cupper", "cuppers") + ". "
                + (lots.size() == 1
                        ? "All of lot " + lots.keySet().iterator().next()
                        : "Batches of each lot: " + Wording.list(named))
                + "."
                + (differ ? "" : whetherLotsAgree());
    }

    private String goes() {
        return "the score goes with the " + measure.name();
    }

    private long batches() {
        return lots.values().stream().mapToLong(Integer::longValue).sum();
    }

    private String whetherLotsAgree() {
        if (lots.size() < 2) {
            return "";
        }
        return switch (sameness) {
            case NOT_COMPARED -> "";
            // What cannot be told is not the same anywhere.
            case ALIKE ->
                verdict == Verdict.CANNOT_TELL
                        ? " Whether this differs from lot to lot cannot be told either."
                        : differingAmong.isPresent()
                                ? " These " + batches() + " alone do not show whether " + goes()
                                        + " differently from lot to lot. All " + differingAmong.getAsInt()
                                        + " scored batches, not all of them drawn by chance, show that it does: to see each lot, "
                                        + OPEN_BELOW
                                : namesAPlace()
                                        ? " Nothing shows that " + goes()
                                                + " differently from lot to lot, so one answer is given for all."
                                        : " Nothing shows that " + goes() + " differently from lot to lot.";
            case DIFFERENT ->
                "The lots differ in how the score goes with the " + measure.name()
                        + furthest.map(lot -> ", most of all " + lot).orElse("")
                        + (bestOfEach().isEmpty() ? ": to see each, " + OPEN_BELOW : "." + bestOfEach())
                        + " ";
        };
    }

    /** Names where each lot was best, if that is inside of what was tried for all of them and they are few. */
    private String bestOfEach() {
        boolean all = bests.stream().allMatch(lot -> lot.best().answer() == Peak.Answer.INSIDE);
        if (bests.isEmpty() || bests.size() > MOST_LOTS + 1 || !all || !namesAPlace()) {
            return "";
        }
        TriedRange tried = range.orElseThrow();
        RoundReadings round = RoundReadings.of(measure, tried.low(), tried.high());
        return " Highest: "
                + Wording.list(bests.stream()
                        .map(lot ->
                                lot.lot() + " near " + round.words(lot.best().best()))
                        .toList())
                + ".";
    }

    /** Says what moved along, and what else may have misled the scores. */
    String whatCouldBeWrong() {
        List<String> words = new ArrayList<>();
        if (!alongside.isEmpty()) {
            words.add(Wording.list(alongside) + " moved along with the " + measure.name());
        }
        if (behind.cups() == Cups.OPEN) {
            words.add("cuppers may have known what they tasted");
        }
        if (behind.cuppers() == 1) {
            words.add("it is one cupper's taste");
        }
        return words.isEmpty()
                ? "What could be wrong: something that nobody wrote down, such as the draught or dirty ducts."
                : "What could be wrong: " + String.join("; ", words) + ".";
    }

    /** Says whether the first sentences send the reader to a reading. */
    boolean namesAPlace() {
        return range.isPresent() && (verdict == Verdict.STRONG || verdict == Verdict.SUGGESTIVE);
    }
}
