package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import parchment.display.Showable;
import parchment.stats.linear.Checks;
import parchment.stats.linear.SmallSolve;

/**
 * Predicts one more observation of a group that was never seen, from a mixed model whose variances are known.
 *
 * <p>The model is y = Xβ + Σ Z u + group + rest: fixed columns, any number of random intercepts that a new observation may share, and one
 * grouping term, such as the day of a measurement, of which the new observation has its own. Its variance therefore holds the variance of
 * a new group and of the rest, and what is not known of β and u; it is that of the best linear unbiased prediction (Henderson's equations,
 * the groups absorbed). Rows of one group can be left out at the cost of one small solve, which gives leave-one-group-out predictions
 * with the variances held.
 *
 * <pre>{@code
 * var forecast = NewGroupForecast.of(y, fixedRows, labels, days, new double[] {lotVariance}, dayVariance, restVariance);
 * forecast.at(new double[] {1, 7.5}, List.of("lot 3"))                      // what to expect on a new day
 * forecast.without("2025-03-04").at(new double[] {1, 7.5}, List.of("lot 3")) // the same, as if that day had not been seen
 * }</pre>
 *
 * @see <a href="https://doi.org/10.2307/2529430">Henderson 1975, Biometrics 31:423-447</a>
 */
public final class NewGroupForecast implements Showable {
    /**
     * Holds what is to be expected of one new observation.
     *
     * @param value the expected value
     * @param standardDeviation the standard deviation of the new observation around it
     */
    public record Forecast(double value, double standardDeviation) {}

    private final int fixedSize;
    private final int rows;
    private final List<Map<String, Integer>> columns;
    private final double[] variances;
    private final double newVariance;
    private final Map<String, double[][]> byGroup;
    private final double[][] total;
    private final double[][] system;
    private final Optional<double[]> solution;

    private NewGroupForecast(
            int fixedSize,
            int rows,
            List<Map<String, Integer>> columns,
            double[] variances,
            double newVariance,
            Map<String, double[][]> byGroup,
            double[][] total) {
        this.fixedSize = fixedSize;
        this.rows = rows;
        this.columns = columns;
        this.variances = variances;
        this.newVariance = newVariance;
        this.byGroup = byGroup;
        this.total = total;
        int size = total.length - 1;
        this.system = new double[size][];
        double[] right = new double[size];
        for (int i = 0; i < size; i++) {
            system[i] = Arrays.copyOf(total[i], size);
            right[i] = total[i][size];
        }
        this.solution = byGroup.isEmpty() ? Optional.empty() : SmallSolve.solve(system, right);
    }

    /**
     * Sets the model up.
     *
     * @param y the observations, none missing
     * @param fixed the fixed columns of each row, the constant 1 included
     * @param labels for each random term, the label of each row
     * @param groups the group of each row
     * @param variances the variance of each random term; a term of variance 0 is left out
     * @param groupVariance the variance between groups, 0 or more
     * @param restVariance the variance within them, above 0
     * @throws IllegalArgumentException if lengths differ or the variance of the rest is not above 0
     */
    public static NewGroupForecast of(
            double[] y,
            double[][] fixed,
            List<List<String>> labels,
            List<String> groups,
            double[] variances,
            double groupVariance,
            double restVariance) {
        Checks.sameLength("A forecast", y.length, "fixed rows", fixed.length);
        Checks.sameLength("A forecast", y.length, "groups", groups.size());
        Checks.sameLength("A forecast", labels.size(), "variances", variances.length);
        if (y.length == 0 || !(restVariance > 0)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "A forecast needs at least 1 row and a variance of the rest above 0; it was given %d rows and %s.",
                    y.length,
                    restVariance));
        }
        int next = fixed[0].length;
        List<Map<String, Integer>> columns = new ArrayList<>();
        for (int k = 0; k < labels.size(); k++) {
            Checks.sameLength("A forecast", y.length, "labels", labels.get(k).size());
            Map<String, Integer> column = new LinkedHashMap<>();
            if (variances[k] > 0) {
                for (String label : new TreeSet<>(labels.get(k))) {
                    column.put(label, next++);
                }
            }
            columns.add(column);
        }
        Map<String, List<Integer>> members = new LinkedHashMap<>();
        for (int i = 0; i < y.length; i++) {
            members.computeIfAbsent(groups.get(i), key -> new ArrayList<>()).add(i);
        }
        Map<String, double[][]> byGroup = new LinkedHashMap<>();
        double[][] total = new double[next + 1][next + 1];
        for (int k = 0; k < columns.size(); k++) {
            for (int column : columns.get(k).values()) {
                total[column][column] += 1 / variances[k];
            }
        }
        for (Map.Entry<String, List<Integer>> group : members.entrySet()) {
            List<double[]> w = new ArrayList<>();
            for (int i : group.getValue()) {
                double[] row = Arrays.copyOf(fixed[i], next + 1);
                for (int k = 0; k < columns.size(); k++) {
                    Integer column = columns.get(k).get(labels.get(k).get(i));
                    if (column != null) {
                        row[column] = 1;
                    }
                }
                row[next] = y[i];
                w.add(row);
            }
            double[][] rowsOfGroup = w.toArray(new double[0][]);
            byGroup.put(group.getKey(), whitened(rowsOfGroup, groupVariance, restVariance));
            addCrossProducts(total, byGroup.get(group.getKey()), 1);
        }
        return new NewGroupForecast(
                fixed[0].length,
                y.length,
                List.copyOf(columns),
                variances.clone(),
                groupVariance + restVariance,
                byGroup,
                total);
    }

    /** Rows times the inverse root of their covariance: what a group shares is taken out in the share that it is noise. */
    private static double[][] whitened(double[][] rows, double groupVariance, double restVariance) {
        int n = rows.length;
        double kept = 1 - Math.sqrt(restVariance / (restVariance + n * groupVariance));
        double[][] out = new double[n][rows[0].length];
        for (int c = 0; c < rows[0].length; c++) {
            double mean = 0;
            for (double[] row : rows) {
                mean += row[c] / n;
            }
            for (int i = 0; i < n; i++) {
                out[i][c] = (rows[i][c] - kept * mean) / Math.sqrt(restVariance);
            }
        }
        return out;
    }

    private static void addCrossProducts(double[][] total, double[][] rows, double sign) {
        for (double[] row : rows) {
            for (int i = 0; i < row.length; i++) {
                if (row[i] != 0) {
                    for (int j = 0; j < row.length; j++) {
                        total[i][j] += sign * row[i] * row[j];
                    }
                }
            }
        }
    }

    /** Returns the same model as if a group had not been seen; the variances stay. */
    public NewGroupForecast without(String group) {
        double[][] left = byGroup.get(group);
        if (left == null) {
            return this;
        }
        double[][] rest = Arrays.stream(total).map(double[]::clone).toArray(double[][]::new);
        Map<String, double[][]> others = new LinkedHashMap<>(byGroup);
        others.remove(group);
        addCrossProducts(rest, left, -1);
        return new NewGroupForecast(fixedSize, rows - left.length, columns, variances, newVariance, others, rest);
    }

    /**
     * Predicts a new observation of a new group. A label that was not seen counts as average, with the variance of its term.
     *
     * @param fixedRow the fixed columns, the constant 1 included
     * @param labels the label of each random term, in their order
     * @return NaN where too few rows are left to tell
     * @throws IllegalArgumentException if the numbers of columns or labels differ
     */
    public Forecast at(double[] fixedRow, List<String> labels) {
        Checks.sameLength("A forecast", fixedSize, "fixed columns", fixedRow.length);
        Checks.sameLength("A forecast", columns.size(), "labels", labels.size());
        if (solution.isEmpty()) {
            return new Forecast(Double.NaN, Double.NaN);
        }
        double[] row = Arrays.copyOf(fixedRow, system.length);
        double variance = newVariance;
        for (int k = 0; k < columns.size(); k++) {
            Integer column = columns.get(k).get(labels.get(k));
            if (column != null) {
                row[column] = 1;
            } else if (variances[k] > 0) {
                variance += variances[k];
            }
        }
        Optional<double[]> solved = SmallSolve.solve(system, row);
        if (solved.isEmpty()) {
            return new Forecast(Double.NaN, Double.NaN);
        }
        double value = 0;
        for (int i = 0; i < row.length; i++) {
            value += row[i] * solution.get()[i];
            variance += row[i] * solved.get()[i];
        }
        return new Forecast(value, Math.sqrt(variance));
    }

    /** Returns the groups that were seen. */
    public Set<String> groups() {
        return Set.copyOf(byGroup.keySet());
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "forecast of a new observation of a new group, from %d rows in %d groups",
                rows,
                byGroup.size());
    }
}
