package parchment.stats.mixed;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/** Draws responses from the random part of a fitted mixed model. */
final class MixedSimulation {
    private final int[] rows;
    private final List<RandomBlock> blocks;
    private final double[] theta;
    private final double sigma;

    MixedSimulation(MixedRows data, double[] theta, double sigma) {
        this.rows = data.rows;
        this.blocks = data.blocks;
        this.theta = theta;
        this.sigma = sigma;
    }

    /** Adds new groups and residuals to the means of the design's rows. */
    double[] draw(double[] means, long seed) {
        SplittableRandom random = new SplittableRandom(new SplittableRandom(seed).nextLong());
        double[] out = new double[means.length];
        Arrays.fill(out, Double.NaN);
        for (int row : rows) {
            out[row] = means[row] + sigma * random.nextGaussian();
        }
        int first = 0;
        for (RandomBlock block : blocks) {
            double[][] effects = effects(block, first, random);
            for (int i = 0; i < rows.length; i++) {
                if (block.kind == RandomTerm.Kind.SMOOTH) {
                    for (int c = 0; c < block.nodes(); c++) {
                        out[rows[i]] += effects[c][0] * block.columns[c][i];
                    }
                } else {
                    for (int c = 0; c < block.size(); c++) {
                        out[rows[i]] += effects[block.group[i]][c] * block.columns[c][i];
                    }
                }
            }
            first += block.parameters();
        }
        return out;
    }

    private double[][] effects(RandomBlock block, int first, SplittableRandom random) {
        int size = block.size();
        double[][] effects = new double[block.nodes()][size];
        for (double[] effect : effects) {
            int k = first;
            for (int c = 0; c < size; c++) {
                double u = sigma * random.nextGaussian();
                for (int r = c; r < size; r++) {
                    effect[r] += theta[k++] * u;
                }
            }
        }
        return effects;
    }
}
