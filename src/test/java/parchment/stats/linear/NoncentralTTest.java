package parchment.stats.linear;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.stats.ReferenceData;

class NoncentralTTest {
    /** R 4.2.2, pt(t, df, ncp). */
    @ParameterizedTest
    @CsvSource({
        "1.5, 10, 1, 0.669516848215277",
        "-0.7, 3, 2.2, 0.00293930994854541",
        "2.2, 47, 3.5, 0.100413098312478",
        "0, 5, -1, 0.841344746068543",
        "30, 8, 25, 0.695466162732754",
        "2, 200, -3, 0.999999670250462"
    })
    @Tag("agrees-with")
    void agreesWithR(double t, double df, double ncp, double p) {
        assertEquals(p, NoncentralT.cumulative(t, df, ncp), 1e-10);
    }

    @Test
    @Tag("holds-for-any")
    void withoutAnEffectItIsThePlainT() {
        for (double df : new double[] {1, 4.5, 30}) {
            assertEquals(0.05, NoncentralT.power(0, df, 0.05), 1e-10);
            assertEquals(
                    1 - Quantiles.tProbability(1.3, df) / 2, NoncentralT.cumulative(1.3, df, 0), 1e-10, "df " + df);
        }
    }

    @Test
    @Tag("holds-for-any")
    void theSignOfTheEffectDoesNotMatterForPower() {
        assertEquals(NoncentralT.power(2.5, 11, 0.05), NoncentralT.power(-2.5, 11, 0.05), 1e-12);
        assertEquals(1, NoncentralT.power(60, 11, 0.05), 0);
        assertTrue(NoncentralT.power(2.5, 11, 0.0294) < NoncentralT.power(2.5, 11, 0.05));
    }

    /** Every cell of the table: variance, slope and sum of squares as its inputs say; targets 1.5 apart, two cups. */
    @Test
    @Tag("agrees-with")
    void agreesWithThePowerOfTrialsInSets() {
        JsonObject expected =
                ReferenceData.expected("coin-flip", "coin_flip_power_formula").getAsJsonObject("expected");
        int cells = 0;
        for (String key : expected.keySet()) {
            String[] words = key.split(" ");
            int cuppers = Integer.parseInt(words[1]);
            double slope = fraction(words[2]);
            if (words[0].equals("power")) {
                int sets = Integer.parseInt(words[3]);
                int size = Integer.parseInt(words[4]);
                assertEquals(expected.get(key).getAsDouble(), power(cuppers, slope, sets, size), 1e-6, key);
            } else {
                int sets = 2;
                while (power(cuppers, slope, sets, 3) < 0.8) {
                    sets++;
                }
                assertEquals(expected.get(key).getAsInt(), 3 * sets, key);
            }
            cells++;
        }
        assertEquals(44, cells);
    }

    @Test
    @Tag("agrees-with")
    void agreesWithTheSizesByTheSpreadInsideSets() {
        JsonObject expected =
                ReferenceData.expected("coin-flip", "coin_flip_size_by_sd").getAsJsonObject("expected");
        for (String sd : expected.keySet()) {
            double[] wanted = ReferenceData.numbers(expected.get(sd));
            double[] slopes = {1.0 / 6, 1.0 / 3, 0.1};
            for (int i = 0; i < slopes.length; i++) {
                int sets = 2;
                while (NoncentralT.power(slopes[i] * Math.sqrt(sets * 4.5) / Double.parseDouble(sd), 2 * sets - 1, 0.05)
                        < 0.8) {
                    sets++;
                }
                assertEquals(wanted[i], 3 * sets, sd + " at " + slopes[i]);
            }
        }
    }

    private static double fraction(String words) {
        return Map.of("0.167", 1.0 / 6, "0.333", 1.0 / 3).getOrDefault(words, Double.parseDouble(words));
    }

    private static double power(int cuppers, double slope, int sets, int size) {
        double d = 1.5;
        double variance = 0.04 + 0.04 + 0.25 * slope * slope + 0.0625 / 2 + 0.3725 / (2 * cuppers);
        double squares = sets * (size == 3 ? 2 : 2.5) * d * d;
        return NoncentralT.power(slope * Math.sqrt(squares / variance), sets * size - sets - 1, 0.05);
    }
}
