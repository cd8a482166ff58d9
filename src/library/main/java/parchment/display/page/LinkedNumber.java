package parchment.display.page;

import java.util.Arrays;
import java.util.Locale;

/**
 * One number of each thing that {@link LinkedViews} shows, in the reader's unit.
 *
 * <p>Defaults: offered for the two axes of the scatter picture, and not told beside a thing's name.
 */
public final class LinkedNumber {
    /** Says what kind of number it is. */
    public enum Role {
        /** Describes the thing; can be chosen for either axis of a scatter picture. */
        DESCRIBES,
        /** Judges the thing; can be chosen for the upward axis of the picture of judgements, and for the others too. */
        JUDGES
    }

    /** Says where else the number stands. */
    public enum Place {
        /** Told beside the name of a thing, and a column of the table. */
        BESIDE_THE_NAME,
        /** To be chosen only. */
        ON_ASKING
    }

    private final String name;
    private final String unit;
    private final int digits;
    private final double[] values;
    private final Role role;
    private final Place place;

    private LinkedNumber(String name, String unit, int digits, double[] values, Role role, Place place) {
        this.name = name;
        this.unit = unit;
        this.digits = digits;
        this.values = values;
        this.role = role;
        this.place = place;
    }

    /**
     * Returns numbers with their name.
     *
     * @param name what is measured, in full words
     * @param unit its unit as printed, empty for a bare number
     * @param digits how many decimals are shown
     * @param values one per thing, NaN where it is missing
     */
    public static LinkedNumber of(String name, String unit, int digits, double[] values) {
        return new LinkedNumber(name, unit, digits, values.clone(), Role.DESCRIBES, Place.ON_ASKING);
    }

    /** Returns the same numbers in another role. */
    public LinkedNumber with(Role other) {
        return new LinkedNumber(name, unit, digits, values, other, place);
    }

    /** Returns the same numbers in another place. */
    public LinkedNumber with(Place other) {
        return new LinkedNumber(name, unit, digits, values, role, other);
    }

    /** Returns what is measured. */
    public String name() {
        return name;
    }

    /** Returns the unit as printed, empty for a bare number. */
    public String unit() {
        return unit;
    }

    /** Returns how many decimals are shown. */
    public int digits() {
        return digits;
    }

    /** Returns the numbers, NaN where missing. */
    public double[] values() {
        return values.clone();
    }

    /** Returns what kind of number it is. */
    public Role role() {
        return role;
    }

    /** Returns where else it stands. */
    public Place place() {
        return place;
    }

    int size() {
        return values.length;
    }

    @Override
    public String toString() {
        long known = Arrays.stream(values).filter(Double::isFinite).count();
        return String.format(Locale.ROOT, "%s of %d of %d", name, known, values.length);
    }
}
