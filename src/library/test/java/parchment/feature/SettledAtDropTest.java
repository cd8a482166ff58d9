package parchment.feature;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.feature.kind.Role;

/** Holds which features are settled at the drop: all of them come of the roast, none is set or given. */
class SettledAtDropTest {
    @Test
    void aDropTimeLossAndColoursBelongTogetherAndNothingElseDoes() {
        assertEquals(
                List.of(
                        "browning share",
                        "development ratio",
                        "development time",
                        "drop temperature",
                        "drop time",
                        "drying share",
                        "early phases against development",
                        "ground colour",
                        "mass loss",
                        "whole-bean colour"),
                Features.all().list().stream()
                        .map(Feature::name)
                        .filter(SettledAtDrop::holds)
                        .sorted()
                        .toList());
        Features.all().list().stream()
                .filter(feature -> SettledAtDrop.holds(feature.name()))
                .forEach(feature -> assertEquals(Role.FOLLOWS, feature.role(), feature.name()));
    }
}
