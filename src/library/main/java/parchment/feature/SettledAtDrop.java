package parchment.feature;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Names the features that are settled at the moment of the drop, so that one cannot be moved without the others moving along by their
 * nature: who drops hotter by roasting on develops longer, for a larger share of the roast, ends later, loses more mass and comes out
 * darker.
 *
 * <p>They are parts of one another, not something else that may be behind a score. Rates, air and controls near the drop are not among them: they can be
 * another at the same drop.
 */
final class SettledAtDrop {
    private static final Set<String> NAMES = Stream.of(
                    TemperatureFeatures.DROP_TEMPERATURE,
                    TimeFeatures.DROP_TIME,
                    TimeFeatures.DEVELOPMENT_TIME,
                    TimeFeatures.DEVELOPMENT_RATIO,
                    TimeFeatures.DRYING_SHARE,
                    TimeFeatures.BROWNING_SHARE,
                    TimeFeatures.EARLY_AGAINST_DEVELOPMENT,
                    ConditionFeatures.MASS_LOSS,
                    ConditionFeatures.WHOLE_BEAN_COLOUR,
                    ConditionFeatures.GROUND_COLOUR)
            .map(Feature::name)
            .collect(Collectors.toUnmodifiableSet());

    private SettledAtDrop() {}

    static boolean holds(String feature) {
        return NAMES.contains(feature);
    }
}
