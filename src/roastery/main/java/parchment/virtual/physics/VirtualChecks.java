package parchment.virtual.physics;

/** Refuses what a virtual thing cannot be made of, with what it needs and what it was given. */
public final class VirtualChecks {
    private VirtualChecks() {}

    public static void positive(String what, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(
                    "The " + what + " must be above zero and finite; it was given " + value + ".");
        }
    }

    public static void share(String what, double value) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException("The " + what + " must lie from 0 to 1; it was given " + value + ".");
        }
    }
}
