package parchment.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import parchment.display.Showable;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Wording;
import parchment.stats.linear.CannotFitException;
import parchment.stats.mixed.FTest;

/**
 * Finds out whether one slope describes all lots: which lot goes its own way, and what the slope would be without it; and which lot's
 * batches scatter further than the others'.
 *
 * <p>That slopes differ is Cochran's Q as in {@link Bests}, at 5 in 100; the lot named is the one furthest from the weighted mean of the
 * others in its own error. That a lot scatters is the variance of its batches around the drawn course against that of all others, as F, at
 * 1 in 100 for all lots together (Bonferroni). Either moves the answer of the others, so neither goes without a word.
 */
public final class LotsApart implements Showable {
    /** A lot is said to scatter if chance alone would do as much, in any of the lots, in fewer than this share of logbooks. */
    static final double CHANCE_OF_SCATTER = 0.01;

    private final List<Bests.Own> slopes;
    private final boolean differ;
    private final Optional<Bests.Own> furthest;
    private final Slope without;
    private final List<Scatter> scattering;

    /** Holds how many times as far a lot's batches lie around the course as those of the other lots (ratio of standard deviations). */
    record Scatter(String lot, double times) {}

    private LotsApart(
            List<Bests.Own> slopes,
            boolean differ,
            Optional<Bests.Own> furthest,
            Slope without,
            List<Scatter> scattering) {
        this.slopes = List.copyOf(slopes);
        this.differ = differ;
        this.furthest = furthest;
        this.without = without;
        this.scattering = List.copyOf(scattering);
    }

    static LotsApart of(Analysis analysis) {
        List<Bests.Own> slopes = analysis.bests().map(Bests::own).orElse(List.of());
        boolean differ = analysis.bests().map(Bests::chanceOfDifference).orElse(1.0) < Bests.CHANCE_OF_DIFFERENCE;
        Optional<Bests.Own> furthest = differ && slopes.size() > 2 ? Optional.of(furthest(slopes)) : Optional.empty();
        return new LotsApart(
                slopes,
                differ,
                furthest,
                furthest.map(lot -> without(analysis, lot.lot())).orElse(Slope.MISSING),
                scattering(analysis));
    }

    /** Returns the lot furthest from the weighted mean of the others, in its own error. */
    static Bests.Own furthest(List<Bests.Own> slopes) {
        return slopes.stream()
                .max(Comparator.comparingDouble(lot -> distance(lot, slopes)))
                .orElseThrow();
    }

    private static double distance(Bests.Own lot, List<Bests.Own> slopes) {
        double sum = 0;
        double weighted = 0;
        for (Bests.Own other : slopes) {
            if (other != lot) {
                double weight =
                        1 / (other.slope().standardError() * other.slope().standardError());
                sum += weight;
                weighted += weight * other.slope().estimate();
            }
        }
        double own = lot.slope().standardError();
        return Math.abs(lot.slope().estimate() - weighted / sum) / Math.sqrt(own * own + 1 / sum);
    }

    private static Slope without(Analysis analysis, String lot) {
        Set<String> names = new HashSet<>();
        analysis.todays().batches().stream()
                .filter(batch -> batch.lotPeriod().equals(lot))
                .forEach(batch -> names.add(batch.name()));
        ModelFrame others = analysis.material().only(batch -> !names.contains(batch.name()));
        try {
            Slope slope = FittedScores.of(others, ModelForm.STANDARD).slope();
            return analysis.reliability().corrects() ? analysis.reliability().corrected(slope) : slope;
        } catch (CannotFitException tooFew) {
            return Slope.MISSING;
        }
    }

    private static List<Scatter> scattering(Analysis analysis) {
        FittedScores fitted = analysis.drawn();
        double[] scores = fitted.adjustedBatchScores();
        double[] own = fitted.design().centered();
        Map<String, List<Double>> byLot = new TreeMap<>();
        for (TastedBatch batch : fitted.design().material().batches()) {
            double x = own[batch.position()];
            byLot.computeIfAbsent(batch.lot(), lot -> new ArrayList<>())
                    .add(scores[batch.position()]
                            - fitted.intercept()
                            - fitted.coefficient(ScoreDesign.FEATURE) * x
                            - fitted.coefficient(ScoreDesign.SQUARE) * x * x);
        }
        return scattering(byLot);
    }

    /** Returns the lots whose batches scatter further around the course, from each lot's distances to it. */
    static List<Scatter> scattering(Map<String, List<Double>> byLot) {
        List<Scatter> found = new ArrayList<>();
        for (Map.Entry<String, List<Double>> lot : byLot.entrySet()) {
            double squares = squares(lot.getValue());
            double degrees = lot.getValue().size() - 1.0;
            double otherSquares = 0;
            double otherDegrees = 0;
            for (Map.Entry<String, List<Double>> other : byLot.entrySet()) {
                if (!other.getKey().equals(lot.getKey())) {
                    otherSquares += squares(other.getValue());
                    otherDegrees += other.getValue().size() - 1.0;
                }
            }
            if (degrees < Bests.BATCHES_FOR_SLOPE - 1 || otherDegrees < Bests.BATCHES_FOR_SLOPE - 1) {
                continue;
            }
            double ratio = squares / degrees / (otherSquares / otherDegrees);
            if (new FTest("scatter", ratio, degrees, otherDegrees).probability() < CHANCE_OF_SCATTER / byLot.size()) {
                found.add(new Scatter(lot.getKey(), Math.sqrt(ratio)));
            }
        }
        return found;
    }

    private static double squares(List<Double> values) {
        double mean = values.stream().mapToDouble(Double::doubleValue).average().orElse(0);
        return values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
    }

    /** Says whether the lots' slopes differ by more than chance. */
    public boolean differ() {
        return differ;
    }

    /** Returns the lot whose slope lies furthest from the others'; empty if they do not differ or if there are only two. */
    public Optional<String> furthest() {
        return furthest.map(lot -> TastedBatch.lotWords(lot.lot()));
    }

    /** Returns the slope without that lot, per unit of the feature; missing if there is no such lot. */
    public Slope without() {
        return without;
    }

    /** Returns the lots whose batches scatter further around the course than those of all others. */
    public List<String> scattering() {
        return scattering.stream().map(Scatter::lot).toList();
    }

    /** Returns the sentences for the reader; empty if one slope describes all lots and none scatters. */
    String words(Measure measure) {
        return words(measure, "The lots differ");
    }

    /**
     * Returns the same sentences.
     *
     * @param differing how that the lots differ is told, as in "Among all 183 scored batches the lots do differ"
     */
    String words(Measure measure, String differing) {
        List<String> words = new ArrayList<>();
        if (differ) {
            String each = Wording.list(slopes.stream()
                    .map(lot -> TastedBatch.lotWords(lot.lot()) + " "
                            + Wording.signed(lot.slope().estimate() * measure.step()))
                    .toList());
            words.add(differing + ", so this one slope describes none of them: " + each + " points per "
                    + measure.stepWords() + ".");
            furthest.ifPresent(lot -> words.add(TastedBatch.lotWords(lot.lot()) + " lies furthest from the others"
                    + (without.known()
                            ? "; without it the slope would be " + Wording.signed(without.estimate() * measure.step())
                                    + "."
                            : ".")));
        }
        for (Scatter lot : scattering) {
            words.add(
                    "The batches of " + lot.lot() + " scatter " + Wording.plain(lot.times(), 1)
                            + " times as far around the course as those of the other lots, and every interval here is wider for it.");
        }
        return String.join(" ", words);
    }

    @Override
    public String toString() {
        if (!differ && scattering.isEmpty()) {
            return "No lot goes its own way by more than chance.";
        }
        List<String> words = new ArrayList<>();
        if (differ) {
            words.add("the lots' slopes differ"
                    + furthest().map(lot -> ", most of all that of " + lot).orElse(""));
        }
        if (!scattering.isEmpty()) {
            words.add("batches scatter further in " + Wording.list(scattering()));
        }
        return Wording.sentence(String.join("; ", words)) + ".";
    }
}
