package parchment.trial;

import parchment.quantity.Unit;

/** Names what chance may choose before a batch is charged: a control whose target a roaster can follow and a file can hold. */
public enum TrialControl {
    /** The bean-probe reading at which the beans are dropped, kept in degrees Celsius. */
    DROP_TEMPERATURE("drop temperature", Unit.TEMPERATURE),
    /** The bean-probe reading just before charge, kept in degrees Celsius. */
    CHARGE_TEMPERATURE("charge temperature", Unit.TEMPERATURE),
    /** The gas that is set at charge, on the machine's own scale. */
    FIRST_GAS("first gas", Unit.NONE.withDigits(1).withNaturalStep(1));

    private final String words;
    private final Unit unit;

    TrialControl(String words, Unit unit) {
        this.words = words;
        this.unit = unit;
    }

    /** Returns the control's name inside a sentence. */
    public String words() {
        return words;
    }

    /** Returns what its targets are kept in. */
    public Unit unit() {
        return unit;
    }

    @Override
    public String toString() {
        return words;
    }
}
