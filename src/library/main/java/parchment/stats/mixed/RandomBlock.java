package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.stats.linear.Vectors;

/** One random term cleaned for fitting: group numbers per row, columns scaled to a root mean square of 1. */
public final class RandomBlock {
    public final String name;
    final RandomTerm.Kind kind;
    public final List<String> levels;
    public final int[] group;
    final List<String> components;
    final double[][] columns;
    final double[] scales;

    private RandomBlock(
            String name,
            RandomTerm.Kind kind,
            List<String> levels,
            int[] group,
            List<String> components,
            double[][] columns,
            double[] scales) {
        this.name = name;
        this.kind = kind;
        this.levels = levels;
        this.group = group;
        this.components = components;
        this.columns = columns;
        this.scales = scales;
    }

    public static RandomBlock of(RandomTerm term, int[] rows) {
        RandomTerm used = term.rows(rows);
        int[] group = new int[rows.length];
        Map<String, Integer> numbers = new LinkedHashMap<>();
        if (term.kind() == RandomTerm.Kind.GROUPS) {
            for (int i = 0; i < rows.length; i++) {
                group[i] = numbers.computeIfAbsent(used.groups().get(i), label -> numbers.size());
            }
        } else {
            used.components().forEach(label -> numbers.put(label, numbers.size()));
        }
        int size = used.columns().size();
        double[][] columns = new double[size][];
        double[] scales = new double[size];
        double common = 0;
        for (int c = 0; c < size; c++) {
            columns[c] = used.columns().get(c);
            scales[c] = Math.max(Vectors.norm(columns[c]) / Math.sqrt(Math.max(1, rows.length)), Double.MIN_NORMAL);
            common = Math.max(common, scales[c]);
        }
        for (int c = 0; c < size; c++) {
            // The columns of a smooth share one variance, so they share one scale.
            scales[c] = term.kind() == RandomTerm.Kind.SMOOTH ? common : scales[c];
            for (int i = 0; i < rows.length; i++) {
                columns[c][i] /= scales[c];
            }
        }
        return new RandomBlock(
                term.name(), term.kind(), new ArrayList<>(numbers.keySet()), group, term.components(), columns, scales);
    }

    RandomBlock without(int component) {
        List<String> names = new ArrayList<>(components);
        names.remove(component);
        double[][] kept = new double[columns.length - 1][];
        double[] keptScales = new double[columns.length - 1];
        for (int c = 0, k = 0; c < columns.length; c++) {
            if (c != component) {
                kept[k] = columns[c];
                keptScales[k++] = scales[c];
            }
        }
        return new RandomBlock(name, kind, levels, group, names, kept, keptScales);
    }

    /** Effects per node: the length of the vector of a group, 1 for a smooth, whose nodes are its columns. */
    int size() {
        return kind == RandomTerm.Kind.SMOOTH ? 1 : columns.length;
    }

    public int nodes() {
        return levels.size();
    }

    int parameters() {
        return size() * (size() + 1) / 2;
    }

    /** From relative factors of the columns as given to those of the scaled columns. */
    static double[] factorsInside(List<RandomBlock> blocks, double[] theta) {
        double[] out = rowScales(blocks, theta.length);
        Arrays.setAll(out, k -> theta[k] * out[k]);
        return out;
    }

    /** From relative factors of the scaled columns to those of the columns as given. */
    static double[] factorsOutside(List<RandomBlock> blocks, double[] theta) {
        double[] out = rowScales(blocks, theta.length);
        Arrays.setAll(out, k -> theta[k] / out[k]);
        return out;
    }

    /** The scale of the row of each entry of the lower triangles, by columns. */
    private static double[] rowScales(List<RandomBlock> blocks, int length) {
        double[] scales = new double[length];
        int k = 0;
        for (RandomBlock block : blocks) {
            for (int c = 0; c < block.size(); c++) {
                for (int r = c; r < block.size(); r++) {
                    scales[k++] = block.scales[r];
                }
            }
        }
        return scales;
    }

    boolean sameGroups(RandomBlock other) {
        if (kind != RandomTerm.Kind.GROUPS || other.kind != RandomTerm.Kind.GROUPS || nodes() != other.nodes()) {
            return false;
        }
        int[] match = new int[nodes()];
        Arrays.fill(match, -1);
        for (int i = 0; i < group.length; i++) {
            if (match[group[i]] == -1) {
                match[group[i]] = other.group[i];
            } else if (match[group[i]] != other.group[i]) {
                return false;
            }
        }
        return true;
    }
}
