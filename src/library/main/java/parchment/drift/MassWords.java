package parchment.drift;

import java.util.Locale;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;

/**
 * Prints masses in the unit of an order, without zeros that say nothing. Masses are given in kilograms.
 *
 * @param unit the unit that is printed
 */
record MassWords(MassUnit unit) {
    private static final int MOST_DIGITS = 3;

    static MassWords in(MassUnit unit) {
        return new MassWords(unit);
    }

    /** Returns a mass as it was ordered or charged, as in "12.5 kg". */
    String exact(double kilograms) {
        return Mass.kilograms(kilograms).words(unit);
    }

    /** Returns an estimated mass with the digits that an interval of this width deserves. */
    String estimated(double kilograms, double width) {
        return rounded(kilograms, width) + " " + unit.symbol();
    }

    /** Tells whether a mass is nothing in the digits that an interval of this width deserves. */
    boolean isNothing(double kilograms, double width) {
        return rounded(kilograms, width).matches("-?[0.]+");
    }

    /** Returns a mass that something may be up to, rounded up to a tenth of the unit, of small ones to a hundredth; grams whole. */
    String upTo(double kilograms) {
        double shown = unit.fromKilograms(kilograms);
        double step = unit == MassUnit.GRAM ? 1 : shown < 0.1 ? 0.01 : 0.1;
        return number(Math.ceil(shown / step - 1e-9) * step, MOST_DIGITS) + " " + unit.symbol();
    }

    /** Returns from where to where a mass may lie, as in "13.8 to 14.6 kg". */
    String range(double low, double high) {
        return bareRange(low, high) + " " + unit.symbol();
    }

    /** Returns the same without the unit, to stand in brackets behind a mass. */
    String bareRange(double low, double high) {
        return rounded(low, high - low) + " to " + rounded(high, high - low);
    }

    private String rounded(double kilograms, double width) {
        return String.format(
                Locale.ROOT, "%." + digits(unit.fromKilograms(width)) + "f", unit.fromKilograms(kilograms));
    }

    /** One digit of half of the width is all that an interval deserves. */
    private static int digits(double width) {
        return width > 0 ? (int) Math.max(0, Math.min(MOST_DIGITS, Math.ceil(-Math.log10(width / 2)))) : 2;
    }

    private static String number(double shown, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", shown)
                .replaceFirst("(\\.\\d*?)0+$", "$1")
                .replaceFirst("\\.$", "");
    }
}
