package parchment.stats;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import parchment.display.Showable;

/** Chooses the penalty of an elastic net by how well whole groups that were left out are predicted. */
public final class ElasticNetChoice implements Showable {
    private static final int PENALTIES = 60;
    private static final double SMALLEST = 1e-3;

    private final HeldOutErrors errors;
    private final List<ElasticNet> fits;

    private ElasticNetChoice(HeldOutErrors errors, List<ElasticNet> fits) {
        this.errors = errors;
        this.fits = fits;
    }

    /**
     * Tries 60 penalties, from the one that leaves no slope down to a thousandth of it.
     *
     * @param folds parts of whole groups (days, cuppings)
     */
    public static ElasticNetChoice of(
            List<String> names, List<double[]> features, double[] response, double mixing, GroupedFolds folds) {
        double largest = ElasticNet.largestPenalty(names, features, response, mixing);
        double[] penalties = IntStream.range(0, PENALTIES)
                .mapToDouble(k -> largest * Math.pow(SMALLEST, k / (PENALTIES - 1.0)))
                .toArray();
        HeldOutErrors errors = HeldOutErrors.of("penalty", penalties, response, folds, (train, test) -> {
            List<double[]> left = FeatureRows.pick(features, test);
            return ElasticNet.path(
                            names,
                            FeatureRows.pick(features, train),
                            MixedDesign.pick(response, train),
                            mixing,
                            penalties)
                    .stream()
                    .map(fit -> fit.predict(left))
                    .toList();
        });
        return new ElasticNetChoice(errors, ElasticNet.path(names, features, response, mixing, penalties));
    }

    /** Returns the errors on left-out groups by penalty. */
    public HeldOutErrors errors() {
        return errors;
    }

    /** Returns the fit to all rows at the penalty with the lowest error. */
    public ElasticNet best() {
        return fits.get(errors.best());
    }

    /** Returns the fit to all rows at the largest penalty within one standard error of the best: fewer features, nearly as good. */
    public ElasticNet simplest() {
        return fits.get(errors.withinOneStandardError());
    }

    /** Returns the penalties tried, from the largest down. */
    public double[] penalties() {
        return Arrays.stream(errors.settings()).toArray();
    }

    @Override
    public String toString() {
        return errors + ". " + best();
    }
}
