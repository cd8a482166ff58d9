package parchment.launcher;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;

/** A mass as it is given on the command line, as in 12kg. */
record WrittenMass(double amount, MassUnit unit) {
    private static final Pattern MASS =
            Pattern.compile("\\s*([0-9]+(?:[.,][0-9]+)?)\\s*(kg|g|lb|oz)\\s*", Pattern.CASE_INSENSITIVE);

    /**
     * Reads a mass.
     *
     * @param what what it is, as in "A charge"
     * @param example how it is written, as in "2.5kg"
     * @throws IllegalArgumentException if it is not a mass above 0
     */
    static WrittenMass of(String what, String example, String text) {
        Matcher parts = MASS.matcher(text);
        if (!parts.matches() || !(Double.parseDouble(parts.group(1).replace(',', '.')) > 0)) {
            throw new IllegalArgumentException(what + " is a mass above 0, as in " + example
                    + " (kg, g, lb or oz), but this one is '" + text + "'.");
        }
        return of(parts.group(1), parts.group(2));
    }

    /** Returns a number and its unit's sign as a mass; every sign but those of grams, pounds and ounces is one of kilograms. */
    static WrittenMass of(String number, String symbol) {
        return new WrittenMass(
                Double.parseDouble(number.replace(',', '.')),
                switch (symbol.toLowerCase(Locale.ROOT)) {
                    case "g" -> MassUnit.GRAM;
                    case "lb", "lbs" -> MassUnit.POUND;
                    case "oz" -> MassUnit.OUNCE;
                    default -> MassUnit.KILOGRAM;
                });
    }

    Mass mass() {
        return Mass.of(amount, unit);
    }
}
