package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.phase.found.ProbeReading;
import parchment.quantity.Mass;
import parchment.stats.linear.Robust;

/**
 * Finds batches whose probe read too high or too low all the way: at the turning point, at yellowing, at first crack and at the drop alike.
 *
 * <p>What each mark read is brought to like lot, mass and charge; the medians of the others are what is usual. The batch's offset is the
 * mean over its marks, weighted by one over the variance of each mark among the batches. It is told if it lies more than 3.5
 * robust standard deviations from the median of all batches' offsets, is large enough to matter, and no mark contradicts it: each lies within three of its own standard deviations, and within 6 °C or half the offset. A batch dropped hotter on purpose reads hotter at the
 * drop alone, and a hotter charge at the turning point alone.
 */
final class ProbeOffsets {
    /** Marks whose temperature the beans settle, or the roaster's habit; the turning point alone depends on the charge. */
    private static final List<MarkKind> MARKS =
            List.of(MarkKind.TURNING_POINT, MarkKind.YELLOWING, MarkKind.FIRST_CRACK_START, MarkKind.DROP);

    /** Degrees Celsius that an offset must have to be worth a word; common practice, no source. */
    static final double LEAST_CELSIUS = 4;
    /** Fewest marks that must agree; common practice, no source. */
    static final int LEAST_MARKS = 3;
    /** Standard deviations by which a mark may differ from the offset without contradicting it; common practice, no source. */
    static final double AGREES = 3;
    /**
     * Degrees Celsius, or half the offset where that is more, by which no mark may differ from it, however wide the marks spread: where batches run in
     * several courses they spread widely, and a course of its own is no probe that is off. Common practice, no source.
     */
    static final double FARTHEST_APART = 6;
    /** The least standard deviation of a mark among the batches, in °C, so that chance alone cannot make one all-important. */
    private static final double LEAST_SPREAD = 0.5;

    /** Robust standard deviations beyond which a batch lies apart: Iglewicz and Hoaglin 1993, in NIST/SEMATECH e-Handbook 1.3.5.17. */
    static final double FAR_OUT = 3.5;

    private static final double NORMAL = 1.4826;

    private final double[] offsets;
    private final List<List<String>> words;

    private ProbeOffsets(double[] offsets, List<List<String>> words) {
        this.offsets = offsets;
        this.words = words;
    }

    static ProbeOffsets of(List<Phases> members, double[] believedCharges) {
        List<String> lots =
                members.stream().map(phases -> phases.batch().lot().orElse("")).toList();
        double[] mass = members.stream()
                .mapToDouble(phases -> phases.batch()
                        .conditions()
                        .greenMass()
                        .map(Mass::kilograms)
                        .orElse(Double.NaN))
                .toArray();
        List<double[]> left = new ArrayList<>();
        for (MarkKind kind : MARKS) {
            double[] read = members.stream()
                    .mapToDouble(phases -> phases.mark(kind)
                            .flatMap(Mark::probe)
                            .map(ProbeReading::celsius)
                            .orElse(Double.NaN))
                    .toArray();
            double[] like = LikeValues.without(LikeValues.withoutGroups(read, lots), mass);
            left.add(kind == MarkKind.TURNING_POINT ? LikeValues.without(like, believedCharges) : like);
        }
        return of(left);
    }

    /** Judges built numbers: for each mark, by how much each batch read above what is usual at like conditions, in °C. */
    static ProbeOffsets of(List<double[]> left) {
        int batches = left.get(0).length;
        double[] spreads = left.stream().mapToDouble(ProbeOffsets::spread).toArray();
        double[] offsets = new double[batches];
        double[] sizes = new double[batches];
        List<List<Integer>> known = new ArrayList<>();
        for (int i = 0; i < batches; i++) {
            int batch = i;
            List<Integer> marks = IntStream.range(0, left.size())
                    .filter(k -> Double.isFinite(left.get(k)[batch]) && Double.isFinite(spreads[k]))
                    .boxed()
                    .toList();
            double weights = marks.stream()
                    .mapToDouble(k -> 1 / (spreads[k] * spreads[k]))
                    .sum();
            double sum = marks.stream()
                    .mapToDouble(k -> left.get(k)[batch] / (spreads[k] * spreads[k]))
                    .sum();
            known.add(marks);
            offsets[i] = marks.size() < LEAST_MARKS ? Double.NaN : sum / weights;
            sizes[i] = offsets[i] * Math.sqrt(weights);
        }
        double[] all = Arrays.stream(sizes).filter(Double::isFinite).toArray();
        double middle = all.length < Crowd.LEAST ? Double.NaN : Robust.median(all);
        double spread = NORMAL
                * Robust.median(
                        Arrays.stream(all).map(size -> Math.abs(size - middle)).toArray());
        List<List<String>> words = new ArrayList<>();
        for (int i = 0; i < batches; i++) {
            int batch = i;
            boolean told = Math.abs(sizes[i] - middle) > FAR_OUT * spread
                    && Math.abs(offsets[i]) >= LEAST_CELSIUS
                    && known.get(i).stream()
                            .allMatch(k -> Math.abs(left.get(k)[batch] - offsets[batch])
                                    <= Math.min(
                                            AGREES * spreads[k],
                                            Math.max(Math.abs(offsets[batch]) / 2, FARTHEST_APART)));
            words.add(
                    told ? known.get(i).stream().map(k -> MARKS.get(k).words()).toList() : List.of());
            offsets[i] = told ? offsets[i] : 0;
        }
        return new ProbeOffsets(offsets, words);
    }

    private static double spread(double[] left) {
        double[] known = Arrays.stream(left).filter(Double::isFinite).toArray();
        return known.length < Crowd.LEAST
                ? Double.NaN
                : Math.max(
                        LEAST_SPREAD,
                        NORMAL
                                * Robust.median(
                                        Arrays.stream(known).map(Math::abs).toArray()));
    }

    /** Returns by how many degrees a batch's probe read above what is usual; 0 if that cannot be said of it. */
    double of(int batch) {
        return offsets[batch];
    }

    /** Returns the marks at which it did, in words. */
    List<String> marks(int batch) {
        return words.get(batch);
    }
}
