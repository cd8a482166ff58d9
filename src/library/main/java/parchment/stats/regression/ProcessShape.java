package parchment.stats.regression;

/** How smooth a Gaussian process is: the shape of its correlation by distance. */
public enum ProcessShape {
    /** Smooth without end: exp(-r^2 / 2). */
    SQUARED_EXPONENTIAL {
        @Override
        double correlation(double r) {
            return Math.exp(-0.5 * r * r);
        }

        @Override
        double bend(double r) {
            return Math.exp(-0.5 * r * r);
        }
    },
    /** Bends twice: Matern's with 5/2; a good default for physical responses. */
    MATERN_FIVE_HALVES {
        @Override
        double correlation(double r) {
            double s = Math.sqrt(5) * r;
            return (1 + s + s * s / 3) * Math.exp(-s);
        }

        @Override
        double bend(double r) {
            double s = Math.sqrt(5) * r;
            return 5.0 / 3 * (1 + s) * Math.exp(-s);
        }
    },
    /** Bends once: Matern's with 3/2. */
    MATERN_THREE_HALVES {
        @Override
        double correlation(double r) {
            double s = Math.sqrt(3) * r;
            return (1 + s) * Math.exp(-s);
        }

        @Override
        double bend(double r) {
            return 3 * Math.exp(-Math.sqrt(3) * r);
        }
    };

    /** The correlation at a distance counted in lengths. */
    abstract double correlation(double r);

    /** Minus the correlation's derivative by r, divided by r: finite at 0. */
    abstract double bend(double r);
}
