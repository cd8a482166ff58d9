package parchment.phase;

import java.util.Optional;
import java.util.OptionalDouble;
import parchment.logbook.Batch;
import parchment.quantity.Unit;

/**
 * Measures one kind of notable moment in a batch: when it was, and how large.
 *
 * <p>A detector only measures; {@link Moments} compares the size with the other batches of the lot and decides whether it is worth a
 * sentence. Write your own in a cell:
 *
 * <pre>{@code
 * class Fastest implements MomentDetector {
 *     public String name() { return "fastest rise"; }
 *     public Unit unit() { return Unit.RATE_OF_RISE; }
 *     public double noticeable() { return 3; }
 *     public Side side() { return Side.HIGH; }
 *     public String source() { return "my own"; }
 *     public Optional<Sighting> look(Phases phases) {
 *         return phases.mark(MarkKind.YELLOWING).flatMap(Mark::probe)
 *                 .map(probe -> new Sighting(phases.mark(MarkKind.YELLOWING).get().seconds(), probe.rateOfRise()));
 *     }
 * }
 * Moments.of(logbook, List.of(new Fastest()))
 * }</pre>
 */
public interface MomentDetector {
    /** Says on which side of the usual a size is notable. */
    enum Side {
        /** Larger than usual. */
        HIGH,
        /** Smaller than usual. */
        LOW,
        /** Either. */
        EITHER
    }

    /**
     * Holds what was measured in a batch.
     *
     * @param seconds when, since charge
     * @param size how large, in the detector's unit
     */
    record Sighting(double seconds, double size) {}

    /** Returns the moment's name in full words, such as "stall". */
    String name();

    /** Returns the unit of its size. */
    Unit unit();

    /** Returns how far a size must lie from the usual to be worth a sentence, in the unit. */
    double noticeable();

    /** Returns the side on which it is notable. */
    Side side();

    /** Returns where the numbers behind it come from: a published source, or "common practice, no source". */
    String source();

    /** Measures a batch; empty where it cannot be measured. */
    Optional<Sighting> look(Phases phases);

    /** Returns the usual size where it is known beforehand, such as 0 s of standing still; empty if only other batches can tell. */
    default OptionalDouble usual() {
        return OptionalDouble.empty();
    }

    /** Tells whether two batches can be compared; unless said otherwise, those of the same lot. */
    default boolean comparable(Batch one, Batch other) {
        return one.lot().orElse("").equals(other.lot().orElse(""));
    }

    /** Tells whether two batches can be compared where the lot has too few; unless said otherwise, any two. */
    default boolean roughlyComparable(Batch one, Batch other) {
        return true;
    }
}
