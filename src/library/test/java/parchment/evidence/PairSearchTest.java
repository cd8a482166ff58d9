package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Feeds the search for pairs with sums that can be done by hand. */
@Tag("holds-for-any")
class PairSearchTest {
    private static final List<double[]> CORNERS =
            List.of(new double[] {0, 0}, new double[] {2, 0}, new double[] {0, 2}, new double[] {2, 2});

    /** One measure, known with variance 1; a pair 2 apart at a noise of 1 adds 4 / 2 = 2 to the information. */
    private static PairSearch one(double error) {
        return new PairSearch(
                new double[][] {{1}},
                List.of(new double[] {0}, new double[] {1}, new double[] {2}),
                List.of(new double[] {1}),
                new double[] {error},
                1);
    }

    @Test
    void takesThePairFurthestApartAsOftenAsNeeded() {
        // Information 1, 3, 5, 7: errors 1, 0.577, 0.447, 0.378.
        PairSearch.Chosen chosen = one(0.4).choose(30);
        assertEquals(PairSearch.Reached.ALL, chosen.enough());
        assertEquals(3, chosen.rounds());
        assertEquals(Map.of(List.of(0, 2), 3), chosen.pairs());
        assertEquals(2, one(0.45).choose(30).rounds());
        assertEquals(1 / 0.4, one(0.4).before(), 1e-12);
    }

    @Test
    void asManyAsAreAllowedIsStillEnough() {
        // The third of three allowed pairs reaches the aim: that is enough, not "more than allowed".
        assertEquals(PairSearch.Reached.ALL, one(0.4).choose(3).enough());
        assertEquals(PairSearch.Reached.NOT_ALL, one(0.4).choose(2).enough());
        assertEquals(2, one(0.4).choose(2).rounds());
    }

    @Test
    void nothingIsChosenWhereTheAimIsReachedOrNothingIsOffered() {
        PairSearch.Chosen reached = one(1).choose(30);
        assertEquals(0, reached.rounds());
        assertEquals(PairSearch.Reached.ALL, reached.enough());
        PairSearch empty = new PairSearch(
                new double[][] {{1}}, List.of(new double[] {1}), List.of(new double[] {1}), new double[] {0.5}, 1);
        assertEquals(0, empty.choose(30).rounds());
        assertEquals(PairSearch.Reached.NOT_ALL, empty.choose(30).enough());
    }

    @Test
    void moreNoiseNeedsMorePairs() {
        PairSearch noisy = new PairSearch(
                new double[][] {{1}},
                List.of(new double[] {0}, new double[] {2}),
                List.of(new double[] {1}),
                new double[] {0.4},
                2);
        // Information 1, 2, ... needs 6.25: six pairs at 1 each.
        assertEquals(6, noisy.choose(30).rounds());
    }

    @Test
    void looksForTheDirectionThatIsMissing() {
        // The two measures moved together: their sum is known well, their difference hardly.
        PairSearch search = new PairSearch(
                new double[][] {{100, 99.99}, {99.99, 100}},
                CORNERS,
                List.of(new double[] {1, 0}),
                new double[] {10},
                1);
        // The error 7.07 is small enough, but the variance inflation 5000 is not.
        assertEquals(Math.sqrt(search(search) / 10), search.before(), 1e-6);
        PairSearch.Chosen chosen = search.choose(30);
        assertEquals(PairSearch.Reached.ALL, chosen.enough());
        assertTrue(chosen.pairs().containsKey(List.of(1, 2)), chosen.toString());
        assertEquals(1, chosen.pairs().size());
        // M11 M22 / det: 1 / (1 - r^2) with r = (99.99 - 2 n) / (100 + 2 n); at most 10 needs r at most 0.9487: n = 2.
        assertEquals(2, chosen.rounds());
    }

    private static double search(PairSearch search) {
        double r = search.information()[0][1] / search.information()[0][0];
        return 1 / (1 - r * r);
    }

    @Test
    void whereThereIsNoInverseYetAPairStillHelps() {
        PairSearch search = new PairSearch(
                new double[][] {{1, 1}, {1, 1}},
                CORNERS,
                List.of(new double[] {1, 0}, new double[] {0, 1}),
                new double[] {0.9, 0.9},
                1);
        assertEquals(Double.MAX_VALUE, search.before());
        assertEquals(PairSearch.Reached.ALL, search.choose(30).enough());
    }
}
