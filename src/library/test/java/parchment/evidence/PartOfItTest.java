package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Holds what belongs to a hotter drop by its nature, and what may be behind the scores in its place. */
class PartOfItTest {
    private static PartOfIt of(String feature, Object... named) {
        List<CollinearFeatures.Companion> companions = new ArrayList<>();
        for (int i = 0; i < named.length; i += 2) {
            companions.add(new CollinearFeatures.Companion((String) named[i], (Double) named[i + 1], 5, 20, ""));
        }
        return new PartOfIt(new Measure(feature, Unit.NONE, TemperatureUnit.CELSIUS, Map.of()), companions);
    }

    @Test
    void whatTheDropSettlesIsPartOfAHotterDrop() {
        PartOfIt both = of("drop temperature", "mass loss", 0.9, "development time", 0.8);
        assertEquals(
                "A higher drop temperature also means a higher mass loss and a longer development time: scores cannot tell the three apart.",
                both.words());
        assertEquals(List.of(), both.others());
        assertEquals(
                "A higher drop temperature also means a lower ground colour: scores cannot tell the two apart.",
                of("drop temperature", "ground colour", -0.9).words());
        assertEquals(
                "A longer development time also means a higher drop temperature and a shorter drop time: scores cannot tell the three apart.",
                of("development time", "drop temperature", 0.9, "drop time", -0.8)
                        .words());
    }

    @Test
    void whatSomebodySetOrTheDayBroughtIsTheWarning() {
        PartOfIt mixed = of(
                "drop temperature", "gas in drying", 0.95, "mass loss", 0.9, "date", 0.8, "charge temperature", 0.75);
        assertEquals(List.of("the gas during drying", "date"), mixed.others());
        assertEquals(
                "A higher drop temperature also means a higher mass loss: scores cannot tell the two apart.",
                mixed.words());
        assertEquals("", of("drop temperature", "gas in drying", 0.9).words());
    }

    /** The gas of the drying phase is not settled at the drop, so nothing is part of it. */
    @Test
    void whatIsNotSettledAtTheDropHasNoParts() {
        PartOfIt gas = of("gas in drying", "mass loss", 0.9);
        assertEquals("", gas.words());
        assertEquals(List.of("mass loss"), gas.others());
    }

    @Test
    void aCompanionThatMovesAlongByArithmeticIsNotNamed() {
        PartOfIt tied = new PartOfIt(
                new Measure("drop temperature", Unit.NONE, TemperatureUnit.CELSIUS, Map.of()),
                List.of(
                        new CollinearFeatures.Companion("development ratio", 0.99, 50, 20, "finish"),
                        new CollinearFeatures.Companion("gas in drying", 0.9, 5, 20, "finish"),
                        new CollinearFeatures.Companion("airflow in drying", 0.8, 3, 20, ""),
                        new CollinearFeatures.Companion("green mass", 0.75, 2, 20, ""),
                        new CollinearFeatures.Companion("room temperature", 0.72, 2, 20, "")));
        assertEquals(List.of("the airflow during drying", "green mass"), tied.others());
        assertEquals("", tied.words());
    }
}
