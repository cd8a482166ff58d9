package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.Batch;
import parchment.logbook.Quantity;
import parchment.logbook.written.BatchConditions;
import parchment.phase.ExampleRoast;
import parchment.quantity.Temperature;

/** A written charge temperature is held against a curve that holds the charge, and against no other. */
class WrittenChargeTest {
    /** The probe reads 180 °C until charge; a log from 15 s on is held against its first reading, as before. */
    @ParameterizedTest
    @CsvSource({"-40, 1", "15, -56.9", "16, NaN", "66, NaN", "182, NaN"})
    void theCurveIsAskedOnlyWhereItHoldsTheCharge(double from, double expected) {
        BatchConditions none = BatchConditions.NOT_WRITTEN;
        double written = from < 0 ? 181 : 81;
        Batch batch = Batch.named("7")
                .curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(from, 740))
                .conditions(new BatchConditions(
                        none.greenMass(),
                        none.roastedMass(),
                        Optional.of(Temperature.celsius(written)),
                        none.greenTemperature(),
                        none.roomTemperature(),
                        none.roomHumidity(),
                        none.roomPressure(),
                        none.warmUp()))
                .build();
        Measured measured = WrittenCharge.AGAINST_THE_CURVE.measure(BatchPath.of(batch));
        assertEquals(expected, measured.value(), 0.05);
        assertEquals(Double.isNaN(expected) ? "the log does not hold the charge." : "", measured.whyMissing());
    }
}
