package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.virtual.physics.SimulatedRoast.Trace;
import parchment.virtual.physics.AirBath;
import parchment.virtual.physics.Charge;
import parchment.virtual.physics.GreenBeans;
import parchment.virtual.physics.ReferenceRoaster;
import parchment.virtual.physics.RoastSimulator;
import parchment.virtual.physics.SimulatedRoast;

class LossOfMassTest {
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
     * Vargas-Elías et al. 2016, "Kinetics of mass loss of arabica coffee during roasting process", Eng. Agríc. 36(2):300-308,
     * abstract: 52.27 kJ/mol in commercial roasting with changing temperature, green moisture 0.1217 kg/kg. The abstract does not
     * say which temperature enters; here it is the beans', from 1 % of mass lost to the drop, in drum roasts of several masses and
     * gas settings. Our loss of dry matter was fitted to that value at one setting; the others are predictions.
     */
    @Test
    @Tag("agrees-with")
    void theApparentEnergyOfMassLossIsThatOfVargasEliasAndOthers() {
        double sum = 0;
        int count = 0;
        for (double mass : new double[] {1.4, 2.1, 2.8}) {
            for (double gas : new double[] {0.7, 0.79, 0.9}) {
                double energy = apparentEnergy(mass, gas);
                assertEquals(52.27, energy, 7, mass + " kg, gas " + gas);
                sum += energy;
                count++;
            }
        }
        assertEquals(52.27, sum / count, 2);
    }

    /**
     * The same in whole simulated logbooks: other machines, habits, lots and weather than the one setting that was fitted. Where the
     * gas is moved as usual the mean must be within 5 kJ/mol of the published value and each batch within 10. Where somebody
     * chases the curve the rise of temperature swings, and the plot gives less: that is stated, not hidden.
     */
    @Test
    @Tag("agrees-with")
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
            assertEquals(52.27, mean(usual), 5, scenario);
            usual.forEach(energy -> assertEquals(52.27, energy, 10, scenario));
            if (scenario.equals("curve-chaser")) {
                assertTrue(chased.size() >= 10, chased.size() + " chased batches");
                assertEquals(41, mean(chased), 5, "chased");
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
        double n = 0;
        double x = 0;
        double y = 0;
        double xx = 0;
        double xy = 0;
        for (int i = 5; i < roast.size() - 5; i++) {
            if (left(roast, i) < 0.99 * mass) {
                double inverse = 1 / (roast.sample(Trace.BEAN, i) + 273.15);
                double rate = Math.log((left(roast, i - 5) - left(roast, i + 5)) / 10 / mass);
                n++;
                x += inverse;
                y += rate;
                xx += inverse * inverse;
                xy += inverse * rate;
            }
        }
        return -8.314462618e-3 * (n * xy - x * y) / (n * xx - x * x);
    }

    private static double left(SimulatedRoast roast, int i) {
        return roast.dryMass() * (1 - roast.sample(Trace.MATTER_LOST, i) + roast.sample(Trace.MOISTURE, i));
    }
}
