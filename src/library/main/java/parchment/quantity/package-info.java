/**
 * Holds temperatures, times and masses together with their units.
 *
 * <p>Inside the library a temperature is in degrees Celsius, a time in seconds, a mass in kilograms and a rate of rise in degrees
 * Celsius per minute. Units are met at two borders only: where a file is read and where a number is shown. For example
 * {@code Temperature.of(392, TemperatureUnit.FAHRENHEIT).celsius()} is 200, and {@code Unit.TEMPERATURE.format(200,
 * TemperatureUnit.FAHRENHEIT)} is "392.0 °F".
 */
@NullMarked
package parchment.quantity;

import org.jspecify.annotations.NullMarked;
