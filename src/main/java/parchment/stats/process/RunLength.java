package parchment.stats.process;

import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import parchment.display.Showable;

/**
 * Tells how many values a control chart takes on average until it signals, for a level that has shifted since the first value.
 *
 * <p>The average run length solves an integral equation (Page 1954 for sums, Crowder 1987 for weighted means), here by
 * Gauss-Legendre quadrature. Values are independent and normal, limits are settled, and the chart starts at its center. With a shift
 * of 0 it is the time between false alarms.
 */
public final class RunLength implements Showable {
    private static final int NODES = 80;

    /** Beyond this many values the equations are singular to working precision; no chart is watched that long. */
    private static final double NEVER = 1e12;

    private static final double SINGULAR = 1e-100;
    private static final NormalDistribution NORMAL = new NormalDistribution();

    private final String chart;
    private final DoubleUnaryOperator average;

    private RunLength(String chart, DoubleUnaryOperator average) {
        this.chart = chart;
        this.average = average;
    }

    /** Tells it for single values between limits at plus and minus a width in standard deviations, in closed form. */
    public static RunLength ofIndividuals(double width) {
        Checks.positive("The width", width);
        return new RunLength(
                "single values, limits at " + Checks.number(width),
                shift -> 1
                        / (NORMAL.cumulativeProbability(-width - shift)
                                + NORMAL.cumulativeProbability(-width + shift)));
    }

    /** Tells it for weighted means; the width is in standard deviations of the settled weighted mean. */
    public static RunLength ofEwma(double weight, double width) {
        Checks.weight(weight);
        Checks.positive("The width", width);
        double limit = width * Math.sqrt(weight / (2 - weight));
        return new RunLength(
                "weighted means, weight " + Checks.number(weight) + ", width " + Checks.number(width),
                shift -> ewma(weight, limit, shift));
    }

    /** Tells it for two-sided sums; allowance and decision interval are in standard deviations of single values. */
    public static RunLength ofCusum(double allowance, double decision) {
        Checks.positive("The allowance", allowance);
        Checks.positive("The decision interval", decision);
        return new RunLength(
                "sums, allowance " + Checks.number(allowance) + ", decision interval " + Checks.number(decision),
                // Both sums start at 0 and cannot both be large, so their rates of signals add up (van Dobben de Bruyn
                // 1968).
                shift -> 1 / (1 / cusum(allowance, decision, shift) + 1 / cusum(allowance, decision, -shift)));
    }

    /** Returns the average run length after a shift of the level in standard deviations of single values. */
    public double at(double shift) {
        return average.applyAsDouble(Checks.finite("The shift", shift));
    }

    private static double ewma(double weight, double limit, double shift) {
        GaussIntegrator nodes = new GaussIntegratorFactory().legendre(NODES, -limit, limit);
        RealMatrix system = new Array2DRowRealMatrix(NODES, NODES);
        double[] fromCenter = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            double kept = (1 - weight) * nodes.getPoint(i);
            for (int j = 0; j < NODES; j++) {
                double jump = (nodes.getPoint(j) - kept) / weight - shift;
                system.setEntry(i, j, (i == j ? 1 : 0) - nodes.getWeight(j) * NORMAL.density(jump) / weight);
            }
            fromCenter[i] = nodes.getWeight(i) * NORMAL.density(nodes.getPoint(i) / weight - shift) / weight;
        }
        return 1 + solve(system).dotProduct(new ArrayRealVector(fromCenter, false));
    }

    /** The sum can rest at exactly 0, so that state has an equation of its own beside those of the nodes. */
    private static double cusum(double allowance, double decision, double shift) {
        GaussIntegrator nodes = new GaussIntegratorFactory().legendre(NODES, 0, decision);
        RealMatrix system = new Array2DRowRealMatrix(NODES + 1, NODES + 1);
        for (int i = 0; i <= NODES; i++) {
            double from = i == 0 ? 0 : nodes.getPoint(i - 1);
            double drift = from + shift - allowance;
            system.setEntry(i, 0, (i == 0 ? 1 : 0) - NORMAL.cumulativeProbability(-drift));
            for (int j = 0; j < NODES; j++) {
                system.setEntry(
                        i,
                        j + 1,
                        (i == j + 1 ? 1 : 0) - nodes.getWeight(j) * NORMAL.density(nodes.getPoint(j) - drift));
            }
        }
        double length = solve(system).getEntry(0);
        return length > 0 && length < NEVER ? length : Double.POSITIVE_INFINITY;
    }

    private static org.hipparchus.linear.RealVector solve(RealMatrix system) {
        return new LUDecomposition(system, SINGULAR)
                .getSolver()
                .solve(new ArrayRealVector(system.getRowDimension(), 1.0));
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%s: a false alarm every %.0f values; a shift of one standard deviation is noticed after %.1f",
                chart,
                at(0),
                at(1));
    }
}
