package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import parchment.display.Showable;
import parchment.stats.Estimate;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Vectors;

/**
 * Fits a linear mixed model, and gives its fixed terms with standard errors, the variances of its random terms, and the predicted effects
 * of groups.
 *
 * <p>Made by {@link MixedDesign#fit()}. Any number of crossed and nested random terms, each with one effect or a correlated vector of
 * effects per group. What cannot be told apart (a term with one group, two terms with the same groups, a fixed column that others
 * determine) is dropped and named in {@link #notes()}.
 *
 * @see <a href="https://doi.org/10.18637/jss.v067.i01">Bates, Maechler, Bolker and Walker 2015, J. Stat. Softw. 67(1)</a>
 */
public final class LinearMixedModel implements Showable {
    private final MixedDesign design;
    private final MixedRows data;
    private final MixedSystem system;
    private final double[] theta;
    private final double criterion;
    private final double sigma;
    private final double[] coefficients;
    private final double[][] covariance;
    private final GroupPredictions groups;
    private final List<String> notes;
    private final int evaluations;
    private @Nullable Satterthwaite satterthwaite;

    private LinearMixedModel(MixedDesign design, MixedRows data, MixedSystem system, MixedSearch search) {
        this.design = design;
        this.data = data;
        this.system = system;
        this.theta = search.theta;
        this.criterion = search.value.criterion;
        this.sigma = Math.sqrt(search.value.squares / system.divisor());
        this.coefficients = data.basis.backSolve(sum(system.coefficients(), data.taken));
        this.covariance = scaled(data.basis.sandwich(system.coefficientCovariance()), sigma * sigma);
        system.invert(true);
        this.groups = new GroupPredictions(data.blocks, system.products, system.effects(), system.effectVariances());
        this.evaluations = search.evaluations;
        List<String> words = new ArrayList<>(data.notes);
        if (!search.converged) {
            words.add("The search for the variances did not settle; treat this fit with care.");
        }
        if (search.unbounded || !(search.value.squares > nothing(Vectors.pick(design.response(), data.rows)))) {
            words.add("The residual variance is estimated as nearly zero: the terms reproduce the response.");
        }
        for (VarianceComponent component : varianceComponents()) {
            if (!component.boundary().isEmpty()) {
                words.add(component.term() + ": " + component.boundary() + ".");
            }
        }
        this.notes = List.copyOf(words);
    }

    /**
     * Fits a design.
     *
     * @throws CannotFitException if there are no more complete rows than fixed columns
     */
    public static LinearMixedModel fit(MixedDesign design, Likelihood likelihood) {
        MixedRows data = MixedRows.of(design);
        MixedSystem system = new MixedSystem(data, likelihood);
        return new LinearMixedModel(design, data, system, MixedSearch.run(system, system.start()));
    }

    /** The sum of squares that counts as nothing: 1e-12 of the response's own about its mean, or what rounding of its digits alone makes. */
    private static double nothing(double[] y) {
        double mean = Arrays.stream(y).average().orElse(0);
        double squares = 0;
        double largest = 0;
        for (double value : y) {
            squares += (value - mean) * (value - mean);
            largest = Math.max(largest, Math.abs(value));
        }
        double rounding = 4 * Math.ulp(largest);
        return Math.max(1e-12 * squares, y.length * rounding * rounding);
    }

    private static double[] sum(double[] a, double[] b) {
        double[] out = a.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] += b[i];
        }
        return out;
    }

    private static double[][] scaled(double[][] matrix, double factor) {
        for (double[] row : matrix) {
            for (int i = 0; i < row.length; i++) {
                row[i] *= factor;
            }
        }
        return matrix;
    }

    /** Returns minus twice the (restricted) log likelihood at the optimum. */
    public double criterion() {
        return criterion;
    }

    /**
     * Evaluates the profiled criterion at other relative covariance factors, in the order of {@link #theta()}.
     *
     * @throws IllegalArgumentException if the number of values differs
     */
    public double criterionAt(double... relativeFactors) {
        Checks.sameLength("The criterion", theta.length, "theta", relativeFactors.length);
        synchronized (system) {
            return system.evaluate(RandomBlock.factorsInside(data.blocks, relativeFactors), false).criterion;
        }
    }

    /**
     * Returns the relative covariance factors: for each random term kept, in order, the lower triangle by columns of the factor of
     * its covariance matrix divided by the residual standard deviation.
     */
    public double[] theta() {
        return RandomBlock.factorsOutside(data.blocks, theta);
    }

    public Likelihood likelihood() {
        return system.likelihood;
    }

    /** Returns the residual standard deviation, in units of the response. */
    public double residualStandardDeviation() {
        return sigma;
    }

    /** Returns the number of rows used. */
    public int used() {
        return data.rows.length;
    }

    /** Returns the number of rows left out because something was missing. */
    public int leftOut() {
        return design.rows() - used();
    }

    /** Returns what was dropped, lies on a bound or did not settle, in plain words; empty if all is well. */
    public List<String> notes() {
        return notes;
    }

    /** Returns the names of the fixed columns that were kept, in order. */
    public List<String> columnNames() {
        return List.copyOf(data.basis.names);
    }

    /** Returns the names of the fixed columns that were dropped because others determine them. */
    public List<String> aliasedColumns() {
        return List.copyOf(data.basis.aliasedNames);
    }

    /** Returns the names of the random terms that were kept, in order. */
    public List<String> randomNames() {
        return data.blocks.stream().map(block -> block.name).toList();
    }

    int parameterCount() {
        return coefficients.length + theta.length + 1;
    }

    int evaluations() {
        return evaluations;
    }

    MixedRows data() {
        return data;
    }

    MixedDesign design() {
        return design;
    }

    double[] innerTheta() {
        return theta.clone();
    }

    /** Returns the coefficients of the kept columns. */
    public double[] coefficients() {
        return coefficients.clone();
    }

    /** Returns the covariance matrix of the coefficients of the kept columns, by rows. */
    public double[][] coefficientCovariance() {
        return Arrays.stream(covariance).map(double[]::clone).toArray(double[][]::new);
    }

    /** Returns every kept fixed column's estimate, in order. */
    public List<Estimate> terms() {
        List<Estimate> terms = new ArrayList<>();
        for (int k = 0; k < coefficients.length; k++) {
            double[] contrast = new double[coefficients.length];
            contrast[k] = 1;
            terms.add(estimate(data.basis.names.get(k), contrast));
        }
        return terms;
    }

    /**
     * Returns one fixed column's estimate; if the column was dropped, an estimate of NaN.
     *
     * @throws IllegalArgumentException if the design has no such column
     */
    public Estimate term(String column) {
        int k = data.basis.names.indexOf(column);
        if (k < 0) {
            if (data.basis.aliasedNames.contains(column)) {
                return new Estimate(column, Double.NaN, Double.NaN, Double.NaN);
            }
            throw new IllegalArgumentException("The model has no fixed column '" + column + "'. Columns: "
                    + String.join(", ", columnNames()) + ".");
        }
        double[] contrast = new double[coefficients.length];
        contrast[k] = 1;
        return estimate(column, contrast);
    }

    /**
     * Estimates a sum of coefficients, each times its weight.
     *
     * @param name what the sum means
     * @param weights weights of kept columns by name; the others count 0
     * @throws IllegalArgumentException if a name is not a kept column
     */
    public Estimate contrast(String name, Map<String, Double> weights) {
        double[] contrast = new double[coefficients.length];
        weights.forEach((column, weight) -> {
            int k = data.basis.names.indexOf(column);
            if (k < 0) {
                throw new IllegalArgumentException("The contrast '" + name + "' asks for the column '" + column
                        + "', which the model does not have. Columns: " + String.join(", ", columnNames()) + ".");
            }
            contrast[k] = weight;
        });
        return estimate(name, contrast);
    }

    /** Estimates a contrast given as one weight per kept column, in the order of {@link #columnNames()}. */
    public Estimate contrast(String name, double... weights) {
        Checks.sameLength("The contrast '" + name + "'", coefficients.length, "weights", weights.length);
        return estimate(name, weights.clone());
    }

    /** Tests jointly that several contrasts (rows of weights, one weight per kept column) are all 0. */
    public FTest test(String name, double[][] contrasts) {
        for (double[] row : contrasts) {
            Checks.sameLength("The test '" + name + "'", coefficients.length, "weights", row.length);
        }
        return degrees().test(name, contrasts, coefficients);
    }

    /** Tests jointly that all columns of a fixed term are 0 (marginal, given all other columns). */
    public FTest test(String fixedTerm) {
        List<double[]> contrasts = new ArrayList<>();
        boolean known = false;
        for (MixedDesign.FixedTerm term : design.fixed()) {
            if (term.name().equals(fixedTerm)) {
                known = true;
                for (String column : term.columnNames()) {
                    int k = data.basis.names.indexOf(column);
                    if (k >= 0) {
                        double[] row = new double[coefficients.length];
                        row[k] = 1;
                        contrasts.add(row);
                    }
                }
            }
        }
        if (!known) {
            throw new IllegalArgumentException("The model has no fixed term '" + fixedTerm + "'. Fixed terms: "
                    + String.join(", ", design.fixedNames()) + ".");
        }
        return test(fixedTerm, contrasts.toArray(new double[0][]));
    }

    private Estimate estimate(String name, double[] contrast) {
        double variance = Vectors.quadratic(covariance, contrast);
        return new Estimate(
                name,
                Vectors.dot(contrast, coefficients),
                Math.sqrt(Math.max(0, variance)),
                degrees().degreesOfFreedom(contrast));
    }

    private synchronized Satterthwaite degrees() {
        Satterthwaite found = satterthwaite;
        if (found == null) {
            synchronized (system) {
                found = new Satterthwaite(system, data.basis, theta, sigma, covariance);
            }
            satterthwaite = found;
        }
        return found;
    }

    /** Returns variances and covariances of every random term kept, then the residual variance. */
    public List<VarianceComponent> varianceComponents() {
        List<VarianceComponent> components = new ArrayList<>();
        int first = 0;
        for (RandomBlock block : data.blocks) {
            components.addAll(
                    Components.of(block, Arrays.copyOfRange(theta, first, first + block.parameters()), sigma));
            first += block.parameters();
        }
        components.add(new VarianceComponent("Residual", "Residual", "Residual", sigma * sigma, ""));
        return components;
    }

    /** Returns the variance of one effect of a random term; 0 if the term was dropped. */
    public double variance(String term, String effect) {
        for (VarianceComponent component : varianceComponents()) {
            if (component.term().equals(term) && component.effect().equals(effect) && !component.isCovariance()) {
                return component.variance();
            }
        }
        return 0;
    }

    /** Returns the standard deviation of a random intercept; 0 if the term was dropped. */
    public double standardDeviation(String term) {
        return Math.sqrt(variance(term, MixedDesign.INTERCEPT));
    }

    /** Returns the predicted effects of all groups of a random term; empty if the term was dropped. */
    public List<GroupEffect> groupEffects(String term) {
        return groups.effects(term, sigma);
    }

    /** Returns the fitted value of every row of the design, with the effects of its groups; NaN where a row was left out. */
    public double[] fitted() {
        return predict(design, Prediction.WITH_GROUPS);
    }

    /** Returns response minus fitted value for every row of the design; NaN where a row was left out. */
    public double[] residuals() {
        double[] out = fitted();
        for (int i = 0; i < out.length; i++) {
            out[i] = design.responseAt(i) - out[i];
        }
        return out;
    }

    /**
     * Predicts rows of a design with the same columns (other rows of the same table, as in cross-validation). A group that the model
     * has not seen counts as average. NaN where something is missing, or where the answer rests on a column that was dropped and is
     * not determined by the others in that row.
     *
     * @throws IllegalArgumentException if the design lacks a column of the model
     */
    public double[] predict(MixedDesign rows, Prediction kind) {
        double[] out = new FixedPrediction(data.basis, coefficients, design).predict(rows);
        if (kind == Prediction.WITH_GROUPS) {
            groups.addTo(out, rows);
        }
        return out;
    }

    /**
     * Draws a new response from the fitted model: fixed terms as estimated, new groups and new residuals from the estimated variances.
     *
     * @param seed the same seed gives the same response
     * @return one value per row of the design; NaN where the row was left out of the fit
     */
    public double[] simulate(long seed) {
        return new MixedSimulation(data, theta, sigma).draw(predict(design, Prediction.AVERAGE_GROUP), seed);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "mixed model of %s: %d rows used, %d left out, %d fixed columns, random %s; residual standard deviation %.4g%s",
                design.responseName(),
                used(),
                leftOut(),
                coefficients.length,
                data.blocks.isEmpty() ? "none" : String.join(", ", randomNames()),
                sigma,
                notes.isEmpty() ? "" : ". " + String.join(" ", notes));
    }

    @Override
    public String text() {
        StringBuilder text = new StringBuilder(toString()).append('\n');
        terms().forEach(term -> text.append("  ").append(term).append('\n'));
        varianceComponents()
                .forEach(component -> text.append("  ").append(component).append('\n'));
        return text.toString();
    }
}
