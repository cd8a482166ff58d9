package parchment.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import parchment.feature.kind.Role;

/**
 * Finds the controls and facts of the calendar from which a feature cannot be told in one set of scores.
 *
 * <p>For each, the variance inflation 1 / (1 - r^2) of the two side by side (Marquardt 1970, Technometrics 12(3)); beyond 10 the score
 * may have gone with either. Both are counted from the mean of their lot and probe period, and a difference between roast days counts
 * as the model of the scores weighs it. r is taken as the batches stand, and again after the model's other columns are taken out; the
 * larger inflation holds. It does not matter whether the other stands in the model: where two move as one, the model cannot part them.
 * What follows from the feature is not asked.
 */
final class Collinearity {
    /** Beyond this variance inflation two measures cannot be told apart. */
    static final double MOST_INFLATION = 10;

    /** Fewer batches with both measures, or fewer than half of all, say nothing of how the two moved. */
    private static final int FEWEST = 8;

    private static final double LEAST_SHARE = 0.5;

    /** What is left of a measure once other columns are taken out is nothing below this share of its variance. */
    private static final double NOTHING_LEFT = 1e-6;

    private final String feature;
    private final FittedScores fitted;

    /**
     * Holds one measure that moved along.
     *
     * @param name as in "gas in development"
     * @param inflation the variance inflation of the feature with it, from 1 to infinity
     */
    record Twin(String name, double inflation) {}

    private Collinearity(String feature, FittedScores fitted) {
        this.feature = feature;
        this.fitted = fitted;
    }

    /** Returns those beyond the bound, the closest first; empty if the feature can be told from each of them. */
    static List<Twin> of(String feature, FittedScores fitted, List<CollinearFeatures.Other> others) {
        return new Collinearity(feature, fitted).twins(others);
    }

    private List<Twin> twins(List<CollinearFeatures.Other> others) {
        Map<String, ToDoubleFunction<TastedBatch>> asked = new LinkedHashMap<>();
        asked.put("the calendar", batch -> batch.day().toEpochDay());
        asked.put(ScoreDesign.PLACE_IN_DAY, TastedBatch::batchOfTheDay);
        asked.put(ScoreDesign.MASS, TastedBatch::mass);
        for (CollinearFeatures.Other other : others) {
            if (other.role() != Role.FOLLOWS) {
                asked.putIfAbsent(other.name(), batch -> other.values().getOrDefault(batch.name(), Double.NaN));
            }
        }
        asked.remove(feature);
        List<Twin> twins = new ArrayList<>();
        asked.forEach((name, value) -> {
            double inflation = inflation(name, value);
            if (inflation > MOST_INFLATION) {
                twins.add(new Twin(name, inflation));
            }
        });
        twins.sort(Comparator.comparingDouble(twin -> -twin.inflation()));
        return List.copyOf(twins);
    }

    private double inflation(String name, ToDoubleFunction<TastedBatch> value) {
        ModelFrame all = fitted.design().material();
        ModelFrame both = all.only(batch -> Double.isFinite(value.applyAsDouble(batch)));
        int known = both.batches().size();
        if (known < FEWEST || known < LEAST_SHARE * all.batches().size()) {
            return 1;
        }
        ScoreDesign design = ScoreDesign.of(both, fitted.design().form());
        double[] other = both.changed(batch -> batch.withMeasure(value.applyAsDouble(batch), Double.NaN))
                .within();
        List<double[]> measures = List.of(design.centered(), other);
        JointSpread plain = spread(design, measures, design.columns().keySet());
        Set<String> own = new HashSet<>(Set.of(ScoreDesign.FEATURE, ScoreDesign.SQUARE, feature, name));
        if (name.equals("the calendar")) {
            own.add(ScoreDesign.DATE);
        }
        JointSpread beside = spread(design, measures, own);
        double largest = inflation(plain);
        // A measure of which the other columns leave nothing is judged as it stands: what is left is rounding.
        for (int k = 0; k < 2; k++) {
            if (!(beside.covariance(k, k) > NOTHING_LEFT * plain.covariance(k, k))) {
                return largest;
            }
        }
        return Math.max(largest, inflation(beside));
    }

    private static double inflation(JointSpread spread) {
        double product = spread.covariance(0, 0) * spread.covariance(1, 1);
        if (!(product > 0)) {
            return 1;
        }
        double left = 1 - spread.covariance(0, 1) * spread.covariance(0, 1) / product;
        return left > 1e-9 ? 1 / left : Double.POSITIVE_INFINITY;
    }

    private JointSpread spread(ScoreDesign design, List<double[]> measures, Set<String> own) {
        double day = fitted.spread("roast day");
        return JointSpread.of(design, measures, own, day * day, fitted.batchVariance());
    }
}
