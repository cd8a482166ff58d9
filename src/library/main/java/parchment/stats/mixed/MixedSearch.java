package parchment.stats.mixed;

import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.QuasiNewton;

/**
 * Finds the theta with the lowest criterion.
 *
 * <p>The criterion does not change when a column of a relative factor changes its sign, so the search runs without bounds. Signs are set
 * afterwards so that diagonals are 0 or more. At a diagonal of 0 the first derivative vanishes always; there the derivative by its square
 * decides.
 */
final class MixedSearch {
    /** A diagonal under this is tried at 0. */
    private static final double NEAR_ZERO = 0.02;

    private final MixedSystem system;
    private double lowest;
    double[] theta;
    MixedSystem.Value value;
    int evaluations;
    boolean converged;
    boolean unbounded;

    private MixedSearch(MixedSystem system, double[] start) {
        this.system = system;
        this.theta = start.clone();
        this.value = system.evaluate(theta, true);
        this.lowest = value.criterion;
        this.evaluations = 1;
    }

    static MixedSearch run(MixedSystem system, double[] start) {
        MixedSearch search = new MixedSearch(system, start);
        if (search.value.brokeDown() && start.length > 0) {
            throw new CannotFitException("A mixed model needs a response that differs from row to row by more than its "
                    + "fixed columns give, but in these " + system.rows + " rows they give it exactly.");
        }
        if (start.length == 0) {
            search.converged = true;
            return search;
        }
        for (int round = 0; round < 4; round++) {
            search.descend();
            if (!search.settleZeros()) {
                break;
            }
        }
        search.setSigns();
        search.value = system.evaluate(search.theta, true);
        return search;
    }

    /** The criterion over theta; where the factor breaks down may not be entered. */
    static QuasiNewton.Surface criterion(MixedSystem system) {
        return (theta, gradient) -> {
            MixedSystem.Value at = system.evaluate(theta, true);
            if (at.brokeDown()) {
                return Double.POSITIVE_INFINITY;
            }
            System.arraycopy(at.gradient, 0, gradient, 0, gradient.length);
            return at.criterion;
        };
    }

    private void descend() {
        QuasiNewton search = QuasiNewton.minimum(criterion(system), theta);
        theta = search.place();
        lowest = search.value();
        evaluations += search.evaluations();
        converged = search.converged();
        unbounded |= search.unbounded();
    }

    /** Tries small diagonals at 0; leaves 0 again where the criterion falls with the square. Returns true if the search must go on. */
    private boolean settleZeros() {
        boolean again = false;
        for (int t = 0, k = 0; t < system.products.terms; t++) {
            int size = system.products.sizeOfTerm[t];
            for (int c = 0; c < size; c++) {
                if (size == 1 && Math.abs(theta[k]) < NEAR_ZERO) {
                    again |= settle(k);
                }
                k += size - c;
            }
        }
        return again;
    }

    private boolean settle(int k) {
        double[] zero = theta.clone();
        zero[k] = 0;
        MixedSystem.Value atZero = system.evaluate(zero, true);
        zero[k] = 1e-3;
        MixedSystem.Value near = system.evaluate(zero, true);
        evaluations += 2;
        if (atZero.brokeDown() || near.brokeDown()) {
            return false;
        }
        // The derivative by theta squared, at 0.
        boolean falls = near.gradient[k] < 0;
        if (!falls && atZero.criterion <= lowest + 1e-9) {
            zero[k] = 0;
            theta = zero;
            lowest = atZero.criterion;
            return false;
        }
        if (falls && Math.abs(theta[k]) < 1e-4) {
            zero[k] = 0.1;
            MixedSystem.Value away = system.evaluate(zero, true);
            if (!away.brokeDown()) {
                theta = zero;
                lowest = away.criterion;
                return true;
            }
        }
        return false;
    }

    private void setSigns() {
        for (int t = 0, k = 0; t < system.products.terms; t++) {
            int size = system.products.sizeOfTerm[t];
            for (int c = 0; c < size; c++) {
                boolean negative = theta[k] < 0;
                for (int r = c; r < size; r++, k++) {
                    theta[k] = negative ? -theta[k] : theta[k];
                }
            }
        }
    }
}
