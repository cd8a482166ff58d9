package parchment.drift;

import java.util.Locale;

/** Prints masses in kilograms, without zeros that say nothing. */
final class MassWords {
    private static final int MOST_DIGITS = 3;

    private MassWords() {}

    /** Returns a mass as it was ordered or charged, as in "12.5 kg": below a kilogram to the gram, else to ten grams. */
    static String exact(double kilograms) {
        return number(kilograms, kilograms < 1 ? MOST_DIGITS : 2) + " kg";
    }

    /** Returns an estimated mass with the digits that an interval of this width deserves. */
    static String estimated(double kilograms, double width) {
        return String.format(Locale.ROOT, "%." + digits(width) + "f", kilograms) + " kg";
    }

    /** Returns a mass that something may be up to, rounded up to a tenth of a kilogram, of small ones to a hundredth. */
    static String upTo(double kilograms) {
        double step = kilograms < 0.1 ? 0.01 : 0.1;
        return number(Math.ceil(kilograms / step - 1e-9) * step, MOST_DIGITS) + " kg";
    }

    /** Returns from where to where a mass may lie, as in "13.8 to 14.6 kg". */
    static String range(double low, double high) {
        int digits = digits(high - low);
        return String.format(Locale.ROOT, "%." + digits + "f to %." + digits + "f kg", low, high);
    }

    /** One digit of half of the width is all that an interval deserves. */
    private static int digits(double width) {
        return width > 0 ? (int) Math.max(0, Math.min(MOST_DIGITS, Math.ceil(-Math.log10(width / 2)))) : 2;
    }

    private static String number(double kilograms, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", kilograms)
                .replaceFirst("(\\.\\d*?)0+$", "$1")
                .replaceFirst("\\.$", "");
    }
}
