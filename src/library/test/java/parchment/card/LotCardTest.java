package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.Cautions;
import parchment.logbook.contents.LogbookContents;
import parchment.phase.ExampleRoast;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.TemperatureUnit;

class LotCardTest {
    private static final String NO_TARGET =
            "Take it as what was seen and not as a target: beans, room and machine change from day to day.";

    private static InShort inShort(CardLogbook built) {
        return ShortSentences.keptBy(LotCard.of("one", built.logbook()).inShort());
    }

    private static Lot lot(String name, String process, String origin) {
        return new Lot(
                name,
                Optional.of(origin).filter(o -> !o.isEmpty()),
                Optional.of(process).filter(p -> !p.isEmpty()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Map.of());
    }

    @Test
    void theFirstSentencesSayWhatTheBatchesHadInCommonAndByWhatTheyWentWell() {
        CardLogbook built = CardLogbook.of(10);
        for (int batch = 1; batch <= 10; batch++) {
            for (int times = 0; times < 6; times++) {
                built = built.cup("blind", "B" + batch, "liking", batch <= 6 ? 8 : 3);
            }
        }
        assertEquals(
                new InShort(
                        "5 batches of one that went well were dropped after 11:20 (11:00 to 11:40).",
                        "Their cups scored highest in liking, blind: 6 of 10 lie within the luck of tasting of the very best, here the last 5.",
                        NO_TARGET),
                inShort(built));
        assertEquals(
                new InShort(
                        "The last 5 usual batches of one were dropped after 11:20 (11:00 to 11:40).",
                        "No scores tell which went well, so these are the last that were as usual.",
                        NO_TARGET),
                inShort(CardLogbook.of(10)));
        assertEquals(
                new InShort(
                        "The last 5 batches of one were dropped after 11:20 (11:00 to 11:40).",
                        "Nothing tells which went well, so these are simply the last.",
                        NO_TARGET),
                inShort(CardLogbook.of(8)));
        assertEquals(
                new InShort(
                        "The last 2 batches of one were dropped after 11:10 to 11:20.",
                        "Too few to say what repeats, or which went well.",
                        NO_TARGET),
                inShort(CardLogbook.of(2)));
        assertEquals(
                new InShort(
                        "The one batch of one was written down without a drop.",
                        "Too few to say what repeats, or which went well.",
                        NO_TARGET),
                inShort(CardLogbook.of(0).with("A", "one", 1, false)));
    }

    private static CardLogbook withFulls(int halves, int fulls) {
        CardLogbook built = CardLogbook.of(halves + fulls);
        for (int batch = halves + 1; batch <= halves + fulls; batch++) {
            built = built.change("B" + batch, b -> b.conditions(CardLogbook.conditions(4, 180)));
        }
        return built;
    }

    /** The newest batches are full charges, and a half charge is asked for: enough of it, two, one. */
    @Test
    void theChargeIsSaidFirstAndThatThereAreTooFewOfIt() {
        assertEquals(
                "4 kg charges of one: the last 3 were dropped after 11:30 (11:00 to 11:40).",
                inShort(withFulls(2, 3)).found());
        assertEquals(
                "4 kg charges of one: only 2 were roasted, dropped after 11:30 to 11:40.",
                inShort(withFulls(2, 2)).found());
        assertFalse(LotCard.of("one", withFulls(2, 2).logbook()).text().contains("middle"));
        assertEquals(
                "4 kg charges of one: only 1 was roasted, dropped after 11:30.",
                inShort(withFulls(2, 1)).found());
        LotCard half = LotCard.of("one", withFulls(2, 3).logbook()).withCharge(Mass.kilograms(2));
        assertEquals(
                "2 kg charges of one: only 2 were roasted, dropped after 11:10 to 11:20.",
                ShortSentences.keptBy(half.inShort()).found());
        CardLogbook scored = withFulls(4, 6);
        for (int batch = 1; batch <= 10; batch++) {
            for (int times = 0; times < 6; times++) {
                scored = scored.cup("blind", "B" + batch, "liking", batch <= 5 ? 8 : 3);
            }
        }
        assertEquals(
                "4 kg charges of one: only 1 went well, dropped after 11:00.",
                inShort(scored).found());
        assertEquals(
                "2 kg charges of one: the last 4 scored were dropped after 11:25 (11:10 to 11:40).",
                ShortSentences.keptBy(LotCard.of("one", scored.logbook())
                                .withCharge(Mass.kilograms(2))
                                .inShort())
                        .found());
        assertEquals(
                "2 kg charges of one: the last 5 usual ones were dropped after 11:20 (11:00 to 11:40).",
                ShortSentences.keptBy(LotCard.of("one", withFulls(10, 2).logbook())
                                .withCharge(Mass.kilograms(2))
                                .inShort())
                        .found());
    }

    /** A number has a middle where three batches have it, and says of how many it is known where not of all. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1|4|after 11:10 (known of 1).|only 1 11:10",
                "2|3|after 11:10 to 11:20 (known of 2).|only 2 11:10 to 11:20",
                "3|2|after 11:20 (11:10 to 11:30, known of 3).|11:20 11:10 to 11:30",
                "5|0|after 11:20 (11:00 to 11:40).|11:20 11:00 to 11:40"
            })
    void onlyBatchesThatHaveANumberCountBehindIt(int dropped, int without, String words, String inTheTable) {
        CardLogbook built = CardLogbook.of(dropped).with("A", "one", without, false);
        assertEquals(
                "The last 5 batches of one were dropped " + words,
                inShort(built).found());
        String row = LotCard.of("one", built.logbook())
                .text()
                .lines()
                .filter(line -> line.strip().startsWith("drop time"))
                .findFirst()
                .orElseThrow()
                .replaceAll("[ –—-]+", " ")
                .strip();
        assertTrue(row.startsWith("drop time " + inTheTable), row);
        assertEquals(dropped > 2, row.startsWith("drop time 11:20 11:"), row);
    }

    @Test
    void scoresThatPartNothingAreSaidToPartNothing() {
        CardLogbook built = CardLogbook.of(6);
        for (int batch = 1; batch <= 6; batch++) {
            built = built.cup("open", "B" + batch, "liking", 6).cup("open", "B" + batch, "liking", 4 + batch % 3);
        }
        assertEquals(
                "By scores none of the lot's 6 scored batches is better than another; these are the last of them.",
                inShort(built).howSure());
    }

    /** A lot without a batch, and two lots that may be a guide: the one of the same process and origin goes before. */
    @Test
    void aNewLotHasTheLotsMostLikeItAsAWeakerGuide() {
        LogbookContents contents = CardLogbook.of(3).withOtherLot(3).contents();
        List<Lot> lots =
                List.of(lot("new", "washed", "north"), lot("one", "Washed ", "south"), lot("other", "washed", "north"));
        Logbook logbook = Logbook.of(contents.toBuilder().lots(lots).build());
        LotCard card = LotCard.of("new", logbook);
        assertEquals(
                new InShort(
                        "No batch of new was roasted yet.",
                        "There is nothing of it to lay side by side.",
                        "Look at the lots most like it below, and write down its first batches in full."),
                ShortSentences.keptBy(card.inShort()));
        String page = card.text();
        assertTrue(
                page.contains(
                        "Other beans, so a weaker guide: the last good batches of the lots that are written down as most like new."),
                page);
        assertTrue(page.replaceAll(" +", " ").contains("the same process and origin process"), page);
        assertEquals("Lot card of new: no batch of it was roasted", card.toString());
        Logbook unwritten = Logbook.of(contents.toBuilder()
                .lots(List.of(lot("new", "", ""), lot("one", "", ""), lot("other", "", "")))
                .build());
        LotCard alone = LotCard.of("new", unwritten);
        assertEquals("Write down its first batches in full.", alone.inShort().next());
        assertTrue(
                alone.text()
                        .contains(
                                "No other lot with 3 batches or more is written down with the process or the origin of new, so no"
                                        + " other lot can be a guide."),
                alone.text());
    }

    /** A guide needs three batches. */
    @ParameterizedTest
    @CsvSource({"3,true", "2,false"})
    void aLotOfThreeBatchesMayBeAGuide(int batches, boolean guide) {
        LogbookContents contents = CardLogbook.of(2).withOtherLot(batches).contents();
        Logbook logbook = Logbook.of(contents.toBuilder()
                .lots(List.of(lot("one", "washed", ""), lot("other", "washed", "")))
                .build());
        assertEquals(guide, LotCard.of("one", logbook).text().contains("Lots most like it, as far as is written"));
    }

    @Test
    void fewerThanThreeBatchesHaveNoMiddle() {
        assertTrue(LotCard.of("one", CardLogbook.of(3).logbook()).text().contains("middle"));
        assertFalse(LotCard.of("one", CardLogbook.of(2).logbook()).text().contains("middle"));
    }

    /** The example roast, thrice: yellowing at 6:00 and 152 °C, first crack at 10:00 and 200 °C, the drop at 12:20 and 228 °C. */
    @ParameterizedTest
    @CsvSource({"CELSIUS,152.0 °C,200.0 °C,228.0 °C", "FAHRENHEIT,305.6 °F,392.0 °F,442.4 °F"})
    void marksStandWithTimeAndTemperatureInTheReadersUnit(
            TemperatureUnit reader, String yellowing, String crack, String drop) {
        CardLogbook built = CardLogbook.of(3);
        for (int batch = 1; batch <= 3; batch++) {
            built = built.change(
                    "B" + batch,
                    b -> b.curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                            .curve(
                                    Quantity.GAS,
                                    ExampleRoast.curve(
                                            "gas",
                                            parchment.quantity.Unit.labelled("%"),
                                            t -> t < 600 ? 80 : 50.5,
                                            -40,
                                            740,
                                            2))
                            .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(360))
                            .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(600))
                            .writtenMark(MarkKind.DROP, Elapsed.seconds(740)));
        }
        String page = LotCard.of("one", built.logbook().in(reader)).text();
        for (String row : List.of(
                "yellowing time " + "6:00",
                "yellowing temperature " + yellowing,
                "first crack time 10:00",
                "first crack temperature " + crack,
                "drop time 12:20",
                "drop temperature " + drop,
                "development time 2:20")) {
            assertTrue(page.lines().anyMatch(l -> l.replaceAll("\\s+", " ").startsWith(row)), row + "\n" + page);
        }
        String at = reader == TemperatureUnit.CELSIUS ? "200 °C" : "392 °F";
        assertTrue(
                page.replace('\u00a0', ' ')
                        .replaceAll("\\s+", " ")
                        .contains("gas B1 80 % 10:00 (" + at + ") to 50.5 %"),
                page);
        assertFalse(reader == TemperatureUnit.FAHRENHEIT && page.contains("°C"), page);
    }

    @Test
    void aCardCarriesTheCautionsAndAnInventedOneSaysSoFirst() {
        LogbookContents contents = CardLogbook.of(3).contents();
        String roasted = LotCard.of("one", Logbook.of(contents)).text();
        Cautions.forAPage().forEach(caution -> assertTrue(roasted.contains(caution), caution));
        assertFalse(roasted.contains(Cautions.INVENTED_MACHINE), roasted);
        String invented = LotCard.of(
                        "one",
                        Logbook.of(contents.toBuilder()
                                .provenance(Logbook.Provenance.INVENTED)
                                .build()))
                .text();
        assertTrue(invented.startsWith("Lot card of one\n\nInvented machine: do not roast."), invented);
    }

    @Test
    void settingsThatWereWrittenStandWhereNoneWereLogged() {
        CardLogbook built = CardLogbook.of(3).change("B2", b -> b.extra("planned gas [%]", "70"));
        String page = LotCard.of("one", built.logbook()).text();
        assertTrue(page.contains("written: planned gas [%] 70"), page);
        assertTrue(LotCard.of("one", CardLogbook.of(3).logbook())
                .text()
                .contains("No gas, air or other control was logged or written of these batches."));
    }

    @Test
    void theCardIsOfTheDaysItSays() {
        LotCard card = LotCard.of("one", CardLogbook.of(10).logbook());
        assertEquals("one", card.lot());
        assertEquals(5, card.batches().size());
        assertEquals(LocalDate.of(2025, 1, 10), card.batches().get(4).roastDay().orElseThrow());
        assertEquals("Lot card of one: 5 batches, no scores; as usual", card.toString());
    }

    @Test
    void aChargeThatWasAskedForIsSaidBesideTheNearestThatWasUsed() {
        LotCard card = LotCard.of("one", withFulls(6, 3).logbook());
        assertEquals(
                "4 kg charges of one (the nearest to 3.9 kg): the last 3 were dropped after 11:30 (11:20 to 11:40).",
                ShortSentences.keptBy(card.withCharge(Mass.kilograms(3.9)).inShort())
                        .found());
        assertTrue(card.withCharge(Mass.kilograms(3.9))
                .text()
                .contains(
                        "Only batches roasted with about 4 kg of green coffee were looked at, as you asked for 3.9 kg and that is the"
                                + " nearest charge used."));
        assertTrue(
                card.withCharge(Mass.kilograms(4)).text().contains(" were looked at, as you asked for that charge."));
        assertTrue(card.text().contains(" were looked at, as the lot's newest was."));
    }

    /** The last batch is of 15 June 2025, or thereabouts; tomorrow is not doubted. */
    @Test
    void theCardsSayWhereDatesLieAhead() {
        Logbook logbook = CardLogbook.of(10).logbook();
        LocalDate last = logbook.batches().get(9).roastDay().orElseThrow();
        String doubt = "dated after today, " + last.minusDays(2) + ", the last on " + last + ".";
        LotCard lot = LotCard.of("one", logbook);
        BatchCard batch = BatchCard.of("B10", logbook);
        assertTrue(lot.readOn(last.minusDays(2)).text().contains(doubt));
        assertTrue(batch.readOn(last.minusDays(2)).text().contains(doubt));
        assertFalse(lot.readOn(last).text().contains("dated after today"));
        assertFalse(batch.readOn(last).text().contains("dated after today"));
        assertFalse((lot.text() + batch.text()).contains("dated after today"), "without a day nothing is doubted");
    }
}
