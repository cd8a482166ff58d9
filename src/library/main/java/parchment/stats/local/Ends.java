package parchment.stats.local;

/** Chooses what a moving window does near the first and the last sample. */
public enum Ends {
    /**
     * The window keeps its width: near an end it reaches further inwards, so that as many samples carry the estimate as elsewhere. On
     * equal spacing with a uniform kernel these are the end-point weights of Gorry 1990 (Anal. Chem. 62:570). The default.
     */
    KEEP_WIDTH,
    /** The window keeps its reach: near an end one side is missing, bias stays small and the standard error grows. */
    KEEP_REACH
}
