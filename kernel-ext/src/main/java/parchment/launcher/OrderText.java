package parchment.launcher;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.quantity.Mass;

/**
 * An order as it is typed, such as "Cinder Ridge=12kg".
 *
 * @param lot the lot or the blend
 * @param mass what is to be delivered, as it was typed
 */
record OrderText(String lot, WrittenMass mass) {
    private static final Pattern FORM = Pattern.compile(
            "(.+)=\\s*([0-9]+(?:[.,][0-9]+)?)\\s*(kg|kgs|kilo|kilos|g|lb|lbs|oz)\\s*", Pattern.CASE_INSENSITIVE);

    /** A comma or a point before three digits parts thousands for some and decimals for others; after a lone 0 it can only be decimals. */
    private static final Pattern TWO_READINGS = Pattern.compile("([1-9][0-9]{0,2})[.,]([0-9]{3})");

    private static final double LEAST_KILOGRAMS = 0.001;

    /**
     * Reads an order.
     *
     * @throws IllegalArgumentException if it is none, can be read in two ways, or is below a gram; the message says how to write it
     */
    static OrderText of(String typed) {
        Matcher parts = FORM.matcher(typed);
        if (!parts.matches()) {
            throw new IllegalArgumentException("An order is a lot or a blend and the roasted mass, as in --order"
                    + " \"Cinder Ridge=12kg\" (kg, g, lb or oz), but this one is '" + typed + "'.");
        }
        String lot = parts.group(1).strip();
        String unit = parts.group(3);
        Matcher two = TWO_READINGS.matcher(parts.group(2));
        if (two.matches()) {
            String decimal = two.group(1) + "." + two.group(2).replaceFirst("0{1,2}$", "");
            // A fourth decimal keeps a number of three from being refused again.
            String plain = two.group(2).endsWith("0") ? decimal : decimal + "0";
            throw new IllegalArgumentException("The order '" + typed + "' can be read in two ways: " + two.group(1)
                    + two.group(2) + " " + unit + " or " + decimal + " " + unit + ". Write the first as " + two.group(1)
                    + two.group(2) + unit + ", the second as "
                    + plain + unit + ".");
        }
        WrittenMass mass = WrittenMass.of(parts.group(2), unit);
        if (!(mass.mass().kilograms() >= LEAST_KILOGRAMS)) {
            throw new IllegalArgumentException("The order '" + typed
                    + "' is for less than a gram of coffee. Write what is to be delivered, as in --order \"" + lot
                    + "=12kg\".");
        }
        return new OrderText(lot, mass);
    }

    /** Returns what is to be delivered. */
    Mass roasted() {
        return mass.mass();
    }
}
