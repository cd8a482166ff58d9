package parchment.virtual.physics;

import java.util.function.DoubleUnaryOperator;

/**
 * Roasts beans in air of a given temperature, as in a laboratory roaster whose air is held and whose walls do not touch the beans.
 *
 * <p>This is how the bean's own physics is held against published measurements, apart from any drum.
 */
public final class AirBath {
    private final GreenBeans beans;
    private final double transfer;

    private AirBath(GreenBeans beans, double transfer) {
        this.beans = beans;
        this.transfer = transfer;
    }

    /**
     * Returns a bath.
     *
     * @param beans the beans
     * @param transfer heat from air to the beans of one kilogram of dry matter, per degree, kW/K
     */
    public static AirBath of(GreenBeans beans, double transfer) {
        VirtualChecks.positive("heat from air to beans", transfer);
        return new AirBath(beans, transfer);
    }

    /**
     * Holds the beans at one instant.
     *
     * @param seconds since the beans met the air
     * @param celsius temperature, °C
     * @param moisture water per dry matter charged, kg/kg
     * @param massLoss share of the green mass that is gone
     */
    public record Instant(double seconds, double celsius, double moisture, double massLoss) {}

    /**
     * Returns the beans second by second, from the start on.
     *
     * @param air temperature of the air, °C, over seconds
     * @param seconds how long; at least one
     */
    public java.util.List<Instant> roast(DoubleUnaryOperator air, int seconds) {
        VirtualChecks.positive("number of seconds", seconds);
        BeanPhysics physics = new BeanPhysics(beans);
        double[] state = new double[BeanPhysics.SIZE];
        state[BeanPhysics.TEMPERATURE] = 21;
        state[BeanPhysics.CORE] = 21;
        state[BeanPhysics.MOISTURE] = beans.moisture();
        RungeKutta rule = (at, time, rates) ->
                physics.rates(at, transfer * (air.applyAsDouble(time) - at[BeanPhysics.TEMPERATURE]), rates);
        java.util.List<Instant> instants = new java.util.ArrayList<>();
        instants.add(instant(0, state));
        for (int second = 0; second < seconds; second++) {
            state = RungeKutta.step(rule, state, second, 1);
            instants.add(instant(second + 1, state));
        }
        return instants;
    }

    private Instant instant(double seconds, double[] state) {
        double left = (1 - state[BeanPhysics.MATTER_LOST] + state[BeanPhysics.MOISTURE]) / (1 + beans.moisture());
        return new Instant(seconds, state[BeanPhysics.TEMPERATURE], state[BeanPhysics.MOISTURE], 1 - left);
    }
}
