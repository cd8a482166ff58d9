package parchment.feature.kind;

import java.util.OptionalInt;

/**
 * Groups features that hang together by arithmetic, and says how many of a group can vary freely.
 *
 * <p>A model that takes more features of a family than its rank asks for an answer that no data hold: one of them is fixed by the rest.
 */
public enum Family {
    /** Times and shares of the phases. */
    PHASE_LENGTHS(
            "phase lengths",
            3,
            "drying + browning + development = drop time; shares and log-ratios follow from the three times"),
    /** Temperatures, times and rates from first crack to drop. */
    FINISH(
            "finish",
            3,
            "drop temperature = first crack temperature + rise after first crack; the rise = development time × mean rate in"
                    + " development; of these five numbers three can be chosen"),
    /** The bean probe early in the roast. */
    START("start of the roast", "the turning point comes of charge temperature, batch mass and probe"),
    /** Rates of rise and times at given temperatures. */
    PACE("pace", "mean rate × time = rise, phase by phase"),
    /** The air around the beans. */
    AIR("air", ""),
    /** What the roaster moved. */
    CONTROLS("controls", ""),
    /** Masses. */
    MASS("mass", ""),
    /** Where the batch stands in day and season. */
    DAY("day and season", "date = date of arrival + age of the lot"),
    /** Anything else that was written down. */
    OTHER("other", "");

    private final String words;
    private final OptionalInt rank;
    private final String identity;

    Family(String words, int rank, String identity) {
        this.words = words;
        this.rank = OptionalInt.of(rank);
        this.identity = identity;
    }

    Family(String words, String identity) {
        this.words = words;
        this.rank = OptionalInt.empty();
        this.identity = identity;
    }

    /** Returns the family's name. */
    public String words() {
        return words;
    }

    /** Returns how many features of the family one model may hold; empty if arithmetic sets no bound. */
    public OptionalInt rank() {
        return rank;
    }

    /** Returns what the features of this family are in the making of a roast, as long as one does not say otherwise of itself. */
    public Role role() {
        return switch (this) {
            case CONTROLS -> Role.CONTROL;
            case DAY -> Role.CALENDAR;
            case PHASE_LENGTHS, FINISH, START, PACE, AIR, MASS, OTHER -> Role.FOLLOWS;
        };
    }

    /** Returns what ties the family together, in words; empty if nothing does. */
    public String identity() {
        return identity;
    }
}
