package parchment.virtual;

import parchment.virtual.SimulatedRoast.Heat;
import parchment.virtual.SimulatedRoast.Trace;

/**
 * Roasts a batch in the computer: beans, metal and air on one side, a person at the machine on the other.
 *
 * <p>Lumped balances of heat for the beans and the drum's metal; the air's balance is taken as steady at each instant (the drum
 * holds about 10 g of air that changes about once a second). Solved by the classical fourth-order Runge-Kutta rule with a fixed step;
 * the person acts once a second, so that nothing jumps within a step. RoastSimulatorTest holds it against halved steps and against
 * Hipparchus' adaptive Dormand-Prince rule. Only {@link StrictMath} is used: the same everywhere, bit for bit.
 *
 * <p>Without any disturbance the result depends on nothing but what is given here.
 */
public final class RoastSimulator {
    /** Longest batch, seconds; a person who never drops is stopped there. */
    static final int LONGEST = 1800;
    /** Share of beans cracked at the first pop that a listener hears, when popping is steady, and when it ends (assumptions). */
    static final double FIRST_POP = 0.02;

    static final double STEADY_POPPING = 0.10;
    static final double LAST_POP = 0.95;

    /** Share of the full flame at which the empty drum is held before the charge (assumption). */
    static final double FLAME_BEFORE_CHARGE = 0.5;

    private static final int METAL = BeanPhysics.SIZE;
    private static final int FLAME = METAL + 1;
    private static final int BEAN_READING = METAL + 2;
    private static final int AIR_READING = METAL + 3;
    private static final int HEATS = METAL + 4;
    private static final int SIZE = HEATS + Heat.values().length;

    private final DrumMachine machine;
    private final Probes probes;
    private final Room room;
    private final int stepsPerSecond;
    private final Disturbance disturbance;

    private RoastSimulator(DrumMachine machine, Probes probes, Room room, int stepsPerSecond, Disturbance disturbance) {
        this.machine = machine;
        this.probes = probes;
        this.room = room;
        this.stepsPerSecond = stepsPerSecond;
        this.disturbance = disturbance;
    }

    /** Returns a simulator of a machine with its probes in a mild room, in steps of one second, undisturbed. */
    public static RoastSimulator of(DrumMachine machine, Probes probes) {
        return new RoastSimulator(machine, probes, Room.mild(), 1, Disturbance.NONE);
    }

    /** Returns the simulator of the fitted machine. */
    public static RoastSimulator fitted() {
        return of(DrumMachine.fitted(), Probes.fitted());
    }

    /** Returns the same simulator in another room. */
    public RoastSimulator withRoom(Room other) {
        return new RoastSimulator(machine, probes, other, stepsPerSecond, disturbance);
    }

    /** Returns the same simulator with a finer step. */
    public RoastSimulator withStepsPerSecond(int steps) {
        Checks.positive("number of steps per second", steps);
        return new RoastSimulator(machine, probes, room, steps, disturbance);
    }

    RoastSimulator withDisturbance(Disturbance other) {
        return new RoastSimulator(machine, probes, room, stepsPerSecond, other);
    }

    /** Roasts one batch from charge to drop; a person who never drops is stopped after half an hour. */
    public SimulatedRoast roast(GreenBeans beans, Charge charge, Roaster roaster) {
        Batch batch = new Batch(beans, charge);
        Samples samples = new Samples();
        samples.add(batch, 0, 0);
        for (int second = 0; second < LONGEST; second++) {
            Roaster.Move move = roaster.next(samples.sight(batch, second));
            if (move.end() == Roaster.End.DROP && second > 0) {
                break;
            }
            batch.set(move, disturbance.at(second));
            for (int i = 0; i < stepsPerSecond; i++) {
                batch.step(1.0 / stepsPerSecond);
            }
            samples.add(batch, move.gas(), move.air());
            samples.notice(batch, second + 1);
        }
        return samples.finish(batch);
    }

    /** The state of one batch and its equations. */
    private final class Batch {
        private final GreenBeans beans;
        private final Charge charge;
        private final BeanPhysics physics;
        private final double dryMass;
        private final double cover;
        private final double beanLag;
        private final double metalToBeans;
        private double[] state = new double[SIZE];
        private final double[] beanRates = new double[BeanPhysics.SIZE];
        private double gas;
        private double air;
        private double airToBeans;

        Batch(GreenBeans beans, Charge charge) {
            this.beans = beans;
            this.charge = charge;
            physics = new BeanPhysics(beans);
            dryMass = charge.greenMass() / (1 + beans.moisture());
            cover = probes.cover(charge.greenMass());
            beanLag = probes.beanLag();
            metalToBeans = machine.metalToBeans(charge.greenMass());
            double probe = charge.reading() - probes.beanOffset();
            state[BeanPhysics.TEMPERATURE] = charge.greenTemperature();
            state[BeanPhysics.CORE] = charge.greenTemperature();
            state[BeanPhysics.MOISTURE] = beans.moisture();
            state[METAL] = probe + charge.metalAbove();
            state[FLAME] = FLAME_BEFORE_CHARGE;
            state[BEAN_READING] = charge.reading();
            state[AIR_READING] = probe + 0.6 * charge.metalAbove();
            set(Roaster.Move.settings(1, 0.3), Disturbance.Moment.NONE);
        }

        void set(Roaster.Move move, Disturbance.Moment moment) {
            gas = StrictMath.max(0, move.gas() * moment.gasFactor());
            air = machine.air(move.air()) * moment.airFactor();
            airToBeans = machine.airToBeans(charge.greenMass(), air);
        }

        /** Returns the air's temperature at which what it takes from the flame equals what it gives to beans, metal and flue. */
        double airTemperature(double[] at) {
            double flow = air * DrumMachine.AIR_HEAT;
            double flame = machine.flame() * at[FLAME] * (1 - machine.flameOnDrum());
            return (flow * room.temperature()
                            + flame
                            + airToBeans * at[BeanPhysics.TEMPERATURE]
                            + machine.airToMetal() * at[METAL])
                    / (flow + airToBeans + machine.airToMetal());
        }

        double[] rates(double[] at) {
            double[] rates = new double[SIZE];
            double bean = at[BeanPhysics.TEMPERATURE];
            double metal = at[METAL];
            double inDrum = airTemperature(at);
            double flame = machine.flame() * at[FLAME];
            double intoBeans = airToBeans * (inDrum - bean) + metalToBeans * (metal - bean);
            double loss = machine.loss() * (metal - room.temperature());

            physics.rates(at, intoBeans / dryMass, beanRates);
            System.arraycopy(beanRates, 0, rates, 0, BeanPhysics.SIZE);
            rates[METAL] = (machine.flameOnDrum() * flame
                            + machine.airToMetal() * (inDrum - metal)
                            - metalToBeans * (metal - bean)
                            - loss)
                    / machine.metalHeat();
            rates[FLAME] = (gas - at[FLAME]) / machine.flameLag();
            double seen = cover * bean + (1 - cover) * inDrum + probes.beanOffset();
            rates[BEAN_READING] = (seen - at[BEAN_READING]) / beanLag;
            rates[AIR_READING] = (inDrum - at[AIR_READING]) / probes.airLag();
            rates[HEATS + Heat.FLAME.ordinal()] = flame;
            rates[HEATS + Heat.EXHAUST.ordinal()] = air * DrumMachine.AIR_HEAT * (inDrum - room.temperature());
            rates[HEATS + Heat.LOSS.ordinal()] = loss;
            rates[HEATS + Heat.INTO_BEANS.ordinal()] = intoBeans;
            rates[HEATS + Heat.REACTION.ordinal()] = dryMass * beanRates[BeanPhysics.REACTION];
            return rates;
        }

        void step(double h) {
            double[] first = rates(state);
            double[] second = rates(ahead(first, h / 2));
            double[] third = rates(ahead(second, h / 2));
            double[] fourth = rates(ahead(third, h));
            double[] next = new double[SIZE];
            for (int i = 0; i < SIZE; i++) {
                next[i] = state[i] + h / 6 * (first[i] + 2 * second[i] + 2 * third[i] + fourth[i]);
            }
            state = next;
        }

        private double[] ahead(double[] rates, double h) {
            double[] at = new double[SIZE];
            for (int i = 0; i < SIZE; i++) {
                at[i] = state[i] + h * rates[i];
            }
            return at;
        }
    }

    /** What has been seen of the batch so far. */
    private static final class Samples {
        private final double[][] traces = new double[Trace.values().length][LONGEST + 1];
        private int size;
        private double yellowing = Double.NaN;
        private final double[] crackTimes = {Double.NaN, Double.NaN, Double.NaN};
        private static final double[] CRACK_LEVELS = {FIRST_POP, STEADY_POPPING, LAST_POP};
        private double lastCracked;
        private double lastBrowning;

        void add(Batch batch, double gas, double airflow) {
            double[] state = batch.state;
            put(Trace.BEAN, state[BeanPhysics.TEMPERATURE]);
            put(Trace.METAL, state[METAL]);
            put(Trace.AIR, batch.airTemperature(state));
            put(Trace.BEAN_READING, state[BEAN_READING]);
            put(Trace.AIR_READING, state[AIR_READING]);
            put(Trace.MOISTURE, state[BeanPhysics.MOISTURE]);
            put(Trace.MATTER_LOST, state[BeanPhysics.MATTER_LOST]);
            put(Trace.CRACKED, state[BeanPhysics.CRACKED]);
            put(Trace.GAS, gas);
            put(Trace.AIRFLOW, airflow);
            size++;
        }

        private void put(Trace trace, double value) {
            traces[trace.ordinal()][size] = value;
        }

        void notice(Batch batch, int second) {
            double cracked = batch.state[BeanPhysics.CRACKED];
            double browning = batch.state[BeanPhysics.BROWNING];
            double dose = batch.beans.yellowingDose();
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

        Roaster.Sight sight(Batch batch, int second) {
            double[] readings = traces[Trace.BEAN_READING.ordinal()];
            double rate = second < 30 ? Double.NaN : 2 * (readings[second] - readings[second - 30]);
            return new Roaster.Sight(
                    second,
                    batch.state[BEAN_READING],
                    batch.state[AIR_READING],
                    rate,
                    yellowing,
                    crackTimes[0],
                    batch.state[BeanPhysics.MATTER_LOST]);
        }

        SimulatedRoast finish(Batch batch) {
            double[][] kept = new double[traces.length][];
            for (int i = 0; i < traces.length; i++) {
                kept[i] = java.util.Arrays.copyOf(traces[i], size);
            }
            double[] heats = java.util.Arrays.copyOfRange(batch.state, HEATS, SIZE);
            return new SimulatedRoast(1, kept, heats, yellowing, crackTimes, batch.charge, batch.beans);
        }
    }
}
