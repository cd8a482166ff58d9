package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.written.BatchConditions;
import parchment.phase.ExampleRoast;
import parchment.phase.Phases;
import parchment.quantity.Temperature;

/** Built numbers: nine ordinary batches and the one that is judged, the last. */
class WrittenChargesTest {
    private static final double[] GAPS = {-1, -0.5, 0, 0.5, 1, -1, 0, 0.5, 1};
    private static final double[] WRITTEN = {178, 179, 180, 181, 182, 178, 180, 181, 182};
    private static final double[] TURNS = {88, 89, 90, 91, 92, 88, 90, 91, 92};

    private static double[] with(double[] others, double last) {
        double[] all = Arrays.copyOf(others, others.length + 1);
        all[others.length] = last;
        return all;
    }

    private static double off(double written, double gap, double turn) {
        return WrittenCharges.of(with(WRITTEN, written), with(GAPS, gap), with(TURNS, turn))
                .off(9);
    }

    @ParameterizedTest(name = "a gap of {0} °C is off by {1}")
    @CsvSource({"14.8, 0", "15.6, 15.35", "45, 44.75", "-14.4, 0", "-15.4, -15.4", "0, 0"})
    void isOffFromFifteenDegreesBetweenWhatWasWrittenAndWhatWasRead(double gap, double expected) {
        // The median of the ten gaps is 0.25 or 0 °C, as the last one is above or below.
        assertEquals(expected, off(180 + gap, gap, 90), 1e-9);
    }

    @Test
    void isNotOffWhereTheOthersLieAsFarApartThemselves() {
        double[] wide = {-20, -10, 0, 10, 20, -20, 0, 10, 20};
        assertEquals(
                0,
                WrittenCharges.of(with(WRITTEN, 225), with(wide, 45), with(TURNS, 90))
                        .off(9));
    }

    @ParameterizedTest(name = "written {0} °C, turning point at {1} °C")
    @CsvSource({
        "225, 90, 44.5", // the turning point knows nothing of it
        "225, 110, 0", // it was charged hot, and shows it
        "225, NaN, 0", // nothing to hold it against
        "135, 90, -45",
        "190, 90, 0", // hotter than usual, but less than fifteen degrees
    })
    void isHeldAgainstTheTurningPointWhereNothingWasReadAtCharge(double written, double turn, double expected) {
        assertEquals(expected, off(written, Double.NaN, turn), 1e-9);
    }

    @Test
    void isNotOffAmongFewerThanFive() {
        assertEquals(
                0,
                WrittenCharges.of(new double[] {180, 180, 180, 225}, new double[] {0, 0, 0, 45}, new double[] {
                            90, 90, 90, 90
                        })
                        .off(3));
    }

    @Test
    void whatIsOffIsNotBelieved() {
        double[] believed = WrittenCharges.of(with(WRITTEN, 225), with(GAPS, 45), with(TURNS, 90))
                .believed();
        assertEquals(178, believed[0]);
        assertEquals(Double.NaN, believed[9]);
    }

    /** Each log shows the turning point; one that starts more than 15 s after charge is not asked what it read at charge. */
    @ParameterizedTest
    @CsvSource({"14, 45", "16, 0", "58, 0"})
    void aLogThatDoesNotHoldTheChargeBearsNoSlipOut(double from, double expected) {
        List<Phases> members = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            members.add(charged(180, -40));
        }
        members.add(charged(225, from));
        assertTrue(members.get(9).mark(MarkKind.TURNING_POINT).isPresent());
        assertEquals(expected, WrittenCharges.of(members).off(9), 0.01);
    }

    private static Phases charged(double celsius, double from) {
        BatchConditions none = BatchConditions.NOT_WRITTEN;
        return Phases.of(Batch.named("7")
                .curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(from, 740))
                .conditions(new BatchConditions(
                        none.greenMass(),
                        none.roastedMass(),
                        Optional.of(Temperature.celsius(celsius)),
                        none.greenTemperature(),
                        none.roomTemperature(),
                        none.roomHumidity(),
                        none.roomPressure(),
                        none.warmUp()))
                .build());
    }
}
