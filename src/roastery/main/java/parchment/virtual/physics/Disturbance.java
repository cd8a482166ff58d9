package parchment.virtual.physics;

import parchment.virtual.chance.Chance;

/** Makes gas supply and draught wander during a batch; nobody at the machine sees it. */
public final class Disturbance {
    /** Nothing wanders. */
    static final Disturbance NONE = new Disturbance(new double[0], new double[0]);

    /**
     * Holds the factors of one second.
     *
     * @param gasFactor flame against what the setting should give
     * @param airFactor draught against what the setting should give
     */
    record Moment(double gasFactor, double airFactor) {
        static final Moment NONE = new Moment(1, 1);
    }

    private static final int EVERY = 10;
    private final double[] gas;
    private final double[] air;

    private Disturbance(double[] gas, double[] air) {
        this.gas = gas;
        this.air = air;
    }

    /** Draws slow wandering (time constant about two minutes) with the given standard deviations, as shares. */
    public static Disturbance drawn(Chance chance, double gasSpread, double airSpread) {
        int size = RoastSimulator.LONGEST / EVERY + 2;
        return new Disturbance(wandering(chance, gasSpread, size), wandering(chance, airSpread, size));
    }

    private static double[] wandering(Chance chance, double spread, int size) {
        double keep = StrictMath.exp(-EVERY / 120.0);
        double fresh = StrictMath.sqrt(1 - keep * keep);
        double[] walk = new double[size];
        walk[0] = chance.normal(0, spread);
        for (int i = 1; i < size; i++) {
            walk[i] = keep * walk[i - 1] + fresh * chance.normal(0, spread);
        }
        return walk;
    }

    /** Returns the factors at a second since charge, straight between drawn points. */
    Moment at(int second) {
        if (gas.length == 0) {
            return Moment.NONE;
        }
        int before = second / EVERY;
        double part = (second % EVERY) / (double) EVERY;
        return new Moment(between(gas, before, part), between(air, before, part));
    }

    private static double between(double[] walk, int before, double part) {
        return 1 + walk[before] + part * (walk[before + 1] - walk[before]);
    }
}
