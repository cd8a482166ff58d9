package parchment.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import parchment.stats.Interval;
import parchment.stats.resample.FisherExactTest;
import parchment.trial.sealed.TrialTerms;

/**
 * Counts the places of a trial that have no score, and says between which bounds the answer lies whatever they would have scored, as far as was stated
 * beforehand.
 *
 * <p>A batch without a score is put at its set's mean, first as far against the slope as was stated and then as far for it; the bounds reach from the lower end of
 * the one interval to the upper end of the other. A set of which nothing was charged tells nothing by being missing: its lines were never opened.
 */
final class MissingScores {
    /** Above this share of places without a score, the bounds are the answer. */
    static final double MOST_MISSING = 0.20;

    private final TrialTerms terms;
    private final List<AssignedBatch> begun;
    private final long neverBegun;
    private final double level;

    private MissingScores(TrialTerms terms, List<AssignedBatch> begun, long neverBegun, double level) {
        this.terms = terms;
        this.begun = begun;
        this.neverBegun = neverBegun;
        this.level = level;
    }

    static MissingScores of(TrialTerms terms, List<AssignedBatch> batches, double level) {
        List<String> charged = batches.stream()
                .filter(batch -> batch.state() != AssignedBatch.State.NOT_ROASTED)
                .map(AssignedBatch::set)
                .toList();
        List<AssignedBatch> begun =
                batches.stream().filter(batch -> charged.contains(batch.set())).toList();
        return new MissingScores(terms, begun, batches.size() - begun.size(), level);
    }

    /** Returns how many places there are in sets that were begun. */
    int places() {
        return begun.size();
    }

    /** Returns how many places lie in sets of which nothing was charged. */
    long neverBegun() {
        return neverBegun;
    }

    /** Returns how many places of begun sets have no score. */
    int count() {
        return (int) begun.stream().filter(MissingScores::isMissing).count();
    }

    private static boolean isMissing(AssignedBatch batch) {
        return !Double.isFinite(batch.mean());
    }

    /** Returns the share of places of begun sets that have no score; 0 if nothing was begun. */
    double share() {
        return begun.isEmpty() ? 0 : (double) count() / begun.size();
    }

    /** Says whether the bounds are the answer. */
    boolean rule() {
        return share() > MOST_MISSING + 1e-12;
    }

    /** Returns the interval of the difference with every missing score as far against the slope, or for it, as was stated. */
    Optional<Bounds> bounds() {
        Optional<AsAssigned> against = AsAssigned.of(filled(-terms.lostBatch()), terms.span(), level);
        Optional<AsAssigned> along = AsAssigned.of(filled(terms.lostBatch()), terms.span(), level);
        return against.flatMap(low -> along.map(high -> new Bounds(low, high)));
    }

    /**
     * Holds the two ways of filling in.
     *
     * @param low missing scores as far against the slope as stated
     * @param high as far for it
     */
    record Bounds(AsAssigned low, AsAssigned high) {
        Interval interval() {
            return new Interval(low.interval().lower(), high.interval().upper(), low.level());
        }

        /** Returns the larger chance of the two; 1 if they do not even point the same way. */
        double chance() {
            return low.difference() * high.difference() > 0 ? Math.max(low.chance(), high.chance()) : 1;
        }

        /** Returns the middle of the two differences. */
        double difference() {
            return (low.difference() + high.difference()) / 2;
        }
    }

    private List<AssignedBatch> filled(double points) {
        List<AssignedBatch> filled = new ArrayList<>();
        for (AssignedBatch batch : begun) {
            if (!isMissing(batch)) {
                filled.add(batch);
                continue;
            }
            List<AssignedBatch> set = begun.stream()
                    .filter(other -> other.set().equals(batch.set()))
                    .toList();
            // A set without any score has no level of its own; any will do, since only differences inside it count.
            double level = set.stream()
                    .mapToDouble(AssignedBatch::mean)
                    .filter(Double::isFinite)
                    .average()
                    .orElse(0);
            double middle =
                    set.stream().mapToDouble(AssignedBatch::target).average().orElse(0);
            double side =
                    Math.abs(batch.target() - middle) < 1e-9 * terms.span() ? 0 : Math.signum(batch.target() - middle);
            filled.add(batch.with(
                    batch.achieved(), List.of(new AssignedBatch.GivenScore("filled in", level + side * points))));
        }
        return filled;
    }

    /** Asks whether scores are missing unevenly over the targets; empty if none is missing. */
    Optional<FisherExactTest> unevenness() {
        return count() == 0 ? Optional.empty() : Optional.of(FisherExactTest.of(counts(true), counts(false)));
    }

    private List<Integer> counts(boolean missing) {
        return terms.targets().stream()
                .map(target -> (int) begun.stream()
                        .filter(batch -> batch.target() == target && isMissing(batch) == missing)
                        .count())
                .toList();
    }

    /** Says how many scores are missing at each target, and whether that is more uneven than chance makes it; empty if none is missing. */
    String words() {
        if (count() == 0) {
            return "";
        }
        List<Integer> missing = counts(true);
        List<Integer> scored = counts(false);
        List<String> each = new ArrayList<>();
        for (int i = 0; i < missing.size(); i++) {
            each.add(missing.get(i) + " of " + (missing.get(i) + scored.get(i)) + " at "
                    + TrialWords.reading(terms, terms.targets().get(i)));
        }
        double p = unevenness().orElseThrow().probability();
        return TrialWords.count(count(), "place has", "places have") + " no score (" + states() + "): "
                + String.join(", ", each) + ". "
                + String.format(
                        Locale.ROOT,
                        p <= TrialTerms.ONE_LOOK
                                ? "Chance would make it this uneven in %.0f of 100 trials, so what was lost hangs together with the target"
                                        + " (Fisher's exact test)."
                                : "Chance would make it this uneven in %.0f of 100 trials (Fisher's exact test).",
                        100 * p);
    }

    private String states() {
        return begun.stream()
                .filter(MissingScores::isMissing)
                .collect(Collectors.groupingBy(AssignedBatch::state, java.util.TreeMap::new, Collectors.counting()))
                .entrySet()
                .stream()
                .map(state -> state.getValue() + " " + state.getKey().words())
                .collect(Collectors.joining(", "));
    }
}
