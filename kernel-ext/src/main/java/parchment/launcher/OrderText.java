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
        WrittenMass mass = WrittenMass.ofParts("The order '" + typed + "'", parts.group(2), parts.group(3));
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
