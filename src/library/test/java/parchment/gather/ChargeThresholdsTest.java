package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When beans have left the drum, when a drum has cooled and where a fall begins: one row on each side of each number, which are common practice, no source. */
class ChargeThresholdsTest {
    /** One reading a second, in lines. */
    private static final class Readings {
        private final List<Double> celsius = new ArrayList<>();

        Readings(double from) {
            celsius.add(from);
        }

        Readings line(double to, int seconds) {
            double from = celsius.get(celsius.size() - 1);
            for (int i = 1; i <= seconds; i++) {
                celsius.add(from + (to - from) * i / seconds);
            }
            return this;
        }

        List<Double> charges() {
            double[] seconds = new double[celsius.size()];
            double[] values = new double[celsius.size()];
            for (int i = 0; i < seconds.length; i++) {
                seconds[i] = i;
                values[i] = celsius.get(i);
            }
            return ChargeFinder.charges(seconds, values);
        }
    }

    /** A minute of an empty drum, a charge, and a climb of 300 s to 206 °C. */
    private static Readings roast() {
        return new Readings(200).line(200, 60).line(95, 50).line(206, 250);
    }

    private static Readings again(Readings before) {
        return before.line(95, 50).line(206, 400).line(180, 60);
    }

    @ParameterizedTest
    @CsvSource({"9, 25, 2", "7, 25, 1", "9, 22, 2", "9, 17, 1"})
    void beansAreOutWhereTheReadingWentDownByEightDegreesForTwentySeconds(double dip, int seconds, int charges) {
        Readings day = roast().line(206 - dip, 1).line(206 - dip, seconds);
        assertEquals(charges, again(day).charges().size());
    }

    @ParameterizedTest
    @CsvSource({"0, 75, 2", "0, 50, 1", "0.8, 75, 2", "1.3, 75, 1"})
    void beansAreOutWhereTheReadingStoodStillForAMinute(double risenInAMinute, int seconds, int charges) {
        Readings day = roast().line(206 + risenInAMinute * seconds / 60.0, seconds);
        assertEquals(charges, again(day).charges().size());
    }

    /** The drum cools after the drop and is heated again a little before the next charge. */
    @ParameterizedTest
    @CsvSource({"95, 35, 2", "87, 35, 1", "95, 32, 2", "95, 28, 1"})
    void inACooledDrumASmallerFallIsACharge(double heated, double fall, int charges) {
        Readings day =
                roast().line(75, 60).line(heated, 200).line(heated - fall, 40).line(206, 400);
        assertEquals(charges, day.charges().size());
    }

    @ParameterizedTest
    @CsvSource({"230, true", "260, false"})
    void theBeansTurnWithinFourMinutesOfTheirCharge(int falling, boolean charged) {
        Readings day = new Readings(230)
                .line(230, 60)
                .line(180, 25)
                .line(110, falling - 25)
                .line(153, 300);
        // Where they turn later, only a later part of the fall can be a charge.
        assertEquals(charged, day.charges().contains(60.0), day.charges().toString());
    }

    @ParameterizedTest
    @CsvSource({"41, 300, 1", "39, 300, 0", "60, 400, 1", "60, 500, 0"})
    void afterTheTurnTheBeansClimbFortyDegreesInFiveMinutes(double rise, int seconds, int charges) {
        Readings day = new Readings(200).line(200, 60).line(154, 60).line(154 + rise, seconds);
        assertEquals(charges, day.charges().size());
    }

    /** The steep fall begins at 100 s and goes by 2 °C a second; a slower one may come before it. */
    @ParameterizedTest
    @CsvSource({"0.4, 20, 100", "0.7, 20, 80", "0.7, 60, 60"})
    void aFallBeginsWhereItIsAQuarterAsSteepAsAtItsSteepest(double slower, int seconds, double begins) {
        Readings day = new Readings(230)
                .line(230, 100 - seconds)
                .line(230 - slower * seconds, seconds)
                .line(230 - slower * seconds - 100, 50)
                .line(206, 400);
        assertEquals(List.of(begins), day.charges());
    }

    @ParameterizedTest
    @CsvSource({"91, 31, 1", "89, 31, 0", "91, 29, 0"})
    void whatAListSaysWasAChargeIsFoundByASmallerFall(double hot, double fall, int found) {
        double[] seconds = new double[500];
        double[] celsius = new double[500];
        for (int i = 0; i < 500; i++) {
            seconds[i] = i;
            celsius[i] = i <= 100 ? hot : i <= 150 ? hot - fall * (i - 100) / 50 : hot - fall + (i - 150) * 0.3;
        }
        assertEquals(
                found,
                ChargeFinder.smaller(seconds, celsius, 40, 160).stream()
                        .filter(at -> at == 100)
                        .count());
        assertEquals(
                0, ChargeFinder.smaller(seconds, celsius, 160, 300).stream().count());
    }
}
