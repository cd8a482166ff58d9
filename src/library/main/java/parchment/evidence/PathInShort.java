package parchment.evidence;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import parchment.display.answer.InShort;
import parchment.evidence.finding.PointsWords;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.stats.Interval;

/** Puts the comparison of destination and path into three sentences. */
final class PathInShort {
    private final String attribute;
    private final List<PathContrast> contrasts;

    private PathInShort(String attribute, List<PathContrast> contrasts) {
        this.attribute = attribute;
        this.contrasts = contrasts;
    }

    /**
     * Says what was found.
     *
     * @param batchesThatWouldTell how many further batches would tell what cannot be told; 0 if none can be named
     */
    static InShort of(String attribute, List<PathContrast> contrasts, int batchesThatWouldTell) {
        PathInShort words = new PathInShort(attribute, contrasts);
        Optional<PathContrast> largest = contrasts.stream()
                .filter(contrast -> contrast.verdict() == Verdict.SUGGESTIVE)
                .max(Comparator.comparingDouble(
                        contrast -> Math.abs(contrast.perStep().estimate() * contrast.triedSteps())));
        return largest.map(contrast -> words.seen(contrast, batchesThatWouldTell))
                .orElseGet(() -> words.notSeen(batchesThatWouldTell));
    }

    private InShort seen(PathContrast contrast, int batches) {
        Slope over = contrast.perStep().per(contrast.triedSteps());
        Interval interval = over.interval(contrast.interval().level());
        double sign = over.estimate() >= 0 ? 1 : -1;
        Interval counted = new Interval(
                Math.min(sign * interval.lower(), sign * interval.upper()),
                Math.max(sign * interval.lower(), sign * interval.upper()),
                interval.level());
        long more = contrasts.stream()
                        .filter(other -> other.verdict() == Verdict.SUGGESTIVE)
                        .count()
                - 1;
        return new InShort(
                contrast.because() == PathContrast.Because.BEND
                        ? bent(contrast)
                        : Wording.sentence(contrast.name()) + ", over what was tried, went with about "
                                + PointsWords.points(Math.abs(over.estimate()), counted) + " points "
                                + (sign > 0 ? "more " : "less ") + attribute + " (" + PointsWords.range(counted) + ").",
                more > 0
                        ? "This is more than luck, as "
                                + (more == 1
                                        ? "is one other comparison below."
                                        : "are " + more + " other comparisons below.")
                        : "This is more than luck, but what the roaster saw in the beans may be behind it.",
                batches > 0 ? next(batches) : "To know, toss a coin between such roasts before charge, and cup blind.");
    }

    /** No one slope describes a bend, so none is told. */
    private String bent(PathContrast contrast) {
        boolean top = contrast.bend() == PathContrast.Bend.RISES_THEN_FALLS;
        return "Along " + contrast.name() + " the " + attribute + (top ? " rose, then fell" : " fell, then rose")
                + ", at a reading that this comparison cannot name.";
    }

    /** Says why the first comparison that does not stand by itself does not. */
    private String notParted() {
        PathContrast first = contrasts.stream()
                .filter(contrast -> contrast.separation() == PathContrast.Separation.NOT_SEPARATED)
                .min(Comparator.comparing(contrast -> contrast.because() != PathContrast.Because.MOVED_TOGETHER))
                .orElseThrow();
        return switch (first.because()) {
            case MOVED_TOGETHER ->
                "Drop temperature, development time and time to first crack moved together, so the scores may have gone with any.";
            case MOVED_WITH_A_CONTROL ->
                "The batches differ in " + first.name() + " only together with what was set or with the calendar.";
            case ERROR_OF_MEASURING ->
                "The batches differ in " + first.name() + " by little more than error of reading.";
            default -> "The batches do not differ in " + first.name() + " by itself.";
        };
    }

    private InShort notSeen(int batches) {
        List<String> settled = contrasts.stream()
                .filter(contrast -> contrast.verdict() != Verdict.CANNOT_TELL)
                .map(PathContrast::name)
                .toList();
        boolean all = settled.size() == contrasts.size();
        boolean parted =
                contrasts.stream().allMatch(contrast -> contrast.separation() == PathContrast.Separation.SEPARATED);
        return new InShort(
                all
                        ? "Neither the destination nor the path made a difference in " + attribute + " that matters."
                        : "Whether destination or path made the " + attribute + " cannot be told from these batches.",
                all
                        ? "Differences large enough to matter are ruled out for all " + contrasts.size()
                                + " comparisons below."
                        : !contrasts.get(0).perStep().known()
                                ? Wording.sentence(contrasts.get(0).reason()) + "."
                                : parted
                                        ? "The batches differ enough in each, but the scores agree with too many answers."
                                        : notParted(),
                batches > 0
                        ? next(batches)
                        : all
                                ? "Choose the path for other reasons; more batches like these would change little."
                                : "Move one of them on purpose and leave the others, inside what your machine's maker allows.");
    }

    private static String next(int batches) {
        return batches == 1
                ? "Roast the batch in the table below and cup it blind."
                : "Roast the " + batches + " batches in the table below and cup them blind.";
    }
}
