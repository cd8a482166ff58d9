package parchment.stats.local;

/**
 * Sets how the weight of a neighbour falls with its distance; zero beyond the half-window, so that the work stays local.
 */
public enum KernelShape {
    /** All neighbours in the window count the same; on equal spacing this is the filter of Savitzky and Golay. */
    UNIFORM {
        @Override
        double weight(double share) {
            return share <= 1 + 1e-9 ? 1 : 0;
        }
    },
    /** (1 - |u|^3)^3: near neighbours count most and the weight fades out smoothly; Cleveland 1979. The default. */
    TRICUBE {
        @Override
        double weight(double share) {
            if (share >= 1) {
                return 0;
            }
            double rest = 1 - share * share * share;
            return rest * rest * rest;
        }
    },
    /** 1 - u^2, the kernel of least mean squared error in the interior; Epanechnikov 1969. */
    EPANECHNIKOV {
        @Override
        double weight(double share) {
            return share >= 1 ? 0 : 1 - share * share;
        }
    };

    /** Returns the weight at a distance given as a share (0 or more) of the half-window. */
    abstract double weight(double share);
}
