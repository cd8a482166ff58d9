package parchment.virtual.physics;

import java.util.Locale;

/**
 * The outcome of one simulation: what really happened in the drum, and what ideal probes would have read.
 *
 * <p>Sampled at even steps from charge to drop; both ends are included.
 */
public final class SimulatedRoast {
    /** Names what is sampled along a simulated batch. */
    public enum Trace {
        /** Mean temperature of the beans, °C. */
        BEAN,
        /** Temperature of the drum's metal, °C. */
        METAL,
        /** Temperature of the air in the drum, °C. */
        AIR,
        /** Reading of the bean probe before the logger's noise, °C. */
        BEAN_READING,
        /** Reading of the air probe before the logger's noise, °C. */
        AIR_READING,
        /** Water per dry matter charged, kg/kg. */
        MOISTURE,
        /** Dry matter lost, share. */
        MATTER_LOST,
        /** Share of the beans that have cracked. */
        CRACKED,
        /** Share of full gas. */
        GAS,
        /** Share of full airflow. */
        AIRFLOW
    }

    /** Names the heats whose sums are kept, in kJ over the whole batch. */
    public enum Heat {
        /** From the flame. */
        FLAME,
        /** Out with the air, above room air. */
        EXHAUST,
        /** From the metal to the room. */
        LOSS,
        /** From air and metal into the beans. */
        INTO_BEANS,
        /** From reactions in the beans. */
        REACTION
    }

    private final double step;
    private final double[][] traces;
    /** Samples from the charge on that were forgotten. */
    private final int leftOut;

    private final double turningPoint;
    private final double[] heats;
    private final double yellowing;
    private final double[] crackTimes;
    private final Charge charge;
    private final GreenBeans beans;

    SimulatedRoast(
            double step,
            double[][] traces,
            double[] heats,
            double yellowing,
            double[] crackTimes,
            Charge charge,
            GreenBeans beans) {
        this(
                step,
                traces,
                0,
                lowest(traces[Trace.BEAN_READING.ordinal()]) * step,
                heats,
                yellowing,
                crackTimes,
                charge,
                beans);
    }

    private SimulatedRoast(
            double step,
            double[][] traces,
            int leftOut,
            double turningPoint,
            double[] heats,
            double yellowing,
            double[] crackTimes,
            Charge charge,
            GreenBeans beans) {
        this.step = step;
        this.traces = traces;
        this.leftOut = leftOut;
        this.turningPoint = turningPoint;
        this.heats = heats;
        this.yellowing = yellowing;
        this.crackTimes = crackTimes;
        this.charge = charge;
        this.beans = beans;
    }

    /** Returns the same roast with only its last two samples, from which all that concerns the drop is told. */
    public SimulatedRoast endOnly() {
        double[][] ends = new double[traces.length][];
        for (int i = 0; i < traces.length; i++) {
            ends[i] = java.util.Arrays.copyOfRange(traces[i], traces[i].length - 2, traces[i].length);
        }
        return new SimulatedRoast(step, ends, size() - 2, turningPoint, heats, yellowing, crackTimes, charge, beans);
    }

    /** Returns how many samples there are. */
    public int size() {
        return leftOut + traces[0].length;
    }

    /** Returns the seconds between samples. */
    public double step() {
        return step;
    }

    /**
     * Returns one sample; the first, at charge, is number 0.
     *
     * @throws ArrayIndexOutOfBoundsException if there is no such sample, or it was forgotten after the batch was written
     */
    public double sample(Trace trace, int number) {
        return traces[trace.ordinal()][number - leftOut];
    }

    /** Returns a trace at a time since charge, straight between samples; the ends are held beyond charge and drop. */
    public double at(Trace trace, double seconds) {
        double[] values = traces[trace.ordinal()];
        double place = StrictMath.max(0, StrictMath.min(size() - 1, seconds / step));
        int before = (int) StrictMath.min(size() - 2, StrictMath.floor(place));
        double low = values[before - leftOut];
        return low + (place - before) * (values[before - leftOut + 1] - low);
    }

    /** Returns the first time, in seconds since the given one, at which a trace passes a value upwards; missing if it never does. */
    public double passes(Trace trace, double value, double after) {
        double[] values = traces[trace.ordinal()];
        for (int i = (int) StrictMath.max(1, StrictMath.ceil(after / step)); i < values.length; i++) {
            if (values[i] >= value && values[i - 1] < value) {
                return step * (i - 1 + (value - values[i - 1]) / (values[i] - values[i - 1]));
            }
        }
        return Double.NaN;
    }

    /** Returns the drop, seconds since charge. */
    public double drop() {
        return step * (size() - 1);
    }

    /** Returns when the beans turned yellow, seconds since charge; missing if they never did. */
    public double yellowing() {
        return yellowing;
    }

    /** Returns when the first beans popped, seconds since charge; missing if none did. */
    public double firstCrackStart() {
        return crackTimes[0];
    }

    /** Returns when the popping was steady, seconds since charge; missing if it never was. */
    public double steadyCracking() {
        return crackTimes[1];
    }

    /** Returns when the last beans popped, seconds since charge; missing if the drop came first. */
    public double firstCrackEnd() {
        return crackTimes[2];
    }

    /** Returns the lowest bean-probe reading's time, seconds since charge. */
    public double turningPoint() {
        return turningPoint;
    }

    private static int lowest(double[] values) {
        int lowest = 0;
        for (int i = 1; i < values.length; i++) {
            if (values[i] < values[lowest]) {
                lowest = i;
            }
        }
        return lowest;
    }

    /** Returns a heat summed from charge to drop, kJ. */
    public double heat(Heat heat) {
        return heats[heat.ordinal()];
    }

    /** Returns how the batch began. */
    public Charge charge() {
        return charge;
    }

    /** Returns the beans. */
    public GreenBeans beans() {
        return beans;
    }

    /** Returns the dry matter that was charged, kg. */
    public double dryMass() {
        return charge.greenMass() / (1 + beans.moisture());
    }

    /** Returns the mass that left the drum, kg. */
    public double roastedMass() {
        int last = size() - 1;
        return dryMass() * (1 - sample(Trace.MATTER_LOST, last) + sample(Trace.MOISTURE, last));
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "simulated batch of %.2f kg on an invented machine: do not roast; drop after %.0f s at a reading of %.1f °C",
                charge.greenMass(),
                drop(),
                sample(Trace.BEAN_READING, size() - 1));
    }
}
