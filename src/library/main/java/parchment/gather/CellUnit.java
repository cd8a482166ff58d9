package parchment.gather;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import parchment.quantity.MassUnit;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.Header;

/**
 * Converts a cell that carries another unit than its column.
 *
 * @param conversion from the cell's unit to the column's
 */
record CellUnit(DoubleUnaryOperator conversion) {
    private static final double PLACES = 1e6;

    /** Returns the conversion from one unit to another, as the logbook writes them; empty if they do not measure the same. */
    static Optional<CellUnit> between(String from, String to) {
        Optional<MassUnit> mass = Header.massUnit(from);
        Optional<MassUnit> wanted = Header.massUnit(to);
        if (mass.isPresent() && wanted.isPresent()) {
            return Optional.of(
                    new CellUnit(value -> wanted.get().fromKilograms(mass.get().toKilograms(value))));
        }
        Optional<TemperatureUnit> temperature = degrees(from);
        Optional<TemperatureUnit> scale = degrees(to);
        return temperature.isPresent() && scale.isPresent()
                ? Optional.of(new CellUnit(
                        value -> scale.get().fromCelsius(temperature.get().toCelsius(value))))
                : Optional.empty();
    }

    private static Optional<TemperatureUnit> degrees(String unit) {
        for (TemperatureUnit each : TemperatureUnit.values()) {
            if (each.symbol().equals(unit)) {
                return Optional.of(each);
            }
        }
        return Optional.empty();
    }

    /** Returns a value in the column's unit, to six decimals. */
    double of(double value) {
        return Math.rint(PLACES * conversion.applyAsDouble(value)) / PLACES;
    }
}
