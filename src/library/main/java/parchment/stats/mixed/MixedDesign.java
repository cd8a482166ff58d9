package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import parchment.display.Showable;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Vectors;

/**
 * Describes the data of a linear mixed model: one response, fixed terms, random terms, one value of each per row.
 *
 * <p>Starts with an intercept. Rows with a missing response, covariate or group are left out when the model is fitted. The design is
 * an immutable value: every {@code with...} returns a copy, and columns are shared, so many designs on the same data are cheap.
 */
public final class MixedDesign implements Showable {
    public static final String INTERCEPT = "(Intercept)";

    public record FixedTerm(String name, List<String> columnNames, List<double[]> columns) {}

    private final String responseName;
    private final double[] response;
    private final List<FixedTerm> fixed;
    private final List<RandomTerm> random;

    private MixedDesign(String responseName, double[] response, List<FixedTerm> fixed, List<RandomTerm> random) {
        this.responseName = responseName;
        this.response = response;
        this.fixed = fixed;
        this.random = random;
    }

    /** Returns a design with an intercept only. */
    public static MixedDesign of(String responseName, double[] response) {
        double[] ones = new double[response.length];
        Arrays.fill(ones, 1);
        FixedTerm intercept = new FixedTerm(INTERCEPT, List.of(INTERCEPT), List.of(ones));
        return new MixedDesign(responseName, response.clone(), List.of(intercept), List.of());
    }

    /** Returns the same design without the intercept. */
    public MixedDesign withoutIntercept() {
        return withoutFixed(INTERCEPT);
    }

    /** Returns the same design with one more number per row as a fixed term. */
    public MixedDesign withCovariate(String name, double[] values) {
        return withColumns(name, List.of(name), List.of(values.clone()));
    }

    /**
     * Returns the same design with several columns as one fixed term (a polynomial, a spline basis), tested together.
     *
     * @throws IllegalArgumentException if the name is taken or a column has another length than the response
     */
    public MixedDesign withColumns(String name, List<String> columnNames, List<double[]> columns) {
        for (FixedTerm term : fixed) {
            if (term.name().equals(name)) {
                throw new IllegalArgumentException(
                        "The design has a fixed term '" + name + "' already; give the new one another name.");
            }
        }
        Checks.sameLength("The fixed term '" + name + "'", columnNames.size(), "columns", columns.size());
        for (double[] column : columns) {
            Checks.sameLength("The fixed term '" + name + "'", response.length, "'" + name + "'", column.length);
        }
        List<FixedTerm> terms = new ArrayList<>(fixed);
        terms.add(new FixedTerm(
                name,
                List.copyOf(columnNames),
                columns.stream().map(double[]::clone).toList()));
        return new MixedDesign(responseName, response, List.copyOf(terms), random);
    }

    /** Returns the same design with a factor: one column per level after the first, levels in alphabetical order. */
    public MixedDesign withFactor(String name, List<String> values) {
        TreeSet<String> levels = new TreeSet<>(values);
        levels.remove("");
        return withFactor(name, values, new ArrayList<>(levels));
    }

    /**
     * Returns the same design with a factor whose levels are given; each level's effect is its difference from the first.
     *
     * @param values level of each row; empty where missing
     * @param levels all levels, the one to compare with first
     */
    public MixedDesign withFactor(String name, List<String> values, List<String> levels) {
        Checks.sameLength("The factor '" + name + "'", response.length, "'" + name + "'", values.size());
        List<String> names = new ArrayList<>();
        List<double[]> columns = new ArrayList<>();
        for (int level = 1; level < levels.size(); level++) {
            double[] column = new double[values.size()];
            for (int i = 0; i < column.length; i++) {
                column[i] = values.get(i).isEmpty() ? Double.NaN : values.get(i).equals(levels.get(level)) ? 1 : 0;
            }
            names.add(name + levels.get(level));
            columns.add(column);
        }
        return withColumns(name, names, columns);
    }

    /** Returns the same design with the products of the columns of two of its fixed terms, named "first:second". */
    public MixedDesign withInteraction(String first, String second) {
        FixedTerm a = fixedTerm(first);
        FixedTerm b = fixedTerm(second);
        List<String> names = new ArrayList<>();
        List<double[]> columns = new ArrayList<>();
        for (int j = 0; j < b.columns().size(); j++) {
            for (int i = 0; i < a.columns().size(); i++) {
                double[] product = new double[response.length];
                for (int row = 0; row < product.length; row++) {
                    product[row] = a.columns().get(i)[row] * b.columns().get(j)[row];
                }
                names.add(a.columnNames().get(i) + ":" + b.columnNames().get(j));
                columns.add(product);
            }
        }
        return withColumns(first + ":" + second, names, columns);
    }

    /** Returns the same design without one fixed term. */
    public MixedDesign withoutFixed(String name) {
        FixedTerm gone = fixedTerm(name);
        return new MixedDesign(
                responseName, response, fixed.stream().filter(t -> t != gone).toList(), random);
    }

    /** Returns the same design with one more random term. */
    public MixedDesign withRandom(RandomTerm term) {
        Checks.sameLength(
                "The random term '" + term.name() + "'", response.length, "'" + term.name() + "'", term.rows());
        for (RandomTerm other : random) {
            if (other.name().equals(term.name())) {
                throw new IllegalArgumentException("The design has a random term '" + term.name()
                        + "' already; give the new one another name, or add its slope to the first.");
            }
        }
        List<RandomTerm> terms = new ArrayList<>(random);
        terms.add(term);
        return new MixedDesign(responseName, response, fixed, List.copyOf(terms));
    }

    /** Returns the same design without one random term. */
    public MixedDesign withoutRandom(String name) {
        List<RandomTerm> kept =
                random.stream().filter(t -> !t.name().equals(name)).toList();
        if (kept.size() == random.size()) {
            throw new IllegalArgumentException("The design has no random term '" + name + "'. Random terms: "
                    + String.join(", ", random.stream().map(RandomTerm::name).toList()) + ".");
        }
        return new MixedDesign(responseName, response, fixed, kept);
    }

    /** Returns the same design with another response, for simulation and permutation. */
    public MixedDesign withResponse(double[] values) {
        Checks.sameLength("The design", response.length, "the response", values.length);
        return new MixedDesign(responseName, values.clone(), fixed, random);
    }

    /** Returns the given rows (from 0, in any order, repeats allowed) with all columns kept, for leaving out and resampling. */
    public MixedDesign withRows(int... rows) {
        return new MixedDesign(
                responseName,
                Vectors.pick(response, rows),
                fixed.stream()
                        .map(t -> new FixedTerm(
                                t.name(),
                                t.columnNames(),
                                t.columns().stream()
                                        .map(c -> Vectors.pick(c, rows))
                                        .toList()))
                        .toList(),
                random.stream().map(t -> t.rows(rows)).toList());
    }

    /**
     * Fits by restricted maximum likelihood.
     *
     * @throws CannotFitException if too few complete rows are left for the fixed terms
     */
    public LinearMixedModel fit() {
        return LinearMixedModel.fit(this, Likelihood.RESTRICTED);
    }

    /** Fits by the given likelihood. */
    public LinearMixedModel fit(Likelihood likelihood) {
        return LinearMixedModel.fit(this, likelihood);
    }

    public int rows() {
        return response.length;
    }

    public String responseName() {
        return responseName;
    }

    /** Returns a copy of the response, NaN where missing. */
    public double[] response() {
        return response.clone();
    }

    /** Returns the names of the fixed terms, in order. */
    public List<String> fixedNames() {
        return fixed.stream().map(FixedTerm::name).toList();
    }

    /** Returns the random terms, in order. */
    public List<RandomTerm> randomTerms() {
        return random;
    }

    public List<FixedTerm> fixed() {
        return fixed;
    }

    public double responseAt(int row) {
        return response[row];
    }

    /** Says whether every column and group of the row is known; the response may be missing. */
    public boolean complete(int row) {
        for (FixedTerm term : fixed) {
            for (double[] column : term.columns()) {
                if (!Double.isFinite(column[row])) {
                    return false;
                }
            }
        }
        for (RandomTerm term : random) {
            for (double[] column : term.columns()) {
                if (!Double.isFinite(column[row])) {
                    return false;
                }
            }
            if (term.kind() == RandomTerm.Kind.GROUPS && term.groups().get(row).isEmpty()) {
                return false;
            }
        }
        return true;
    }

    private FixedTerm fixedTerm(String name) {
        for (FixedTerm term : fixed) {
            if (term.name().equals(name)) {
                return term;
            }
        }
        throw new IllegalArgumentException(
                "The design has no fixed term '" + name + "'. Fixed terms: " + String.join(", ", fixedNames()) + ".");
    }

    @Override
    public String toString() {
        return responseName + " explained by " + String.join(", ", fixedNames()) + " and random "
                + String.join(", ", random.stream().map(RandomTerm::name).toList()) + ", " + response.length + " rows";
    }
}
