package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * Chooses in which order the effects of a mixed model are eliminated: always the one with the fewest partners, until the rest are
 * nearly all partners of each other and are better treated as one dense block (minimum degree; George and Liu 1989, SIAM Rev. 31:1).
 */
final class EliminationOrder {
    private static final double DENSE_ENOUGH = 0.4;
    private static final int SMALL_ENOUGH = 8;

    /** Nodes eliminated one by one, and for each its partners that are eliminated later. */
    final List<Integer> sparse = new ArrayList<>();

    final List<int[]> partners = new ArrayList<>();
    final List<Integer> dense = new ArrayList<>();

    EliminationOrder(CrossProducts products) {
        int n = products.nodes;
        BitSet[] adjacent = new BitSet[n];
        for (int i = 0; i < n; i++) {
            adjacent[i] = new BitSet(n);
        }
        for (long pair : products.pairs) {
            int low = (int) (pair >>> 32);
            int high = (int) pair;
            if (low != high) {
                adjacent[low].set(high);
                adjacent[high].set(low);
            }
        }
        int[] degree = new int[n];
        boolean[] gone = new boolean[n];
        for (int i = 0; i < n; i++) {
            degree[i] = adjacent[i].cardinality();
        }
        int left = n;
        while (left > SMALL_ENOUGH) {
            int best = -1;
            for (int i = 0; i < n; i++) {
                if (!gone[i] && (best < 0 || degree[i] < degree[best])) {
                    best = i;
                }
            }
            if (degree[best] >= DENSE_ENOUGH * left) {
                break;
            }
            int[] later = adjacent[best].stream().toArray();
            sparse.add(best);
            partners.add(later);
            gone[best] = true;
            left--;
            for (int partner : later) {
                adjacent[partner].or(adjacent[best]);
                adjacent[partner].clear(best);
                adjacent[partner].clear(partner);
                degree[partner] = adjacent[partner].cardinality();
            }
        }
        for (int i = 0; i < n; i++) {
            if (!gone[i]) {
                dense.add(i);
            }
        }
    }
}
