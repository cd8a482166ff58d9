package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.stats.Interval;

/** Holds each first sentence of destination or path by built comparisons. */
class PathInShortTest {
    private static PathContrast contrast(
            String name, Verdict verdict, double perStep, double steps, PathContrast.Because because) {
        return contrast(name, verdict, perStep, steps, because, 2);
    }

    private static PathContrast contrast(
            String name,
            Verdict verdict,
            double perStep,
            double steps,
            PathContrast.Because because,
            double inflation) {
        Slope slope = new Slope(perStep, 0.03, 1e6);
        return new PathContrast(
                name,
                "meaning",
                "10 s",
                slope,
                slope,
                slope.known() ? slope.interval(0.90) : new Interval(Double.NaN, Double.NaN, 0.90),
                new Reliability(0.95, 1, 20, 80),
                inflation,
                steps,
                verdict,
                because,
                "once lots are taken into account, too few roast days are left to compare");
    }

    private static InShort words(int batches, PathContrast... contrasts) {
        InShort words = PathInShort.of("sweetness", List.of(contrasts), batches);
        return ShortSentences.keptBy(words);
    }

    private static final PathContrast OPEN =
            contrast("slower start", Verdict.CANNOT_TELL, 0.01, 4, PathContrast.Because.TOO_WIDE);

    @Test
    void theLargestFindingOverWhatWasTriedIsToldFirst() {
        PathContrast steep = contrast("added time", Verdict.SUGGESTIVE, 0.30, 2, PathContrast.Because.SLOPE);
        PathContrast large = contrast("later drop", Verdict.SUGGESTIVE, -0.20, 5, PathContrast.Because.SLOPE);
        assertEquals(
                new InShort(
                        "Later drop, over what was tried, went with about 1.0 points less sweetness (0.8 to 1.2).",
                        "This is more than luck, as is one other comparison below.",
                        "To know, toss a coin between such roasts before charge, and cup blind."),
                words(0, steep, large, OPEN));
        assertEquals(
                "This is more than luck, as are 2 other comparisons below.",
                words(0, steep, large, steep).howSure());
        assertEquals(
                new InShort(
                        "Added time, over what was tried, went with about 0.60 points more sweetness (0.50 to 0.70).",
                        "This is more than luck, but what the roaster saw in the beans may be behind it.",
                        "Roast the 10 batches in the table below and cup them blind."),
                words(10, steep, OPEN));
    }

    /** A score that rises and falls along a comparison has no one slope, so no number of one is told. */
    @Test
    void aBendIsNotToldAsASlope() {
        assertEquals(
                "Along later drop the sweetness rose, then fell, at a reading that this comparison cannot name.",
                words(0, bent("the score rises and falls along it, so no one slope describes it"))
                        .found());
        assertEquals(
                "Along later drop the sweetness fell, then rose, at a reading that this comparison cannot name.",
                words(0, bent("the score falls and rises along it, so no one slope describes it"))
                        .found());
    }

    private static PathContrast bent(String reason) {
        PathContrast like = contrast("later drop", Verdict.SUGGESTIVE, 0.20, 5, PathContrast.Because.BEND);
        return new PathContrast(
                like.name(),
                like.meaning(),
                like.stepWords(),
                like.fitted(),
                like.perStep(),
                like.interval(),
                like.reliability(),
                like.inflation(),
                like.triedSteps(),
                like.verdict(),
                like.because(),
                reason);
    }

    @Test
    void whatMovedWithAControlOrIsErrorSaysSo() {
        assertEquals(
                "The batches differ in added time only together with what was set or with the calendar.",
                words(
                                0,
                                OPEN,
                                contrast(
                                        "added time",
                                        Verdict.CANNOT_TELL,
                                        0.1,
                                        2,
                                        PathContrast.Because.MOVED_WITH_A_CONTROL))
                        .howSure());
        assertEquals(
                "Roast the batch in the table below and cup it blind.",
                words(1, OPEN).next());
    }

    @Test
    void whatCannotBeToldSaysWhy() {
        String cannot = "Whether destination or path made the sweetness cannot be told from these batches.";
        assertEquals(
                new InShort(
                        cannot,
                        "The batches differ enough in each, but the scores agree with too many answers.",
                        "Move one of them on purpose and leave the others, inside what your machine's maker allows."),
                words(0, OPEN, OPEN));
        PathContrast together =
                contrast("added time", Verdict.CANNOT_TELL, 0.1, 2, PathContrast.Because.MOVED_TOGETHER, 1e3);
        assertEquals(
                new InShort(
                        cannot,
                        "Drop temperature, development time and time to first crack moved together, so the scores may have gone with any.",
                        "Roast the 4 batches in the table below and cup them blind."),
                words(4, OPEN, together));
        PathContrast none =
                contrast("added time", Verdict.CANNOT_TELL, Double.NaN, 2, PathContrast.Because.TOO_FEW_DAYS);
        assertEquals(
                "Once lots are taken into account, too few roast days are left to compare.",
                words(0, none).howSure());
    }

    @Test
    void nothingThatMattersIsSaidOnlyWhereAllIsSettled() {
        PathContrast small = contrast("added time", Verdict.TOO_SMALL, 0.01, 2, PathContrast.Because.NONE_THAT_MATTERS);
        PathContrast nothing =
                contrast("later drop", Verdict.NOTHING_SEEN, 0.0, 2, PathContrast.Because.NONE_THAT_MATTERS);
        assertEquals(
                new InShort(
                        "Neither the destination nor the path made a difference in sweetness that matters.",
                        "Differences large enough to matter are ruled out for all 2 comparisons below.",
                        "Choose the path for other reasons; more batches like these would change little."),
                words(0, small, nothing));
        assertEquals(
                "Whether destination or path made the sweetness cannot be told from these batches.",
                words(0, small, OPEN).found());
    }
}
