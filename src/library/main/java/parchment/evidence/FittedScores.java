package parchment.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Wording;
import parchment.stats.Estimate;
import parchment.stats.mixed.GroupEffect;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.MixedDesign;

/** Answers in the words of the question from one fitted model of the scores: slopes, spreads, effects of groups. */
final class FittedScores {
    private static final String INTERCEPT = "(Intercept)";

    private final ScoreDesign design;
    private final LinearMixedModel model;
    private final double mostDegrees;
    private final double priceOfWeights;
    private final Map<String, Map<String, Double>> shared;

    private FittedScores(ScoreDesign design, LinearMixedModel model, Map<String, Map<String, Double>> shared) {
        this.design = design;
        this.model = model;
        this.shared = new TreeMap<>(shared);
        DegreesLeft left = DegreesLeft.of(design);
        this.mostDegrees = left.most();
        this.priceOfWeights =
                design.form().days() == ModelForm.Days.FIXED || design.form().shape() == ModelForm.Shape.ABSENT
                        ? 1
                        : left.priceOfWeights(measureVariance().insideWeight());
    }

    /**
     * Fits a design.
     *
     * @throws CannotFitException if there are too few scores for the model's columns
     */
    static FittedScores of(ScoreDesign design) {
        return new FittedScores(design, design.design().fit(), Map.of());
    }

    static FittedScores of(ModelFrame material, ModelForm form) {
        return of(ScoreDesign.of(material, form));
    }

    /**
     * Returns the same fit with errors that many batches share: each of the others is fitted to the readings of one probe period moved by
     * one standard error. What that changes in two coefficients, multiplied, is added to their covariance; a first-order account.
     */
    FittedScores withSharedErrors(Map<String, FittedScores> moved) {
        Map<String, Map<String, Double>> changes = new TreeMap<>();
        moved.forEach((period, other) -> {
            Map<String, Double> change = new HashMap<>();
            model.columnNames().forEach(column -> change.put(column, other.coefficient(column) - coefficient(column)));
            changes.put(period, change);
        });
        return new FittedScores(design, model, changes);
    }

    /** Returns the same fit as if what all batches of a probe period share were known exactly. */
    FittedScores withoutSharedErrors() {
        return new FittedScores(design, model, Map.of());
    }

    /** Returns what one standard error of each probe period's shared error changes in a coefficient, by the period's name. */
    Map<String, Double> sharedChanges(String column) {
        Map<String, Double> changes = new TreeMap<>();
        shared.forEach((period, change) -> changes.put(period, change.getOrDefault(column, 0.0)));
        return changes;
    }

    /** Returns the same for the intercept. */
    Map<String, Double> sharedChanges() {
        return sharedChanges(INTERCEPT);
    }

    private double sharedCovariance(String first, String second) {
        double sum = 0;
        for (Map<String, Double> change : shared.values()) {
            sum += change.getOrDefault(first, 0.0) * change.getOrDefault(second, 0.0);
        }
        return sum;
    }

    ScoreDesign design() {
        return design;
    }

    LinearMixedModel model() {
        return model;
    }

    /**
     * Returns the coefficient of a fixed column; missing if other columns determine it. The error of the feature and of its square is
     * widened for the weights that are estimated; see {@link DegreesLeft#priceOfWeights}.
     */
    Slope slope(String column) {
        if (!model.columnNames().contains(column)) {
            return Slope.MISSING;
        }
        Estimate estimate = model.term(column);
        return new Slope(
                estimate.estimate(),
                Math.sqrt(estimate.standardError() * estimate.standardError() * price(column)
                        + sharedCovariance(column, column)),
                Math.min(mostDegrees, Double.isNaN(estimate.degreesOfFreedom()) ? 0 : estimate.degreesOfFreedom()));
    }

    /**
     * Returns a weighted sum of coefficients; missing if a column was determined by others.
     *
     * @param direction the comparison of batches that the sum is estimated from, one number per batch
     * @param insideWeight the share of its information that comes from inside roast days
     */
    Slope contrast(Map<String, Double> weights, double[] direction, double insideWeight) {
        if (!model.columnNames().containsAll(weights.keySet())) {
            return Slope.MISSING;
        }
        Estimate estimate = model.contrast("contrast", weights);
        DegreesLeft left = DegreesLeft.of(design, direction);
        return new Slope(
                estimate.estimate(),
                estimate.standardError() * Math.sqrt(left.priceOfWeights(insideWeight)),
                Math.min(left.most(), Double.isNaN(estimate.degreesOfFreedom()) ? 0 : estimate.degreesOfFreedom()));
    }

    private double price(String column) {
        return column.equals(ScoreDesign.FEATURE) || column.equals(ScoreDesign.SQUARE) ? priceOfWeights : 1;
    }

    /** Returns the slope of the feature. */
    Slope slope() {
        return slope(ScoreDesign.FEATURE);
    }

    /** Returns the covariance of two coefficients. */
    double covariance(String first, String second) {
        List<String> names = model.columnNames();
        return model.coefficientCovariance()[names.indexOf(first)][names.indexOf(second)]
                        * Math.sqrt(price(first) * price(second))
                + sharedCovariance(first, second);
    }

    /** Returns the most degrees of freedom that a slope may have. */
    double mostDegrees() {
        return mostDegrees;
    }

    /** Returns the standard deviation of a random term, 0 if it is not in the model. */
    double spread(String term) {
        return model.standardDeviation(term);
    }

    /** Returns the spread of one cupper's scores from cup to cup; with one cup per batch the batch's own spread is in it. */
    double cupToCup() {
        return model.residualStandardDeviation();
    }

    /** Returns the variance of a batch's mean score inside a roast day. */
    double batchVariance() {
        double perBatch = (double) design.material().scores().size()
                / design.material().batches().size();
        double batch = spread("batch");
        return batch * batch + cupToCup() * cupToCup() / perBatch;
    }

    /** Returns the variance of the feature that the slope rests on; see {@link MeasureVariance}. */
    MeasureVariance measureVariance() {
        double day = spread("roast day");
        return MeasureVariance.of(design, day * day, batchVariance());
    }

    /**
     * Returns each batch's score with everything but the feature, the batch itself and chance taken out: the mean over its cups of the
     * score less the other columns and the predicted effects of lot, day, cupper and cupping.
     */
    double[] adjustedBatchScores() {
        ModelFrame material = design.material();
        double[] sums = new double[material.batches().size()];
        int[] counts = new int[sums.length];
        double[] fitted = model.fitted();
        Map<String, Double> batchEffects = effects("batch");
        double feature = coefficient(ScoreDesign.FEATURE);
        double square = coefficient(ScoreDesign.SQUARE);
        double intercept = coefficient(INTERCEPT);
        double[] centered = design.centered();
        for (int row = 0; row < fitted.length; row++) {
            ScoreRow score = material.scores().get(row);
            double x = centered[score.batch()];
            double ownLine = intercept + feature * x + square * x * x;
            double residual = score.score() - fitted[row];
            double batch = batchEffects.getOrDefault(material.batchOf(score).name(), 0.0);
            sums[score.batch()] += ownLine + batch + residual;
            counts[score.batch()]++;
        }
        for (int i = 0; i < sums.length; i++) {
            sums[i] /= counts[i];
        }
        return sums;
    }

    /** Returns how many scores each batch has. */
    int[] scoresPerBatch() {
        int[] counts = new int[design.material().batches().size()];
        design.material().scores().forEach(score -> counts[score.batch()]++);
        return counts;
    }

    /** Returns the predicted effects of the groups of a random term by group. */
    Map<String, Double> effects(String term) {
        Map<String, Double> effects = new HashMap<>();
        for (GroupEffect effect : model.groupEffects(term)) {
            effects.put(effect.group(), effect.estimate());
        }
        return effects;
    }

    /** Returns the design for a model of steps, which takes intercepts only: the course over the date is a column, as it was found here. */
    MixedDesign forSteps() {
        return design.withIntercepts(model.groupEffects(ScoreDesign.DATE_COURSE).stream()
                .mapToDouble(GroupEffect::estimate)
                .toArray());
    }

    /** Returns a coefficient, 0 if the model has no such column. */
    double coefficient(String column) {
        int place = model.columnNames().indexOf(column);
        return place < 0 ? 0 : model.coefficients()[place];
    }

    double intercept() {
        return coefficient(INTERCEPT);
    }

    /** Returns what was left out of the model and which spreads were estimated as zero, one sentence each. */
    List<String> words() {
        List<String> words = new ArrayList<>(design.words());
        for (String column : model.aliasedColumns()) {
            words.add(
                    Wording.sentence(column)
                            + " follows exactly from other terms of the model, so it is not in it and nothing is taken out for it.");
        }
        for (String term : model.randomNames()) {
            if (!term.equals(ScoreDesign.DATE_COURSE) && spreadIsZero(term)) {
                words.add("The spread between " + plural(term) + " is estimated as zero, its lower bound.");
            }
        }
        return words;
    }

    private boolean spreadIsZero(String term) {
        return model.varianceComponents().stream()
                .filter(component -> component.term().equals(term))
                .allMatch(component -> component.variance() <= 1e-9 * cupToCup() * cupToCup());
    }

    private static String plural(String term) {
        return switch (term) {
            case "lot" -> "lots";
            case "roast day" -> "roast days";
            case "batch" -> "batches of one day";
            case "cupper" -> "cuppers";
            case "cupping" -> "cuppings";
            case "cupper within a cupping" -> "cuppers within a cupping";
            default -> "cuppers' own slopes";
        };
    }
}
