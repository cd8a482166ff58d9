package parchment.quantity;

import java.util.Locale;

/**
 * One temperature, whatever scale it was written on.
 *
 * @param celsius the temperature in degrees Celsius; finite
 */
public record Temperature(double celsius) implements Comparable<Temperature> {

    /** @throws IllegalArgumentException if the number is missing, infinite or below absolute zero */
    public Temperature {
        if (!(celsius >= -273.15) || Double.isInfinite(celsius)) {
            throw new IllegalArgumentException(
                    "A temperature needs a finite number above -273.15 °C; it was given " + celsius + " °C.");
        }
    }

    /** Returns the temperature that reads as the given number on the given scale. */
    public static Temperature of(double reading, TemperatureUnit unit) {
        return new Temperature(unit.toCelsius(reading));
    }

    /** Returns a temperature in degrees Celsius. */
    public static Temperature celsius(double celsius) {
        return new Temperature(celsius);
    }

    /** Returns a temperature in degrees Fahrenheit. */
    public static Temperature fahrenheit(double fahrenheit) {
        return of(fahrenheit, TemperatureUnit.FAHRENHEIT);
    }

    /** Returns this temperature's reading on the given scale. */
    public double in(TemperatureUnit unit) {
        return unit.fromCelsius(celsius);
    }

    /** Prints the temperature on the given scale with one decimal, as in "203.3 °C". */
    public String format(TemperatureUnit unit) {
        return String.format(Locale.ROOT, "%.1f %s", in(unit), unit.symbol());
    }

    @Override
    public int compareTo(Temperature other) {
        return Double.compare(celsius, other.celsius);
    }

    @Override
    public String toString() {
        return format(TemperatureUnit.CELSIUS);
    }
}
