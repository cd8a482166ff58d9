package parchment.learning;

import java.util.Arrays;
import smile.clustering.HierarchicalClustering;
import smile.clustering.linkage.UPGMALinkage;

/**
 * Puts together what lies near each other, two groups at a time: average linkage (Sokal and Michener 1958), by Smile.
 *
 * <p>Two groups are as far apart as their members are on average.
 */
final class Clusters {
    private final HierarchicalClustering tree;
    private final int size;

    private Clusters(HierarchicalClustering tree, int size) {
        this.tree = tree;
        this.size = size;
    }

    /** Joins all, given how far each two are apart. */
    static Clusters of(float[][] distances) {
        int n = distances.length;
        // Smile keeps the columns of the lower triangle one after another, with the diagonal.
        float[] columns = new float[n * (n + 1) / 2];
        int at = 0;
        for (int j = 0; j < n; j++) {
            for (int i = j; i < n; i++) {
                columns[at++] = distances[i][j];
            }
        }
        return new Clusters(HierarchicalClustering.fit(new UPGMALinkage(n, columns)), n);
    }

    /** Returns how far apart the two groups were at each joining, rising. */
    double[] heights() {
        return tree.height();
    }

    /** Returns the group of each when so many are left, counted from 0. */
    int[] groups(int count) {
        return count == 1 ? new int[size] : tree.partition(count);
    }

    /** Returns how many are in each group. */
    static int[] sizes(int[] groups) {
        int[] sizes = new int[Arrays.stream(groups).max().orElse(-1) + 1];
        Arrays.stream(groups).forEach(group -> sizes[group]++);
        return sizes;
    }
}
