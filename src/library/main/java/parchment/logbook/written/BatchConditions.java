package parchment.logbook.written;

import java.util.Optional;
import java.util.OptionalDouble;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;

/**
 * What was weighed and read before and after a roast.
 *
 * @param greenMass the mass charged
 * @param roastedMass the mass after cooling and before sorting; empty after a water quench
 * @param chargeTemperature the bean-probe reading just before charge, as written
 * @param greenTemperature the temperature of the green coffee
 * @param roomTemperature the temperature of the room
 * @param roomHumidity the relative humidity of the room, a share from 0 to 1
 * @param roomPressure the air pressure in hectopascals
 * @param warmUp how long the machine was warmed before the first batch
 */
public record BatchConditions(
        Optional<Mass> greenMass,
        Optional<Mass> roastedMass,
        Optional<Temperature> chargeTemperature,
        Optional<Temperature> greenTemperature,
        Optional<Temperature> roomTemperature,
        OptionalDouble roomHumidity,
        OptionalDouble roomPressure,
        Optional<Elapsed> warmUp) {

    /** Holds nothing: none of it was written. */
    public static final BatchConditions NOT_WRITTEN = new BatchConditions(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty());

    /** Returns the same with another mass charged. */
    public BatchConditions withGreenMass(Mass mass) {
        return withMasses(Optional.of(mass), roastedMass);
    }

    /** Returns the same with another mass after cooling. */
    public BatchConditions withRoastedMass(Mass mass) {
        return withMasses(greenMass, Optional.of(mass));
    }

    public BatchConditions withMasses(Optional<Mass> green, Optional<Mass> roasted) {
        return new BatchConditions(
                green,
                roasted,
                chargeTemperature,
                greenTemperature,
                roomTemperature,
                roomHumidity,
                roomPressure,
                warmUp);
    }

    /** Returns the mass loss, 1 - roasted mass / green mass, as a share; empty if either mass is missing or green mass is 0. */
    public OptionalDouble massLoss() {
        if (greenMass.isEmpty() || roastedMass.isEmpty() || greenMass.get().kilograms() == 0) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                1 - roastedMass.get().kilograms() / greenMass.get().kilograms());
    }
}
