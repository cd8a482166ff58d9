package parchment.otherroastery;

import java.util.ArrayList;
import java.util.List;

/**
 * Roasts one batch in steps of half a second and keeps every second of it.
 *
 * <p>Heun's rule (explicit trapezoid). A second probe is followed beside the one that the roaster sees, so that it is known what
 * another fitting would have read of the very same beans.
 */
public final class Course {
    /** Longest roast, s: whoever has not dropped by then drops. */
    static final int LONGEST = 1300;

    private static final int DRUM = 0;
    private static final int AIR = 1;
    private static final int BEAN = 2;
    private static final int WATER = 3;
    private static final int CRACKED = 4;
    private static final int LATELY = 5;
    private static final int LOST = 6;
    private static final int SHEATH = 7;
    private static final int READING = 8;
    private static final int OTHER_SHEATH = 9;
    private static final int OTHER_READING = 10;
    private static final int AIR_READING = 11;
    private static final int SIZE = 12;
    private static final double STEP = 0.5;
    private static final double AIR_PROBE_LAG = 20;
    private static final double EMPTY_DRUM = 130;
    private static final int LOGGED_AFTER = 40;

    private final Start start;
    private final List<double[]> seconds = new ArrayList<>();
    private final List<Hand.Setting> settings = new ArrayList<>();
    private final List<Double> after = new ArrayList<>();

    /**
     * How a batch begins.
     *
     * @param machine the machine on that day
     * @param beans the lot's beans on that day
     * @param mass green mass, kg
     * @param charge reading of the bean probe at the charge, °C
     * @param drumAbove how far the metal is above what the air was, °C
     * @param greenTemperature of the beans, °C
     * @param room °C
     * @param gasFactor what the gas is worth on that day
     * @param probe as the roaster sees it
     * @param otherProbe followed beside it
     */
    public record Start(
            TwoNodeDrum machine,
            Beans beans,
            double mass,
            double charge,
            double drumAbove,
            double greenTemperature,
            double room,
            double gasFactor,
            Probe probe,
            Probe otherProbe) {}

    private Course(Start start) {
        this.start = start;
    }

    /** Roasts until the hand drops the beans. */
    public static Course of(Start start, Hand hand) {
        Course course = new Course(start);
        course.roast(hand);
        return course;
    }

    private void roast(Hand hand) {
        double air = start.charge() - start.probe().offset();
        double[] state = new double[SIZE];
        state[DRUM] = air + start.drumAbove();
        state[AIR] = air;
        state[BEAN] = start.greenTemperature();
        state[WATER] = start.beans().moisture();
        state[SHEATH] = start.charge();
        state[READING] = start.charge();
        state[OTHER_SHEATH] = air + start.otherProbe().offset();
        state[OTHER_READING] = state[OTHER_SHEATH];
        state[AIR_READING] = air + 0.4 * start.drumAbove();
        for (int second = 0; second < LONGEST; second++) {
            seconds.add(state.clone());
            double rate = second < 30 ? Double.NaN : 2 * (state[READING] - seconds.get(second - 30)[READING]);
            Hand.Setting setting = hand.next(new Hand.Sight(second, state[READING], rate, state[CRACKED]));
            settings.add(setting);
            if (setting.act() == Hand.Act.DROP) {
                empty(state);
                return;
            }
            for (double at = 0; at < 1; at += STEP) {
                state = step(state, setting);
            }
        }
    }

    /** The probe hangs on in the empty drum, in air that the open door cools; its lags make it go on rising for a moment. */
    private void empty(double[] dropped) {
        Probe probe = start.probe();
        double sees = EMPTY_DRUM + probe.offset();
        double sheath = dropped[SHEATH];
        double reading = dropped[READING];
        for (int second = 0; second <= LOGGED_AFTER; second++) {
            after.add(reading);
            for (double at = 0; at < 1; at += STEP) {
                double warmer = STEP * (sees - sheath) / probe.sheath();
                reading += STEP * (sheath - reading) / probe.core();
                sheath += warmer;
            }
        }
    }

    private double[] step(double[] state, Hand.Setting setting) {
        double[] first = rates(state, setting);
        double[] ahead = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            ahead[i] = state[i] + STEP * first[i];
        }
        double[] second = rates(ahead, setting);
        for (int i = 0; i < SIZE; i++) {
            ahead[i] = state[i] + STEP / 2 * (first[i] + second[i]);
        }
        return ahead;
    }

    private double[] rates(double[] at, Hand.Setting setting) {
        TwoNodeDrum machine = start.machine();
        Beans beans = start.beans();
        double dry = start.mass() / (1 + beans.moisture());
        double flame = machine.flame() * start.gasFactor() * setting.gas() / 100;
        double airToBeans = machine.airToBeansAt(setting.airflow(), start.mass()) * (at[AIR] - at[BEAN]);
        double drumToBeans = machine.drumToBeans() * (at[DRUM] - at[BEAN]) + machine.radiation(at[DRUM], at[BEAN]);
        double airToDrum = machine.airToDrum() * (at[AIR] - at[DRUM]);
        double drying = beans.drying(at[BEAN], at[WATER]);
        double cracking = beans.cracking(at[BEAN], at[CRACKED]);
        double[] rates = new double[SIZE];
        rates[DRUM] =
                (machine.flameOnDrum() * flame + airToDrum - drumToBeans - machine.wall() * (at[DRUM] - start.room()))
                        / machine.drumHeat();
        rates[AIR] = ((1 - machine.flameOnDrum()) * flame
                        - machine.draughtAt(setting.airflow()) * (at[AIR] - start.room())
                        - airToBeans
                        - airToDrum)
                / machine.airHeat();
        rates[BEAN] = ((airToBeans + drumToBeans) / dry + beans.glowing(at[LATELY]) - Beans.waterHeat() * drying)
                / Beans.heatCapacity(at[WATER]);
        rates[WATER] = -drying;
        rates[CRACKED] = cracking;
        rates[LATELY] = cracking - Beans.fading(at[LATELY]);
        rates[LOST] = Beans.matterLoss(at[BEAN]);
        lag(start.probe(), at, rates, SHEATH);
        lag(start.otherProbe(), at, rates, OTHER_SHEATH);
        rates[AIR_READING] = (at[AIR] - at[AIR_READING]) / AIR_PROBE_LAG;
        return rates;
    }

    private void lag(Probe probe, double[] at, double[] rates, int sheath) {
        rates[sheath] = (probe.sees(at[BEAN], at[AIR], start.mass()) - at[sheath]) / probe.sheath();
        rates[sheath + 1] = (at[sheath] - at[sheath + 1]) / probe.core();
    }

    /** Returns how it began, from which the same beans can be roasted by another hand. */
    public Start start() {
        return start;
    }

    /** Returns when the beans were dropped, s after the charge. */
    public int drop() {
        return seconds.size() - 1;
    }

    /** Returns the beans' own temperature, °C. */
    public double bean(double second) {
        return at(BEAN, second);
    }

    /** Returns the bean probe's reading, °C, up to 40 s after the drop. */
    public double reading(double second) {
        if (second <= drop()) {
            return at(READING, second);
        }
        double since = Math.min(LOGGED_AFTER, second - drop());
        int before = (int) Math.floor(since);
        double share = since - before;
        return after.get(before) * (1 - share) + after.get(Math.min(LOGGED_AFTER, before + 1)) * share;
    }

    /** Returns what the other probe would have read, °C. */
    public double otherReading(double second) {
        return at(OTHER_READING, second);
    }

    /** Returns the reading of the probe in the air, °C. */
    public double airReading(double second) {
        return at(AIR_READING, second);
    }

    /** Returns what the hand had set. */
    public Hand.Setting setting(double second) {
        return settings.get(Math.max(0, Math.min(drop(), (int) Math.floor(second))));
    }

    /** Returns the first second at which so large a share of the beans had cracked; the drop if none. */
    public int cracked(double share) {
        return first(CRACKED, share);
    }

    /** Returns the first second at which the beans looked yellow. */
    public int yellow() {
        return first(BEAN, Beans.YELLOW);
    }

    /** Returns the share of the green mass that is gone at the drop. */
    public double massLoss() {
        double green = start.beans().moisture();
        return (green - at(WATER, drop()) + at(LOST, drop())) / (1 + green);
    }

    private int first(int quantity, double value) {
        for (int second = 0; second < seconds.size(); second++) {
            if (seconds.get(second)[quantity] >= value) {
                return second;
            }
        }
        return drop();
    }

    private double at(int quantity, double second) {
        double inside = Math.max(0, Math.min(drop(), second));
        int before = (int) Math.floor(inside);
        int after = Math.min(drop(), before + 1);
        double share = inside - before;
        return seconds.get(before)[quantity] * (1 - share) + seconds.get(after)[quantity] * share;
    }
}
