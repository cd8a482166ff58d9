package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import parchment.stats.Interval;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Correlation;
import parchment.stats.linear.Vectors;

/**
 * Lets several attributes be weighed at one place: their courses along one feature, drawn jointly from what the scores leave open.
 *
 * <p>Each attribute has its own mixed model over the readings on today's probe, always with a bend if one can be fitted: a bend too small to
 * be seen can still move a best place. A draw moves level, line and bend of each by their estimated covariance, as a t distribution with
 * the fewest degrees of freedom of all. The moves of two attributes are correlated as their batches' residuals are: exact where the
 * attributes have the same batches and the same ratios of spreads, near enough otherwise. So a halo is in the draws. What is not known of
 * an earlier probe period's place moves all attributes at once.
 */
final class JointCourses {
    /** The 90th percentile of a standard normal distribution. */
    private static final double MIDDLE = 1.2816;

    private final List<FittedScores> fits;
    private final List<FittedScores> exact;
    private final List<FittedScores> lines;
    private final List<Batches> batches;
    private final List<FittedCurve> curves;
    private final TriedRange range;
    private final TodaysCourse.Places places;
    private final double[][] mixing;
    private final double degrees;

    private JointCourses(List<FittedScores> fits, List<FittedScores> lines, TodaysCourse.Places places, double level) {
        this.fits = fits;
        this.exact = fits.stream().map(FittedScores::withoutSharedErrors).toList();
        this.lines = lines;
        this.batches = fits.stream().map(Batches::of).toList();
        this.curves = fits.stream()
                .map(fit -> FittedCurve.of(fit, TriedRange.of(fit.design()), level))
                .toList();
        this.range = TriedRange.of(fits.get(0).design());
        this.places = places;
        this.mixing = root(correlations(batches));
        this.degrees = fits.stream()
                .mapToDouble(fit -> Math.max(1, fit.slope().degreesOfFreedom()))
                .min()
                .orElse(1);
    }

    /**
     * Fits the courses.
     *
     * @throws CannotFitException if there are too few scores of one of the attributes
     */
    static JointCourses of(List<ModelFrame> materials, double level) {
        List<TodaysCourse> courses = materials.stream()
                .map(material -> TodaysCourse.of(material, FittedScores.of(material, ModelForm.STANDARD)))
                .toList();
        TodaysCourse.Places places = courses.stream()
                .map(TodaysCourse::places)
                .filter(place -> place != TodaysCourse.Places.READINGS)
                .findFirst()
                .orElse(TodaysCourse.Places.READINGS);
        return new JointCourses(
                courses.stream()
                        .map(course -> course.bend().orElse(course.line()))
                        .toList(),
                courses.stream().map(TodaysCourse::line).toList(),
                places,
                level);
    }

    private static double[][] correlations(List<Batches> batches) {
        List<Map<String, Double>> rests = batches.stream().map(Batches::byName).toList();
        List<String> shared = rests.get(0).keySet().stream()
                .filter(batch -> rests.stream().allMatch(rest -> rest.containsKey(batch)))
                .sorted()
                .toList();
        double[][] correlations = new double[rests.size()][rests.size()];
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
    private record Batches(ModelFrame material, double[] own, double[] rests, double meanSquare) {
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

    /** Returns the model of an attribute with the feature as a line. */
    FittedScores line(int attribute) {
        return lines.get(attribute);
    }

    /** Says what the places are. */
    TodaysCourse.Places places() {
        return places;
    }

    private double center(int attribute) {
        return fits.get(attribute).design().center();
    }

    FittedCurve curve(int attribute) {
        return curves.get(attribute);
    }

    /** Returns the fitted score of an attribute at a place. */
    double at(int attribute, double place) {
        double x = place - center(attribute);
        FittedScores fit = fits.get(attribute);
        return fit.intercept() + fit.coefficient(ScoreDesign.FEATURE) * x + fit.coefficient(ScoreDesign.SQUARE) * x * x;
    }

    /**
     * Holds the courses of one draw.
     *
     * @param level by attribute: the score at the mean of the batches
     * @param line by attribute: points per unit of the feature
     * @param square by attribute: points per squared unit
     * @param welcome by attribute: the middle 80 % of the batches' scores in this draw
     */
    record Drawn(List<Double> level, List<Double> line, List<Double> square, List<Interval> welcome) {}

    /** Returns the score of an attribute at a place in one draw. */
    double at(Drawn drawn, int attribute, double place) {
        return score(
                attribute,
                place - center(attribute),
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
            moves[part] = Vectors.times(mixing, normal);
        }
        double heavy = heavyTail(random);
        // An attribute may lack the batches of a period, so periods go by name and never by place.
        Map<String, Double> periods = new TreeMap<>();
        fits.forEach(fit -> fit.sharedChanges().keySet().forEach(period -> periods.put(period, 0.0)));
        periods.replaceAll((period, none) -> random.nextGaussian());
        List<Double> levels = new ArrayList<>();
        List<Double> slopes = new ArrayList<>();
        List<Double> squares = new ArrayList<>();
        List<Interval> welcome = new ArrayList<>();
        for (int a = 0; a < count; a++) {
            FittedScores fit = exact.get(a);
            double lineError = fit.slope().standardError();
            double squareError = 0;
            double together = 0;
            if (fit.slope(ScoreDesign.SQUARE).known()) {
                double own = fit.slope(ScoreDesign.SQUARE).standardError();
                together = fit.covariance(ScoreDesign.FEATURE, ScoreDesign.SQUARE) / lineError;
                squareError = Math.sqrt(Math.max(0, own * own - together * together));
            }
            double movedSquare = moved(fits.get(a).sharedChanges(ScoreDesign.SQUARE), periods);
            double square = fit.coefficient(ScoreDesign.SQUARE)
                    + heavy * (together * moves[1][a] + squareError * moves[2][a])
                    + movedSquare;
            double slope = fit.coefficient(ScoreDesign.FEATURE)
                    + heavy * lineError * moves[1][a]
                    + moved(fits.get(a).sharedChanges(ScoreDesign.FEATURE), periods);
            double level = level(a)
                    + heavy * levelError(fit) * moves[0][a]
                    + moved(fits.get(a).sharedChanges(), periods)
                    + movedSquare * meanSquare(a);
            levels.add(level);
            slopes.add(slope);
            squares.add(square);
            ModelFrame material = fit.design().material();
            double free = Math.max(1, material.batches().size() - material.roastDays());
            welcome.add(middle(a, level, slope, square, spreadOfVariance(free, random)));
        }
        return new Drawn(levels, slopes, squares, welcome);
    }

    private static double moved(Map<String, Double> changes, Map<String, Double> periods) {
        return changes.entrySet().stream()
                .mapToDouble(change -> change.getValue() * periods.getOrDefault(change.getKey(), 0.0))
                .sum();
    }

    /** Returns the score of an attribute at the mean of the batches. */
    private double level(int attribute) {
        FittedScores fit = fits.get(attribute);
        return fit.intercept() + fit.coefficient(ScoreDesign.SQUARE) * meanSquare(attribute);
    }

    /** Returns the error of the level: that of the mean of the batches, and of the mean of the days on which they were roasted. */
    private static double levelError(FittedScores fit) {
        ModelFrame material = fit.design().material();
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
