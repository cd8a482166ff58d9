package parchment.stats.ordinal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parchment.display.Showable;
import parchment.stats.Estimate;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;
import parchment.stats.linear.QuasiNewton;
import parchment.stats.mixed.FixedPrediction;
import parchment.stats.mixed.GroupEffect;
import parchment.stats.mixed.LikelihoodRatio;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.Prediction;
import parchment.stats.mixed.RandomBlock;

/**
 * Fits a cumulative logit model with random intercepts, for scores given in few and coarse steps.
 *
 * <p>The chance of a score of at most step j is F(threshold j - linear predictor), F the logistic function: a positive coefficient means
 * higher scores, and no distance between steps is assumed. The random effects are integrated out by Laplace's approximation, which is good
 * where each group has several rows. Standard errors come from the second derivatives of the log likelihood, the standard deviations
 * counted as estimated.
 *
 * @see <a href="https://cran.r-project.org/package=ordinal">Christensen 2022, ordinal: Regression Models for Ordinal Data, clmm</a>;
 *     McCullagh 1980, J. R. Stat. Soc. B 42:109
 */
public final class OrdinalMixedModel implements Showable {
    private static final double ZERO = 1e-4;
    /** On the logit scale, per spread of a column; a difference that large is certainty. */
    private static final double RUNAWAY = 25;

    private final MixedDesign design;
    private final OrdinalRows data;
    private final double logLikelihood;
    private final double[] thresholds;
    private final double[] coefficients;
    private final double[] standardErrors;
    /** Of thresholds, coefficients and standard deviations. */
    private final double[][] covariance;

    private final double[] deviations;
    private final double[] effects;
    private final double[] effectErrors;
    private final boolean settled;
    private final List<String> notes;

    private OrdinalMixedModel(MixedDesign design, OrdinalRows data) {
        this.design = design;
        this.data = data;
        OrdinalLikelihood likelihood = new OrdinalLikelihood(data);
        QuasiNewton search = QuasiNewton.polishedMinimum(likelihood, likelihood.start());
        double[] found = search.place();
        int thresholdCount = data.categories.length - 1;
        int first = found.length - data.blocks.size();
        List<String> words = new ArrayList<>(data.notes);
        for (int k = first; k < found.length; k++) {
            found[k] = Math.abs(found[k]);
            double[] atZero = found.clone();
            atZero[k] = 0;
            if (found[k] < ZERO || likelihood.value(atZero, new double[found.length]) <= search.value() + 1e-9) {
                found = atZero;
                words.add(data.blocks.get(k - first).name
                        + ": the variance between groups is estimated as zero, its lower bound.");
            }
        }
        this.logLikelihood = -likelihood.value(found, new double[found.length]);
        this.deviations = Arrays.copyOfRange(found, first, found.length);
        OrdinalSystem system = likelihood.atMode(found);
        this.effects = likelihood.mode.clone();
        this.effectErrors = system.inverseDiagonal();
        OrdinalCovariance spread = OrdinalCovariance.of(data, likelihood, found);
        double[] natural = spread.natural(found);
        this.thresholds = Arrays.copyOf(natural, thresholdCount);
        this.coefficients = Arrays.copyOfRange(natural, thresholdCount, first);
        this.covariance = spread.matrix();
        this.standardErrors = spread.standardErrors();
        // On the columns scaled to a root mean square of 1: a coefficient per unit is large where the unit is.
        boolean runaway = Arrays.stream(found, 0, first).anyMatch(v -> Math.abs(v) > RUNAWAY);
        this.settled = search.converged() && !runaway;
        if (!search.converged()) {
            words.add("The search did not settle; treat this fit with care.");
        }
        if (runaway) {
            words.add(
                    "Some scores are told apart completely, so that a coefficient or threshold has no finite best value.");
        }
        this.notes = List.copyOf(words);
    }

    /**
     * Fits a design, its intercept left out (the thresholds take its place).
     *
     * @param design the response as scores, each different score one step; random terms intercepts only
     * @throws IllegalArgumentException if a random term is not an intercept
     * @throws CannotFitException if there are fewer than 2 different scores
     */
    public static OrdinalMixedModel fit(MixedDesign design) {
        return new OrdinalMixedModel(design, OrdinalRows.of(design));
    }

    /** Returns the log likelihood, by Laplace's approximation. */
    public double logLikelihood() {
        return logLikelihood;
    }

    /** Returns the different scores, from the lowest up. */
    public List<Double> categories() {
        return Arrays.stream(data.categories).boxed().toList();
    }

    /** Returns the thresholds between neighbouring scores, on the logit scale, named as "5|6". */
    public List<Estimate> thresholds() {
        return IntStream.range(0, thresholds.length)
                .mapToObj(j -> new Estimate(
                        Checks.number(data.categories[j]) + "|" + Checks.number(data.categories[j + 1]),
                        thresholds[j],
                        standardErrors[j],
                        Double.POSITIVE_INFINITY))
                .toList();
    }

    /** Returns every kept fixed column's estimate, as a logarithm of odds per unit of the column; the intercept is not among them. */
    public List<Estimate> terms() {
        return IntStream.range(0, coefficients.length)
                .mapToObj(k -> new Estimate(
                        data.basis.names.get(k + 1),
                        coefficients[k],
                        standardErrors[thresholds.length + k],
                        Double.POSITIVE_INFINITY))
                .toList();
    }

    /**
     * Returns one fixed column's estimate; NaN if it was dropped.
     *
     * @throws IllegalArgumentException if the design has no such column
     */
    public Estimate term(String column) {
        if (data.basis.aliasedNames.contains(column)) {
            return new Estimate(column, Double.NaN, Double.NaN, Double.NaN);
        }
        return terms().stream()
                .filter(term -> term.name().equals(column))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("The model has no fixed column '" + column
                        + "'. Columns: "
                        + String.join(", ", data.basis.names.subList(1, data.basis.size())) + "."));
    }

    /** Returns the standard deviation of a random intercept on the logit scale; 0 if the term was dropped. */
    public double standardDeviation(String term) {
        for (int t = 0; t < deviations.length; t++) {
            if (data.blocks.get(t).name.equals(term)) {
                return deviations[t];
            }
        }
        return 0;
    }

    /**
     * Returns the predicted effects of all groups of a random term on the logit scale (modes, with the errors that hold at the estimated
     * thresholds and coefficients); empty if the term was dropped.
     */
    public List<GroupEffect> groupEffects(String term) {
        List<GroupEffect> found = new ArrayList<>();
        int at = 0;
        for (int t = 0; t < deviations.length; t++) {
            RandomBlock block = data.blocks.get(t);
            for (String level : block.levels) {
                if (block.name.equals(term)) {
                    found.add(new GroupEffect(
                            term,
                            level,
                            MixedDesign.INTERCEPT,
                            deviations[t] * effects[at],
                            deviations[t] * Math.sqrt(effectErrors[at])));
                }
                at++;
            }
        }
        return found;
    }

    /**
     * Returns the chance of every score, in the order of {@link #categories()}, for rows of a design with the same columns. For an average
     * group this is a group with effect 0, not the mean over groups.
     */
    public double[][] probabilities(MixedDesign rows, Prediction kind) {
        double[] padded = new double[data.basis.size()];
        System.arraycopy(coefficients, 0, padded, 1, coefficients.length);
        double[] eta = new FixedPrediction(data.basis, padded, design).predict(rows);
        for (int t = 0; kind == Prediction.WITH_GROUPS && t < deviations.length; t++) {
            String name = data.blocks.get(t).name;
            List<String> groups = rows.randomTerms().stream()
                    .filter(term -> term.name().equals(name))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("Prediction with groups needs the random term '"
                            + name + "', but the rows have none of that name."))
                    .groups();
            for (GroupEffect effect : groupEffects(name)) {
                for (int i = 0; i < eta.length; i++) {
                    eta[i] += groups.get(i).equals(effect.group()) ? effect.estimate() : 0;
                }
            }
        }
        double[][] out = new double[eta.length][data.categories.length];
        for (int i = 0; i < eta.length; i++) {
            double below = 0;
            for (int j = 0; j <= thresholds.length; j++) {
                double upTo = j < thresholds.length ? OrdinalLikelihood.logistic(thresholds[j] - eta[i]) : 1;
                out[i][j] = Double.isNaN(eta[i]) ? Double.NaN : upTo - below;
                below = upTo;
            }
        }
        return out;
    }

    /**
     * Returns by how much the expected score of the second rows lies above that of the first, the mean over the rows: each score times its
     * chance, groups taken over their normal distributions. Its error is that of thresholds, coefficients and standard deviations together
     * (delta method); NaN where the fit leaves none.
     *
     * @param from the rows of a design with the same columns
     * @param to as many rows
     */
    public Estimate expectedDifference(MixedDesign from, MixedDesign to) {
        OrdinalExpectation expected =
                new OrdinalExpectation(data.categories, thresholds, coefficients, deviations, data.basis, design);
        return expected.difference(from, to, covariance);
    }

    /** Returns whether the search settled on finite estimates with errors. */
    public boolean settled() {
        return settled && Arrays.stream(standardErrors).allMatch(Double::isFinite);
    }

    /**
     * Compares with a smaller model of the same rows.
     *
     * @throws IllegalArgumentException if rows or scores differ, or the other model does not have fewer parameters
     */
    public LikelihoodRatio against(OrdinalMixedModel smaller) {
        int extra = parameterCount() - smaller.parameterCount();
        if (!Arrays.equals(data.rows, smaller.data.rows) || !Arrays.equals(data.category, smaller.data.category)) {
            throw new IllegalArgumentException(
                    "A likelihood-ratio test needs two models of the same rows and scores, but they have " + used()
                            + " and " + smaller.used() + " rows, or other scores.");
        }
        if (extra <= 0) {
            throw new IllegalArgumentException("The model compared with must have fewer parameters, but it has "
                    + smaller.parameterCount() + " against " + parameterCount() + ".");
        }
        return new LikelihoodRatio(Math.max(0, 2 * (logLikelihood - smaller.logLikelihood)), extra);
    }

    private int parameterCount() {
        return thresholds.length + coefficients.length + deviations.length;
    }

    public int used() {
        return data.rows.length;
    }

    public int leftOut() {
        return design.rows() - used();
    }

    /** Returns what was dropped, lies on a bound or did not settle, in plain words; empty if all is well. */
    public List<String> notes() {
        return notes;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "ordinal mixed model of %s: %d rows used, %d left out, %d different scores, %d fixed columns, random %s%s",
                design.responseName(),
                used(),
                leftOut(),
                data.categories.length,
                coefficients.length,
                data.blocks.isEmpty()
                        ? "none"
                        : String.join(
                                ", ", data.blocks.stream().map(b -> b.name).toList()),
                notes.isEmpty() ? "" : ". " + String.join(" ", notes));
    }
}
