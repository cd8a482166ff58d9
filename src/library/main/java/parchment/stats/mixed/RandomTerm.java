package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Vectors;

/**
 * Names one random term of a mixed model: effects that vary from group to group around zero.
 *
 * <p>A term with an intercept and slopes has one correlated vector of effects per group. Crossed terms are simply several terms;
 * nested groups need labels that are unique across the outer groups ("cask 1 of batch A"), see {@link #crossedWith}.
 */
public final class RandomTerm {
    public enum Kind {
        GROUPS,
        SMOOTH
    }

    private final String name;
    private final Kind kind;
    private final List<String> levels;
    private final List<String> components;
    private final List<double[]> columns;

    private RandomTerm(String name, Kind kind, List<String> levels, List<String> components, List<double[]> columns) {
        this.name = name;
        this.kind = kind;
        this.levels = levels;
        this.components = components;
        this.columns = columns;
    }

    /** Returns a random intercept: one effect per group. An empty label marks a row whose group is not known. */
    public static RandomTerm intercept(String name, List<String> groups) {
        double[] ones = new double[groups.size()];
        Arrays.fill(ones, 1);
        return new RandomTerm(name, Kind.GROUPS, List.copyOf(groups), List.of("(Intercept)"), List.of(ones));
    }

    /** Returns a random slope without an intercept: one effect per group, multiplied by x. */
    public static RandomTerm slope(String name, List<String> groups, String slopeName, double[] x) {
        Checks.sameLength("The random term '" + name + "'", groups.size(), "'" + slopeName + "'", x.length);
        return new RandomTerm(name, Kind.GROUPS, List.copyOf(groups), List.of(slopeName), List.of(x.clone()));
    }

    /**
     * Returns a smooth or ridge term: one effect per column, all with the same variance. This is how a penalised spline enters a
     * mixed model (Ruppert, Wand and Carroll 2003, section 4).
     *
     * @param columns columns of equal length, at least one
     */
    public static RandomTerm smooth(String name, List<double[]> columns) {
        if (columns.isEmpty()) {
            throw new IllegalArgumentException(
                    "The smooth term '" + name + "' needs at least one column, but it has none.");
        }
        List<String> names = new ArrayList<>();
        List<double[]> copies = new ArrayList<>();
        for (int k = 0; k < columns.size(); k++) {
            Checks.sameLength(
                    "The smooth term '" + name + "'",
                    columns.get(0).length,
                    "column " + (k + 1),
                    columns.get(k).length);
            names.add(Integer.toString(k + 1));
            copies.add(columns.get(k).clone());
        }
        return new RandomTerm(name, Kind.SMOOTH, List.of(), List.copyOf(names), List.copyOf(copies));
    }

    /** Returns the same term with one more slope, correlated with the effects it has already. */
    public RandomTerm withSlope(String slopeName, double[] x) {
        if (kind == Kind.SMOOTH) {
            throw new IllegalArgumentException(
                    "The smooth term '" + name + "' cannot take a slope; add the slope as a term of its own.");
        }
        Checks.sameLength("The random term '" + name + "'", levels.size(), "'" + slopeName + "'", x.length);
        List<String> names = new ArrayList<>(components);
        names.add(slopeName);
        List<double[]> all = new ArrayList<>(columns);
        all.add(x.clone());
        return new RandomTerm(name, kind, levels, List.copyOf(names), List.copyOf(all));
    }

    /** Joins labels of two groupings, row by row, as in "A:a"; for nested groups and for interactions of groups. */
    public static List<String> crossedWith(List<String> outer, List<String> inner) {
        Checks.sameLength("Joining groups", outer.size(), "the inner group", inner.size());
        List<String> joined = new ArrayList<>(outer.size());
        for (int i = 0; i < outer.size(); i++) {
            joined.add(outer.get(i).isEmpty() || inner.get(i).isEmpty() ? "" : outer.get(i) + ":" + inner.get(i));
        }
        return List.copyOf(joined);
    }

    public String name() {
        return name;
    }

    /** Returns the names of the effects within a group: "(Intercept)" and the slopes, or the numbers of a smooth's columns. */
    public List<String> components() {
        return components;
    }

    /** Returns the group of each row; empty for a smooth term. */
    public List<String> groups() {
        return levels;
    }

    public Kind kind() {
        return kind;
    }

    List<double[]> columns() {
        return columns;
    }

    int rows() {
        return columns.get(0).length;
    }

    RandomTerm rows(int[] rows) {
        List<String> kept = new ArrayList<>();
        if (kind == Kind.GROUPS) {
            for (int row : rows) {
                kept.add(levels.get(row));
            }
        }
        return new RandomTerm(
                name,
                kind,
                List.copyOf(kept),
                components,
                columns.stream().map(c -> Vectors.pick(c, rows)).toList());
    }

    @Override
    public String toString() {
        return kind == Kind.SMOOTH
                ? "smooth term '" + name + "' with " + columns.size() + " columns"
                : "random term '" + name + "' (" + String.join(", ", components) + ")";
    }
}
