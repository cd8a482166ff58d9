package parchment.virtual.physics;

import parchment.virtual.physics.SimulatedRoast.Heat;

/** Moves one batch in one drum through time, by the balances of heat and water. */
final class DrumBalance implements RungeKutta {
    /** Positions of the drum's quantities in a state; the beans' come before them. */
    private static final int METAL = BeanPhysics.SIZE;

    private static final int FLAME = METAL + 1;
    private static final int BEAN_READING = METAL + 2;
    private static final int AIR_READING = METAL + 3;
    private static final int HEATS = METAL + 4;
    private static final int SIZE = HEATS + Heat.values().length;

    private final DrumMachine machine;
    private final Probes probes;
    private final Room room;
    private final GreenBeans beans;
    private final Charge charge;
    private final BeanPhysics physics;
    private final double dryMass;
    private final double cover;
    private final double metalToBeans;
    private double[] state = new double[SIZE];
    private double gas;
    private double air;
    private double airToBeans;

    DrumBalance(DrumMachine machine, Probes probes, Room room, GreenBeans beans, Charge charge) {
        this.machine = machine;
        this.probes = probes;
        this.room = room;
        this.beans = beans;
        this.charge = charge;
        physics = new BeanPhysics(beans);
        dryMass = charge.greenMass() / (1 + beans.moisture());
        cover = probes.cover(charge.greenMass());
        metalToBeans = machine.metalToBeans(charge.greenMass());
        double probe = charge.reading() - probes.beanOffset();
        state[BeanPhysics.TEMPERATURE] = charge.greenTemperature();
        state[BeanPhysics.CORE] = charge.greenTemperature();
        state[BeanPhysics.MOISTURE] = beans.moisture();
        state[METAL] = probe + charge.metalAbove();
        state[FLAME] = RoastSimulator.FLAME_BEFORE_CHARGE;
        state[BEAN_READING] = charge.reading();
        // Air between an empty probe and the metal (assumption).
        state[AIR_READING] = probe + 0.6 * charge.metalAbove();
        set(Roaster.Move.settings(1, RoastSimulator.AIR_BEFORE_CHARGE), Disturbance.Moment.NONE);
    }

    /** Moves gas and air, as they are under the moment's disturbance. */
    void set(Roaster.Move move, Disturbance.Moment moment) {
        gas = StrictMath.max(0, move.gas() * moment.gasFactor());
        air = machine.air(move.air()) * moment.airFactor();
        airToBeans = machine.airToBeans(charge.greenMass(), air);
    }

    /** Goes on by the given seconds. */
    void step(double seconds) {
        state = RungeKutta.step(this, state, 0, seconds);
    }

    @Override
    public void rates(double[] at, double seconds, double[] rates) {
        double bean = at[BeanPhysics.TEMPERATURE];
        double metal = at[METAL];
        double inDrum = airTemperature(at);
        double flame = machine.flame() * at[FLAME];
        double intoBeans = airToBeans * (inDrum - bean) + metalToBeans * (metal - bean);
        double loss = machine.loss() * (metal - room.temperature());

        physics.rates(at, intoBeans / dryMass, rates);
        rates[METAL] = (machine.flameOnDrum() * flame
                        + machine.airToMetal() * (inDrum - metal)
                        - metalToBeans * (metal - bean)
                        - loss)
                / machine.metalHeat();
        rates[FLAME] = (gas - at[FLAME]) / machine.flameLag();
        double seen = cover * bean + (1 - cover) * inDrum + probes.beanOffset();
        rates[BEAN_READING] = (seen - at[BEAN_READING]) / probes.beanLag();
        rates[AIR_READING] = (inDrum - at[AIR_READING]) / probes.airLag();
        rates[HEATS + Heat.FLAME.ordinal()] = flame;
        rates[HEATS + Heat.EXHAUST.ordinal()] = air * DrumMachine.AIR_HEAT * (inDrum - room.temperature());
        rates[HEATS + Heat.LOSS.ordinal()] = loss;
        rates[HEATS + Heat.INTO_BEANS.ordinal()] = intoBeans;
        rates[HEATS + Heat.REACTION.ordinal()] = dryMass * rates[BeanPhysics.REACTION];
    }

    /** Returns the air's temperature at which what it takes from the flame equals what it gives to beans, metal and flue. */
    private double airTemperature(double[] at) {
        double flow = air * DrumMachine.AIR_HEAT;
        double flame = machine.flame() * at[FLAME] * (1 - machine.flameOnDrum());
        return (flow * room.temperature()
                        + flame
                        + airToBeans * at[BeanPhysics.TEMPERATURE]
                        + machine.airToMetal() * at[METAL])
                / (flow + airToBeans + machine.airToMetal());
    }

    double bean(int quantity) {
        return state[quantity];
    }

    double metal() {
        return state[METAL];
    }

    double air() {
        return airTemperature(state);
    }

    double beanReading() {
        return state[BEAN_READING];
    }

    double airReading() {
        return state[AIR_READING];
    }

    /** Returns a copy of the whole state, for a check by another rule. */
    double[] state() {
        return state.clone();
    }

    double[] heats() {
        return java.util.Arrays.copyOfRange(state, HEATS, SIZE);
    }

    Charge charge() {
        return charge;
    }

    GreenBeans beans() {
        return beans;
    }
}
