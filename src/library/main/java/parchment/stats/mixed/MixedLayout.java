package parchment.stats.mixed;

import java.util.Arrays;

/**
 * Lays out the factor of a mixed model in one array: sparse columns first, then one dense block which ends with the fixed columns and
 * the response. Knows, for every product that the elimination makes, where it goes.
 */
final class MixedLayout {
    final CrossProducts products;
    final int sparseColumns;
    final int denseRandom;
    final int denseSize;
    final int fixed;
    final int denseOffset;
    final int length;
    /** Place of a node's first column in the order of elimination. */
    final int[] columnOfNode;
    /** Sparse columns: start in the array (its diagonal), and the rows below. */
    final int[] start;

    final int[][] rowsBelow;
    /** Where the products of two entries of each sparse column go, for all pairs first <= second. */
    final int[][] targets;
    /** Where the entries of each crossproduct go, by rows of the later node. */
    final int[][] pairTargets;
    /** True where the pair's low node is eliminated after the high one. */
    final boolean[] swapped;

    MixedLayout(CrossProducts products) {
        this.products = products;
        this.fixed = products.fixed;
        EliminationOrder order = new EliminationOrder(products);
        columnOfNode = new int[products.nodes];
        int column = 0;
        for (int node : order.sparse) {
            columnOfNode[node] = column;
            column += size(node);
        }
        sparseColumns = column;
        for (int node : order.dense) {
            columnOfNode[node] = column;
            column += size(node);
        }
        int random = column;
        denseRandom = random - sparseColumns;
        denseSize = denseRandom + fixed + 1;
        start = new int[sparseColumns];
        rowsBelow = new int[sparseColumns][];
        int used = 0;
        for (int s = 0; s < order.sparse.size(); s++) {
            int node = order.sparse.get(s);
            int[] partners = order.partners.get(s);
            int count = 0;
            for (int partner : partners) {
                count += size(partner);
            }
            int[] later = new int[count];
            int k = 0;
            for (int partner : partners) {
                for (int c = 0; c < size(partner); c++) {
                    later[k++] = columnOfNode[partner] + c;
                }
            }
            Arrays.sort(later);
            for (int c = 0; c < size(node); c++) {
                int own = size(node) - c - 1;
                int[] rows = new int[own + count + fixed + 1];
                for (int i = 0; i < own; i++) {
                    rows[i] = columnOfNode[node] + c + 1 + i;
                }
                System.arraycopy(later, 0, rows, own, count);
                for (int i = 0; i <= fixed; i++) {
                    rows[own + count + i] = random + i;
                }
                start[columnOfNode[node] + c] = used;
                rowsBelow[columnOfNode[node] + c] = rows;
                used += rows.length + 1;
            }
        }
        denseOffset = used;
        length = used + denseSize * denseSize;
        targets = new int[sparseColumns][];
        for (int c = 0; c < sparseColumns; c++) {
            targets[c] = new int[rowsBelow[c].length * (rowsBelow[c].length + 1) / 2];
        }
        fillTargets();
        pairTargets = new int[products.pairs.length][];
        swapped = new boolean[products.pairs.length];
        for (int p = 0; p < pairTargets.length; p++) {
            int low = (int) (products.pairs[p] >>> 32);
            int high = (int) products.pairs[p];
            swapped[p] = columnOfNode[low] > columnOfNode[high];
            int early = swapped[p] ? high : low;
            int late = swapped[p] ? low : high;
            int[] places = new int[size(early) * size(late)];
            for (int r = 0; r < size(late); r++) {
                for (int c = 0; c < size(early); c++) {
                    int row = columnOfNode[late] + r;
                    int col = columnOfNode[early] + c;
                    places[r * size(early) + c] = place(Math.max(row, col), Math.min(row, col));
                }
            }
            pairTargets[p] = places;
        }
    }

    private void fillTargets() {
        for (int c = 0; c < sparseColumns; c++) {
            int[] rows = rowsBelow[c];
            int t = 0;
            for (int j = 0; j < rows.length; j++) {
                int column = rows[j];
                if (column < sparseColumns) {
                    // Every later row of this column is also a row of that one: walk both sorted lists together.
                    int[] other = rowsBelow[column];
                    targets[c][t++] = start[column];
                    int at = 0;
                    for (int i = j + 1; i < rows.length; i++) {
                        while (other[at] != rows[i]) {
                            at++;
                        }
                        targets[c][t++] = start[column] + 1 + at;
                    }
                } else {
                    int base = denseOffset + (column - sparseColumns) * denseSize - sparseColumns;
                    for (int i = j; i < rows.length; i++) {
                        targets[c][t++] = base + rows[i];
                    }
                }
            }
        }
    }

    int size(int node) {
        return products.sizeOfTerm[products.termOfNode[node]];
    }

    /** Place in the array of an entry on or below the diagonal. */
    int place(int row, int column) {
        if (column >= sparseColumns) {
            return denseOffset + (column - sparseColumns) * denseSize + row - sparseColumns;
        }
        return row == column ? start[column] : start[column] + 1 + Arrays.binarySearch(rowsBelow[column], row);
    }

    /** Place of the first fixed column's entry in a random column; the others and the response follow. */
    int placeOfFixed(int column) {
        return column < sparseColumns
                ? start[column] + rowsBelow[column].length - fixed
                : denseOffset + (column - sparseColumns) * denseSize + denseRandom;
    }
}
