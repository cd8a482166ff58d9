package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Logbook;
import parchment.quantity.MassUnit;

class ChargesTest {
    private static final MassWords KILOGRAMS = MassWords.in(MassUnit.KILOGRAM);

    /** 5 kg are 11.02 lb and 176.4 oz; a mass is round in the unit of the order if one lies within half a hundredth. */
    @ParameterizedTest
    @CsvSource({
        "KILOGRAM, 5 kg (2 batches)",
        "GRAM, 5000 g (2 batches)",
        "POUND, 11 lb (2 batches)",
        "OUNCE, 176 oz (2 batches)"
    })
    void sizesAreRoundInTheUnitOfTheOrder(MassUnit unit, String words) {
        Logbook logbook = BuiltBatch.logbook(List.of(BuiltBatch.of(5), BuiltBatch.of(5)));
        assertEquals(words, ChargeSizes.of("one", unit, logbook).words(MassWords.in(unit)));
    }

    private static ChargeSizes sizes(String masses) {
        return new ChargeSizes(
                Arrays.stream(masses.split(" "))
                        .map(mass -> new ChargeSizes.Size(Double.parseDouble(mass), 10))
                        .toList(),
                ChargeSizes.Whose.ITS_OWN);
    }

    /** The least left over in at most one batch more than the fewest; of those that leave as much, the fewest batches. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "5 2.5; 12.5; 2 batches of 5 kg and 1 of 2.5 kg; 2 batches of 5 kg",
                "5 2.5; 12.501; 3 batches of 5 kg; 2 batches of 5 kg and 1 of 2.5 kg",
                "5 2.5; 2.4; 1 batch of 2.5 kg; none",
                "5; 5.01; 2 batches of 5 kg; 1 batch of 5 kg",
                "5 1; 6.1; 1 batch of 5 kg and 2 of 1 kg; 1 batch of 5 kg and 1 of 1 kg",
                // Three of 1 kg would leave nothing, but are two batches more than the one of 5 kg.
                "5 1; 3; 1 batch of 5 kg; 2 batches of 1 kg",
                "2.4 2.1 1.4; 3.5; 1 batch of 2.1 kg and 1 of 1.4 kg; 2 batches of 1.4 kg",
                "2.4 2.1 1.4; 5.9; 1 batch of 2.4 kg, 1 of 2.1 kg and 1 of 1.4 kg; 2 batches of 2.1 kg and 1 of 1.4 kg",
                "5; 500; 100 batches of 5 kg; 99 batches of 5 kg"
            })
    void coversAnOrderWithTheLeastLeftOver(String used, double green, String covering, String falling) {
        assertEquals(covering, Charges.covering(green, sizes(used)).words(KILOGRAMS));
        assertEquals(
                falling,
                Charges.fallingShort(green, sizes(used))
                        .map(one -> one.words(KILOGRAMS))
                        .orElse("none"));
    }

    /** Masses within a twentieth are one size, told as the roundest mass near their middle. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "5 5.01 4.98 2.5 2.51; 5 kg (3 batches), 2.5 kg (2 batches)",
                "2.26 2.27 2.27 2.28; 2.27 kg (4 batches)",
                "2 2.11; 2.1 kg (1 batch), 2 kg (1 batch)",
                "2 2.1; 2.05 kg (2 batches)",
                "0.25 0.25; 0.25 kg (2 batches)"
            })
    void toldSizesAreThoseReallyCharged(String masses, String words) {
        assertEquals(words, sizesOf(masses).words(KILOGRAMS));
    }

    @Test
    void anOddWeighingIsNoSizeAndThreeSizesAreTold() {
        String many = "5 5 5 5 5 5 5 5 5 5 5 5 5 5 5 5 5 5 5 5 5";
        assertEquals("5 kg (21 batches)", sizesOf(many + " 3").words(KILOGRAMS));
        assertEquals(
                "5 kg (21 batches), 3 kg (2 batches)", sizesOf(many + " 3 3").words(KILOGRAMS));
        assertEquals(
                "4 kg (4 batches), 3 kg (3 batches), 2 kg (2 batches)",
                sizesOf("4 4 4 4 3 3 3 2 2 1 1").words(KILOGRAMS));
    }

    private static ChargeSizes sizesOf(String masses) {
        List<BuiltBatch> rows = Stream.of(masses.split(" "))
                .map(mass -> BuiltBatch.of(Double.parseDouble(mass)))
                .toList();
        return ChargeSizes.of("one", MassUnit.KILOGRAM, BuiltBatch.logbook(rows));
    }
}
