package parchment.chart;

/** Sets how much a line asks to be looked at. */
public enum Weight {
    /** One of a crowd: thin, grey, see-through, told in the key and not at its end. */
    FAINT,
    /** An ordinary line with a label at its end. */
    NORMAL,
    /** A line that may not be so: thin, in long dashes, and not in the colour of a finding. */
    TENTATIVE,
    /** The line that the picture is about. */
    STRONG
}
