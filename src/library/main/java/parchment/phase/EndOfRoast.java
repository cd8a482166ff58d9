package parchment.phase;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.stats.linear.Robust;

/**
 * Tells from a logbook how its roasts end: how far a written drop lies from the fall that the curve shows, and how long after a written drop
 * the logger is stopped where it shows no fall.
 *
 * <p>Both are read off the batches that have the two things, if there are at least {@value #FEWEST}; else the written drop has the usual
 * reaction, and a logger is taken to be stopped at the drop, give or take {@value #STOPPED_LATE_SECONDS} s (common practice, no source).
 */
final class EndOfRoast {
    static final int FEWEST = 8;

    static final double STOPPED_LATE_SECONDS = 5;

    static final EndOfRoast USUAL = new EndOfRoast(OptionalDouble.empty(), 0, STOPPED_LATE_SECONDS, 0);

    private final OptionalDouble writtenError;
    private final double late;
    private final double lateError;
    private final int batches;

    private EndOfRoast(OptionalDouble writtenError, double late, double lateError, int batches) {
        this.writtenError = writtenError;
        this.late = late;
        this.lateError = lateError;
        this.batches = batches;
    }

    static EndOfRoast of(List<Batch> batches, List<MarkFinder.Result> begun) {
        double[][] offs = new double[2][];
        for (int k = 0; k < 2; k++) {
            boolean falls = k == 0;
            offs[k] = IntStream.range(0, batches.size())
                    .filter(i -> begun.get(i).clean().isPresent()
                            && begun.get(i).fall().isPresent() == falls
                            && batches.get(i).writtenMark(MarkKind.DROP).isPresent())
                    .mapToDouble(i -> off(batches.get(i), begun.get(i)))
                    .toArray();
        }
        double[] found = begun.stream()
                .flatMap(result -> result.fall().stream())
                .mapToDouble(OnCurve.Found::standardError)
                .toArray();
        OptionalDouble written = offs[0].length < FEWEST
                ? OptionalDouble.empty()
                : OptionalDouble.of(written(offs[0], Robust.median(found)));
        return offs[1].length < FEWEST
                ? new EndOfRoast(written, 0, STOPPED_LATE_SECONDS, 0)
                : new EndOfRoast(
                        written,
                        Math.max(0, Robust.median(offs[1])),
                        Math.max(0.5, Robust.medianAbsoluteDeviation(offs[1])),
                        offs[1].length);
    }

    /** How much later than the fall a drop was written; how much later than a written drop the log ends. */
    private static double off(Batch batch, MarkFinder.Result begun) {
        double written = batch.writtenMark(MarkKind.DROP).orElseThrow().seconds();
        return begun.fall()
                .map(found -> written - found.seconds())
                .orElseGet(() -> begun.clean()
                        .map(clean -> clean.kept().secondsAt(clean.kept().size() - 1) - written)
                        .orElse(Double.NaN));
    }

    /** A hand that is always late is as far off as one that scatters; what the curve itself is off is taken away. */
    private static double written(double[] off, double found) {
        double middle = Robust.median(off);
        double spread = Robust.medianAbsoluteDeviation(off);
        return Math.sqrt(Math.max(0.25, middle * middle + spread * spread - found * found));
    }

    /** Returns the standard error of a written drop in seconds: as this logbook's curves show it, else as given. */
    double writtenError(double usual) {
        return writtenError.orElse(usual);
    }

    /** Returns how long after the drop the logger is usually stopped, in seconds. */
    double lateSeconds() {
        return late;
    }

    /** Returns how much that varies, as a standard error in seconds. */
    double lateError() {
        return lateError;
    }

    /** Returns how an unwritten drop without a fall is told. */
    String how() {
        return batches == 0
                ? "the log ends"
                : String.format(
                        Locale.ROOT, "the log ends, by %d batches usually %.0f s after the drop", batches, late);
    }
}
