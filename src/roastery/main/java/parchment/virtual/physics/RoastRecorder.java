package parchment.virtual.physics;

import java.util.Arrays;
import parchment.virtual.physics.SimulatedRoast.Trace;

/** Keeps one sample a second of a batch, and notices when its beans turn yellow and crack. */
final class RoastRecorder {
    private static final double[] CRACK_LEVELS = {
        RoastSimulator.FIRST_POP, RoastSimulator.STEADY_POPPING, RoastSimulator.LAST_POP
    };

    private final double[][] traces = new double[Trace.values().length][RoastSimulator.LONGEST + 1];
    private final double[] crackTimes = {Double.NaN, Double.NaN, Double.NaN};
    private int size;
    private double yellowing = Double.NaN;
    private double lastCracked;
    private double lastBrowning;

    /** Adds a sample; gas and airflow are those of the second before it. */
    void add(DrumBalance batch, double gas, double airflow) {
        put(Trace.BEAN, batch.bean(BeanPhysics.TEMPERATURE));
        put(Trace.METAL, batch.metal());
        put(Trace.AIR, batch.air());
        put(Trace.BEAN_READING, batch.beanReading());
        put(Trace.AIR_READING, batch.airReading());
        put(Trace.MOISTURE, batch.bean(BeanPhysics.MOISTURE));
        put(Trace.MATTER_LOST, batch.bean(BeanPhysics.MATTER_LOST));
        put(Trace.CRACKED, batch.bean(BeanPhysics.CRACKED));
        put(Trace.GAS, gas);
        put(Trace.AIRFLOW, airflow);
        notice(batch, size);
        size++;
    }

    private void put(Trace trace, double value) {
        traces[trace.ordinal()][size] = value;
    }

    private void notice(DrumBalance batch, int second) {
        double cracked = batch.bean(BeanPhysics.CRACKED);
        double browning = batch.bean(BeanPhysics.BROWNING);
        double dose = batch.beans().yellowingDose();
        if (Double.isNaN(yellowing) && browning >= dose) {
            yellowing = second - (browning - dose) / (browning - lastBrowning);
        }
        for (int i = 0; i < CRACK_LEVELS.length; i++) {
            if (Double.isNaN(crackTimes[i]) && cracked >= CRACK_LEVELS[i]) {
                crackTimes[i] = second - (cracked - CRACK_LEVELS[i]) / (cracked - lastCracked);
            }
        }
        lastCracked = cracked;
        lastBrowning = browning;
    }

    /** Returns what the person at the machine knows at a second that has been sampled. */
    Roaster.Sight sight(int second) {
        double[] readings = traces[Trace.BEAN_READING.ordinal()];
        double rate = second < 30 ? Double.NaN : 2 * (readings[second] - readings[second - 30]);
        return new Roaster.Sight(
                second,
                readings[second],
                traces[Trace.AIR_READING.ordinal()][second],
                rate,
                yellowing,
                crackTimes[0],
                traces[Trace.MATTER_LOST.ordinal()][second]);
    }

    SimulatedRoast finish(DrumBalance batch) {
        double[][] kept = new double[traces.length][];
        for (int i = 0; i < traces.length; i++) {
            kept[i] = Arrays.copyOf(traces[i], size);
        }
        return new SimulatedRoast(1, kept, batch.heats(), yellowing, crackTimes, batch.charge(), batch.beans());
    }
}
