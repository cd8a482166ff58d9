package parchment.evidence;

/** Holds what stood around a question: facts and features that moved along, which batches were cupped, and how. */
record Surroundings(
        Facts facts,
        MovedTogether moved,
        CuppedBatches cupped,
        Blindness blindness,
        CuppingLayout layout,
        Slope relative) {}
