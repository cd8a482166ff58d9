package parchment.stats;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class MultiplicityTest {
    /** Benjamini and Hochberg 1995, section 3.2: 15 p-values (from memory), 4 findings, 3 by Bonferroni, at 0.05. */
    private static final double[] PUBLISHED = {
        0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528, 0.759, 1
    };

    @Test
    @Tag("agrees-with")
    void findsWhatThePaperFinds() {
        assertEquals(4, findings(Multiplicity.benjaminiHochberg(PUBLISHED)));
        assertEquals(3, findings(Multiplicity.bonferroni(PUBLISHED)));
    }

    private static long findings(double[] adjusted) {
        return Arrays.stream(adjusted).filter(p -> p <= 0.05).count();
    }

    /** R 4.2.2's p.adjust. */
    @Test
    @Tag("agrees-with")
    void agreesWithR() {
        double[] p = {0.01, 0.013, 0.014, 0.19, 0.35, 0.5, 0.63, 0.67, 0.75, 0.81};
        double[] stepUp = {
            0.0466666666666667, 0.0466666666666667, 0.0466666666666667, 0.475, 0.7, 0.81, 0.81, 0.81, 0.81, 0.81
        };
        assertArrayEquals(stepUp, Multiplicity.benjaminiHochberg(p), 1e-14);
        assertArrayEquals(new double[] {0.1, 0.117, 0.117, 1, 1, 1, 1, 1, 1, 1}, Multiplicity.holm(p), 1e-14);
        assertArrayEquals(new double[] {0.1, 0.13, 0.14, 1, 1, 1, 1, 1, 1, 1}, Multiplicity.bonferroni(p), 1e-14);
    }

    @Test
    void missingOnesAreNoLooksAndTheOrderDoesNotMatter() {
        double[] p = {0.04, Double.NaN, 0.01};
        assertArrayEquals(new double[] {0.04, Double.NaN, 0.02}, Multiplicity.holm(p));
        assertArrayEquals(new double[] {0.04, Double.NaN, 0.02}, Multiplicity.benjaminiHochberg(p));
    }

    @Test
    @Tag("says")
    void saysWhatIsNoProbability() {
        assertEquals(
                "A p-value must lie between 0 and 1, but one is 1.200.",
                assertThrows(IllegalArgumentException.class, () -> Multiplicity.holm(new double[] {1.2}))
                        .getMessage());
    }
}
