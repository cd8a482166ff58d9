package parchment.stats.mixed;

/** Chooses for whom a mixed model predicts. */
public enum Prediction {
    /** For an average group: fixed terms only. */
    AVERAGE_GROUP,
    /** For the groups named in the rows, as far as the model has seen them. */
    WITH_GROUPS
}
