package parchment.evidence;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import parchment.evidence.finding.Slope;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Matrices;
import parchment.stats.linear.Vectors;

/**
 * Fits one model of the scores with several measures side by side and answers comparisons among them: weighted sums of their slopes.
 *
 * <p>A comparison is estimated from that part of the batches' differences that the other directions leave over. How much of that part is
 * error of measuring, how many degrees of freedom it has and how far it was tried are worked out for each comparison by itself.
 */
final class JointFit {
    private static final String BEND = "bend";

    private final JointFrame joint;
    private final FittedScores fitted;
    private final List<double[]> within;
    private final double[][] spread;
    private final JointSpread parts;
    private final List<double[][]> errors;
    private final Optional<double[][]> inverse;

    private JointFit(JointFrame joint, Map<String, double[][]> errors) {
        this.joint = joint;
        this.within = joint.within();
        this.fitted = FittedScores.of(design(joint, within));
        double day = fitted.spread("roast day");
        this.parts = JointSpread.of(fitted.design(), within, Set.copyOf(columns()), day * day, fitted.batchVariance());
        this.spread = parts.covariance();
        this.inverse = Matrices.inverse(spread);
        int measures = within.size();
        this.errors = joint.material().batches().stream()
                .map(batch -> errors.getOrDefault(batch.name(), new double[measures][measures]))
                .toList();
    }

    /**
     * Fits the model.
     *
     * @param errors the covariance of the errors of the measures of each batch by its name; a batch without one has none that is known
     * @throws CannotFitException if there are too few scores for the model's columns
     */
    static JointFit of(JointFrame joint, Map<String, double[][]> errors) {
        return new JointFit(joint, errors);
    }

    private static ScoreDesign design(JointFrame joint, List<double[]> within) {
        ScoreDesign design = ScoreDesign.of(joint.material(), ModelForm.STANDARD);
        int groups = joint.material().groupMeans().size();
        for (int k = 1; k < within.size(); k++) {
            Measure measure = joint.measures().get(k);
            design = design.withFeature(measure.name(), within.get(k));
            // Means of few lots soon take up every difference between lots.
            if (groups > k + 2) {
                design = design.withBatchColumn(measure.name() + ", mean of the lot", joint.lotMeans(k));
            }
        }
        return design;
    }

    /** Returns the name of a measure's column: the first is the model's own feature. */
    private String column(int measure) {
        return measure == 0
                ? ScoreDesign.FEATURE
                : joint.measures().get(measure).name();
    }

    private List<String> columns() {
        return IntStream.range(0, joint.measures().size())
                .mapToObj(this::column)
                .toList();
    }

    JointFrame joint() {
        return joint;
    }

    FittedScores fitted() {
        return fitted;
    }

    /** Returns each batch's distance from its lot's mean, one list per measure. */
    List<double[]> within() {
        return within;
    }

    /** Returns the covariance of the measures' slopes; empty if one of them is determined by the rest. */
    Optional<double[][]> slopeCovariance() {
        List<String> names = columns();
        if (!fitted.model().columnNames().containsAll(names)) {
            return Optional.empty();
        }
        double[][] all = fitted.model().coefficientCovariance();
        double[][] covariance = new double[names.size()][names.size()];
        for (int k = 0; k < covariance.length; k++) {
            for (int l = 0; l < covariance.length; l++) {
                covariance[k][l] = all[fitted.model().columnNames().indexOf(names.get(k))][
                        fitted.model().columnNames().indexOf(names.get(l))];
            }
        }
        return Optional.of(covariance);
    }

    /**
     * Answers one comparison.
     *
     * @param weights the weight of each measure's slope, in the order of the measures
     */
    JointSlope slope(double[] weights) {
        if (inverse.isEmpty()) {
            return JointSlope.undetermined(within.get(0).length);
        }
        double free = Matrices.form(weights, inverse.get(), weights);
        double[] unit = unit(weights);
        double separate = 0;
        for (int k = 0; k < unit.length; k++) {
            separate += weights[k] * weights[k] / spread[k][k];
        }
        double[] compared = compared(unit);
        double[] own = errors.stream()
                .mapToDouble(error -> Math.sqrt(Math.max(0, Matrices.form(unit, error, unit))))
                .toArray();
        Slope slope = fitted.contrast(named(weights), compared, parts.insideWeight(unit));
        Reliability reliability = Reliability.of(compared, known(own), 1 / free);
        return new JointSlope(
                slope,
                reliability.corrects() ? corrected(slope, weights, reliability) : slope,
                reliability,
                // Where the measures moved against each other they help; nothing is inflated then.
                Math.max(1, free / separate),
                compared);
    }

    /**
     * Returns how the course bends along a comparison: its slope and the coefficient of the square of the part that the slope rests on, with
     * all slopes in the model.
     */
    PairsOfPlaces bend(double[] weights, JointSlope along) {
        double[] square = new double[along.compared().length];
        double mean = 0;
        for (int i = 0; i < square.length; i++) {
            square[i] = along.compared()[i] * along.compared()[i];
            mean += square[i] / square.length;
        }
        for (int i = 0; i < square.length; i++) {
            square[i] -= mean;
        }
        try {
            FittedScores bent = FittedScores.of(fitted.design().withBatchColumn(BEND, square));
            Slope own = bent.slope(BEND);
            Map<String, Double> named = named(weights);
            if (!own.known() || !bent.model().columnNames().containsAll(named.keySet())) {
                return PairsOfPlaces.UNKNOWN;
            }
            double covariance = named.entrySet().stream()
                    .mapToDouble(weight -> weight.getValue() * bent.covariance(weight.getKey(), BEND))
                    .sum();
            return new PairsOfPlaces(
                    bent.contrast(named, along.compared(), parts.insideWeight(unit(weights))), own, covariance);
        } catch (CannotFitException tooFewRows) {
            return PairsOfPlaces.UNKNOWN;
        }
    }

    private Map<String, Double> named(double[] weights) {
        Map<String, Double> named = new LinkedHashMap<>();
        for (int k = 0; k < weights.length; k++) {
            if (weights[k] != 0) {
                named.put(column(k), weights[k]);
            }
        }
        return named;
    }

    /** Returns the direction of the measures that a comparison rests on, in the unit of the comparison. */
    private double[] unit(double[] weights) {
        double[] unit = Vectors.times(inverse.orElseThrow(), weights);
        double free = Matrices.form(weights, inverse.orElseThrow(), weights);
        for (int k = 0; k < unit.length; k++) {
            unit[k] /= free;
        }
        return unit;
    }

    /** An error of 0 for every batch is an error that is not known. */
    private static double[] known(double[] errors) {
        for (double error : errors) {
            if (error > 0) {
                return errors;
            }
        }
        double[] unknown = new double[errors.length];
        Arrays.fill(unknown, Double.NaN);
        return unknown;
    }

    private double[] compared(double[] unit) {
        double[] compared = new double[within.get(0).length];
        for (int i = 0; i < compared.length; i++) {
            for (int k = 0; k < unit.length; k++) {
                compared[i] += unit[k] * within.get(k)[i];
            }
        }
        return compared;
    }

    /**
     * Corrects for the errors of all measures together: slopes times (spread - error)^-1 spread, the regression calibration of several
     * measures (Carroll and others 2006, section 4.4), with the error of the reliability added as for one measure.
     */
    private Slope corrected(Slope slope, double[] weights, Reliability reliability) {
        double[][] error = new double[weights.length][weights.length];
        for (double[][] one : errors) {
            for (int k = 0; k < error.length; k++) {
                for (int l = 0; l < error.length; l++) {
                    error[k][l] += one[k][l] / errors.size();
                }
            }
        }
        Optional<double[][]> truth = Matrices.inverse(Matrices.minus(spread, error));
        Optional<double[][]> covariance = slopeCovariance();
        if (truth.isEmpty() || covariance.isEmpty()) {
            return Slope.MISSING;
        }
        double[] lifted = Vectors.times(Matrices.transposed(Matrices.times(truth.get(), spread)), weights);
        double estimate = 0;
        for (int k = 0; k < lifted.length; k++) {
            estimate += lifted[k] * fitted.coefficient(column(k));
        }
        double plain = Matrices.form(weights, covariance.get(), weights);
        double widened = Matrices.form(lifted, covariance.get(), lifted);
        double relative = Math.sqrt(2.0 / Math.max(1, reliability.batches() - 1)) * (1 - reliability.value());
        double ownError = slope.standardError() * Math.sqrt(widened / plain);
        return new Slope(
                estimate, Math.hypot(ownError, estimate / reliability.value() * relative), slope.degreesOfFreedom());
    }
}
