package parchment.launcher;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.logbook.LogbookFiles;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;

/** A mass as it is given on the command line, as in 12kg. */
record WrittenMass(double amount, MassUnit unit) {
    /** How every mass is written on the command line, in letters of any case: its number and its unit, each a group. */
    static final String FORM = "\\s*([0-9]+(?:[.,][0-9]+)?)\\s*(kgs?|kilos?|g|lbs?|oz)\\s*";

    private static final Pattern MASS = Pattern.compile(FORM, Pattern.CASE_INSENSITIVE);

    /** What may be lost in changing units. */
    private static final double LAST_DIGIT = 1e-9;

    /** A comma or a point before three digits parts thousands for some and decimals for others; after a lone 0 it can only be decimals. */
    private static final Pattern TWO_READINGS = Pattern.compile("([1-9][0-9]{0,2})[.,]([0-9]{3})");

    /**
     * Reads a mass of green coffee for one batch, within what a logbook may say of one.
     *
     * @param what what it is, as in "charge"
     * @param example how it is written, as in "2.5kg"
     * @throws IllegalArgumentException if it is not a mass above 0, can be read in two ways, or no batch is of it; the message says how to write it
     */
    static WrittenMass of(String what, String example, String text) {
        Matcher parts = MASS.matcher(text);
        if (!parts.matches() || !(number(parts.group(1)) > 0)) {
            throw new IllegalArgumentException("A " + what + " is a mass above 0, as in " + example
                    + " (kg, g, lb or oz), but this one is '" + text + "'.");
        }
        String whose = "The " + what + " '" + text + "'";
        WrittenMass written = ofParts(whose, parts.group(1), parts.group(2));
        double kilograms = written.mass().kilograms();
        if (kilograms < LogbookFiles.LIGHTEST_CHARGE.kilograms() * (1 - LAST_DIGIT)
                || kilograms > LogbookFiles.HEAVIEST_CHARGE.kilograms() * (1 + LAST_DIGIT)) {
            throw new IllegalArgumentException(whose + " is none of a roaster: those are from "
                    + LogbookFiles.LIGHTEST_CHARGE.words(MassUnit.GRAM) + " to "
                    + LogbookFiles.HEAVIEST_CHARGE.words(MassUnit.KILOGRAM) + ". Write it as in " + example + ".");
        }
        return written;
    }

    /**
     * Returns a number and its unit's sign as a mass; every sign but those of grams, pounds and ounces is one of kilograms.
     *
     * @param whose what it stands in, as in "The order 'Kela=12kg'"
     * @throws IllegalArgumentException if the number can be read in two ways; the message says how to write each
     */
    static WrittenMass ofParts(String whose, String number, String symbol) {
        Matcher two = TWO_READINGS.matcher(number);
        if (two.matches()) {
            String decimal = two.group(1) + "." + two.group(2).replaceFirst("0{1,2}$", "");
            // A fourth decimal keeps a number of three from being refused again.
            String plain = two.group(2).endsWith("0") ? decimal : decimal + "0";
            String thousands = two.group(1) + two.group(2);
            throw new IllegalArgumentException(
                    whose + " can be read in two ways: " + thousands + " " + symbol + " or " + decimal + " " + symbol
                            + ". Write the first as " + thousands + symbol + ", the second as " + plain + symbol + ".");
        }
        return new WrittenMass(
                number(number),
                switch (symbol.toLowerCase(Locale.ROOT)) {
                    case "g" -> MassUnit.GRAM;
                    case "lb", "lbs" -> MassUnit.POUND;
                    case "oz" -> MassUnit.OUNCE;
                    default -> MassUnit.KILOGRAM;
                });
    }

    private static double number(String written) {
        return Double.parseDouble(written.replace(',', '.'));
    }

    Mass mass() {
        return Mass.of(amount, unit);
    }
}
