package parchment.trial;

import java.util.List;
import java.util.Optional;
import parchment.stats.Fieller;
import parchment.stats.mixed.SlopeInsideSets;
import parchment.stats.resample.SetShuffle;
import parchment.stats.resample.ShuffledRatio;

/**
 * Takes the scored batches of a trial as they came out, with the drawn target as the only reason that counts why they came out so: the Anderson-Rubin set, and
 * its twin by shuffles.
 *
 * <p>The plain slope on achieved readings is not told: what made a batch miss its target may have changed the cup too. Nor is an interval that takes the target's
 * pull on the reading as known; where the pull is weak it is far too sure of itself.
 */
final class AsAchieved {
    private final Fieller set;
    private final double level;
    private final List<AssignedBatch> batches;
    private final int notRead;
    private final double pull;

    private AsAchieved(Fieller set, double level, List<AssignedBatch> batches, int notRead, double pull) {
        this.set = set;
        this.level = level;
        this.batches = batches;
        this.notRead = notRead;
        this.pull = pull;
    }

    /** Returns the analysis; empty if too few batches were read, or all of them hit so exactly that it says what the assigned answer says. */
    static Optional<AsAchieved> of(AsAssigned assigned, double span, double level) {
        List<AssignedBatch> read = assigned.batches().stream()
                .filter(batch -> batch.achieved().isPresent())
                .toList();
        Optional<AsAssigned> kept = read.size() == assigned.batches().size()
                ? Optional.of(assigned)
                : AsAssigned.of(read, span, level);
        if (kept.isEmpty() || kept.get().line().degreesOfFreedom() < 1) {
            return Optional.empty();
        }
        List<AssignedBatch> batches = kept.get().batches();
        double[] achieved = achieved(batches);
        SlopeInsideSets line = kept.get().line();
        return Optional.of(new AsAchieved(
                line.ratio(kept.get().means(), achieved, level),
                level,
                batches,
                assigned.batches().size() - batches.size(),
                line.slope("pull", achieved).estimate()));
    }

    /** Returns the slopes on the achieved reading that the scores do not rule out, in points per unit. */
    Fieller set() {
        return set;
    }

    /** Returns the same by shuffles. */
    ShuffledRatio twin() {
        return SetShuffle.of(
                        batches.stream().map(AssignedBatch::set).toList(),
                        batches.stream().mapToDouble(AssignedBatch::target).toArray(),
                        AsAssigned.SEED)
                .ratio(batches.stream().mapToDouble(AssignedBatch::mean).toArray(), achieved(batches), level);
    }

    private static double[] achieved(List<AssignedBatch> batches) {
        return batches.stream()
                .mapToDouble(batch -> batch.achieved().orElseThrow())
                .toArray();
    }

    List<AssignedBatch> batches() {
        return batches;
    }

    /** Returns how many scored batches could not be read. */
    int notRead() {
        return notRead;
    }

    /** Returns by how much the reading moved per unit of the target: 1 where every target was followed. */
    double pull() {
        return pull;
    }
}
