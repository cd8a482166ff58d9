package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class DesirabilityTest {
    /**
     * The tyre tread compound of Derringer and Suich 1980, Journal of Quality Technology 12:214, table 3: four properties at the optimum,
     * their desirabilities 0.189, 1.000, 0.656, 0.932 and the composite 0.583. All values from memory.
     */
    @Test
    @Tag("agrees-with")
    void agreesWithThePublishedTyreTreadCompound() {
        double abrasion = Desirability.larger(120, 170).of(129.5);
        double modulus = Desirability.larger(1000, 1300).of(1300);
        double elongation = Desirability.target(400, 500, 600).of(465.7);
        double hardness = Desirability.target(60, 67.5, 75).of(68);
        assertEquals(0.189, abrasion, 0.0015);
        assertEquals(1.000, modulus, 1e-12);
        assertEquals(0.656, elongation, 0.0015);
        assertEquals(0.932, hardness, 0.0015);
        assertEquals(0.583, Desirability.overall(List.of(abrasion, modulus, elongation, hardness)), 0.0015);
    }

    @Test
    @Tag("holds-for-any")
    void oneThatIsNotWelcomeSpoilsTheWhole() {
        assertEquals(0, Desirability.overall(List.of(1.0, 0.0, 1.0)));
        assertEquals(0, Desirability.larger(5, 7).of(4.9));
        assertEquals(1, Desirability.larger(5, 7).of(9));
        assertEquals(0.25, Desirability.smaller(2, 4).of(3.5), 1e-12);
        assertEquals(0.0625, Desirability.smaller(2, 4).withWeight(2).of(3.5), 1e-12);
        assertTrue(Double.isNaN(Desirability.larger(5, 7).of(Double.NaN)));
    }

    @Test
    @Tag("says")
    void saysWhatItNeeds() {
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Desirability.larger(7, 5))
                .getMessage()
                .contains("scores that rise"));
        assertEquals(
                "the more the better, from 5.00 (not welcome) to 7.00 (fully)",
                Desirability.larger(5, 7).toString());
    }
}
