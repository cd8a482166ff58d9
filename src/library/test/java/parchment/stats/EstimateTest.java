package parchment.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EstimateTest {

    /** Half a point, margin 3, error 1: t of 2.5 with 10 degrees of freedom; R 4.2.2's pt(-2.5, 10). */
    @Test
    @Tag("agrees-with")
    void equivalenceIsTheWorseOfTwoOneSidedTests() {
        assertEquals(0.0157234221183044, new Estimate("difference", -0.5, 1, 10).equivalenceProbability(3), 1e-12);
        assertEquals(1 - 0.0157234221183044, new Estimate("difference", 5.5, 1, 10).equivalenceProbability(3), 1e-12);
    }

    @ParameterizedTest
    @Tag("holds-for-any")
    @ValueSource(doubles = {-1.4, -0.6, 0, 0.2, 0.74, 0.9, 2})
    void equivalenceAtFivePercentIsANinetyPercentIntervalInsideTheMargin(double value) {
        Estimate estimate = new Estimate("difference", value, 0.4, 17);
        Interval interval = estimate.interval(0.90);
        boolean inside = interval.lower() > -1.5 && interval.upper() < 1.5;
        assertEquals(inside, estimate.equivalenceProbability(1.5) < 0.05);
    }

    @Test
    @Tag("says")
    void saysWhenNothingCouldMatter() {
        assertEquals(
                "The smallest difference that matters must be a number above 0, but it is 0.",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> new Estimate("difference", 0, 1, 10).equivalenceProbability(0))
                        .getMessage());
    }

    @Test
    void printsInOneSentenceWithAndWithoutDegreesOfFreedom() {
        assertEquals(
                "slope 0.5000, standard error 0.100 with 12.0 degrees of freedom",
                new Estimate("slope", 0.5, 0.1, 12).toString());
        assertEquals(
                "slope 0.5000, standard error 0.100",
                new Estimate("slope", 0.5, 0.1, Double.POSITIVE_INFINITY).toString());
    }
}
