package parchment.align;

import java.util.Locale;
import parchment.quantity.TemperatureUnit;

/** Cuts the temperature axis into even steps, the same for every reader, and says lengths of time and stretches in the reader's words. */
final class Stretches {
    private Stretches() {}

    /** Degrees Celsius from one edge to the next; 18 °F, so that the edges are whole numbers on either scale. */
    private static final double STEP_CELSIUS = 10;

    /**
     * Returns the whole tens of °C inside a range, in °C. The reader's scale has no say in it: an answer would otherwise change
     * with the scale it is read on.
     */
    static double[] edges(double low, double high) {
        return Crowd.grid(low, high, STEP_CELSIUS);
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
