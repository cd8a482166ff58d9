package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.List;
import parchment.stats.linear.Vectors;

/**
 * Makes a fit independent of the number of rows: [Z X y]'[Z X y] of a mixed model, accumulated once; Z by blocks of nodes (one node per
 * group, or per column of a smooth).
 */
final class CrossProducts {
    final int nodes;
    final int terms;
    final int fixed;
    final int[] termOfNode;
    final int[] sizeOfTerm;
    final int[] firstNode;
    /** Low and high node of each stored pair; the pair's crossproduct has the high node's rows, by rows. */
    final long[] pairs;

    final double[][] values;
    /** Per node and component: crossproducts with the fixed columns, then with the response. */
    final double[][] withFixed;

    final int[] firstComponent;
    double responseSquares;

    CrossProducts(MixedRows data) {
        terms = data.blocks.size();
        fixed = data.basis.size();
        sizeOfTerm = new int[terms];
        firstNode = new int[terms + 1];
        for (int t = 0; t < terms; t++) {
            sizeOfTerm[t] = data.blocks.get(t).size();
            firstNode[t + 1] = firstNode[t] + data.blocks.get(t).nodes();
        }
        nodes = firstNode[terms];
        termOfNode = new int[nodes];
        firstComponent = new int[nodes + 1];
        for (int t = 0; t < terms; t++) {
            for (int node = firstNode[t]; node < firstNode[t + 1]; node++) {
                termOfNode[node] = t;
                firstComponent[node + 1] = firstComponent[node] + sizeOfTerm[t];
            }
        }
        withFixed = new double[firstComponent[nodes]][fixed + 1];
        PairIndex index = new PairIndex();
        List<double[]> blocks = new ArrayList<>();
        int most = 0;
        for (RandomBlock block : data.blocks) {
            most += block.kind == RandomTerm.Kind.SMOOTH ? block.nodes() : 1;
        }
        int[] rowNodes = new int[most];
        double[][] rowValues = new double[most][];
        for (int t = 0, k = 0; t < terms; t++) {
            RandomBlock block = data.blocks.get(t);
            int entries = block.kind == RandomTerm.Kind.SMOOTH ? block.nodes() : 1;
            for (int e = 0; e < entries; e++) {
                rowValues[k++] = new double[sizeOfTerm[t]];
            }
        }
        for (int row = 0; row < data.rows.length; row++) {
            int found = 0;
            for (int t = 0; t < terms; t++) {
                RandomBlock block = data.blocks.get(t);
                if (block.kind == RandomTerm.Kind.SMOOTH) {
                    for (int c = 0; c < block.nodes(); c++) {
                        rowNodes[found] = firstNode[t] + c;
                        rowValues[found++][0] = block.columns[c][row];
                    }
                } else {
                    rowNodes[found] = firstNode[t] + block.group[row];
                    for (int c = 0; c < block.columns.length; c++) {
                        rowValues[found][c] = block.columns[c][row];
                    }
                    found++;
                }
            }
            add(data, row, found, rowNodes, rowValues, index, blocks);
        }
        pairs = index.pairs();
        values = blocks.toArray(new double[0][]);
        responseSquares = Vectors.dot(data.rest, data.rest);
    }

    private void add(
            MixedRows data,
            int row,
            int found,
            int[] rowNodes,
            double[][] rowValues,
            PairIndex index,
            List<double[]> blocks) {
        for (int a = 0; a < found; a++) {
            double[] low = rowValues[a];
            for (int b = a; b < found; b++) {
                double[] high = rowValues[b];
                int number = index.number(rowNodes[a], rowNodes[b]);
                if (number == blocks.size()) {
                    blocks.add(new double[low.length * high.length]);
                }
                double[] block = blocks.get(number);
                for (int r = 0; r < high.length; r++) {
                    for (int c = 0; c < low.length; c++) {
                        block[r * low.length + c] += high[r] * low[c];
                    }
                }
            }
            for (int c = 0; c < low.length; c++) {
                double[] target = withFixed[firstComponent[rowNodes[a]] + c];
                for (int k = 0; k < fixed; k++) {
                    target[k] += low[c] * data.basis.q.get(k)[row];
                }
                target[fixed] += low[c] * data.rest[row];
            }
        }
    }
}
