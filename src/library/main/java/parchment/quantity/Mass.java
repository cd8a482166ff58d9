package parchment.quantity;

import java.util.Locale;

/**
 * One mass of coffee, whatever unit it was written in.
 *
 * @param kilograms the mass in kilograms; finite, zero or more
 */
public record Mass(double kilograms) implements Comparable<Mass> {

    /** @throws IllegalArgumentException if the number is missing, infinite or negative */
    public Mass {
        if (!(kilograms >= 0) || Double.isInfinite(kilograms)) {
            throw new IllegalArgumentException(
                    "A mass needs a finite number, zero or more; it was given " + kilograms + " kg.");
        }
    }

    /** Returns the mass of the given amount of the given unit. */
    public static Mass of(double amount, MassUnit unit) {
        return new Mass(unit.toKilograms(amount));
    }

    /** Returns a mass in kilograms. */
    public static Mass kilograms(double kilograms) {
        return new Mass(kilograms);
    }

    /** Returns this mass as an amount of the given unit. */
    public double in(MassUnit unit) {
        return unit.fromKilograms(kilograms);
    }

    /**
     * Returns this mass as it is written and weighed, without zeros that say nothing, as in "12.5 kg": kilograms to ten grams and below one to the
     * gram, pounds to a hundredth, ounces to a tenth, grams whole.
     */
    public String words(MassUnit unit) {
        int digits = switch (unit) {
            case KILOGRAM -> kilograms < 1 ? 3 : 2;
            case GRAM -> 0;
            case POUND -> 2;
            case OUNCE -> 1;
        };
        return String.format(Locale.ROOT, "%." + digits + "f", in(unit))
                        .replaceFirst("(\\.\\d*?)0+$", "$1")
                        .replaceFirst("\\.$", "")
                + " " + unit.symbol();
    }

    @Override
    public int compareTo(Mass other) {
        return Double.compare(kilograms, other.kilograms);
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%.3f kg", kilograms);
    }
}
