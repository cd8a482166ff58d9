package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import parchment.quantity.TemperatureUnit;

/** Finds the charges in built days of which every charge is known. The temperatures are common practice, no source. */
class ChargeFinderTest {
    private static final double DROP = 206;

    /** Says how a logger rounds what it reads. */
    private enum Logger {
        TENTHS_CELSIUS,
        TENTHS_FAHRENHEIT,
        WHOLE_FAHRENHEIT;

        /** Returns the written reading, in °C again. */
        double written(double reading) {
            double parts = this == WHOLE_FAHRENHEIT ? 1 : 10;
            return this == TENTHS_CELSIUS
                    ? Math.round(10 * reading) / 10.0
                    : TemperatureUnit.FAHRENHEIT.toCelsius(Math.round(parts * (reading * 9 / 5 + 32)) / parts);
        }
    }

    /** A day in the making: readings at every step, and the charges it holds. */
    private static final class Day {
        private final double step;
        private final Logger logger;
        private final Random random = new Random(11);
        private final List<Double> seconds = new ArrayList<>();
        private final List<Double> celsius = new ArrayList<>();
        private final List<Double> charges = new ArrayList<>();
        private double now;
        private double reading;

        Day(double step, double reading) {
            this(step, reading, Logger.TENTHS_CELSIUS);
        }

        Day(double step, double reading, Logger logger) {
            this.step = step;
            this.logger = logger;
            this.reading = reading;
        }

        private Day put() {
            seconds.add(now);
            celsius.add(logger.written(reading + 0.12 * random.nextGaussian()));
            now += step;
            return this;
        }

        /** Goes in a line to a temperature. */
        Day line(double to, double length) {
            double from = reading;
            double began = now;
            while (now < began + length) {
                reading = from + (to - from) * (now - began) / length;
                put();
            }
            return this;
        }

        /** Charges: the reading falls to about the lowest and climbs to the drop, more slowly towards it. */
        Day roast(double lowest, double length) {
            charges.add(now);
            double began = now;
            double beans = lowest - 45;
            while (now < began + length) {
                double part = (now - began) / length;
                double target = beans + (DROP + 2 - beans) * (1 - Math.exp(-2.2 * part)) / (1 - Math.exp(-2.2));
                reading += (target - reading) * (1 - Math.exp(-step / 22));
                put();
            }
            return this;
        }

        /** The emptied drum cools towards a temperature, then is heated to the next charge. */
        Day pause(double to, double length) {
            double began = now;
            double cooling = Math.min(length * 0.5, 150);
            while (now < began + cooling) {
                reading += (to - reading) * (1 - Math.exp(-step / 40));
                put();
            }
            return line(Math.max(195, reading), length - cooling);
        }

        Day gap(double length) {
            now += length;
            return this;
        }

        void assertFound(String what) {
            List<Double> found = ChargeFinder.charges(
                    seconds.stream().mapToDouble(x -> x).toArray(),
                    celsius.stream().mapToDouble(x -> x).toArray());
            boolean all = found.size() == charges.size();
            for (int i = 0; all && i < found.size(); i++) {
                all = Math.abs(found.get(i) - charges.get(i)) <= 10;
            }
            assertEquals(true, all, what + ": charges at " + charges + ", found at " + found);
        }
    }

    @ParameterizedTest
    @EnumSource(Logger.class)
    void everyChargeIsFoundAndNoDropIsTakenForOne(Logger logger) {
        for (double step : new double[] {1, 2, 5}) {
            for (double minutes : new double[] {2, 3, 5, 8, 12, 15}) {
                for (double cooled : new double[] {100, 120, 140, 150, 160, 175, 190}) {
                    for (double lowest : new double[] {70, 90, 110}) {
                        Day day = new Day(step, 200, logger).line(200, 120);
                        for (double length : new double[] {600, 720, 540}) {
                            day.roast(lowest, length).pause(cooled, 60 * minutes);
                        }
                        day.assertFound(logger + ", step " + step + " s, pause " + minutes + " min, cooled to " + cooled
                                + " °C, charge falls to " + lowest + " °C");
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Logger.class)
    void aPauseInWhichTheReadingStandsStillIsNoRoast(Logger logger) {
        for (double still : new double[] {140, 155, 185, 200, DROP}) {
            new Day(2, 200, logger)
                    .line(200, 120)
                    .roast(90, 600)
                    .line(still, 60)
                    .line(still, 240)
                    .roast(90, 660)
                    .line(150, 90)
                    .assertFound("still at " + still + " °C");
        }
    }

    @Test
    void aLogThatStopsInThePauseHidesNoCharge() {
        for (double resumed : new double[] {150, 180, 195}) {
            Day day = new Day(2, 200).line(200, 120).roast(90, 600).gap(240);
            day.reading = resumed;
            day.line(200, 90).roast(90, 660).line(150, 90).assertFound("goes on at " + resumed + " °C");
        }
    }

    @Test
    void heatingTheDrumBeforeTheFirstRoastIsNoRoast() {
        new Day(2, 25)
                .line(210, 1500)
                .line(200, 200)
                .roast(90, 600)
                .pause(150, 300)
                .roast(90, 660)
                .line(120, 120)
                .line(60, 600)
                .assertFound("heated from cold");
    }

    @Test
    void aFallIsAChargeOnlyIfARoastOfFourMinutesFollows() {
        // 220 s after the fall begins the next begins: the first was no charge; after 300 s it was one.
        Day tooShort =
                new Day(2, 200).line(200, 120).line(120, 40).line(190, 180).roast(90, 600);
        tooShort.assertFound("a dip of less than four minutes");
        Day first = new Day(2, 200).line(200, 120);
        first.charges.add(first.now);
        first.line(100, 40)
                .line(205, 250)
                .line(190, 30)
                .line(190, 60)
                .roast(90, 600)
                .assertFound("a roast of five minutes");
    }

    @Test
    void aFallIsAChargeOnlyIfTheClimbPassesRoastingTemperature() {
        new Day(2, 200).line(200, 120).line(90, 60).line(148, 400).assertFound("148 °C is no roast");
        Day roast = new Day(2, 200).line(200, 120);
        roast.charges.add(roast.now);
        roast.line(90, 60).line(152, 400).assertFound("152 °C is one");
    }

    @Test
    void aBatchIsNeverCutBeforeItsOwnDrop() {
        assertEquals(940, ChargeFinder.border(100, 1000, 939), "dropped more than a minute before the next charge");
        assertEquals(970, ChargeFinder.border(100, 1000, 940), "dropped a minute before it");
        assertEquals(990, ChargeFinder.border(100, 1000, 980), "dropped 20 s before it");
        assertEquals(940, ChargeFinder.border(100, 1000, Double.NaN), "the drop is not known");
        assertEquals(100, ChargeFinder.border(100, 130, Double.NaN), "never before its own charge");
    }
}
