package parchment.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import parchment.stats.Correlation;

/**
 * Holds the courses of several attributes along one feature, and draws them jointly from what the scores leave open.
 *
 * <p>Each attribute has its own mixed model; a draw moves level, line and bend of each by their estimated covariance, as a t distribution
 * with the fewest degrees of freedom of all. The moves of two attributes are correlated as their batches' residuals are: exact where the
 * attributes have the same batches and the same ratios of spreads, near enough otherwise. So a halo is in the draws.
 */
final class JointCourses {
    private final List<FittedScores> fits;
    private final List<FittedCurve> curves;
    private final TriedRange range;
    private final double[][] mixing;
    private final double degrees;

    private JointCourses(
            List<FittedScores> fits, List<FittedCurve> curves, TriedRange range, double[][] mixing, double degrees) {
        this.fits = fits;
        this.curves = curves;
        this.range = range;
        this.mixing = mixing;
        this.degrees = degrees;
    }

    /** Fits the courses; the bend is kept where it was seen, at 1 in 100 shared by all attributes. */
    static JointCourses of(List<Material> materials, double level) {
        List<FittedScores> fits = new ArrayList<>();
        List<FittedCurve> curves = new ArrayList<>();
        double degrees = Double.POSITIVE_INFINITY;
        for (Material material : materials) {
            FittedScores bent = FittedScores.of(material, ModelForm.STANDARD.with(ModelForm.Shape.BEND));
            boolean seen = bent.slope(ScoreDesign.SQUARE).chance() < VerdictRules.CHANCE_OF_BEND / materials.size();
            FittedScores fit = seen ? bent : FittedScores.of(material, ModelForm.STANDARD);
            fits.add(fit);
            curves.add(FittedCurve.of(fit, TriedRange.of(fit.design()), level));
            degrees = Math.min(degrees, Math.max(1, fit.slope().degreesOfFreedom()));
        }
        TriedRange range = TriedRange.of(fits.get(0).design());
        return new JointCourses(fits, curves, range, root(correlations(fits)), degrees);
    }

    private static double[][] correlations(List<FittedScores> fits) {
        List<Map<String, Double>> rests = fits.stream().map(JointCourses::rests).toList();
        List<String> shared = rests.get(0).keySet().stream()
                .filter(batch -> rests.stream().allMatch(rest -> rest.containsKey(batch)))
                .sorted()
                .toList();
        double[][] correlations = new double[fits.size()][fits.size()];
        for (int a = 0; a < correlations.length; a++) {
            for (int b = 0; b < correlations.length; b++) {
                int first = a;
                int second = b;
                double r = Correlation.pearson(
                        shared.stream()
                                .mapToDouble(batch -> rests.get(first).getOrDefault(batch, 0.0))
                                .toArray(),
                        shared.stream()
                                .mapToDouble(batch -> rests.get(second).getOrDefault(batch, 0.0))
                                .toArray());
                correlations[a][b] = a == b ? 1 : Double.isNaN(r) ? 0 : r;
            }
        }
        return correlations;
    }

    /** Returns how far each batch lies from the course, by its name. */
    private static Map<String, Double> rests(FittedScores fit) {
        double[] scores = fit.adjustedBatchScores();
        double[] own = fit.design().centered();
        Map<String, Double> rests = new HashMap<>();
        for (TastedBatch batch : fit.design().material().batches()) {
            double x = own[batch.position()];
            rests.put(
                    batch.name(),
                    scores[batch.position()]
                            - fit.intercept()
                            - fit.coefficient(ScoreDesign.FEATURE) * x
                            - fit.coefficient(ScoreDesign.SQUARE) * x * x);
        }
        return rests;
    }

    /** Returns a symmetric square root; directions that rounding made negative count as 0. */
    private static double[][] root(double[][] matrix) {
        EigenDecompositionSymmetric parts = new EigenDecompositionSymmetric(MatrixUtils.createRealMatrix(matrix));
        RealMatrix vectors = parts.getV();
        double[] values = parts.getEigenvalues();
        for (int i = 0; i < values.length; i++) {
            values[i] = Math.sqrt(Math.max(0, values[i]));
        }
        return vectors.multiply(MatrixUtils.createRealDiagonalMatrix(values))
                .multiply(vectors.transpose())
                .getData();
    }

    TriedRange range() {
        return range;
    }

    FittedScores fit(int attribute) {
        return fits.get(attribute);
    }

    FittedCurve curve(int attribute) {
        return curves.get(attribute);
    }

    /** Returns the fitted score of an attribute at a place. */
    double at(int attribute, double place) {
        double x = place - range.center();
        FittedScores fit = fits.get(attribute);
        return fit.intercept() + fit.coefficient(ScoreDesign.FEATURE) * x + fit.coefficient(ScoreDesign.SQUARE) * x * x;
    }

    /** Draws the scores of every attribute at every place: attribute, then place. */
    double[][] draw(double[] places, SplittableRandom random) {
        int count = fits.size();
        double[][] moves = new double[3][count];
        for (int part = 0; part < 3; part++) {
            double[] normal = new double[count];
            for (int a = 0; a < count; a++) {
                normal[a] = random.nextGaussian();
            }
            moves[part] = Matrices.times(mixing, normal);
        }
        double heavy = heavyTail(random);
        double[][] scores = new double[count][places.length];
        for (int a = 0; a < count; a++) {
            FittedScores fit = fits.get(a);
            double level = Math.sqrt(
                    fit.batchVariance() / fit.design().material().batches().size());
            double line = fit.slope().standardError();
            double square = 0;
            double shared = 0;
            if (fit.slope(ScoreDesign.SQUARE).known()) {
                double own = fit.slope(ScoreDesign.SQUARE).standardError();
                shared = fit.covariance(ScoreDesign.FEATURE, ScoreDesign.SQUARE) / line;
                square = Math.sqrt(Math.max(0, own * own - shared * shared));
            }
            for (int i = 0; i < places.length; i++) {
                double x = places[i] - range.center();
                scores[a][i] = at(a, places[i])
                        + heavy
                                * (level * moves[0][a]
                                        + line * moves[1][a] * x
                                        + (shared * moves[1][a] + square * moves[2][a]) * x * x);
            }
        }
        return scores;
    }

    /** Returns sqrt(degrees / chi-squared): what makes normal draws a t distribution. */
    private double heavyTail(SplittableRandom random) {
        int whole = (int) Math.min(200, Math.max(1, Math.round(degrees)));
        double sum = 0;
        for (int i = 0; i < whole; i++) {
            double normal = random.nextGaussian();
            sum += normal * normal;
        }
        return Math.sqrt(whole / sum);
    }
}
