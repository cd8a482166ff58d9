package parchment.learning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parchment.display.Progress;
import parchment.stats.resample.GroupedFolds;

/**
 * Compares four ways of foretelling a score by how far they missed on roast days that were left out.
 *
 * @param rows batches that were foretold
 * @param days roast days they are of
 * @param ofLots root mean square miss of the lot's plain mean, in points
 * @param smooth that of a line and a bend in each feature, drawn towards those of few features as far as served best on the other days
 * @param trees that of trees alone
 * @param both that of lines and bends drawn towards the trees, those on what they left added, as far as served best on the other days
 * @param gain share of the mean square miss of the lines and bends that the trees took away so; below 0 where they added to it
 * @param standardError of the gain, from the differences between roast days
 */
record HeldOutDays(
        int rows,
        int days,
        double ofLots,
        double smooth,
        double trees,
        double both,
        double gain,
        double standardError) {
    private static final int PARTS = 8;
    /** Two-sided 90 %. */
    private static final double NINETY = 1.645;

    /** Leaves out roast days in eight parts and foretells them in all four ways; lots empty where not known. */
    static HeldOutDays of(List<double[]> rows, double[] response, List<String> lots, List<String> days, long seed) {
        GroupedFolds folds = GroupedFolds.of(days, PARTS, seed);
        SmoothCourses courses = SmoothCourses.of(rows, response, lots);
        double[][] misses = new double[4][response.length];
        double[] towardsFew = new double[response.length];
        double[] onWhatIsLeft = new double[response.length];
        int[] part = new int[response.length];
        int number = 0;
        try (Progress progress = Progress.of(folds.folds().size(), "foretelling roast days left out")) {
            for (GroupedFolds.Fold fold : folds.folds()) {
                int[] learnt = fold.train();
                int[] tested = fold.test();
                double[] smooth = courses.foretell(learnt);
                double[][] seen = pick(rows, learnt);
                double[][] unseen = pick(rows, tested);
                double[] lotMeans = lotMeans(response, lots, learnt);
                double[] alone = BoostedTrees.fit(seen, less(response, lotMeans, learnt), seed)
                        .predict(unseen);
                double[] rest = BoostedTrees.fit(seen, less(response, smooth, learnt), seed)
                        .predict(unseen);
                double[] few = BoostedCourses.fit(seen, less(response, lotMeans, learnt))
                        .predict(unseen);
                for (int i = 0; i < tested.length; i++) {
                    int row = tested[i];
                    misses[0][row] = response[row] - lotMeans[row];
                    misses[1][row] = response[row] - smooth[row];
                    misses[2][row] = response[row] - lotMeans[row] - alone[i];
                    towardsFew[row] = misses[1][row] - (misses[0][row] - few[i]);
                    onWhatIsLeft[row] = rest[i];
                    part[row] = number;
                }
                number++;
                progress.step();
            }
        }
        // The lines and bends of all features are drawn towards those of few, then both towards trees, and trees on
        // what they left are added.
        misses[1] = drawn(misses[1], towardsFew, part, number);
        double[] towardsTrees = new double[response.length];
        Arrays.setAll(towardsTrees, row -> misses[1][row] - misses[2][row]);
        misses[3] = drawn(drawn(misses[1], towardsTrees, part, number), onWhatIsLeft, part, number);
        return summed(misses, days);
    }

    /**
     * Draws one way of foretelling towards another, on each part that was left out from 0 to 1 of the way: as far as served best on the other
     * parts, none of which either had seen (stacked regressions, Breiman 1996).
     */
    private static double[] drawn(double[] misses, double[] found, int[] part, int parts) {
        double[] along = new double[parts];
        double[] size = new double[parts];
        for (int row = 0; row < misses.length; row++) {
            along[part[row]] += misses[row] * found[row];
            size[part[row]] += found[row] * found[row];
        }
        double allAlong = Arrays.stream(along).sum();
        double allSize = Arrays.stream(size).sum();
        double[] weights = new double[parts];
        Arrays.setAll(weights, k -> {
            double others = allSize - size[k];
            return others > 0 ? Math.max(0, Math.min(1, (allAlong - along[k]) / others)) : 0;
        });
        double[] out = new double[misses.length];
        Arrays.setAll(out, row -> misses[row] - weights[part[row]] * found[row]);
        return out;
    }

    static double[][] pick(List<double[]> rows, int[] at) {
        return Arrays.stream(at).mapToObj(rows::get).toArray(double[][]::new);
    }

    static double[] less(double[] response, double[] foretold, int[] at) {
        return Arrays.stream(at).mapToDouble(i -> response[i] - foretold[i]).toArray();
    }

    /** The mean of each row's lot among the rows to learn from, drawn a little towards the mean of all; of an unseen lot that mean. */
    private static double[] lotMeans(double[] response, List<String> lots, int[] learnt) {
        double mean =
                Arrays.stream(learnt).mapToDouble(i -> response[i]).average().orElse(0);
        Map<String, double[]> sums = new TreeMap<>();
        for (int i : learnt) {
            double[] sum = sums.computeIfAbsent(lots.get(i), lot -> new double[] {mean, 1});
            sum[0] += response[i];
            sum[1]++;
        }
        double[] out = new double[response.length];
        Arrays.setAll(out, i -> {
            double[] sum = sums.getOrDefault(lots.get(i), new double[] {mean, 1});
            return sum[0] / sum[1];
        });
        return out;
    }

    private static HeldOutDays summed(double[][] misses, List<String> days) {
        Map<String, double[]> byDay = new TreeMap<>();
        double[] total = new double[4];
        for (int row = 0; row < days.size(); row++) {
            double[] day = byDay.computeIfAbsent(days.get(row), key -> new double[4]);
            for (int way = 0; way < 4; way++) {
                double square = misses[way][row] * misses[way][row];
                day[way] += square;
                total[way] += square;
            }
        }
        double gain = 1 - total[3] / total[1];
        double sum = 0;
        for (double[] day : byDay.values()) {
            double off = day[1] - day[3] - gain * day[1];
            sum += off * off;
        }
        int count = byDay.size();
        double error = Math.sqrt(sum * count / (count - 1.0)) / total[1];
        List<Double> roots = new ArrayList<>();
        Arrays.stream(total).forEach(squares -> roots.add(Math.sqrt(squares / days.size())));
        return new HeldOutDays(days.size(), count, roots.get(0), roots.get(1), roots.get(2), roots.get(3), gain, error);
    }

    /** Returns the lower end of the 90 % interval of the gain. */
    double low() {
        return gain - NINETY * standardError;
    }

    /** Returns the upper end of the 90 % interval of the gain. */
    double high() {
        return gain + NINETY * standardError;
    }
}
