package parchment.logbook.contents;

/**
 * One part of a blend, by which an order of the blend is taken apart into lots.
 *
 * @param blend the blend's name; a batch names it in its lot column
 * @param lot the lot that is a part of it
 * @param share the part's share of the mass, from 0 to 1; NaN if it was not written
 * @param blended when the parts were put together
 */
public record BlendPart(String blend, String lot, double share, Blended blended) {

    /** Says when the parts of a blend were put together. */
    public enum Blended {
        /** The green coffees were mixed and roasted as one. */
        BEFORE_ROASTING,
        /** Each was roasted alone. */
        AFTER_ROASTING,
        /** The logbook does not say. */
        NOT_WRITTEN
    }
}
