package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import parchment.stats.Correlation;
import parchment.stats.Interval;

/**
 * Holds the courses of several attributes along one feature, and draws them jointly from what the scores leave open.
 *
 * <p>Each attribute has its own mixed model; a draw moves level, line and bend of each by their estimated covariance, as a t distribution
 * with the fewest degrees of freedom of all. The moves of two attributes are correlated as their batches' residuals are: exact where the
 * attributes have the same batches and the same ratios of spreads, near enough otherwise. So a halo is in the draws.
 */
final class JointCourses {
    static int POLICY = 0;

    /** The 90th percentile of a standard normal distribution. */
    private static final double MIDDLE = 1.2816;

    private final List<FittedScores> fits;
    private final List<Batches> batches;
    private final List<FittedCurve> curves;
    private final TriedRange range;
    private final double[][] mixing;
    private final double degrees;

    private JointCourses(
            List<FittedScores> fits, List<FittedCurve> curves, TriedRange range, double[][] mixing, double degrees) {
        this.fits = fits;
        this.batches = fits.stream().map(Batches::of).toList();
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
            boolean seen = bent.slope(ScoreDesign.SQUARE).known()
                    && (POLICY == 1
                            || bent.slope(ScoreDesign.SQUARE).chance()
                                    < (POLICY == 2 ? 0.2 : VerdictRules.CHANCE_OF_BEND / materials.size()));
            FittedScores fit = seen ? bent : FittedScores.of(material, ModelForm.STANDARD);
            fits.add(fit);
            curves.add(FittedCurve.of(fit, TriedRange.of(fit.design()), level));
            degrees = Math.min(degrees, Math.max(1, fit.slope().degreesOfFreedom()));
        }
        TriedRange range = TriedRange.of(fits.get(0).design());
        return new JointCourses(fits, curves, range, root(correlations(fits)), degrees);
    }

    private static double[][] correlations(List<FittedScores> fits) {
        List<Map<String, Double>> rests =
                fits.stream().map(fit -> Batches.of(fit).byName()).toList();
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

    /** Holds where the batches of one attribute lie along the feature, and how far from the course. */
    private record Batches(Material material, double[] own, double[] rests, double meanSquare) {
        static Batches of(FittedScores fit) {
            double[] scores = fit.adjustedBatchScores();
            double[] own = fit.design().centered();
            double[] rests = new double[own.length];
            double squares = 0;
            for (int i = 0; i < own.length; i++) {
                double x = own[i];
                squares += x * x / own.length;
                rests[i] = scores[i]
                        - fit.intercept()
                        - fit.coefficient(ScoreDesign.FEATURE) * x
                        - fit.coefficient(ScoreDesign.SQUARE) * x * x;
            }
            return new Batches(fit.design().material(), own, rests, squares);
        }

        Map<String, Double> byName() {
            return material.batches().stream()
                    .collect(Collectors.toMap(TastedBatch::name, batch -> rests[batch.position()]));
        }
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

    /**
     * Holds the courses of one draw.
     *
     * @param level by attribute: the score at the mean of the batches
     * @param line by attribute: points per unit of the feature
     * @param square by attribute: points per squared unit
     * @param welcome by attribute: the 10th and the 90th percentile of the batches' scores in this draw
     */
    record Drawn(List<Double> level, List<Double> line, List<Double> square, List<Interval> welcome) {}

    /** Returns the score of an attribute at a place in one draw. */
    double at(Drawn drawn, int attribute, double place) {
        return score(
                attribute,
                place - range.center(),
                drawn.level().get(attribute),
                drawn.line().get(attribute),
                drawn.square().get(attribute));
    }

    private double score(int attribute, double x, double level, double line, double square) {
        return level + line * x + square * (x * x - meanSquare(attribute));
    }

    private double meanSquare(int attribute) {
        return batches.get(attribute).meanSquare();
    }

    /** Draws the courses of all attributes together. */
    Drawn draw(SplittableRandom random) {
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
        List<Double> levels = new ArrayList<>();
        List<Double> lines = new ArrayList<>();
        List<Double> squares = new ArrayList<>();
        List<Interval> welcome = new ArrayList<>();
        for (int a = 0; a < count; a++) {
            FittedScores fit = fits.get(a);
            double lineError = fit.slope().standardError();
            double squareError = 0;
            double shared = 0;
            if (fit.slope(ScoreDesign.SQUARE).known()) {
                double own = fit.slope(ScoreDesign.SQUARE).standardError();
                shared = fit.covariance(ScoreDesign.FEATURE, ScoreDesign.SQUARE) / lineError;
                squareError = Math.sqrt(Math.max(0, own * own - shared * shared));
            }
            double square =
                    fit.coefficient(ScoreDesign.SQUARE) + heavy * (shared * moves[1][a] + squareError * moves[2][a]);
            double line = fit.coefficient(ScoreDesign.FEATURE) + heavy * lineError * moves[1][a];
            double level = level(a) + heavy * levelError(fit) * moves[0][a];
            levels.add(level);
            lines.add(line);
            squares.add(square);
            Material material = fit.design().material();
            double free = Math.max(1, material.batches().size() - material.roastDays());
            welcome.add(middle(a, level, line, square, spreadOfVariance(free, random)));
        }
        return new Drawn(levels, lines, squares, welcome);
    }

    /** Returns the score of an attribute at the mean of the batches. */
    private double level(int attribute) {
        FittedScores fit = fits.get(attribute);
        return fit.intercept() + fit.coefficient(ScoreDesign.SQUARE) * meanSquare(attribute);
    }

    /** Returns the error of the level: that of the mean of the batches, and of the mean of the days on which they were roasted. */
    private static double levelError(FittedScores fit) {
        Material material = fit.design().material();
        double batches = material.batches().size();
        double day = fit.spread("roast day");
        double days = material.batches().stream()
                .collect(Collectors.groupingBy(TastedBatch::day, Collectors.counting()))
                .values()
                .stream()
                .mapToDouble(number -> number * number / (batches * batches))
                .sum();
        return Math.sqrt(fit.batchVariance() / batches + day * day * days);
    }

    /**
     * Returns the middle 80 % of the batches' scores of an attribute if they are normal, with lots, days and cuppers taken out: their mean
     * give or take 1.28 standard deviations, of the course at the batches and of the batches around it.
     */
    Interval welcome(int attribute) {
        FittedScores fit = fits.get(attribute);
        return middle(
                attribute,
                level(attribute),
                fit.coefficient(ScoreDesign.FEATURE),
                fit.coefficient(ScoreDesign.SQUARE),
                1);
    }

    private Interval middle(int attribute, double level, double line, double square, double moreVariance) {
        Batches known = batches.get(attribute);
        double variance = 0;
        for (int i = 0; i < known.own().length; i++) {
            double course = score(attribute, known.own()[i], 0, line, square);
            variance += course * course / known.own().length;
        }
        variance += moreVariance * fits.get(attribute).batchVariance();
        double half = Math.max(1e-6, MIDDLE * Math.sqrt(variance));
        return new Interval(level - half, level + half, 0.8);
    }

    /** Returns degrees / chi-squared: by how much an estimated variance may be too small (Wilson and Hilferty 1931). */
    private static double spreadOfVariance(double degrees, SplittableRandom random) {
        double part = 2 / (9 * degrees);
        double root = 1 - part + random.nextGaussian() * Math.sqrt(part);
        return 1 / Math.pow(Math.max(0.1, root), 3);
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
