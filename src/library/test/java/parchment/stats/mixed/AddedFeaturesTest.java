package parchment.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class AddedFeaturesTest {

    /** The added feature's statistic at fixed variances is the t value of the refitted model when the variances stay the same. */
    @Test
    void addedFeatureAgreesWithARefitAtTheSameVariances() {
        MixedDesign design = MixedDesignTest.panel(2, 40, 4);
        MixedDesign without = design.withoutFixed("x");
        List<String> batch = design.randomTerms().get(2).groups();
        double[] x = design.fixed().get(1).columns().get(0);
        LinearMixedModel model = without.fit();
        AddedFeatures added = AddedFeatures.to(model, batch);
        double[] byBatch = added.units().stream()
                .mapToDouble(unit -> x[batch.indexOf(unit)])
                .toArray();
        // Fixed effects at given variances, by the mixed model equations of the larger design.
        MixedRows rows = MixedRows.of(design);
        MixedSystem system = new MixedSystem(rows, Likelihood.RESTRICTED);
        system.evaluate(model.innerTheta(), false);
        double[] coefficients = rows.basis.backSolve(system.coefficients().clone());
        double[] taken = rows.basis.backSolve(rows.taken);
        double slope = coefficients[1] + taken[1];
        double error = model.residualStandardDeviation()
                * Math.sqrt(rows.basis.sandwich(system.coefficientCovariance())[1][1]);
        assertEquals(slope, added.slope("x", byBatch).estimate(), 1e-9);
        assertEquals(slope / error, added.statistic(byBatch), 1e-9);
        assertTrue(Double.isNaN(added.statistic(new double[byBatch.length])));
        double[] other = new double[byBatch.length];
        Arrays.setAll(other, u -> Math.sin(u) + byBatch[u]);
        double[] together = added.statistics(List.of(byBatch, new double[byBatch.length], other));
        assertEquals(added.statistic(byBatch), together[0], 1e-12);
        assertTrue(Double.isNaN(together[1]));
        assertEquals(added.statistic(other), together[2], 1e-12);
    }
}
