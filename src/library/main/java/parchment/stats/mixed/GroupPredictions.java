package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The predicted random effects of a fitted mixed model, back on the scale of the given columns. */
final class GroupPredictions {
    private final List<RandomBlock> blocks;
    private final CrossProducts products;
    private final double[] effects;
    private final double[] variances;

    GroupPredictions(List<RandomBlock> blocks, CrossProducts products, double[] effects, double[] variances) {
        this.blocks = blocks;
        this.products = products;
        this.effects = effects;
        this.variances = variances;
    }

    private int place(int term, int node) {
        return products.firstComponent[products.firstNode[term] + node];
    }

    List<GroupEffect> effects(String name, double sigma) {
        List<GroupEffect> found = new ArrayList<>();
        for (int t = 0; t < blocks.size(); t++) {
            RandomBlock block = blocks.get(t);
            if (!block.name.equals(name)) {
                continue;
            }
            boolean smooth = block.kind == RandomTerm.Kind.SMOOTH;
            for (int g = 0; g < block.nodes(); g++) {
                for (int c = 0; c < block.size(); c++) {
                    int at = place(t, g) + c;
                    double scale = block.scales[c];
                    found.add(new GroupEffect(
                            name,
                            block.levels.get(g),
                            smooth ? "column" : block.components.get(c),
                            effects[at] / scale,
                            sigma * Math.sqrt(Math.max(0, variances[at])) / scale));
                }
            }
        }
        return found;
    }

    /** Adds the effects of the groups named in the rows; a group that was never seen adds nothing. */
    void addTo(double[] out, MixedDesign rows) {
        Map<String, RandomTerm> terms = new HashMap<>();
        rows.randomTerms().forEach(term -> terms.put(term.name(), term));
        for (int t = 0; t < blocks.size(); t++) {
            RandomBlock block = blocks.get(t);
            RandomTerm term = terms.get(block.name);
            if (term == null) {
                throw new IllegalArgumentException("Prediction with groups needs the random term '" + block.name
                        + "', but the rows have none of that name.");
            }
            if (block.kind == RandomTerm.Kind.SMOOTH) {
                addSmooth(t, term, out);
            } else {
                addGroups(t, term, out);
            }
        }
    }

    private void addSmooth(int t, RandomTerm term, double[] out) {
        RandomBlock block = blocks.get(t);
        for (int c = 0; c < block.nodes(); c++) {
            double effect = effects[place(t, c)] / block.scales[c];
            for (int i = 0; i < out.length; i++) {
                out[i] += effect * term.columns().get(c)[i];
            }
        }
    }

    private void addGroups(int t, RandomTerm term, double[] out) {
        RandomBlock block = blocks.get(t);
        Map<String, Integer> numbers = new HashMap<>();
        for (int g = 0; g < block.nodes(); g++) {
            numbers.put(block.levels.get(g), g);
        }
        for (int c = 0; c < block.size(); c++) {
            double[] column = term.columns().get(term.components().indexOf(block.components.get(c)));
            for (int i = 0; i < out.length; i++) {
                Integer g = numbers.get(term.groups().get(i));
                if (g != null) {
                    out[i] += effects[place(t, g) + c] / block.scales[c] * column[i];
                }
            }
        }
    }
}
