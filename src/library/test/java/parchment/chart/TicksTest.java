package parchment.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

class TicksTest {
    private static List<String> labels(Axis axis, double low, double high, int most) {
        return Ticks.of(axis, low, high, most).labels();
    }

    @Test
    void areRoundNumbers() {
        assertEquals(List.of("100", "120", "140", "160"), labels(Axis.number("x", ""), 93, 175, 5));
        assertEquals(List.of("-0.5", "0.0", "0.5", "1.0"), labels(Axis.number("x", ""), -0.7, 1.2, 5));
        assertEquals(List.of("0.02", "0.04"), labels(Axis.number("x", ""), 0.01, 0.05, 3));
    }

    @Test
    void areRoundOnAClock() {
        assertEquals(List.of("0:00", "2:00", "4:00", "6:00", "8:00"), labels(Axis.clock("t"), -10, 579, 5));
        assertEquals(List.of("-0:30", "0:00", "0:30"), labels(Axis.clock("t"), -30, 45, 3));
    }

    @Test
    void startAtMonthsYearsAndMondays() {
        double day = LocalDate.of(2026, 3, 3).toEpochDay();
        assertEquals(List.of("2026-03-09", "2026-03-16"), labels(Axis.dates("d"), day, day + 14, 3));
        assertEquals(List.of("April 2026", "July 2026", "October 2026"), labels(Axis.dates("d"), day, day + 240, 4));
        assertEquals(List.of("2027", "2028", "2029"), labels(Axis.dates("d"), day, day + 1100, 4));
    }

    @Test
    void oneDayHasItsDateOnTheAxis() {
        double day = LocalDate.of(2026, 3, 3).toEpochDay();
        for (double[] reach : List.of(new double[] {day, day}, new double[] {day + 0.3, day + 0.6})) {
            Scale scale = Scale.around(Axis.dates("d"), reach[0], reach[1], Scale.Room.LITTLE);
            assertEquals(List.of("2026-03-03", "2026-03-04"), scale.ticks(10).labels());
        }
        Scale two = Scale.around(Axis.dates("d"), day + 0.3, day + 1.3, Scale.Room.NONE);
        assertEquals(List.of("2026-03-04"), two.ticks(10).labels());
        assertEquals(day + 0.3, two.low(), 1e-9);
    }

    @RepeatedTest(50)
    void stayInsideAndAreFew(RepetitionInfo info) {
        Random random = new Random(info.getCurrentRepetition());
        double low = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(9) - 3);
        double high = low + random.nextDouble() * Math.pow(10, random.nextInt(9) - 3) + 1e-3;
        for (Axis axis : List.of(Axis.number("x", ""), Axis.clock("t"))) {
            Ticks ticks = Ticks.of(axis, low, high, 6);
            assertTrue(ticks.at().size() <= 7, ticks + " for " + low + " to " + high);
            double slack = 1e-6 * (high - low);
            ticks.at().forEach(t -> assertTrue(t >= low - slack && t <= high + slack));
        }
    }

    @Test
    void limitsFollowAChangeOfUnit() {
        // 100 °C is 212 °F and 200 °C is 392 °F.
        Axis fahrenheit = Axis.of("bean temperature", Unit.TEMPERATURE, TemperatureUnit.FAHRENHEIT);
        Scale scale = Scale.around(fahrenheit, 100, 200, Scale.Room.NONE);
        assertEquals(212, scale.low(), 1e-9);
        assertEquals(392, scale.high(), 1e-9);
        assertEquals("bean temperature (°F)", fahrenheit.fullLabel());
        assertEquals(0.5, scale.place(150), 1e-9);
    }

    @Test
    void keepAFixedLimitAndAvoidAFalseNegativeOne() {
        Axis axis = Axis.number("gas", "%");
        assertEquals(0, Scale.around(axis.fromZero(), 40, 90, Scale.Room.ROUND).low());
        assertEquals(
                100,
                Scale.around(axis.withLimits(0, 100), 40, 90, Scale.Room.ROUND).high());
        assertEquals(0, Scale.around(axis, 0.1, 90, Scale.Room.ROUND).low());
    }

    @Test
    void widenAroundASingleValue() {
        Scale scale = Scale.around(Axis.number("x", ""), 5, 5, Scale.Room.ROUND);
        assertTrue(scale.low() < 5 && scale.high() > 5, scale.low() + " to " + scale.high());
    }
}
