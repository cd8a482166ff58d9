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
    private static final Pattern FORM = Pattern.compile("(.+)=" + WrittenMass.FORM, Pattern.CASE_INSENSITIVE);

    private static final double LEAST_KILOGRAMS = 0.001;

    /** More is a slip of the pen, in drift.Orders too; common sense, no source. */
    private static final double MOST_KILOGRAMS = 100_000;

    /**
     * Reads an order.
     *
     * @throws IllegalArgumentException if it is none, can be read in two ways, is below a gram or above 100 tonnes; the message says how to write it
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
            throw notAsOrdered(typed, "less than a gram of coffee", lot);
        }
        if (mass.mass().kilograms() > MOST_KILOGRAMS) {
            throw notAsOrdered(typed, "more than 100 tonnes of coffee", lot);
        }
        return new OrderText(lot, mass);
    }

    private static IllegalArgumentException notAsOrdered(String typed, String what, String lot) {
        return new IllegalArgumentException("The order '" + typed + "' is for " + what
                + ". Write what is to be delivered, as in --order \"" + lot + "=12kg\".");
    }

    /** Returns what is to be delivered. */
    Mass roasted() {
        return mass.mass();
    }
}
