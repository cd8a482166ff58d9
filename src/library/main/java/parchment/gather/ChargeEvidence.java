package parchment.gather;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import parchment.logbook.MarkKind;

/**
 * The basis for placing the charges of a recording: falls of the bean temperature, what was typed, and the zero of its clock.
 *
 * <p>What was typed or written stands where the fall is near it, for the fall is seen some seconds late or early. No two charges are
 * nearer than the shortest roast.
 *
 * @param recording the recording
 * @param seen the falls, rising
 * @param typed the charges that were typed, rising
 * @param zero why second 0 is the charge, as the rest of a sentence; nothing if nobody says so
 */
record ChargeEvidence(Recording recording, List<Double> seen, List<Double> typed, Optional<String> zero) {
    /** A fall is seen within as many seconds of its charge (common practice, no source). */
    static final double CLOSE = 30;

    /** No two charges are nearer, in seconds (common practice, no source). */
    static final double SHORTEST_BATCH = ChargeFinder.SHORTEST_BATCH;

    private static final double SAME_BATCH = Math.nextDown(SHORTEST_BATCH);

    private static final int FEWEST_BEFORE = 2;

    /** Says which charge is taken where two differ. */
    enum Taken {
        WRITTEN,
        FALL
    }

    static ChargeEvidence of(Recording recording, List<Double> seen, Map<String, Optional<MarkKind>> marks) {
        List<Double> typed = recording.events().stream()
                .filter(event ->
                        marks.getOrDefault(event.words(), Optional.empty()).equals(Optional.of(MarkKind.CHARGE)))
                .map(Recording.Event::seconds)
                .toList();
        return new ChargeEvidence(recording, seen, typed, zero(recording));
    }

    private static Optional<String> zero(Recording recording) {
        if (!recording.isElapsed()) {
            return Optional.empty();
        }
        if (new CurveHeading(recording.timeHeading()).isSinceCharge()) {
            return Optional.of("their heading says so");
        }
        List<Double> seconds = recording.seconds();
        boolean counted = seconds.size() > FEWEST_BEFORE
                && seconds.get(FEWEST_BEFORE - 1) < 0
                && seconds.get(seconds.size() - 1) > SHORTEST_BATCH;
        return counted ? Optional.of("they are negative before it") : Optional.empty();
    }

    private static Optional<Double> nearest(List<Double> times, double at, double within) {
        return times.stream()
                .filter(time -> Math.abs(time - at) <= within)
                .min(Comparator.comparingDouble(time -> Math.abs(time - at)));
    }

    /** Returns the typed charges, one a batch: of several within four minutes the one nearest to a fall, and else the first. */
    List<Double> typedOnce() {
        List<Double> once = new ArrayList<>();
        for (int i = 0; i < typed.size(); ) {
            double first = typed.get(i);
            double best = first;
            double apart = apart(first);
            for (; i < typed.size() && typed.get(i) - first < SHORTEST_BATCH; i++) {
                if (apart(typed.get(i)) < apart) {
                    best = typed.get(i);
                    apart = apart(best);
                }
            }
            once.add(best);
        }
        return once;
    }

    private double apart(double at) {
        return nearest(seen, at, SAME_BATCH).map(fall -> Math.abs(fall - at)).orElse(SHORTEST_BATCH);
    }

    /** Returns the typed charges that a fall of the same batch is far from. */
    List<Double> typedFarFromFall() {
        return typedOnce().stream()
                .filter(at -> nearest(seen, at, CLOSE).isEmpty()
                        && nearest(seen, at, SAME_BATCH).isPresent())
                .toList();
    }

    /** Returns the fall that speaks against the zero: the nearest one, where none is close and no charge was typed. */
    Optional<Double> againstZero() {
        return zero.isEmpty() || !typed.isEmpty() || nearest(seen, 0, CLOSE).isPresent()
                ? Optional.empty()
                : nearest(seen, 0, Double.POSITIVE_INFINITY);
    }

    /** Returns the fall that belongs to a typed charge. */
    double fallOf(double typedAt) {
        return nearest(seen, typedAt, SAME_BATCH).orElse(typedAt);
    }

    /**
     * Returns the charges, rising.
     *
     * @param ofTyped what is taken where a fall is far from a typed charge
     * @param ofZero what is taken where a fall is far from the zero
     */
    List<Double> charges(Taken ofTyped, Taken ofZero) {
        List<Double> far = typedFarFromFall();
        TreeSet<Double> charges = new TreeSet<>();
        typedOnce().forEach(at -> charges.add(ofTyped == Taken.FALL && far.contains(at) ? fallOf(at) : at));
        if (zero.isPresent() && typed.isEmpty() && (againstZero().isEmpty() || ofZero == Taken.WRITTEN)) {
            charges.add(0.0);
        }
        List<Double> written = List.copyOf(charges);
        seen.stream()
                .filter(fall -> written.stream().noneMatch(at -> Math.abs(at - fall) < SHORTEST_BATCH))
                .forEach(charges::add);
        return List.copyOf(charges);
    }
}
