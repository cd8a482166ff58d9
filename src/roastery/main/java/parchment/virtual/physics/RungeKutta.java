package parchment.virtual.physics;

/** Gives the rates of change of a state, to be followed by the classical fourth-order Runge-Kutta rule. */
@FunctionalInterface
interface RungeKutta {
    /** Writes the rates of change of a state at a time. */
    void rates(double[] state, double seconds, double[] rates);

    /** Returns the state after one step (Kutta 1901; Abramowitz and Stegun 25.5.10). */
    static double[] step(RungeKutta rule, double[] state, double seconds, double step) {
        int size = state.length;
        double[][] slopes = new double[4][size];
        double[] at = new double[size];
        rule.rates(state, seconds, slopes[0]);
        rule.rates(ahead(state, slopes[0], step / 2, at), seconds + step / 2, slopes[1]);
        rule.rates(ahead(state, slopes[1], step / 2, at), seconds + step / 2, slopes[2]);
        rule.rates(ahead(state, slopes[2], step, at), seconds + step, slopes[3]);
        double[] next = new double[size];
        for (int i = 0; i < size; i++) {
            next[i] = state[i] + step / 6 * (slopes[0][i] + 2 * slopes[1][i] + 2 * slopes[2][i] + slopes[3][i]);
        }
        return next;
    }

    private static double[] ahead(double[] state, double[] slope, double step, double[] at) {
        for (int i = 0; i < state.length; i++) {
            at[i] = state[i] + step * slope[i];
        }
        return at;
    }
}
