package parchment.card;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import parchment.align.score.ShrunkenScores;
import parchment.drift.found.CupsBeside;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;

/**
 * Finds the batches of a lot that no score puts below its best.
 *
 * <p>A batch's mean is drawn towards that of all batches as far as its few cups are luck ({@link ShrunkenScores}). A batch counts among the best if
 * it lies below the lot's highest by no more than {@value #APART} times the standard error of the two together: what an interval of 90 % to one
 * side reaches, with the two errors taken as independent.
 *
 * @param attribute what was scored
 * @param blind whether only scores of cuppings written down as blind were taken
 * @param low names of batches whose cups were clearly below their lot's others ({@link CupsBeside}): none of them went well
 * @param scores the scores of the lot's batches that have one that can be compared, by name
 */
record ScoredLot(String attribute, Cupping.Said blind, Set<String> low, Map<String, ShrunkenScores.Score> scores) {
    /** Attributes whose highest score is the best cup; of others, such as acidity, a high score need not be. */
    private static final List<String> TELL_GOOD = List.of("overall", "liking", "sweetness");

    /** Fewest scored batches of a lot among which some are called the best; common practice, no source. */
    static final int ENOUGH = 3;

    /** The 90 % point of the normal distribution, to one side 95 %. */
    static final double APART = CupsBeside.APART;

    /** Returns the blind scores where enough batches of the lot have them, else all scores, else nothing. */
    static Optional<ScoredLot> of(List<Batch> batches, Logbook logbook) {
        List<CupScores> all = logbook.whole().cups();
        List<CupScores> blind = all.stream()
                .filter(cup -> logbook.cupping(cup.cupping())
                        .filter(how -> how.blind() == Cupping.Said.YES)
                        .isPresent())
                .toList();
        return first(Cupping.Said.YES, blind, batches, logbook)
                .or(() -> first(Cupping.Said.NOT_WRITTEN, all, batches, logbook));
    }

    /** Returns the scores of the first attribute of which enough batches have some: another lot's may be of others. */
    private static Optional<ScoredLot> first(
            Cupping.Said said, List<CupScores> cups, List<Batch> batches, Logbook logbook) {
        return TELL_GOOD.stream()
                .flatMap(attribute -> of(attribute, said, cups, batches, logbook).stream())
                .findFirst();
    }

    private static Optional<ScoredLot> of(
            String attribute, Cupping.Said said, List<CupScores> cups, List<Batch> batches, Logbook logbook) {
        ShrunkenScores drawn = ShrunkenScores.of(cups, attribute);
        Map<String, ShrunkenScores.Score> scores = new TreeMap<>();
        for (Batch batch : batches) {
            drawn.of(batch.name())
                    .filter(score -> Double.isFinite(score.shrunken()))
                    .ifPresent(score -> scores.put(batch.name(), score));
        }
        if (scores.size() < ENOUGH) {
            return Optional.empty();
        }
        Set<String> low = new TreeSet<>();
        for (Batch batch : batches) {
            CupsBeside beside = CupsBeside.of(batch, logbook.whole());
            if (scores.containsKey(batch.name())
                    && beside.attribute().equals(attribute)
                    && beside.isClear()
                    && beside.mean() < 0) {
                low.add(batch.name());
            }
        }
        // Where all were low, none is the lower.
        return Optional.of(new ScoredLot(attribute, said, low.size() == scores.size() ? Set.of() : low, scores));
    }

    /** Tells whether a batch counts among the best of its lot. */
    boolean isAmongTheBest(Batch batch) {
        ShrunkenScores.Score own = scores.get(batch.name());
        ShrunkenScores.Score best = scores.entrySet().stream()
                .filter(one -> !low.contains(one.getKey()))
                .map(Map.Entry::getValue)
                .max(Comparator.comparingDouble(ShrunkenScores.Score::shrunken))
                .orElseThrow();
        return own != null
                && !low.contains(batch.name())
                && best.shrunken() - own.shrunken() <= APART * Math.hypot(best.standardError(), own.standardError());
    }
}
