package parchment.virtual.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.virtual.physics.SimulatedRoast.Heat;
import parchment.virtual.physics.SimulatedRoast.Trace;

class RoastSimulatorTest {
    private static SimulatedRoast reference() {
        return roast(2.1, ReferenceRoaster.commonPractice());
    }

    private static SimulatedRoast roast(double mass, Roaster roaster) {
        return RoastSimulator.fitted().roast(GreenBeans.ordinary(), Charge.of(mass, 177), roaster);
    }

    /**
     * Common practice, no source: 2.1 kg charged at about 177 °C, full gas until yellowing near 6:10, gas then cut over 30 s, air
     * opened towards first crack. The machine was fitted to these rounded readings, so this holds the fit and agrees with nothing; that
     * the roast is dropped at 203.3 °C is the routine's own rule.
     */
    @Test
    void passesThroughTheReadingsItWasFittedTo() {
        SimulatedRoast roast = reference();
        assertEquals(370, roast.yellowing(), 20);
        assertEquals(610, roast.firstCrackStart(), 20);
        assertEquals(190, roast.at(Trace.BEAN_READING, roast.firstCrackStart()), 4);
        assertEquals(184.4, roast.at(Trace.BEAN_READING, 559), 4);
        assertEquals(222, roast.at(Trace.AIR_READING, 559), 4);
        assertEquals(197.8, roast.at(Trace.BEAN_READING, 672), 4);
        assertEquals(742, roast.drop(), 20);
        assertEquals(559, roast.passes(Trace.BEAN_READING, 184.4, 200), 20);
        assertEquals(672, roast.passes(Trace.BEAN_READING, 197.8, 200), 20);
        assertEquals(240, roast.firstCrackStart() - roast.yellowing(), 25, "browning about four minutes");
        assertEquals(130, roast.drop() - roast.firstCrackStart(), 25, "development a little over two minutes");
        double rise = (roast.at(Trace.BEAN_READING, roast.firstCrackStart() + 15)
                        - roast.at(Trace.BEAN_READING, roast.firstCrackStart() - 15))
                / 30;
        assertTrue(rise > 0.1 && rise < 0.2, "rise near first crack in °C/s: " + rise);
    }

    /** Common practice, no source, and fitted to it: the probe turns between 1:00 and 1:40 at 75 to 105 °C; 13.5 to 16.5 % of the mass is lost. */
    @Test
    void turnsAndLosesMassAsItWasFittedTo() {
        SimulatedRoast roast = reference();
        assertTrue(roast.turningPoint() >= 60 && roast.turningPoint() <= 100, "at " + roast.turningPoint() + " s");
        double lowest = roast.at(Trace.BEAN_READING, roast.turningPoint());
        assertTrue(lowest >= 75 && lowest <= 105, "at " + lowest + " °C");
        double loss = 1 - roast.roastedMass() / 2.1;
        assertTrue(loss > 0.135 && loss < 0.165, "mass loss " + loss);
    }

    /**
     * What docs/virtual-roastery.md says of the two deviations behind that loss: more water is left than roasters expect, and more dry
     * matter goes (4 to 6 %, to 12 % where it is very dark: common practice, no source).
     */
    @Test
    void losesMoreDryMatterAndKeepsMoreWaterThanRoastersExpect() {
        SimulatedRoast usual = reference();
        SimulatedRoast hot = roast(2.1, new ReferenceRoaster(0.79, 0.3, 0.6, 180, 210));
        assertEquals(0.033, usual.sample(Trace.MOISTURE, usual.size() - 1), 0.0005);
        assertEquals(0.074, usual.sample(Trace.MATTER_LOST, usual.size() - 1), 0.0005);
        assertEquals(0.113, hot.sample(Trace.MATTER_LOST, hot.size() - 1), 0.0005);
        double perDegree = (usual.roastedMass() - hot.roastedMass()) / 2.1 / (210 - 203.3);
        assertEquals(0.006, perDegree, 0.0005, "share of the mass per degree of drop");
    }

    @Test
    void aBiggerChargeRoastsSlowerAndTurnsLaterAndDeeper() {
        SimulatedRoast before = roast(1.2, ReferenceRoaster.commonPractice());
        for (double mass : new double[] {1.6, 2.1, 2.6, 3.0}) {
            SimulatedRoast roast = roast(mass, ReferenceRoaster.commonPractice());
            assertTrue(roast.turningPoint() > before.turningPoint());
            assertTrue(roast.at(Trace.BEAN_READING, roast.turningPoint())
                    < before.at(Trace.BEAN_READING, before.turningPoint()));
            assertTrue(roast.yellowing() > before.yellowing() + 15);
            assertTrue(roast.firstCrackStart() > before.firstCrackStart() + 30);
            before = roast;
        }
    }

    @Test
    void aSmallChargeIsReadHotterThanItIsAtTheSameBeanTemperature() {
        SimulatedRoast small = roast(1.2, ReferenceRoaster.commonPractice());
        SimulatedRoast large = roast(2.6, ReferenceRoaster.commonPractice());
        double atSmall = small.at(Trace.BEAN_READING, small.passes(Trace.BEAN, 185, 0));
        double atLarge = large.at(Trace.BEAN_READING, large.passes(Trace.BEAN, 185, 0));
        assertTrue(atSmall > atLarge + 1, atSmall + " against " + atLarge);
    }

    @Test
    void gasHurriesAndCoolRoomAirHoldsBack() {
        SimulatedRoast usual = reference();
        SimulatedRoast moreGas = roast(2.1, new ReferenceRoaster(0.95, 0.3, 0.6, 180, 203.3));
        SimulatedRoast moreAir = roast(2.1, new ReferenceRoaster(0.79, 0.5, 0.8, 180, 203.3));
        SimulatedRoast lessAir = roast(2.1, new ReferenceRoaster(0.79, 0.1, 0.3, 180, 203.3));
        assertTrue(moreGas.drop() < usual.drop() - 20);
        assertTrue(moreAir.drop() > usual.drop() + 15 && lessAir.drop() < usual.drop() - 15);
        assertTrue(moreAir.at(Trace.AIR_READING, 600) < usual.at(Trace.AIR_READING, 600));
        assertTrue(lessAir.at(Trace.AIR_READING, 600) > usual.at(Trace.AIR_READING, 600));
        assertEquals(usual.yellowing(), moreGas.yellowing(), 1e-9, "nothing differs before the cut");
    }

    @Test
    void halvingTheStepChangesNothingThatALoggerCouldSee() {
        SimulatedRoast coarse = reference();
        SimulatedRoast fine = RoastSimulator.fitted()
                .withStepsPerSecond(2)
                .roast(GreenBeans.ordinary(), Charge.of(2.1, 177), ReferenceRoaster.commonPractice());
        assertEquals(coarse.size(), fine.size());
        for (int i = 0; i < coarse.size(); i++) {
            assertEquals(fine.sample(Trace.BEAN_READING, i), coarse.sample(Trace.BEAN_READING, i), 1e-5);
            assertEquals(fine.sample(Trace.AIR_READING, i), coarse.sample(Trace.AIR_READING, i), 1e-4);
            assertEquals(fine.sample(Trace.MOISTURE, i), coarse.sample(Trace.MOISTURE, i), 1e-8);
        }
    }

    /** Hipparchus' adaptive rule of eighth order (Dormand and Prince) on the same equations and the same moves. */
    @Test
    @Tag("agrees-with")
    void agreesWithAnAdaptiveRuleOfHigherOrder() {
        SimulatedRoast roast = reference();
        DrumBalance balance = new DrumBalance(
                DrumMachine.fitted(), Probes.fitted(), Room.mild(), GreenBeans.ordinary(), Charge.of(2.1, 177));
        double[] state = balance.state();
        var rule = new DormandPrince853Integrator(1e-6, 1, 1e-10, 1e-10);
        for (int second = 0; second < roast.size() - 1; second++) {
            balance.set(
                    Roaster.Move.settings(roast.sample(Trace.GAS, second + 1), roast.sample(Trace.AIRFLOW, second + 1)),
                    Disturbance.Moment.NONE);
            state = rule.integrate(equations(balance, state.length), new ODEState(second, state), second + 1)
                    .getPrimaryState();
            assertEquals(
                    state[BeanPhysics.TEMPERATURE], roast.sample(Trace.BEAN, second + 1), 1e-4, second + " s, bean");
            assertEquals(
                    state[BeanPhysics.MOISTURE], roast.sample(Trace.MOISTURE, second + 1), 1e-7, second + " s, water");
        }
    }

    private static OrdinaryDifferentialEquation equations(DrumBalance balance, int size) {
        return new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return size;
            }

            @Override
            public double[] computeDerivatives(double seconds, double[] at) {
                double[] rates = new double[size];
                balance.rates(at, seconds, rates);
                return rates;
            }
        };
    }

    /** First law: what the flame gives is in the flue, the room, the metal and the beans; nothing is left over. */
    @Test
    void heatOfTheDrumCloses() {
        for (double mass : new double[] {1.2, 2.1, 3.0}) {
            SimulatedRoast roast = roast(mass, ReferenceRoaster.commonPractice());
            double metal = DrumMachine.fitted().metalHeat()
                    * (roast.sample(Trace.METAL, roast.size() - 1) - roast.sample(Trace.METAL, 0));
            double found = roast.heat(Heat.EXHAUST) + roast.heat(Heat.LOSS) + roast.heat(Heat.INTO_BEANS) + metal;
            assertEquals(roast.heat(Heat.FLAME), found, 1e-6 * roast.heat(Heat.FLAME));
        }
    }

    /** Heat into the beans and of reaction against warming and drying summed along the samples by the trapezoid rule. */
    @Test
    void heatOfTheBeansCloses() {
        SimulatedRoast roast = reference();
        double sum = 0;
        for (int i = 1; i < roast.size(); i++) {
            double capacity = (capacity(roast, i - 1) + capacity(roast, i)) / 2;
            sum += capacity * (roast.sample(Trace.BEAN, i) - roast.sample(Trace.BEAN, i - 1));
            sum += BeanPhysics.EVAPORATION_HEAT
                    * (roast.sample(Trace.MOISTURE, i - 1) - roast.sample(Trace.MOISTURE, i));
        }
        double given = roast.heat(Heat.INTO_BEANS) + roast.heat(Heat.REACTION);
        assertEquals(given, sum * roast.dryMass(), 1e-5 * given);
        assertTrue(roast.heat(Heat.REACTION) < BeanPhysics.REACTION_HEAT * roast.dryMass());
    }

    private static double capacity(SimulatedRoast roast, int i) {
        return BeanPhysics.heatCapacity(roast.sample(Trace.BEAN, i), roast.sample(Trace.MOISTURE, i));
    }

    @Test
    void theRateOfRiseFallsDipsAtFirstCrackAndPicksUpALittleAfterwards() {
        SimulatedRoast roast = roast(2.1, new ReferenceRoaster(0.79, 0.3, 0.6, 172, 210));
        double early = rate(roast, 180);
        double yellow = rate(roast, 370);
        double atCrack = rate(roast, roast.passes(Trace.CRACKED, 0.5, 0));
        double after = rate(roast, roast.firstCrackEnd() + 20);
        assertTrue(early > yellow && yellow > atCrack, early + " " + yellow + " " + atCrack);
        assertTrue(after > atCrack && after < atCrack + 2.5, "from " + atCrack + " to " + after + " °C/min");
    }

    private static double rate(SimulatedRoast roast, double at) {
        return 6 * (roast.at(Trace.BEAN, at + 5) - roast.at(Trace.BEAN, at - 5));
    }

    @Test
    void wetterBeansCrackAtALowerTemperature() {
        SimulatedRoast dry = RoastSimulator.fitted()
                .roast(
                        GreenBeans.ordinary().withMoisture(0.10),
                        Charge.of(2.1, 177),
                        ReferenceRoaster.commonPractice());
        SimulatedRoast wet = RoastSimulator.fitted()
                .roast(
                        GreenBeans.ordinary().withMoisture(0.14),
                        Charge.of(2.1, 177),
                        ReferenceRoaster.commonPractice());
        assertTrue(wet.at(Trace.BEAN, wet.firstCrackStart()) < dry.at(Trace.BEAN, dry.firstCrackStart()));
    }

    @Test
    void aPersonWhoNeverDropsIsStoppedAfterHalfAnHour() {
        SimulatedRoast roast = roast(2.1, sight -> Roaster.Move.settings(0.5, 0.5));
        assertEquals(RoastSimulator.LONGEST, roast.drop());
        assertTrue(roast.toString().contains("do not roast"));
    }
}
