package parchment.logbook;

/** Names the instants of a roast that a roaster writes down or that can be found on the curve, in the order they happen. */
public enum MarkKind {
    /** The green coffee enters the drum; time zero of a batch. */
    CHARGE("charge"),
    /** The lowest bean-probe reading after charge. */
    TURNING_POINT("turning point"),
    /** The beans turn from green to yellow; ends the drying phase by convention. */
    YELLOWING("yellowing"),
    /** The popping starts; ends the browning phase. */
    FIRST_CRACK_START("first crack start"),
    /** The popping ends. */
    FIRST_CRACK_END("first crack end"),
    /** The later, fainter cracking starts. */
    SECOND_CRACK_START("second crack start"),
    /** The beans leave the drum; end of the roast. */
    DROP("drop");

    private final String words;

    MarkKind(String words) {
        this.words = words;
    }

    /** Returns the mark's name as the trade says it. */
    public String words() {
        return words;
    }

    @Override
    public String toString() {
        return words;
    }
}
