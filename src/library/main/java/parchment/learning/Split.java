package parchment.learning;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Sorts batches into kinds: groups that are large enough; batches in smaller groups stand by themselves, in no kind.
 *
 * @param kinds the batches of each kind, the largest kind first
 * @param size how many batches there are in all
 */
record Split(List<BitSet> kinds, int size) {
    /** Groups that the joining is stopped at, at most. */
    private static final int MOST_GROUPS = 15;
    /** Fewest batches of a kind, and as a share of all; common practice, no source. */
    private static final int FEWEST = 6;

    private static final double LEAST_SHARE = 0.08;
    /** What the kinds must hold together. */
    private static final double MOST_BATCHES = 0.8;

    Split {
        kinds = List.copyOf(kinds);
    }

    /** Returns the first split, from few groups to many, that has so many kinds. */
    static Optional<Split> into(int count, Clusters clusters, int size) {
        for (int groups = count; groups <= Math.min(MOST_GROUPS, size); groups++) {
            int[] group = clusters.groups(groups);
            int[] sizes = Clusters.sizes(group);
            double fewest = Math.max(FEWEST, LEAST_SHARE * size);
            int[] large = IntStream.range(0, sizes.length)
                    .filter(g -> sizes[g] >= fewest)
                    .boxed()
                    .sorted((a, b) -> sizes[b] - sizes[a])
                    .mapToInt(Integer::intValue)
                    .toArray();
            int held = Arrays.stream(large).map(g -> sizes[g]).sum();
            if (large.length == count && held >= MOST_BATCHES * size) {
                return Optional.of(new Split(
                        Arrays.stream(large).mapToObj(g -> members(group, g)).toList(), size));
            }
        }
        return Optional.empty();
    }

    private static BitSet members(int[] group, int wanted) {
        BitSet members = new BitSet();
        IntStream.range(0, group.length).filter(i -> group[i] == wanted).forEach(members::set);
        return members;
    }

    /** Returns the kind of a batch, counted from 0, or -1 if it stands by itself. */
    int kindOf(int batch) {
        return IntStream.range(0, kinds.size())
                .filter(kind -> kinds.get(kind).get(batch))
                .findFirst()
                .orElse(-1);
    }

    /**
     * Returns how much nearer batches are to their own kind than to the next, on average from -1 to 1 (the silhouette width of Rousseeuw 1987).
     */
    double apart(float[][] distances) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < size; i++) {
            int own = kindOf(i);
            if (own >= 0) {
                double within = mean(distances[i], kinds.get(own), i);
                double next = Double.POSITIVE_INFINITY;
                for (int kind = 0; kind < kinds.size(); kind++) {
                    next = kind == own ? next : Math.min(next, mean(distances[i], kinds.get(kind), i));
                }
                sum += (next - within) / Math.max(next, within);
                count++;
            }
        }
        return sum / count;
    }

    private static double mean(float[] distances, BitSet members, int but) {
        return members.stream()
                .filter(j -> j != but)
                .mapToDouble(j -> distances[j])
                .average()
                .orElse(0);
    }
}
