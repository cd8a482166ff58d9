package parchment.stats.regression;

/** A curve with parameters: what a nonlinear model says of one row. */
@FunctionalInterface
public interface ResponseCurve {
    /**
     * Returns the expected response.
     *
     * @param x the row's values, one per predictor
     * @param parameters the parameters, in the order of the starting values; not to be changed
     */
    double value(double[] x, double[] parameters);
}
