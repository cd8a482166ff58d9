package parchment.feature.path;

/**
 * Decides whether numbers of a feature can be compared over a change of the bean probe: whether another one, or the same one elsewhere,
 * gives another number.
 */
public enum OnProbe {
    /** It is a reading of the bean probe: what today's probe would read is known where the offset is. */
    READING,
    /**
     * It hangs on where the probe reads certain temperatures, or may: by how much another probe changes it is not known. Features of the reader's
     * own are taken so.
     */
    HANGS_ON_IT,
    /** Another probe gives the same number, or nearly: times of marks, masses, controls, differences and rates at marks. */
    FREE_OF_IT
}
