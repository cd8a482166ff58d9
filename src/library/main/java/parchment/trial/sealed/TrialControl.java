package parchment.trial.sealed;

import parchment.quantity.Unit;

/** Names what chance may choose before a batch is charged: a control whose target a roaster can follow and a file can hold. */
public enum TrialControl {
    /** The bean-probe reading at which the beans are dropped, kept in degrees Celsius. */
    DROP_TEMPERATURE(
            "drop temperature",
            Unit.TEMPERATURE,
            "This assumes that the target acts on the cup through the drop temperature alone. A later drop also lasts longer: development time moves with it,"
                    + " and what that does is in the number too."),
    /** The bean-probe reading just before charge, kept in degrees Celsius. */
    CHARGE_TEMPERATURE(
            "charge temperature",
            Unit.TEMPERATURE,
            "This assumes that the target acts on the cup through the charge temperature alone. Turning point and time to yellowing move with it, and what they"
                    + " do is in the number too; so is whatever the roaster did with the gas to make up for it."),
    /** The gas that is set at charge, on the machine's own scale. */
    FIRST_GAS(
            "first gas",
            Unit.NONE.withDigits(1).withNaturalStep(1),
            "This assumes that the target acts on the cup through the gas at charge alone. The rate of rise and the time to first crack move with it, and what"
                    + " they do is in the number too; so is every later move of the gas that made up for it.");

    private final String words;
    private final Unit unit;
    private final String assumption;

    TrialControl(String words, Unit unit, String assumption) {
        this.words = words;
        this.unit = unit;
        this.assumption = assumption;
    }

    /** Returns the control's name inside a sentence. */
    public String words() {
        return words;
    }

    /** Returns what its targets are kept in. */
    public Unit unit() {
        return unit;
    }

    /** Says what an answer as achieved takes for granted. */
    public String assumption() {
        return assumption;
    }

    @Override
    public String toString() {
        return words;
    }
}
