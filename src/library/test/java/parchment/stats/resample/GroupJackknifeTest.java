package parchment.stats.resample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.stats.Estimate;
import parchment.stats.linear.Correlation;

class GroupJackknifeTest {
    /** The 15 law schools of Efron 1982, from memory; jackknife standard error of the correlation 0.142 (table 3.1, from memory). */
    private static final double[] TEST = {576, 635, 558, 578, 666, 580, 555, 661, 651, 605, 653, 575, 545, 572, 594};

    private static final double[] GRADE = {
        3.39, 3.30, 2.81, 3.03, 3.44, 3.07, 3.00, 3.43, 3.36, 3.13, 3.12, 2.74, 2.76, 2.88, 2.96
    };

    private static double[] leftOut(int rows, ToDoubleFunction<int[]> statistic) {
        return IntStream.range(0, rows)
                .mapToDouble(out -> statistic.applyAsDouble(
                        IntStream.range(0, rows).filter(row -> row != out).toArray()))
                .toArray();
    }

    private static double[] pick(double[] values, int[] rows) {
        return IntStream.of(rows).mapToDouble(row -> values[row]).toArray();
    }

    @Test
    @Tag("agrees-with")
    void agreesWithThePublishedErrorOfACorrelation() {
        double whole = Correlation.pearson(TEST, GRADE);
        double[] out = leftOut(15, rows -> Correlation.pearson(pick(TEST, rows), pick(GRADE, rows)));
        Estimate found = GroupJackknife.estimate("correlation", whole, out);
        assertEquals(0.776, found.estimate(), 0.0005);
        assertEquals(0.142, found.standardError(), 0.001);
    }

    @Test
    @Tag("holds-for-any")
    void ofAMeanIsTheUsualStandardError() {
        double mean = IntStream.range(0, 15).mapToDouble(row -> TEST[row]).sum() / 15;
        double squares = IntStream.range(0, 15)
                .mapToDouble(row -> (TEST[row] - mean) * (TEST[row] - mean))
                .sum();
        double[] out = leftOut(
                15, rows -> IntStream.of(rows).mapToDouble(row -> TEST[row]).sum() / rows.length);
        Estimate found = GroupJackknife.estimate("mean", mean, out);
        assertEquals(Math.sqrt(squares / 14 / 15), found.standardError(), 1e-9);
        assertTrue(found.degreesOfFreedom() <= 14 && found.degreesOfFreedom() > 7, found.toString());
    }

    @Test
    @Tag("holds-for-any")
    void oneGroupThatCarriesAllLeavesNextToNoDegreesOfFreedom() {
        Estimate found = GroupJackknife.estimate("statistic", 1, new double[] {2, 1, 1, 1, 1, 1, 1, 1, 1, 1});
        assertTrue(found.degreesOfFreedom() < 2.5, found.toString());
        assertEquals(
                3,
                GroupJackknife.estimate("statistic", 0, new double[] {1, -1, 1, -1})
                        .degreesOfFreedom(),
                1e-12);
        assertEquals(
                0,
                GroupJackknife.estimate("statistic", 5, new double[] {5, 5, 5}).standardError(),
                0);
    }

    @Test
    @Tag("holds-for-any")
    void theOrderOfTheGroupsDoesNotMatter() {
        double[] out = {0.31, -0.12, 0.44, 0.27, 0.05};
        double[] other = {0.05, 0.44, 0.31, 0.27, -0.12};
        assertEquals(GroupJackknife.estimate("statistic", 0.2, out), GroupJackknife.estimate("statistic", 0.2, other));
    }

    @Test
    @Tag("says")
    void withoutTwoGroupsOrWithAMissingValueTheErrorIsMissing() {
        assertTrue(Double.isNaN(
                GroupJackknife.estimate("statistic", 1, new double[] {1}).standardError()));
        assertTrue(Double.isNaN(GroupJackknife.estimate("statistic", 1, new double[] {1, Double.NaN, 2})
                .standardError()));
        assertTrue(Double.isNaN(GroupJackknife.estimate("statistic", Double.POSITIVE_INFINITY, new double[] {1, 2})
                .standardError()));
    }
}
