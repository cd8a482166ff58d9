package parchment.chart;

/** Says how much a line asks to be looked at. */
public enum Weight {
    /** One of a crowd: thin, grey, see-through, told in the key and not at its end. */
    FAINT,
    /** An ordinary line with a label at its end. */
    NORMAL,
    /** The line that the picture is about. */
    STRONG
}
