package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.virtual.physics.AirBath;
import parchment.virtual.physics.Charge;
import parchment.virtual.physics.GreenBeans;
import parchment.virtual.physics.ReferenceRoaster;
import parchment.virtual.physics.RoastSimulator;
import parchment.virtual.physics.SimulatedRoast;
import parchment.virtual.physics.SimulatedRoast.Trace;
import parchment.virtual.written.VirtualBatch;

class LossOfMassTest {
    /** kJ/mol, by the roaster's temperature; source beside the test that misses it. */
    private static final double BY_THE_ROASTER = 52.27;

    /**
     * Hernández, Heyd, Irles, Valdovinos and Trystram 2007, "Analysis of the heat and mass transfer during coffee batch roasting",
     * J. Food Eng. 78:1141-1148, abstract: air at 190 to 300 °C for 10 minutes takes beans from 10.5 % to 0-7 % moisture, dry basis.
     * The heat transfer of their roaster is not in the abstract; the range must hold for any that a small hot-air roaster has.
     */
    @Test
    @Tag("agrees-with")
    void hotAirDriesBeansAsHernandezAndOthersMeasured() {
        GreenBeans beans = GreenBeans.ordinary().withMoisture(0.105);
        for (double transfer : new double[] {0.01, 0.015, 0.02, 0.03}) {
            double before = 0.105;
            for (double air : new double[] {190, 220, 250, 280, 300}) {
                List<AirBath.Instant> instants = AirBath.of(beans, transfer).roast(seconds -> air, 600);
                double moisture = instants.get(600).moisture();
                assertTrue(moisture >= 0 && moisture <= 0.07, air + " °C: " + moisture);
                assertTrue(moisture < before, "hotter air leaves less water");
                assertTrue(instants.get(600).celsius() < air + 2);
                before = moisture;
            }
            assertTrue(before < 0.01, "next to nothing is left at 300 °C: " + before);
        }
    }

    /**
     * Our own number, pinned: the slope of the loss of mass over the beans' temperature inside one drum roast, from 1 % of mass lost to
     * the drop. The loss of dry matter was fitted at one setting so that it comes to the 52.27 kJ/mol of {@link #BY_THE_ROASTER}, which
     * is another quantity; this holds that the fit stands at other masses and settings, not that it agrees with anything.
     */
    @Test
    void theLossOfMassByTheBeansTemperatureIsAsItWasFitted() {
        double sum = 0;
        int count = 0;
        for (double mass : new double[] {1.4, 2.1, 2.8}) {
            for (double gas : new double[] {0.7, 0.79, 0.9}) {
                double energy = apparentEnergy(mass, gas);
                assertEquals(BY_THE_ROASTER, energy, 7, mass + " kg, gas " + gas);
                sum += energy;
                count++;
            }
        }
        assertEquals(BY_THE_ROASTER, sum / count, 2);
    }

    /**
     * Vargas-Elías et al. 2016, "Kinetics of mass loss of arabica coffee during roasting process", Eng. Agríc. 36(2):300-308,
     * abstract: samples of 350 g with 0.1217 kg/kg of water to a commercial degree in a roaster that falls from 285, 325, 345 and
     * 380 °C to 255, 285, 305 and 335 °C; a constant rate of mass loss each, over the roaster's temperature 52.27 kJ/mol. What is a
     * commercial degree (here 15 % of mass lost) and how the roaster falls (here evenly) the abstract does not say. Our beans in air
     * that falls so give a third of it, however well the air gives its heat: a miss, which docs/virtual-roastery.md tells.
     */
    @Test
    void theLossOfMassByTheRoastersTemperatureIsAThirdOfThePublishedOne() {
        for (double transfer : new double[] {0.01, 0.02, 0.03}) {
            double energy = energyByTheRoaster(transfer);
            assertTrue(energy > 15 && energy < 18, energy + " kJ/mol at " + transfer);
            assertTrue(energy < BY_THE_ROASTER / 2.5);
        }
    }

    private static double energyByTheRoaster(double transfer) {
        double[][] roasters = {{285, 255}, {325, 285}, {345, 305}, {380, 335}};
        List<double[]> points = new ArrayList<>();
        for (double[] roaster : roasters) {
            double seconds = 600;
            for (int turn = 0; turn < 6; turn++) {
                seconds = secondsToFifteenPerCent(transfer, roaster[0], roaster[1], seconds);
            }
            points.add(new double[] {1 / ((roaster[0] + roaster[1]) / 2 + 273.15), Math.log(0.15 / seconds)});
        }
        return -8.314462618e-3 * slope(points);
    }

    private static double secondsToFifteenPerCent(double transfer, double from, double to, double roast) {
        return AirBath.of(GreenBeans.ordinary().withMoisture(0.1217), transfer)
                .roast(seconds -> from + (to - from) * Math.min(1, seconds / roast), 1200)
                .stream()
                .filter(instant -> instant.massLoss() >= 0.15)
                .findFirst()
                .orElseThrow()
                .seconds();
    }

    private static double slope(List<double[]> points) {
        double x = points.stream().mapToDouble(p -> p[0]).average().orElseThrow();
        double y = points.stream().mapToDouble(p -> p[1]).average().orElseThrow();
        return points.stream().mapToDouble(p -> (p[0] - x) * (p[1] - y)).sum()
                / points.stream().mapToDouble(p -> (p[0] - x) * (p[0] - x)).sum();
    }

    /**
     * The fitted number in whole simulated logbooks: other machines, habits, lots and weather than the one setting. Where the gas is
     * moved as usual the mean stays within 5 kJ/mol and each batch within 10. Where somebody chases the curve the rise of temperature
     * swings, and the slope is flatter.
     */
    @Test
    void soItIsInSimulatedLogbooksUnlessSomebodyChasesTheCurve() {
        for (String scenario : List.of("harbour", "curve-chaser", "air-steers", "market-table")) {
            List<Double> usual = new ArrayList<>();
            List<Double> chased = new ArrayList<>();
            for (VirtualBatch batch : VirtualRoastery.of(Scenario.named(scenario))
                    .withBatches(40)
                    .run()
                    .batches()) {
                (batch.operator().equals("Olan") ? chased : usual).add(apparentEnergy(batch.roast()));
            }
            assertEquals(BY_THE_ROASTER, mean(usual), 5, scenario);
            usual.forEach(energy -> assertEquals(BY_THE_ROASTER, energy, 10, scenario));
            if (scenario.equals("curve-chaser")) {
                assertTrue(chased.size() >= 10, chased.size() + " chased batches");
                assertTrue(mean(chased) < mean(usual) - 5, mean(chased) + " chased, " + mean(usual) + " else");
            }
        }
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(v -> v).average().orElseThrow();
    }

    private static double apparentEnergy(double mass, double gas) {
        SimulatedRoast roast = RoastSimulator.fitted()
                .roast(
                        GreenBeans.ordinary().withMoisture(0.1217),
                        Charge.of(mass, 177),
                        new ReferenceRoaster(gas, 0.3, 0.6, 180, 203.3));
        return apparentEnergy(roast);
    }

    private static double apparentEnergy(SimulatedRoast roast) {
        double mass = roast.charge().greenMass();
        List<double[]> points = new ArrayList<>();
        for (int i = 5; i < roast.size() - 5; i++) {
            if (left(roast, i) < 0.99 * mass) {
                points.add(new double[] {
                    1 / (roast.sample(Trace.BEAN, i) + 273.15),
                    Math.log((left(roast, i - 5) - left(roast, i + 5)) / 10 / mass)
                });
            }
        }
        return -8.314462618e-3 * slope(points);
    }

    private static double left(SimulatedRoast roast, int i) {
        return roast.dryMass() * (1 - roast.sample(Trace.MATTER_LOST, i) + roast.sample(Trace.MOISTURE, i));
    }
}
