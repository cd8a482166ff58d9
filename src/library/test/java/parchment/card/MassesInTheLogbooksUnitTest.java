package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.Showable;
import parchment.drift.GreenNeeded;
import parchment.drift.Usual;
import parchment.drift.Week;
import parchment.feature.BatchTable;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;

/** A logbook that is written in pounds or grams is answered in them, whatever shows the mass. */
class MassesInTheLogbooksUnitTest {
    /** Ten batches of the first mass and then the given number of another, in the order of their days. */
    private static Logbook logbook(MassUnit unit, double usual, double last, int lasts) {
        CardLogbook built = CardLogbook.of(10 + lasts);
        for (int batch = 1; batch <= 10 + lasts; batch++) {
            double amount = batch <= 10 ? usual : last;
            built = built.change(
                    "B" + batch,
                    b -> b.conditions(CardLogbook.conditions(unit.toKilograms(amount), 180)
                            .withRoastedMass(Mass.of(0.85 * amount, unit))));
        }
        return Logbook.of(built.contents().toBuilder().massUnit(unit).build());
    }

    @ParameterizedTest
    @CsvSource({
        "POUND, 10, 5, '5 lb', '5.00 lb'",
        "GRAM, 500, 250, '250 g', '250 g'",
        "OUNCE, 16, 8, '8 oz', '8.0 oz'",
        "KILOGRAM, 4, 2, '2 kg', '2.00 kg'",
        "KILOGRAM, 0.5, 0.25, '0.25 kg', '0.250 kg'"
    })
    void theCardOfALotSaysItsChargesInIt(MassUnit unit, double usual, double last, String words, String row) {
        LotCard card = LotCard.of("one", logbook(unit, usual, last, 3));
        assertTrue(
                card.inShort().found().startsWith(words + " charges of one: "),
                card.inShort().found());
        assertTrue(
                card.text().lines().anyMatch(line -> line.startsWith("green mass") && line.contains(row)), card.text());
    }

    @Test
    void aChargeThatWasNotUsedIsRefusedInIt() {
        assertEquals(
                "No batch of lot 'one' was charged with about 22.05 lb. Charges used for it: 10 lb (10 batches), 5 lb (3 batches)."
                        + " Name one of these.",
                assertThrows(
                                LogbookException.class,
                                () -> LotCard.of("one", logbook(MassUnit.POUND, 10, 5, 3))
                                        .withCharge(Mass.kilograms(10)))
                        .getMessage());
    }

    @Test
    void anOddChargeAndTheGreenCoffeeOfAnOrderAreToldInIt() {
        Logbook logbook = logbook(MassUnit.POUND, 10, 5, 1);
        String usual = Usual.of(logbook.batch("B11"), logbook).toString();
        assertTrue(usual.contains("a half charge (5 lb; usually 10 lb)"), usual);
        GreenNeeded green = GreenNeeded.of("one", Mass.of(17, MassUnit.POUND), logbook);
        assertEquals(MassUnit.POUND, green.unit());
        assertTrue(
                green.inShort().found().contains("2 batches of 10 lb"),
                green.inShort().found());
    }

    @Test
    void nothingThatARoasterReadsTurnsItIntoKilograms() {
        Logbook logbook = logbook(MassUnit.POUND, 10, 5, 3);
        List<Showable> shown = List.of(
                LotCard.of("one", logbook),
                BatchCard.of("B12", logbook),
                Usual.of(logbook.batch("B12"), logbook),
                Week.of(logbook),
                Overview.of(logbook),
                BatchTable.of(logbook),
                logbook);
        for (Showable one : shown) {
            String all = one.text() + one.html().orElse("");
            assertFalse(all.matches("(?s).*[0-9] kg\\b.*") || all.contains("[kg]"), one.getClass() + "\n" + one.text());
        }
        String table = BatchTable.of(logbook, Features.greenMass()).text();
        assertTrue(table.contains("10.00") && table.contains("5.00") && table.contains("lb"), table);
    }
}
