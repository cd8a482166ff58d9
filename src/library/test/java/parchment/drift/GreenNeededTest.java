package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;

class GreenNeededTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

    @Test
    void greenCoffeeForAnOrderFollowsTheMassLoss() {
        GreenNeeded needed = GreenNeeded.of("Cinder Ridge", Mass.kilograms(12), HARBOUR);
        assertTrue(needed.interval().contains(needed.kilograms()));
        assertTrue(needed.kilograms() > 13 && needed.kilograms() < 15, needed.toString());
        GreenNeeded twice = GreenNeeded.of("Cinder Ridge", Mass.kilograms(24), HARBOUR);
        assertEquals(2 * needed.kilograms(), twice.kilograms(), 1e-9);
    }

    /** Three lots whose losses differ by a point, and a lot of which some batches were weighed. */
    private static Logbook withNew(int weighed) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            rows.add(BuiltBatch.losing(0.14 + 0.01 * (i % 3) + 0.001 * ((i * 7) % 5))
                    .withLot("lot " + i % 3));
        }
        for (int i = 0; i < 4; i++) {
            rows.add((i < weighed ? BuiltBatch.losing(0.16 + 0.001 * i) : BuiltBatch.of(2)).withLot("new"));
        }
        return BuiltBatch.logbook(rows);
    }

    @Test
    void aLotThatWasHardlyWeighedIsTakenAsOneMoreOfTheOthers() {
        GreenNeeded none = GreenNeeded.of("new", Mass.kilograms(5), withNew(0));
        GreenNeeded two = GreenNeeded.of("new", Mass.kilograms(5), withNew(2));
        GreenNeeded four = GreenNeeded.of("new", Mass.kilograms(5), withNew(4));
        assertTrue(
                none.toString().endsWith("from 24 batches of 3 lots, because none of its own are weighed"),
                none.toString());
        assertTrue(
                two.toString().endsWith("from 26 batches of 4 lots, because only 2 of its own are weighed"),
                two.toString());
        assertTrue(four.toString().endsWith("from 4 batches"), four.toString());
        assertTrue(GreenNeeded.of("new", Mass.kilograms(5), withNew(1))
                .toString()
                .endsWith("only 1 of its own is weighed"));
        assertEquals(5 / (1 - 0.152), none.kilograms(), 0.01);
        assertTrue(two.kilograms() > none.kilograms() && two.kilograms() < 5 / (1 - 0.1605));
        assertTrue(width(none) > width(two) && width(two) > width(four));
    }

    private static double width(GreenNeeded needed) {
        assertTrue(needed.interval().lower() >= 5, needed.toString());
        return needed.interval().upper() - needed.interval().lower();
    }

    /** Student's t of one degree of freedom at 0.95 is 6.314 (table), the spread of 0.15 and 0.16 is 0.00707. */
    @Test
    void twoBatchesAloneTellWithTheIntervalThatTwoDeserve() {
        GreenNeeded needed = GreenNeeded.of(
                "one",
                Mass.kilograms(5),
                BuiltBatch.logbook(List.of(BuiltBatch.losing(0.15), BuiltBatch.losing(0.16))));
        double half = 6.314 * 0.0070711 * Math.sqrt(1.5);
        assertEquals(5 / (1 - 0.155 - half), needed.interval().upper(), 1e-3);
        assertEquals(5 / (1 - 0.155 + half), needed.interval().lower(), 1e-3);
        assertEquals(
                List.of(
                        "5 kg of roasted one take about 5.9 kg of green coffee, in 3 batches of 2 kg.",
                        "Nine of ten such orders take 5.6 to 6.3 kg; few of its batches were weighed yet.",
                        "You may be short by up to 0.3 kg; 0.4 kg more green coffee makes that unlikely."),
                sentences(needed));
    }

    /** Batches that lost 12 % first and 15 % of late, a tenth of a point apart; the last so many of 2 kg, the others of 1 kg. */
    private static Logbook losingMoreOfLate(int early, int late, int large) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < early + late; i++) {
            boolean small = i < early + late - large;
            double loss = i < early ? 0.12 : small ? 0.14 : 0.15;
            rows.add(BuiltBatch.losing(loss + 0.001 * (i % 2 == 0 ? 1 : -1)).withGreen(small ? 1 : 2));
        }
        return BuiltBatch.logbook(rows);
    }

    /** Twenty weighed batches and one more, which is then left out; of the charge that is planned seven and eight. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "0;20;20;mass loss 15.0 %, from 20 batches",
                "1;20;20;mass loss 15.0 %, from the last 20 of 21 weighed batches",
                "30;20;20;mass loss 15.0 %, from the last 20 of 50 weighed batches",
                "0;20;8;mass loss 15.0 %, from 8 batches of about 2 kg",
                "30;20;8;mass loss 15.0 %, from those of about 2 kg (8) among the last 20 of 50 weighed batches",
                "30;20;7;mass loss 14.4 %, from the last 20 of 50 weighed batches"
            })
    void theLossIsThatOfLateAndOfTheChargeThatIsPlannedWhereEnough(int early, int late, int large, String ends) {
        String needed = GreenNeeded.of("one", Mass.kilograms(8.4), losingMoreOfLate(early, late, large))
                .toString();
        assertTrue(needed.endsWith("; " + ends), needed);
    }

    /** Twenty batches whose loss differs by half a point: 1.7 kg are just what a charge gives, 1.68 kg are less than it gives at worst. */
    @Test
    void saysThatTheOrderMayFallShortWhereTheIntervalReachesBelowIt() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            rows.add(BuiltBatch.losing(i % 2 == 0 ? 0.14 : 0.16));
        }
        Logbook logbook = BuiltBatch.logbook(rows);
        assertEquals(
                "You may be short by up to 0.04 kg; 0.05 kg more green coffee makes that unlikely.",
                sentences(GreenNeeded.of("one", Mass.kilograms(1.7), logbook)).get(2));
        assertTrue(sentences(GreenNeeded.of("one", Mass.kilograms(1.6), logbook))
                .get(2)
                .endsWith("is left over."));
    }

    private static List<String> sentences(GreenNeeded needed) {
        InShort words = ShortSentences.keptBy(needed.inShort());
        return List.of(words.found(), words.howSure(), words.next());
    }

    @Test
    void cannotTellFromOneBatchAlone() {
        GreenNeeded needed =
                GreenNeeded.of("one", Mass.kilograms(5), BuiltBatch.logbook(List.of(BuiltBatch.losing(0.15))));
        assertEquals(
                "Cannot tell how much green coffee 5 kg of roasted one take: 1 of its batches has both masses, and 4 are needed, or 8"
                        + " of several lots",
                needed.toString());
        assertEquals(
                List.of(
                        "How much green coffee 5 kg of roasted one take cannot be told.",
                        "Only 1 of its batches was weighed before and after roasting.",
                        "Weigh the green and the roasted coffee of four batches and ask again."),
                sentences(needed));
    }

    /** Three charges of 2.1 kg that lose 15 % are 5.355 kg, which computing misses by a rounding. */
    @Test
    void anOrderThatTheChargesGiveExactlyLeavesNothingOver() {
        for (double order : new double[] {1.785, 3.57, 5.355, 7.14, 8.925, 10.71}) {
            List<BuiltBatch> rows = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                rows.add(BuiltBatch.losing(0.15).withGreen(2.1));
            }
            String next = sentences(GreenNeeded.of("one", Mass.kilograms(order), BuiltBatch.logbook(rows)))
                    .get(2);
            assertTrue(next.endsWith(", so nothing is left over."), next);
        }
    }

    /** Four batches of 5 kg and two of 2.5 kg that lose 15 or 16 %, so 10.6 kg of green coffee make about 9 kg. */
    private static Logbook inTwoCharges() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (double green : List.of(5.01, 4.99, 2.5, 5.0, 2.51, 5.0)) {
            rows.add(BuiltBatch.losing(rows.size() % 2 == 0 ? 0.15 : 0.16).withGreen(green));
        }
        return BuiltBatch.logbook(rows);
    }

    @Test
    void tellsTheChargesThatWereUsedAndWhatIsLeftOver() {
        GreenNeeded needed = GreenNeeded.of("one", Mass.kilograms(9), inTwoCharges());
        assertEquals(
                List.of(
                        "9 kg of roasted one take about 10.65 kg of green coffee, in 2 batches of 5 kg and 1 of 2.5 kg.",
                        "Nine of ten such orders take 10.55 to 10.75 kg.",
                        "That gives 10.56 kg roasted (10.46 to 10.66), so about 1.56 kg is left over."),
                sentences(needed));
        assertEquals(
                "Charges used for one: 5 kg (4 batches), 2.5 kg (2 batches).",
                needed.used().orElseThrow());
        assertEquals(Optional.empty(), needed.alternative());
    }

    /** 8.6 kg roasted need 10.18 kg of green coffee: two charges of 5 kg miss 0.15 kg, which is little; for 9 kg they would miss too much. */
    @Test
    void saysWhereFewerBatchesWouldMissALittle() {
        GreenNeeded needed = GreenNeeded.of("one", Mass.kilograms(8.6), inTwoCharges());
        assertEquals("2 batches of 5 kg and 1 of 2.5 kg", needed.charges().orElseThrow());
        assertEquals(
                "2 batches of 5 kg would be about 0.15 kg roasted short.",
                needed.alternative().orElseThrow());
    }

    /** Two charges of 5 kg give 8.45 kg: a hundredth of the order may be missing where that saves a batch, and is named. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "8.53|2 batches of 5 kg|2 batches of 5 kg are 0.08 kg roasted short on average; 2 batches of 5 kg and 1 of 2.5 kg would cover"
                        + " it.",
                "8.54|2 batches of 5 kg and 1 of 2.5 kg|2 batches of 5 kg would be about 0.09 kg roasted short."
            })
    void aBatchIsSavedWhereAHundredthOfTheOrderIsMissing(double order, String charges, String alternative) {
        GreenNeeded needed = GreenNeeded.of("one", Mass.kilograms(order), inTwoCharges());
        assertEquals(charges, needed.charges().orElseThrow());
        assertEquals(alternative, needed.alternative().orElseThrow());
    }

    /** Batches that lose the same to a thousandth give what they give: what is missing then is missing for sure. */
    @Test
    void noBatchIsSavedWhereTheLossIsKnownBetterThanWhatIsMissing() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (double green : List.of(5.0, 5.0, 2.5, 5.0, 2.5, 5.0)) {
            rows.add(BuiltBatch.losing(rows.size() % 2 == 0 ? 0.155 : 0.1551).withGreen(green));
        }
        assertEquals(
                "2 batches of 5 kg and 1 of 2.5 kg",
                GreenNeeded.of("one", Mass.kilograms(8.5), BuiltBatch.logbook(rows))
                        .charges()
                        .orElseThrow());
    }

    /** An order in grams: the charges stay the kilograms in which the logbook has them. */
    @Test
    void chargesAreToldAsTheyAreWeighedWhereTheOrderIsInAnotherUnitOfTheSameSystem() {
        GreenNeeded needed = GreenNeeded.of("one", Mass.of(9000, MassUnit.GRAM), MassUnit.GRAM, inTwoCharges());
        assertEquals("2 batches of 5 kg and 1 of 2.5 kg", needed.charges().orElseThrow());
        assertEquals(
                "Charges used for one: 5 kg (4 batches), 2.5 kg (2 batches).",
                needed.used().orElseThrow());
        assertTrue(needed.inShort().found().startsWith("9000 g of roasted one take about "), needed.toString());
        assertTrue(
                MassUnit.OUNCE.isOfOneSystemWith(MassUnit.POUND) && MassUnit.GRAM.isOfOneSystemWith(MassUnit.KILOGRAM));
        assertFalse(
                MassUnit.OUNCE.isOfOneSystemWith(MassUnit.GRAM) || MassUnit.KILOGRAM.isOfOneSystemWith(MassUnit.POUND));
    }

    @Test
    void aLotWithoutAWrittenChargeIsChargedAsTheOthersAre() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            rows.add(BuiltBatch.losing(0.15 + 0.002 * i).withLot("lot " + i % 2));
        }
        rows.add(BuiltBatch.of(Double.NaN).withLot("new"));
        assertEquals(
                "No green mass is written for new; charges used for all lots: 2 kg (8 batches).",
                GreenNeeded.of("new", Mass.kilograms(5), BuiltBatch.logbook(rows))
                        .used()
                        .orElseThrow());
    }

    /** Two charges of 5 kg give 8.45 kg at a loss of 15.5 %, and 8.355 kg where most is lost: half a hundredth short at 8.4 kg is not worth a word. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "8.4|That gives 8.45 kg roasted (8.36 to 8.54), so about 0.05 kg is left over.",
                "8.42|You may be short by up to 0.07 kg; 0.08 kg more green coffee makes that unlikely.",
                "8.45|You may be short by up to 0.1 kg; 0.2 kg more green coffee makes that unlikely."
            })
    void saysHowShortAnOrderMayFallFromHalfAHundredthOn(double order, String next) {
        assertEquals(
                next,
                GreenNeeded.of("one", Mass.kilograms(order), inTwoCharges())
                        .inShort()
                        .next());
    }

    @Test
    void whatIsLessThanTheDigitsTellIsNothing() {
        assertTrue(MassWords.in(MassUnit.KILOGRAM).isNothing(0.0049, 0.18));
        assertFalse(MassWords.in(MassUnit.KILOGRAM).isNothing(0.0051, 0.18));
    }

    /** 20 lb are 9.07 kg (a pound is 0.45359237 kg), charges of 5 and 2.5 kg 11 and 5.5 lb. */
    @Test
    void anOrderInPoundsIsAnsweredInPounds() {
        GreenNeeded needed = GreenNeeded.of("one", Mass.of(20, MassUnit.POUND), MassUnit.POUND, inTwoCharges());
        assertEquals(MassUnit.POUND, needed.unit());
        assertEquals(
                List.of(
                        "20 lb of roasted one take about 23.7 lb of green coffee, in 2 batches of 11 lb and 1 of 5.5 lb.",
                        "Nine of ten such orders take 23.5 to 23.9 lb.",
                        "That gives 23.2 lb roasted (23.0 to 23.5), so about 3.2 lb is left over."),
                sentences(needed));
        assertEquals(
                "Charges used for one: 11 lb (4 batches), 5.5 lb (2 batches).",
                needed.used().orElseThrow());
        assertTrue(needed.toString().startsWith("20 lb of roasted one take 23."), needed.toString());
    }
}
