package parchment.stats.resample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class FisherExactTestTest {
    private static double p(List<Integer> first, List<Integer> second) {
        return FisherExactTest.of(first, second).probability();
    }

    /** The lady tasting tea (Fisher 1935) and the convictions of twins (Fisher 1962), as in the help page of R's fisher.test. */
    @Test
    @Tag("agrees-with")
    void agreesWithFishersOwnTables() {
        assertEquals(0.485714285714286, p(List.of(3, 1), List.of(1, 3)), 1e-12);
        assertEquals(0.000536724119143436, p(List.of(2, 10), List.of(15, 3)), 1e-12);
    }

    /** R 4.2.2, fisher.test(rbind(...)). */
    @Test
    @Tag("agrees-with")
    void agreesWithRForMoreGroups() {
        assertEquals(0.00413296198200716, p(List.of(1, 4, 9), List.of(11, 8, 3)), 1e-12);
        assertEquals(0.0022468219432964, p(List.of(0, 0, 2, 6), List.of(12, 12, 10, 6)), 1e-12);
    }

    @Test
    @Tag("holds-for-any")
    void neitherTheOrderOfGroupsNorThatOfKindsMatters() {
        double found = p(List.of(1, 4, 9), List.of(11, 8, 3));
        assertEquals(found, p(List.of(9, 1, 4), List.of(3, 11, 8)), 1e-12);
        assertEquals(found, p(List.of(11, 8, 3), List.of(1, 4, 9)), 1e-12);
    }

    @Test
    @Tag("holds-for-any")
    void countsThatCouldNotFallOtherwiseSayNothing() {
        assertEquals(1, p(List.of(0, 0, 0), List.of(4, 4, 4)), 1e-12);
        assertEquals(1, p(List.of(2, 0), List.of(3, 0)), 1e-12);
        assertEquals(1, p(List.of(1, 1, 1), List.of(11, 11, 11)), 1e-12);
    }

    @Test
    @Tag("says")
    void saysWhatItNeeds() {
        assertEquals(
                "Fisher's exact test needs two rows of counts, 0 or more, for two groups or more, but it was given [1] and [2].",
                assertThrows(IllegalArgumentException.class, () -> FisherExactTest.of(List.of(1), List.of(2)))
                        .getMessage());
        assertThrows(IllegalArgumentException.class, () -> FisherExactTest.of(List.of(1, -1), List.of(2, 2)));
        assertThrows(IllegalArgumentException.class, () -> FisherExactTest.of(List.of(1, 1), List.of(2, 2, 2)));
        assertEquals(
                "[3, 1] against [1, 3]: p 0.486 by Fisher's exact test",
                FisherExactTest.of(List.of(3, 1), List.of(1, 3)).toString());
    }
}
