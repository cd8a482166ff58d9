package parchment.learning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import parchment.display.Progress;

/**
 * Looks for the finest split of batches into kinds that holds: each kind comes again when roast days are drawn anew, and the kinds lie
 * further apart than those that would be cut out of one kind of the same spread.
 *
 * @param split the kinds
 * @param stability of each kind: the mean overlap (Jaccard) with the kind most like it when roast days are drawn anew, 0 to 1
 * @param apart how far apart the kinds lie, as a mean silhouette width
 * @param chance how often a split of one kind of the same spread lies as far apart
 */
record StableSplit(Split split, List<Double> stability, double apart, double chance) {
    /** Hennig 2008: clusters with a mean overlap of 0.75 or more are valid, stable ones. */
    static final double STABLE = 0.75;

    static final int DRAWS = 50;
    private static final int ONE_KIND_DRAWS = 39;
    private static final double CHANCE = 0.05;
    private static final int MOST_KINDS = 4;

    StableSplit {
        stability = List.copyOf(stability);
    }

    boolean holds() {
        return chance <= CHANCE && stability.stream().allMatch(overlap -> overlap >= STABLE);
    }

    /**
     * Returns the finest split that holds, and those that were tried.
     *
     * @param days the roast day of each batch
     */
    static Search search(float[][] distances, List<String> days, long seed) {
        int size = distances.length;
        Clusters clusters = Clusters.of(distances);
        List<StableSplit> tried = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(seed);
        try (Progress progress =
                Progress.of((MOST_KINDS - 1L) * DRAWS + ONE_KIND_DRAWS, "looking for kinds that hold")) {
            List<Optional<Split>> splits = IntStream.rangeClosed(2, MOST_KINDS)
                    .mapToObj(count -> Split.into(count, clusters, size))
                    .toList();
            double[][] oneKind = splits.stream().allMatch(Optional::isEmpty)
                    ? new double[0][]
                    : oneKind(distances, random.split(), progress);
            for (int k = 0; k < splits.size(); k++) {
                if (splits.get(k).isPresent()) {
                    Split split = splits.get(k).get();
                    double apart = split.apart(distances);
                    int kinds = k;
                    long asFar = Arrays.stream(oneKind)
                            .filter(draw -> draw[kinds] >= apart)
                            .count();
                    tried.add(new StableSplit(
                            split,
                            stability(split, distances, days, random.split(), progress),
                            apart,
                            (1.0 + asFar) / (1 + ONE_KIND_DRAWS)));
                }
            }
        }
        return new Search(tried.stream().filter(StableSplit::holds).reduce((coarse, fine) -> fine), tried);
    }

    /** What was found and what was tried. */
    record Search(Optional<StableSplit> found, List<StableSplit> tried) {
        Search {
            tried = List.copyOf(tried);
        }
    }

    private static List<Double> stability(
            Split split, float[][] distances, List<String> days, SplittableRandom random, Progress progress) {
        List<String> all = days.stream().distinct().toList();
        double[] sum = new double[split.kinds().size()];
        for (int draw = 0; draw < DRAWS; draw++) {
            List<String> drawn = IntStream.range(0, all.size())
                    .mapToObj(i -> all.get(random.nextInt(all.size())))
                    .distinct()
                    .toList();
            int[] kept = IntStream.range(0, days.size())
                    .filter(i -> drawn.contains(days.get(i)))
                    .toArray();
            List<BitSet> again = again(split, distances, kept);
            for (int kind = 0; kind < sum.length; kind++) {
                BitSet own = new BitSet();
                BitSet members = split.kinds().get(kind);
                Arrays.stream(kept).filter(members::get).forEach(own::set);
                // A kind none of whose days was drawn did not come again.
                sum[kind] += own.isEmpty()
                        ? 0
                        : again.stream()
                                .mapToDouble(other -> overlap(own, other))
                                .max()
                                .orElse(0);
            }
            progress.step();
        }
        return IntStream.range(0, sum.length)
                .mapToObj(kind -> sum[kind] / DRAWS)
                .toList();
    }

    /** The kinds of the batches that were drawn, split in the same way; all of them together where they do not split so. */
    private static List<BitSet> again(Split split, float[][] distances, int[] kept) {
        float[][] own = new float[kept.length][kept.length];
        for (int i = 0; i < kept.length; i++) {
            for (int j = 0; j < kept.length; j++) {
                own[i][j] = distances[kept[i]][kept[j]];
            }
        }
        BitSet all = new BitSet();
        Arrays.stream(kept).forEach(all::set);
        return kept.length < 2
                ? List.of(all)
                : Split.into(split.kinds().size(), Clusters.of(own), kept.length)
                        .map(found -> found.kinds().stream()
                                .map(members -> {
                                    BitSet named = new BitSet();
                                    members.stream().forEach(i -> named.set(kept[i]));
                                    return named;
                                })
                                .toList())
                        .orElse(List.of(all));
    }

    /** Jaccard: what two sets share, as a part of what they hold together. */
    static double overlap(BitSet one, BitSet other) {
        BitSet both = (BitSet) one.clone();
        both.and(other);
        BitSet either = (BitSet) one.clone();
        either.or(other);
        return (double) both.cardinality() / either.cardinality();
    }

    /** How far apart the best splits of one kind lie: batches drawn from one normal cloud with the spread of these. */
    private static double[][] oneKind(float[][] distances, SplittableRandom random, Progress progress) {
        double[] spreads = PrincipalSpreads.of(distances);
        int size = distances.length;
        double[][] out = new double[ONE_KIND_DRAWS][MOST_KINDS - 1];
        for (int draw = 0; draw < ONE_KIND_DRAWS; draw++) {
            float[][] drawn = PrincipalSpreads.cloud(spreads, size, random);
            Clusters clusters = Clusters.of(drawn);
            for (int k = 0; k < out[draw].length; k++) {
                out[draw][k] = Split.into(k + 2, clusters, size)
                        .map(split -> split.apart(drawn))
                        .orElse(-1.0);
            }
            progress.step();
        }
        return out;
    }
}
