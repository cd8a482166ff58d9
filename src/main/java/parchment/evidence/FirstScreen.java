package parchment.evidence;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Says below the picture of an answer which batches it is about and what could be wrong with it, in plain sentences. */
final class FirstScreen {
    private static final int MOST_LOTS = 4;

    private static final int MOST_NAMED = 2;

    private final Evidence evidence;

    private FirstScreen(Evidence evidence) {
        this.evidence = evidence;
    }

    static FirstScreen of(Evidence evidence) {
        return new FirstScreen(evidence);
    }

    /** Says from which lots, days and cuppers the answer is, and whether the lots agree. */
    String forWhich() {
        Material material = evidence.judgedMaterial();
        if (material.batches().isEmpty()) {
            return "No scored batch stands behind it.";
        }
        Map<String, Integer> lots = new LinkedHashMap<>();
        material.batches().forEach(batch -> lots.merge(TastedBatch.lotWords(batch.lot()), 1, Integer::sum));
        List<String> largest = lots.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                .map(lot -> lot.getKey() + " (" + lot.getValue() + ")")
                .toList();
        List<String> named =
                new ArrayList<>(largest.subList(0, largest.size() > MOST_LOTS + 1 ? MOST_LOTS : largest.size()));
        if (named.size() < largest.size()) {
            named.add((largest.size() - named.size()) + " more lots");
        }
        return "From " + Wording.count(material.batches().size(), "scored batch", "scored batches") + " on "
                + Wording.count(material.roastDays(), "roast day", "roast days") + ", tasted by "
                + Wording.count(material.cuppers().size(), "cupper", "cuppers") + ": " + Wording.list(named) + "."
                + whetherLotsAgree(lots.size());
    }

    private String whetherLotsAgree(int lots) {
        Optional<LotsApart> apart = evidence.lotsApart();
        if (lots < 2 || apart.isEmpty()) {
            return "";
        }
        if (!apart.get().differ()) {
            return evidence.verdict() == Verdict.CANNOT_TELL ? "" : " It was much the same in each of these lots.";
        }
        return apart.get()
                        .furthest()
                        .map(lot -> " Not the same in every lot: " + lot + " differs most.")
                        .orElse(" Not the same in every lot.")
                + bestOfEach();
    }

    /** Names where each lot was best, if that is inside of what was tried for all of them and they are few. */
    private String bestOfEach() {
        List<LotBest> lots = evidence.bests().map(Bests::lots).orElse(List.of());
        boolean all = lots.stream().allMatch(lot -> lot.best().answer() == Peak.Answer.INSIDE);
        if (lots.isEmpty() || lots.size() > MOST_LOTS + 1 || !all || !namesAPlace()) {
            return "";
        }
        TriedRange range = evidence.triedRange().orElseThrow();
        RoundReadings round = RoundReadings.of(evidence.question().measure(), range.low(), range.high());
        return " Highest: "
                + Wording.list(lots.stream()
                        .map(lot ->
                                lot.lot() + " near " + round.words(lot.best().best()))
                        .toList())
                + ".";
    }

    /** Says what moved along, and what else may have misled the scores. */
    String whatCouldBeWrong() {
        List<String> words = new ArrayList<>();
        List<String> along = movedAlong();
        if (evidence.effect().isEmpty() && !along.isEmpty()) {
            words.add(Wording.list(along) + " moved along with the " + evidence.feature());
        }
        if (evidence.scores() > 0 && !evidence.blindness().enough()) {
            words.add("cuppers may have known what they tasted");
        }
        if (evidence.cuppers() == 1) {
            words.add("it is one cupper's taste");
        }
        return words.isEmpty()
                ? "What could be wrong: something that nobody wrote down, such as the draught or dirty ducts."
                : "What could be wrong: " + String.join("; ", words) + ".";
    }

    private List<String> movedAlong() {
        List<String> along = new ArrayList<>();
        evidence.movedTogether().notable().stream()
                .filter(companion -> companion.tie().isEmpty())
                .limit(MOST_NAMED)
                .forEach(companion -> along.add(companion.name()));
        evidence.facts().notable().stream()
                .limit(MOST_NAMED)
                .map(Facts.Fact::name)
                .filter(fact -> !along.contains(fact))
                .forEach(along::add);
        return along;
    }

    /** Says whether the first sentences send the reader to a reading. */
    boolean namesAPlace() {
        return evidence.analysis().isPresent()
                && (evidence.verdict() == Verdict.STRONG || evidence.verdict() == Verdict.SUGGESTIVE);
    }
}
