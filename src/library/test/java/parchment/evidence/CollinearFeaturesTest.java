package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Wording;
import parchment.feature.kind.Role;

/** Holds which companions are listed and named, and the numbers beside them. */
class CollinearFeaturesTest {
    private static CollinearFeatures with(double correlation) {
        return CollinearFeatures.of(
                "drop temperature",
                List.of(new CollinearFeatures.Companion(
                        "gas", correlation, 1 / (1 - correlation * correlation), 80, "")),
                3);
    }

    @Test
    void aFeatureIsNamedFromACorrelationOfSevenTenthsOnEitherWay() {
        assertEquals(
                "In this logbook the drop temperature cannot well be told apart from gas (correlation 0.70).",
                with(0.70).toString());
        assertEquals(
                "In this logbook the drop temperature cannot well be told apart from gas (correlation -0.70).",
                with(-0.70).toString());
        assertEquals(
                "None of 3 other features moved so closely with the drop temperature that the two could not be told apart"
                        + " (correlation 0.7 or more).",
                with(0.69).toString());
        assertEquals(
                "No other feature could be compared with the drop temperature.",
                CollinearFeatures.of("drop temperature", List.of(), 0).toString());
    }

    @Test
    void anInflationWithoutEndIsNotPrintedAsANumber() {
        assertEquals("10.0", Wording.inflation(10));
        assertEquals("1000.0", Wording.inflation(1000));
        assertEquals("over 1000", Wording.inflation(1000.1));
        assertEquals("over 1000", Wording.inflation(Double.POSITIVE_INFINITY));
    }

    @Test
    void correlationInflationAndCountAreThoseOfTheBatchesWithBoth() {
        KnownTruth.Drawn drawn = new KnownTruth().draw(1);
        ModelFrame material = KnownTruth.material(drawn);
        Map<String, Double> twin = new LinkedHashMap<>();
        Map<String, Double> few = new LinkedHashMap<>();
        Map<String, Double> enough = new LinkedHashMap<>();
        material.batches().forEach(batch -> {
            twin.put(batch.name(), -2 * batch.measure());
            if (few.size() < 7) {
                few.put(batch.name(), batch.measure());
            }
            if (enough.size() < 8) {
                enough.put(batch.name(), batch.measure());
            }
        });
        CollinearFeatures moved = CollinearFeatures.of(
                "drop temperature",
                material,
                List.of(
                        new CollinearFeatures.Other("few", few, "", Role.FOLLOWS),
                        new CollinearFeatures.Other("enough", enough, "", Role.FOLLOWS),
                        new CollinearFeatures.Other("twin", twin, "finish", Role.FOLLOWS)));
        Map<String, CollinearFeatures.Companion> found = new LinkedHashMap<>();
        moved.companions().forEach(companion -> found.put(companion.name(), companion));
        assertEquals(java.util.Set.of("enough", "twin"), found.keySet());
        assertEquals(-1, found.get("twin").correlation(), 1e-9);
        assertEquals(Double.POSITIVE_INFINITY, found.get("twin").inflation());
        assertEquals(80, found.get("twin").batches());
        assertEquals("finish", found.get("twin").tie());
        assertEquals(8, found.get("enough").batches());
    }

    @Test
    void thoseFromThreeTenthsOnAreListedTheClosestFirstAndTheTableSaysHowClosely() {
        CollinearFeatures moved = CollinearFeatures.of(
                "drop temperature",
                KnownTruth.material(new KnownTruth().draw(1)),
                List.of(
                        CollinearityTest.other("loose", 0.29, Role.FOLLOWS),
                        CollinearityTest.other("listed", 0.31, Role.FOLLOWS),
                        CollinearityTest.other("close", -0.9, Role.FOLLOWS)));
        assertEquals(
                List.of("close", "listed"),
                moved.companions().stream()
                        .map(CollinearFeatures.Companion::name)
                        .toList());
        assertEquals(-0.9, moved.companions().get(0).correlation(), 1e-9);
        assertEquals(1 / (1 - 0.81), moved.companions().get(0).inflation(), 1e-6);
        String table = moved.table().text();
        assertTrue(table.contains("Features that moved together with the drop temperature"), table);
        assertTrue(table.matches("(?s).*close +-0[.]90 +5[.]3 +80 +no.*"), table);
        assertTrue(table.contains("Of 3 other features compared"), table);
    }
}
