package parchment.gather.corpus;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.gather.corpus.StrangeKind.Fact;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;

/** Compares gathered scores with those that were given. */
final class ScoreComparison {
    /** Takes what was found. */
    @FunctionalInterface
    interface Found {
        void add(Fact fact, Roast roast, boolean right, boolean there, String words);
    }

    /** What an attribute may be called; a gathering may keep the roaster's word. */
    private static final Map<String, List<String>> WORDS = Map.of(
            "acidity", List.of("acidity", "säure", "acidez", "acidité", "acidità"),
            "sweetness", List.of("sweetness", "süße", "süsse", "dulzor", "douceur", "dolcezza", "doçura"),
            "body", List.of("body", "körper", "cuerpo", "corps", "corpo"),
            "overall", List.of("overall", "gesamt", "general", "global", "globale", "note globale", "geral"));

    private static final double MEAN = 0.011;

    private final Roastery roastery;
    private final Set<Fact> facts;
    private final List<CupScores> cups;
    private final BatchMatch match;
    private final Found found;

    ScoreComparison(Roastery roastery, Set<Fact> facts, Optional<Logbook> logbook, BatchMatch match, Found found) {
        this.roastery = roastery;
        this.facts = facts;
        this.cups = logbook.map(Logbook::cups).orElse(List.of());
        this.match = match;
        this.found = found;
    }

    void compare() {
        if (facts.contains(Fact.SCORES)) {
            roastery.tastings().forEach(this::cup);
        }
        if (facts.contains(Fact.MEAN_SCORES)) {
            ScoreParts.byCup(roastery).values().forEach(this::means);
        }
    }

    private Roast roast(Tasting tasting) {
        return ScoreParts.roast(roastery, tasting);
    }

    private List<CupScores> of(Tasting tasting) {
        Optional<String> name = match.of(tasting.batch()).map(Batch::name);
        return cups.stream()
                .filter(cup -> name.equals(Optional.of(cup.batch())))
                .toList();
    }

    private void cup(Tasting tasting) {
        List<CupScores> own = of(tasting).stream()
                .filter(cup ->
                        NamedLosses.composed(cup.cupper()).equalsIgnoreCase(NamedLosses.composed(tasting.cupper())))
                .toList();
        boolean right = own.size() == 1 && own.get(0).tastedOn().equals(tasting.tastedOn());
        for (Map.Entry<String, Double> score : tasting.scores().entrySet()) {
            right &= own.size() == 1 && score(own.get(0), score.getKey()) == score.getValue();
        }
        found.add(
                Fact.SCORES,
                roast(tasting),
                right,
                !own.isEmpty(),
                tasting.cupper() + "'s " + tasting.scores() + " of " + tasting.tastedOn() + " became "
                        + (own.isEmpty()
                                ? "nothing"
                                : own.stream()
                                        .map(cup -> cup.scores() + " of " + cup.tastedOn())
                                        .toList()));
    }

    private void means(List<Tasting> cup) {
        List<CupScores> own = of(cup.get(0));
        Map<String, Double> means = new HashMap<>();
        boolean right = !own.isEmpty();
        for (String attribute : InventedRoastery.ATTRIBUTES) {
            double truth = cup.stream()
                    .mapToDouble(tasting -> tasting.scores().get(attribute))
                    .average()
                    .orElseThrow();
            double mean = own.stream()
                    .mapToDouble(scores -> score(scores, attribute))
                    .average()
                    .orElse(Double.NaN);
            means.put(attribute, mean);
            right &= Math.abs(mean - truth) <= MEAN;
        }
        found.add(Fact.MEAN_SCORES, roast(cup.get(0)), right, !own.isEmpty(), "its means became " + means);
    }

    private static double score(CupScores cup, String attribute) {
        return cup.scores().entrySet().stream()
                .filter(score -> WORDS.get(attribute)
                        .contains(NamedLosses.composed(score.getKey()).toLowerCase(Locale.ROOT)))
                .mapToDouble(Map.Entry::getValue)
                .findFirst()
                .orElse(Double.NaN);
    }
}
