package parchment.jars;

/** Whether a session may fetch what a cell asks for. */
public enum Network {
    /** What a cell names and the local repository lacks is fetched. */
    WHEN_ASKED,

    /** Nothing is fetched; what the local repository lacks is an error that says so. */
    NEVER
}
