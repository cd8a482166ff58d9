package parchment.evidence;

import parchment.evidence.finding.Slope;

/**
 * What stood around a question, for the part of a page that says what could be wrong: facts and features that moved along, which batches
 * were cupped, and how, and how many of them had a drawn target.
 *
 * @param judgedBlindness how blind the scores were that the verdict rests on
 * @param readingsMoved how readings of earlier probe periods were told, of the batches that the verdict rests on
 * @param scoredWithoutFeature how many batches were scored but do not have the feature
 */
record Surroundings(
        Facts facts,
        CollinearFeatures moved,
        CuppedBatches cupped,
        Blindness blindness,
        CuppingLayout layout,
        Slope relative,
        int drawnTargets,
        Blindness judgedBlindness,
        ReadingsMoved readingsMoved,
        int scoredWithoutFeature) {}
