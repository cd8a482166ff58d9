package parchment.virtual;

import java.util.ArrayList;
import java.util.List;
import parchment.virtual.chance.Chance;
import parchment.virtual.physics.RoastSimulator;
import parchment.virtual.physics.SimulatedRoast;
import parchment.virtual.physics.SimulatedRoast.Trace;
import parchment.virtual.written.LoggedCurve;
import parchment.virtual.written.LoggedCurve.Reading;

/**
 * Describes a logger: how often it reads, how noisily, and what goes wrong.
 *
 * @param interval seconds between readings
 * @param jitter standard deviation of that interval, s
 * @param noise standard deviation of a reading, °C
 * @param noiseMemory correlation of the noise of neighbouring readings
 * @param gapRate probability that a batch has a gap of 10 to 30 seconds
 * @param spikeRate probability that a batch has spikes
 * @param sentinelRate probability that a batch has readings of 999.9
 * @param lateRate probability that the readings begin 20 to 120 seconds after the charge
 * @param cutRate probability that the readings end 10 to 60 seconds before the drop
 */
record Logger(
        double interval,
        double jitter,
        double noise,
        double noiseMemory,
        double gapRate,
        double spikeRate,
        double sentinelRate,
        double lateRate,
        double cutRate) {
    /** What this logger writes for a broken reading. */
    static final double SENTINEL = 999.9;

    private static final double BEFORE_CHARGE = 40;

    static Logger good() {
        return new Logger(2, 0.05, 0.12, 0.5, 0.05, 0.05, 0.04, 0, 0);
    }

    static Logger coarse() {
        return new Logger(3, 0.15, 0.25, 0.3, 0.1, 0.1, 0.05, 0, 0);
    }

    static Logger inattentive() {
        return new Logger(5, 0.6, 0.35, 0.3, 0.35, 0.15, 0.1, 0.3, 0.15);
    }

    /** Returns the names of the loggers that a scenario can choose from. */
    static List<String> kinds() {
        return List.of("good", "coarse", "inattentive");
    }

    static Logger of(String kind) {
        return switch (kind) {
            case "good" -> good();
            case "coarse" -> coarse();
            case "inattentive" -> inattentive();
            default ->
                throw new IllegalArgumentException(
                        "There is no logger '" + kind + "'. Loggers: " + String.join(", ", kinds()) + ".");
        };
    }

    /**
     * Writes the readings of a batch.
     *
     * @param pressedLate how long after the charge its button was pressed, s; the clock starts there
     */
    LoggedCurve log(SimulatedRoast roast, double pressedLate, Chance chance) {
        double until = roast.drop() + chance.between(2, 7);
        double gapAt = chance.happens(gapRate) ? chance.between(100, roast.drop() - 60) : Double.NaN;
        double gapLength = chance.between(10, 30);
        double spikesAt = chance.happens(spikeRate) ? chance.between(60, roast.drop() - 20) : Double.NaN;
        double sentinelsAt = chance.happens(sentinelRate) ? chance.between(60, roast.drop() - 20) : Double.NaN;
        double drift = chance.normal(0, 0.02);
        double wander = chance.normal(0, noise);
        double fresh = StrictMath.sqrt(1 - noiseMemory * noiseMemory);

        // What never happens with this logger draws nothing, so that it moves nothing drawn after it.
        double from = lateRate > 0 && chance.happens(lateRate) ? chance.between(20, 120) : Double.NEGATIVE_INFINITY;
        if (cutRate > 0 && chance.happens(cutRate)) {
            until = roast.drop() - chance.between(10, 60);
        }

        List<Reading> readings = new ArrayList<>();
        double clock = -BEFORE_CHARGE - chance.between(0, interval);
        for (double at = clock; at <= until; at += interval + chance.normal(0, jitter)) {
            wander = noiseMemory * wander + fresh * chance.normal(0, noise);
            double bean = bean(roast, at, drift) + wander;
            double air = roast.at(Trace.AIR_READING, at) + chance.normal(0, noise);
            boolean spiked = at >= spikesAt && at < spikesAt + 1.5 * interval;
            boolean broken = at >= sentinelsAt && at < sentinelsAt + 2.5 * interval;
            bean = broken ? SENTINEL : spiked ? bean + chance.between(12, 40) : bean;
            boolean gap = at >= gapAt && at < gapAt + gapLength;
            if (!gap && at >= from) {
                // Until the charge the gas stands where the simulator starts its flame.
                double gas = at < 0 ? RoastSimulator.FLAME_BEFORE_CHARGE : roast.at(Trace.GAS, later(at));
                readings.add(new Reading(at - pressedLate, bean, air, gas, roast.at(Trace.AIRFLOW, later(at))));
            }
        }
        return new LoggedCurve(readings);
    }

    /** A setting is written as a step: the sample at the end of its second holds it. */
    private static double later(double at) {
        return StrictMath.max(1, StrictMath.ceil(at));
    }

    /** Before charge the probe creeps in the empty drum; after the drop it turns towards the air. */
    private static double bean(SimulatedRoast roast, double at, double drift) {
        if (at < 0) {
            return roast.at(Trace.BEAN_READING, 0) + drift * at;
        }
        double last = roast.at(Trace.BEAN_READING, at);
        double after = at - roast.drop();
        if (after <= 0) {
            return last;
        }
        double air = roast.at(Trace.AIR_READING, at);
        return last + (air - last) * (1 - StrictMath.exp(-after / 60));
    }
}
