package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Logbook;
import parchment.logbook.contents.BlendPart;
import parchment.logbook.contents.BlendPart.Blended;
import parchment.logbook.contents.LogbookException;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;

class OrdersTest {
    /** Six batches of 5 kg of each of two lots, and some under a blend's name, each losing 15 or 16 %. */
    private static Logbook logbook(int underTheBlend, BlendPart... parts) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 12 + underTheBlend; i++) {
            rows.add(BuiltBatch.losing(i / 2 % 2 == 0 ? 0.15 : 0.16)
                    .withGreen(5)
                    .withLot(i >= 12 ? "House" : i % 2 == 0 ? "kela" : "low garden"));
        }
        Logbook logbook = BuiltBatch.logbook(rows);
        return Logbook.of(
                logbook.contents().toBuilder().blends(Arrays.asList(parts)).build());
    }

    private static BlendPart part(String blend, String lot, double share, Blended blended) {
        return new BlendPart(blend, lot, share, blended);
    }

    private static String needed(Orders orders) {
        return orders.needed().stream()
                .map(one -> one.lot() + " "
                        + MassWords.in(MassUnit.KILOGRAM).exact(one.roasted().kilograms()))
                .collect(Collectors.joining(", "));
    }

    @Test
    void ordersOfOneLotAddUp() {
        Orders orders = Orders.none(logbook(0)).with("kela", Mass.kilograms(3)).with("kela", Mass.kilograms(1.5));
        assertEquals("kela 4.5 kg", needed(orders));
        assertEquals(List.of(), orders.blends());
    }

    @Test
    void aBlendOfRoastedCoffeesIsTakenApartByRoastedMass() {
        Logbook logbook = logbook(
                0,
                part("House", "kela", 0.6, Blended.AFTER_ROASTING),
                part("House", "low garden", 0.4, Blended.AFTER_ROASTING));
        Orders orders = Orders.none(logbook).with("kela", Mass.kilograms(1)).with("House", Mass.kilograms(5));
        assertEquals("kela 4 kg, low garden 2 kg", needed(orders));
        assertEquals(
                List.of(
                        "The blend House is put together after roasting. Shares of the roasted mass: 60 % kela, 40 % low garden."),
                orders.blends());
    }

    @Test
    void aBlendOfGreenCoffeesIsRoastedAsOneAndTakesGreenCoffeeOfEachLot() {
        Logbook logbook = logbook(
                0,
                part("House", "kela", 0.6, Blended.BEFORE_ROASTING),
                part("House", "low garden", 0.4, Blended.BEFORE_ROASTING));
        Orders orders = Orders.none(logbook).with("House", Mass.kilograms(8)).with("kela", Mass.kilograms(4));
        assertEquals("House 8 kg, kela 4 kg", needed(orders));
        assertEquals(
                List.of(
                        "The blend House is put together before roasting. Shares of the green mass: 60 % kela, 40 % low garden."),
                orders.blends());
        // Two charges of 5 kg of the blend, and one of kela.
        assertEquals(0.6 * 10 + 5, orders.green().get("kela"), 1e-9);
        assertEquals(0.4 * 10, orders.green().get("low garden"), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "0; kela 3 kg, low garden 2 kg; When the blend House is put together is not said in blends.csv; no batch was roasted under its name, so each"
                        + " part is taken as roasted by itself. Shares of the roasted mass: 60 % kela, 40 % low garden.",
                "1; House 5 kg; When the blend House is put together is not said in blends.csv; 1 batch was roasted under its name, so it is taken as roasted"
                        + " as one. Shares of the green mass: 60 % kela, 40 % low garden."
            })
    void whereItIsNotSaidWhatWasRoastedTells(int under, String needed, String words, String more) {
        Orders orders = Orders.none(logbook(
                        under,
                        part("House", "kela", 0.6, Blended.NOT_WRITTEN),
                        part("House", "low garden", 0.4, Blended.NOT_WRITTEN)))
                .with("House", Mass.kilograms(5));
        assertEquals(needed, needed(orders));
        assertEquals(words + "; " + more, orders.blends().get(0));
    }

    @Test
    void sharesThatDoNotAddUpAreTakenInProportionAndSaidSo() {
        Orders orders = Orders.none(logbook(
                        0,
                        part("House", "kela", 0.6, Blended.AFTER_ROASTING),
                        part("House", "low garden", 0.3, Blended.AFTER_ROASTING)))
                .with("House", Mass.kilograms(9));
        assertEquals("kela 6 kg, low garden 3 kg", needed(orders));
        assertEquals(
                List.of(
                        "The blend House is put together after roasting. Shares of the roasted mass: 67 % kela, 33 % low garden (in proportion, for"
                                + " those in blends.csv add up to 90 %)."),
                orders.blends());
    }

    @Test
    void aBlendOfABlendIsTakenApartToItsLots() {
        Orders orders = Orders.none(logbook(
                        0,
                        part("Outer", "House", 0.5, Blended.AFTER_ROASTING),
                        part("Outer", "kela", 0.5, Blended.AFTER_ROASTING),
                        part("House", "kela", 0.5, Blended.AFTER_ROASTING),
                        part("House", "low garden", 0.5, Blended.AFTER_ROASTING)))
                .with("Outer", Mass.kilograms(4));
        assertEquals("kela 3 kg, low garden 1 kg", needed(orders));
    }

    private static String refused(String name, double kilograms, BlendPart... parts) {
        return assertThrows(
                        LogbookException.class,
                        () -> Orders.none(logbook(0, parts)).with(name, Mass.kilograms(kilograms)))
                .getMessage();
    }

    @Test
    void refusesInWordsWithTheNearestName() {
        BlendPart[] house = {
            part("House", "kela", 0.6, Blended.AFTER_ROASTING), part("House", "low garden", 0.4, Blended.AFTER_ROASTING)
        };
        assertEquals(
                "The logbook 'built' has no lot 'Huose'. Did you mean 'House'? Lots: 'House', 'kela', 'low garden'.",
                refused("Huose", 5, house));
        assertEquals(
                "An order is a mass above 0, but for 'House' it is 0.000 kg. Write it as 12 kg.",
                refused("House", 0, house));
        assertEquals(
                "An order is at most 100000 kg, but for 'kela' it is 100001.000 kg. Write it as 12 kg.",
                refused("kela", 100_001, house));
        assertEquals(
                "The blend 'House' has no share for 'kela' in blends.csv, so an order of it cannot be taken apart. Write the share of"
                        + " each part in per cent there, as in 60.",
                refused("House", 5, part("House", "kela", Double.NaN, Blended.AFTER_ROASTING)));
        assertEquals(
                "The shares of the blend 'House' in blends.csv are all 0, so an order of it cannot be taken apart. Write them in per"
                        + " cent, as in 60.",
                refused("House", 5, part("House", "kela", 0, Blended.AFTER_ROASTING)));
        assertEquals(
                "The blend 'House' is a part of itself in blends.csv (House > Inner), so an order of it cannot be taken apart. Name its"
                        + " lots there.",
                refused(
                        "House",
                        5,
                        part("House", "Inner", 1, Blended.AFTER_ROASTING),
                        part("Inner", "House", 1, Blended.AFTER_ROASTING)));
        assertEquals(
                "The blend 'House' has parts that are blended before and parts that are blended after roasting in blends.csv. Give those"
                        + " that are roasted together a blend of their own there, and name it as one part.",
                refused(
                        "House",
                        5,
                        part("House", "kela", 0.5, Blended.BEFORE_ROASTING),
                        part("House", "low garden", 0.5, Blended.AFTER_ROASTING)));
    }

    /** Orders of one lot are told in the unit of the first; the table of all lots in the one they share, or in kilograms. */
    @Test
    void anOrderKeepsTheUnitInWhichItWasGiven() {
        Orders orders = Orders.none(logbook(0))
                .with("kela", Mass.of(10, MassUnit.POUND), MassUnit.POUND)
                .with("kela", Mass.kilograms(1));
        assertEquals(
                List.of(MassUnit.POUND),
                orders.needed().stream().map(GreenNeeded::unit).toList());
        assertEquals(10 * 0.45359237 + 1, orders.needed().get(0).roasted().kilograms(), 1e-9);
        assertEquals(MassUnit.POUND, orders.unit());
        assertEquals(
                MassUnit.KILOGRAM, orders.with("low garden", Mass.kilograms(1)).unit());
        Orders parts = Orders.none(logbook(
                        0,
                        part("House", "kela", 0.6, Blended.AFTER_ROASTING),
                        part("House", "low garden", 0.4, Blended.AFTER_ROASTING)))
                .with("House", Mass.of(10, MassUnit.POUND), MassUnit.POUND);
        assertEquals(
                List.of(MassUnit.POUND, MassUnit.POUND),
                parts.needed().stream().map(GreenNeeded::unit).toList());
    }

    private static String refused(BlendPart... parts) {
        return assertThrows(
                        LogbookException.class,
                        () -> Orders.none(logbook(0, parts)).with("House", Mass.kilograms(3)))
                .getMessage();
    }

    @Test
    void aPartThatIsNoLotIsRefusedWithTheBlendThatNamesIt() {
        String message = refused(
                part("House", "kela", 0.5, Blended.AFTER_ROASTING),
                part("House", "Nowhere", 0.5, Blended.AFTER_ROASTING));
        assertTrue(
                message.startsWith("blends.csv names 'Nowhere' as a part of 'House', but there is no such lot: "),
                message);
        String ordered = assertThrows(
                        LogbookException.class, () -> Orders.none(logbook(0)).with("Nowhere", Mass.kilograms(3)))
                .getMessage();
        assertFalse(ordered.contains("blends.csv names"), ordered);
    }

    @Test
    void aShareBelowZeroIsToldAsItIsWritten() {
        assertEquals(
                "The share of 'kela' in the blend 'House' is -20 in blends.csv, and an order cannot be taken apart by that. Write a number"
                        + " above 0, in per cent, as in 60.",
                refused(part("House", "kela", -0.2, Blended.AFTER_ROASTING)));
        assertTrue(refused(part("House", "kela", Double.NaN, Blended.AFTER_ROASTING))
                .startsWith("The blend 'House' has no share for 'kela' in blends.csv"));
    }

    @Test
    void aPartThatIsNamedTwiceIsToldOnceWithBothItsShares() {
        Orders orders = Orders.none(logbook(
                        0,
                        part("House", "kela", 0.25, Blended.AFTER_ROASTING),
                        part("House", "low garden", 0.5, Blended.AFTER_ROASTING),
                        part("House", "kela", 0.25, Blended.AFTER_ROASTING)))
                .with("House", Mass.kilograms(4));
        assertEquals("kela 2 kg, low garden 2 kg", needed(orders));
        assertEquals(
                List.of(
                        "The blend House is put together after roasting. Shares of the roasted mass: 50 % kela, 50 % low garden."
                                + " A part is named twice in blends.csv; its shares are added."),
                orders.blends());
    }
}
