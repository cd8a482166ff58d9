package parchment.evidence;

/** Holds what stood around a question: facts and features that moved along, which batches were cupped, and how, and how many of them had a drawn target. */
record Surroundings(
        Facts facts,
        MovedTogether moved,
        CuppedBatches cupped,
        Blindness blindness,
        CuppingLayout layout,
        Slope relative,
        int drawnTargets) {}
