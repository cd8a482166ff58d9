package parchment.virtual.physics;

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

    /** Shares of full flame and full airflow at which the empty drum is held before the charge (assumption). */
    public static final double FLAME_BEFORE_CHARGE = 0.5;

    static final double AIR_BEFORE_CHARGE = 0.3;

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
        VirtualChecks.positive("number of steps per second", steps);
        return new RoastSimulator(machine, probes, room, steps, disturbance);
    }

    public RoastSimulator withDisturbance(Disturbance other) {
        return new RoastSimulator(machine, probes, room, stepsPerSecond, other);
    }

    /** Roasts one batch from charge to drop; a person who never drops is stopped after half an hour. */
    public SimulatedRoast roast(GreenBeans beans, Charge charge, Roaster roaster) {
        DrumBalance batch = new DrumBalance(machine, probes, room, beans, charge);
        RoastRecorder samples = new RoastRecorder();
        samples.add(batch, FLAME_BEFORE_CHARGE, AIR_BEFORE_CHARGE);
        for (int second = 0; second < LONGEST; second++) {
            Roaster.Move move = roaster.next(samples.sight(second));
            if (move.end() == Roaster.End.DROP && second > 0) {
                break;
            }
            batch.set(move, disturbance.at(second));
            for (int i = 0; i < stepsPerSecond; i++) {
                batch.step(1.0 / stepsPerSecond);
            }
            samples.add(batch, move.gas(), move.air());
        }
        return samples.finish(batch);
    }
}
