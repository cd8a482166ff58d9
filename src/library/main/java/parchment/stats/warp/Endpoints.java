package parchment.stats.warp;

/** Chooses where a warping path may begin and end on the reference; the query is always used whole. */
public enum Endpoints {
    /** The first samples are paired, and so are the last. */
    FIXED,
    /** The path may stop before the reference ends: the query is a beginning. */
    OPEN_END,
    /** The path may start late on the reference: the query is an ending. */
    OPEN_BEGIN,
    /** The query may lie anywhere within the reference. */
    OPEN_BOTH;

    boolean opensBegin() {
        return this == OPEN_BEGIN || this == OPEN_BOTH;
    }

    boolean opensEnd() {
        return this == OPEN_END || this == OPEN_BOTH;
    }
}
