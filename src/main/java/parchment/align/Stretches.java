package parchment.align;

import java.util.Locale;
import parchment.quantity.TemperatureUnit;

/** Cuts the temperature axis into even steps on the reader's scale, and says lengths of time and stretches in words. */
final class Stretches {
    private Stretches() {}

    /** Returns edges that are whole tens of °C (twenties of °F) on the reader's scale, in °C, inside a range. */
    static double[] edges(double low, double high, TemperatureUnit reader) {
        double step = reader == TemperatureUnit.FAHRENHEIT ? 20 : 10;
        double[] shown = Crowd.grid(reader.fromCelsius(low), reader.fromCelsius(high), step);
        for (int k = 0; k < shown.length; k++) {
            shown[k] = reader.toCelsius(shown[k]);
        }
        return shown;
    }

    /** Returns "between 160 and 180 °C", or "around 160 °C" where both ends are printed alike. */
    static String between(double low, double high, TemperatureUnit reader) {
        if (whole(low, reader).equals(whole(high, reader))) {
            return "around " + whole(low, reader);
        }
        return String.format(
                Locale.ROOT,
                "between %.0f and %.0f %s",
                reader.fromCelsius(low),
                reader.fromCelsius(high),
                reader.symbol());
    }

    /** Returns a temperature without decimals, as in "160 °C". */
    static String whole(double celsius, TemperatureUnit reader) {
        return String.format(Locale.ROOT, "%.0f %s", reader.fromCelsius(celsius), reader.symbol());
    }

    /** Returns a length of time: "24 s", "2 min", "2 min 5 s". */
    static String length(double seconds) {
        long whole = Math.round(Math.abs(seconds));
        if (whole < 90) {
            return whole + " s";
        }
        return whole / 60 + " min" + (whole % 60 == 0 ? "" : " " + whole % 60 + " s");
    }
}
