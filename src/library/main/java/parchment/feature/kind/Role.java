package parchment.feature.kind;

/**
 * What a feature is in the making of a roast, which decides what it can stand in the way of: what somebody set, what the calendar brought,
 * or what came of it.
 *
 * <p>Where a control or a fact of the calendar moved with another feature, the two cannot be told apart in the score. What follows from a
 * feature, as mass loss follows from the drop temperature, moves with it by nature and stands in nobody's way.
 */
public enum Role {
    /** Set by the roaster's hand: gas, airflow, charge temperature, batch mass. */
    CONTROL,
    /** Given before the roast began: its place in day and season, the room, the green coffee's temperature. */
    CALENDAR,
    /** Came of what was set and given: temperatures, times, rates, losses, colours. */
    FOLLOWS
}
