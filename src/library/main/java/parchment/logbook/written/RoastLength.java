package parchment.logbook.written;

/**
 * Parts a roast from a clock in the wrong unit, by how long one may be from charge to drop; common practice, no source. A curve that is
 * shorter or longer was most likely logged in another unit of time than its heading says, which nobody but the roaster can know: it is
 * asked, and never converted by a guess.
 */
public final class RoastLength {
    /** No roast is dropped sooner after charge, in seconds. */
    public static final double SHORTEST_SECONDS = 60;

    /** No roast is dropped later after charge, in seconds: two hours, far beyond any drum roast. */
    public static final double LONGEST_SECONDS = 7200;

    private RoastLength() {}
}
