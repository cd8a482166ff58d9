package parchment.trial.sealed;

import java.util.List;
import parchment.quantity.TemperatureUnit;

/**
 * Holds what was stated before anything was drawn; an answer shows it and never chooses it.
 *
 * @param trial the trial's name
 * @param score the attribute that is scored
 * @param control what chance chose
 * @param targets the different targets, lowest first, as the control's unit keeps them; two at least
 * @param smallestDifference the smallest difference of the score that matters, in points from the lowest target to the highest, above 0
 * @param looks how many looks at the scores were planned: 1, or 2 at 0.0294 each
 * @param lostBatch how far from its set's mean a lost batch may have lain, in points, above 0
 * @param cuppers who was to cup, by name
 * @param cups how many cups of each batch each cupper was to score
 * @param reader the scale in which temperatures are shown
 */
public record TrialTerms(
        String trial,
        String score,
        TrialControl control,
        List<Double> targets,
        double smallestDifference,
        int looks,
        double lostBatch,
        List<String> cuppers,
        int cups,
        TemperatureUnit reader) {

    /** How far a lost batch may have lain from its set's mean where nothing else was stated: one point, a choice of this project. */
    public static final double USUAL_LOST_BATCH = 1;

    /** @throws IllegalArgumentException if targets, looks, or the smallest difference cannot be those of a trial */
    public TrialTerms {
        targets = targets.stream().distinct().sorted().toList();
        cuppers = List.copyOf(cuppers);
        if (targets.size() < 2 || targets.stream().anyMatch(target -> !Double.isFinite(target))) {
            throw new IllegalArgumentException(
                    "A trial needs two different targets or more, but trial " + trial + " has " + targets + ".");
        }
        if (looks != 1 && looks != 2) {
            throw new IllegalArgumentException("A trial is looked at once, or twice at 0.0294 each, but for trial "
                    + trial + " " + looks + " looks were stated.");
        }
        positive("The smallest difference that matters", smallestDifference);
        positive("What a lost batch may have been away from its set's mean", lostBatch);
    }

    private static void positive(String what, double points) {
        if (!(points > 0) || Double.isInfinite(points)) {
            throw new IllegalArgumentException(what + " must be a number of points above 0, but it is " + points + ".");
        }
    }

    /** Returns the distance from the lowest target to the highest. */
    public double span() {
        return targets.get(targets.size() - 1) - targets.get(0);
    }

    /** Returns the chance of a false finding that each look may have. */
    public double chance() {
        return looks == 1 ? ONE_LOOK : EACH_OF_TWO_LOOKS;
    }

    /** The chance of a false finding where the scores are looked at once. */
    public static final double ONE_LOOK = 0.05;

    /**
     * The chance of a false finding of each of two looks that together keep 0.05.
     *
     * @see <a href="https://doi.org/10.1093/biomet/64.2.191">Pocock 1977, Biometrika 64:191; the number from memory</a>
     */
    public static final double EACH_OF_TWO_LOOKS = 0.0294;
}
