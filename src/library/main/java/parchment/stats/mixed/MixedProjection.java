package parchment.stats.mixed;

import parchment.stats.linear.Vectors;

/** Multiplies vectors over the used rows with P of a fitted model: what is left after fixed terms and predicted random effects. */
final class MixedProjection {
    private final MixedRows data;
    private final MixedSystem system;

    MixedProjection(LinearMixedModel model) {
        this.data = model.data();
        // A system of its own, so that the model's numbers stay as they are.
        this.system = new MixedSystem(data, model.likelihood());
        system.evaluate(model.innerTheta(), false);
    }

    double[] apply(double[] v) {
        CrossProducts products = system.products;
        double[] cross = new double[products.firstComponent[products.nodes]];
        double[] fixed = new double[products.fixed];
        for (int t = 0; t < products.terms; t++) {
            RandomBlock block = data.blocks.get(t);
            for (int c = 0; c < block.columns.length; c++) {
                boolean smooth = block.kind == RandomTerm.Kind.SMOOTH;
                for (int i = 0; i < v.length; i++) {
                    int at = smooth
                            ? products.firstComponent[products.firstNode[t] + c]
                            : products.firstComponent[products.firstNode[t] + block.group[i]] + c;
                    cross[at] += block.columns[c][i] * v[i];
                }
            }
        }
        for (int k = 0; k < fixed.length; k++) {
            fixed[k] = Vectors.dot(data.basis.q.get(k), v);
        }
        double[] effects = system.solveFor(cross, fixed);
        double[] out = v.clone();
        for (int k = 0; k < fixed.length; k++) {
            double[] q = data.basis.q.get(k);
            for (int i = 0; i < out.length; i++) {
                out[i] -= fixed[k] * q[i];
            }
        }
        for (int t = 0; t < products.terms; t++) {
            RandomBlock block = data.blocks.get(t);
            for (int c = 0; c < block.columns.length; c++) {
                boolean smooth = block.kind == RandomTerm.Kind.SMOOTH;
                for (int i = 0; i < v.length; i++) {
                    int at = smooth
                            ? products.firstComponent[products.firstNode[t] + c]
                            : products.firstComponent[products.firstNode[t] + block.group[i]] + c;
                    out[i] -= effects[at] * block.columns[c][i];
                }
            }
        }
        return out;
    }
}
