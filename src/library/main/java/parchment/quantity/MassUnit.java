package parchment.quantity;

/** Names a unit in which coffee is weighed. The pound is the international avoirdupois pound, exactly 0.45359237 kg. */
public enum MassUnit {
    /** Kilograms. */
    KILOGRAM("kg", 1),
    /** Grams. */
    GRAM("g", 0.001),
    /** Pounds, exactly 0.45359237 kg each. */
    POUND("lb", 0.45359237),
    /** Ounces, sixteen to the pound. */
    OUNCE("oz", 0.45359237 / 16);

    private final String symbol;
    private final double kilograms;

    MassUnit(String symbol, double kilograms) {
        this.symbol = symbol;
        this.kilograms = kilograms;
    }

    /** Returns the unit as it is printed: "kg", "g", "lb" or "oz". */
    public String symbol() {
        return symbol;
    }

    /** Tells whether both units are metric, or both avoirdupois. */
    public boolean isOfOneSystemWith(MassUnit other) {
        return isMetric() == other.isMetric();
    }

    private boolean isMetric() {
        return this == KILOGRAM || this == GRAM;
    }

    /** Converts an amount in this unit to kilograms. */
    public double toKilograms(double amount) {
        return amount * kilograms;
    }

    /** Converts kilograms to an amount in this unit. */
    public double fromKilograms(double amountInKilograms) {
        return amountInKilograms / kilograms;
    }
}
