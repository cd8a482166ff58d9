package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.BatchConditions;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;

/** What is said of a batch's day, with a record on each side of each rule. */
class BatchDayTest {
    private static final LocalDate DAY = LocalDate.of(2025, 3, 3);

    private static List<String> sentences(CardLogbook built, String batch) {
        return sentences(built.logbook(), batch);
    }

    private static List<String> sentences(Logbook logbook, String batch) {
        return BatchDay.sentences(logbook.batch(batch), logbook);
    }

    @Test
    void saysWhichBatchOfTheDayItWas() {
        CardLogbook built = CardLogbook.of(4)
                .change("B1", b -> b.machine("drum").roastedAt(CardLogbook.at(DAY, 9, 0)))
                .change("B2", b -> b.machine("drum").roastedAt(CardLogbook.at(DAY, 9, 20)))
                .change("B3", b -> b.machine("drum").roastedAt(CardLogbook.at(DAY.plusDays(1), 9, 0)))
                .change("B4", b -> b.machine("other drum").roastedAt(CardLogbook.at(DAY, 8, 0)));
        assertEquals(
                "Roasted on 2025-03-03 on drum, batch 1 of 2 of the day; of its lot's 2 others with a date, 1 came first on theirs.",
                sentences(built, "B1").get(0));
        assertEquals(
                "Roasted on 2025-03-03 on drum, batch 2 of 2 of the day.",
                sentences(built, "B2").get(0));
        assertEquals(
                "Roasted on 2025-03-04 on drum, the only batch of the day.",
                sentences(built, "B3").get(0));
        Logbook undated = Logbook.of(built.contents().toBuilder()
                .batches(List.of(Batch.named("B1").lot("one").build()))
                .build());
        assertEquals(
                List.of("No date was written for it, so nothing can be said of its day."), sentences(undated, "B1"));
    }

    @Test
    void ofTheLotsOthersTheFirstOfTheirDaysAreCounted() {
        CardLogbook two = CardLogbook.of(2)
                .change("B1", b -> b.roastedAt(CardLogbook.at(DAY, 9, 0)))
                .change("B2", b -> b.roastedAt(CardLogbook.at(DAY, 9, 20)));
        assertEquals(
                "Roasted on 2025-03-03, batch 1 of 2 of the day; its lot's one other with a date did not come first.",
                sentences(two, "B1").get(0));
        CardLogbook apart = two.change("B2", b -> b.lot("two")).with("C", "one", 1, true);
        assertEquals(
                "Roasted on 2025-03-03, batch 1 of 2 of the day; its lot's one other with a date came first on its day.",
                sentences(apart, "B1").get(0));
        CardLogbook three = apart.change("B2", b -> b.lot("one"));
        assertEquals(
                "Roasted on 2025-03-03, batch 1 of 2 of the day; of its lot's 2 others with a date, 1 came first on theirs.",
                sentences(three, "B1").get(0));
        assertEquals(
                "Roasted on 2025-03-03, batch 1 of 2 of the day.",
                sentences(two.change("B2", b -> b.lot("two")), "B1").get(0));
    }

    /** Batches without a lot are not of one lot, and a drum's pauses are its own. */
    @Test
    void batchesWithoutALotAreNotHeldAgainstOneAnother() {
        CardLogbook built = CardLogbook.of(2)
                .change("B1", b -> b.roastedAt(CardLogbook.at(DAY, 9, 0)))
                .change("B2", b -> b.roastedAt(CardLogbook.at(DAY, 9, 20)));
        Logbook none = Logbook.of(built.contents().toBuilder()
                .batches(List.of(
                        Batch.named("B1").roastedAt(CardLogbook.at(DAY, 9, 0)).build(),
                        Batch.named("B2").roastedAt(CardLogbook.at(DAY, 9, 20)).build()))
                .build());
        assertEquals(
                "Roasted on 2025-03-03, batch 1 of 2 of the day.",
                sentences(none, "B1").get(0));
    }

    /** Pairs a day: the second came 20 minutes after the first's charge, which was dropped after 11 min or a little more. */
    private static CardLogbook pairs(int pairs, int lastMinute) {
        CardLogbook built = CardLogbook.of(2 * pairs);
        for (int i = 1; i <= 2 * pairs; i++) {
            LocalDate day = DAY.plusDays((i - 1) / 2);
            int minute = i % 2 == 1 ? 0 : i == 2 * pairs ? lastMinute : 18 + i / 2;
            built = built.change("B" + i, b -> b.roastedAt(CardLogbook.at(day, 9, minute)));
        }
        return built;
    }

    private static String pause(CardLogbook built, String batch) {
        return sentences(built, batch).stream()
                .filter(s -> s.startsWith("The drum stood"))
                .findFirst()
                .orElse("");
    }

    @Test
    void aPauseIsCalledLongOrShortWhereItLiesBeyondEightOfTenOthers() {
        assertEquals(
                "The drum stood empty for 48 min before it; 8 of 10 pauses of this machine are 9 to 16 min, so this is high.",
                pause(pairs(12, 59), "B24"));
        String within = pause(pairs(12, 25), "B24");
        assertEquals(
                "The drum stood empty for 14 min before it; 8 of 10 pauses of this machine are 9 to 16 min.", within);
        assertEquals(
                "The drum stood empty for 5 min before it; 8 of 10 pauses of this machine are 9 to 16 min, so this is low.",
                pause(pairs(12, 16), "B24"));
        assertEquals("", pause(pairs(12, 25), "B23"), "the first of a day has no drop before it");
    }

    /** The range of eight in ten prints as 9 to 16 min: a pause that prints as one of these ends is within, and a minute beyond is not. */
    @ParameterizedTest
    @CsvSource({"27,16 min,.", "28,17 min,', so this is high.'", "20,9 min,.", "19,8 min,', so this is low.'"})
    void aPauseThatPrintsAsTheEndOfTheRangeIsWithin(int lastMinute, String pause, String end) {
        assertEquals(
                "The drum stood empty for " + pause + " before it; 8 of 10 pauses of this machine are 9 to 16 min"
                        + end,
                pause(pairs(12, lastMinute), "B24"));
    }

    /** A drum stands empty before whatever lot comes next. */
    @Test
    void pausesBeforeBatchesOfOtherLotsCount() {
        CardLogbook built = pairs(12, 25);
        for (int i = 1; i <= 12; i++) {
            built = built.change("B" + i, b -> b.lot("two"));
        }
        assertEquals(
                "The drum stood empty for 14 min before it; 8 of 10 pauses of this machine are 9 to 16 min.",
                pause(built, "B24"));
    }

    /** Only pauses of its own machine are told beside it. */
    @Test
    void pausesOfAnotherMachineDoNotCount() {
        CardLogbook built = pairs(12, 25);
        for (int i = 1; i <= 4; i++) {
            built = built.change("B" + i, b -> b.machine("other drum"));
        }
        for (int i = 5; i <= 24; i++) {
            built = built.change("B" + i, b -> b.machine("drum"));
        }
        assertFalse(pause(built, "B24").contains("8 of 10"), "nine others of its own drum");
        assertEquals("The drum stood empty for 14 min before it.", pause(built, "B24"));
    }

    /** With eleven pauses there are ten others of each. */
    @ParameterizedTest
    @CsvSource({"11,true", "10,false"})
    void tenOthersAreNeededToSayWhatIsUsual(int pairs, boolean told) {
        assertEquals(told, pause(pairs(pairs, 25), "B" + 2 * pairs).contains("8 of 10"));
    }

    private static BatchConditions room(double celsius) {
        return new BatchConditions(
                Optional.of(Mass.kilograms(2)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Temperature.celsius(celsius)),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    /** Eight in ten lie from 18 to 22 °C; what prints as one of these ends is not told as beyond it. Another lot's rooms do not count. */
    @ParameterizedTest
    @CsvSource({
        "22.4,CELSIUS,'The room had 22 °C; 8 of 10 of its lot''s others had 18 to 22 °C.'",
        "22.6,CELSIUS,'The room had 23 °C; 8 of 10 of its lot''s others had 18 to 22 °C, so this is high.'",
        "17.6,CELSIUS,'The room had 18 °C; 8 of 10 of its lot''s others had 18 to 22 °C.'",
        "17.4,CELSIUS,'The room had 17 °C; 8 of 10 of its lot''s others had 18 to 22 °C, so this is low.'",
        "12,CELSIUS,'The room had 12 °C; 8 of 10 of its lot''s others had 18 to 22 °C, so this is low.'",
        "20,CELSIUS,'The room had 20 °C; 8 of 10 of its lot''s others had 18 to 22 °C.'",
        "30,FAHRENHEIT,'The room had 86 °F; 8 of 10 of its lot''s others had 64 to 72 °F, so this is high.'"
    })
    void theRoomStandsBesideThatOfItsLotsOthers(double celsius, TemperatureUnit reader, String sentence) {
        CardLogbook built = CardLogbook.of(12).withOtherLot(11);
        for (int i = 1; i <= 11; i++) {
            double usual = 18 + i % 5;
            built = built.change("B" + i, b -> b.conditions(room(usual))).change("C" + i, b -> b.conditions(room(40)));
        }
        built = built.change("B12", b -> b.conditions(room(celsius)));
        List<String> sentences = sentences(built.logbook().in(reader), "B12");
        assertTrue(sentences.contains(sentence), sentences.toString());
    }

    @Test
    void whoRoastedIsToldWhereItWasNotTheOneWhoRoastedMostOfItsLot() {
        CardLogbook built = CardLogbook.of(4)
                .change("B1", b -> b.label(Batch.Label.OPERATOR, "Ida"))
                .change("B2", b -> b.label(Batch.Label.OPERATOR, "Ida"))
                .change("B3", b -> b.label(Batch.Label.OPERATOR, "Jon"))
                .change("B4", b -> b.label(Batch.Label.OPERATOR, "Jon"));
        String words = "Its operator was Jon; that of most of its lot's others was Ida (2 of 3).";
        assertTrue(
                sentences(built, "B3").contains(words), sentences(built, "B3").toString());
        CardLogbook alike = built.change("B2", b -> b.label(Batch.Label.OPERATOR, "Jon"));
        assertFalse(
                sentences(alike, "B3").toString().contains("Its operator"),
                sentences(alike, "B3").toString());
    }

    /** Five others: most of them by one roaster, or two each by two, or none by its own. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Ida Ida Ida Jon Jon|Its operator was Jon; that of most of its lot's others was Ida (3 of 5).",
                "Ida Ida Ida Kai Lea|Its operator was Jon; that of most of its lot's others was Ida (3 of 5).",
                "Ida Ida Jon Kai Lea|Its operator was Jon, as in 1 of its lot's 5 others.",
                "Ida Ida Kai Lea Mia|Its operator was Jon, as in none of its lot's 5 others.",
                "Ida Ida Lea Mia|Its operator was Jon, as in none of its lot's 4 others.",
                "Ida Ida Jon Jon Kai|",
                "Jon Jon Jon Ida Ida|",
                "Ida|Its operator was Jon; that of most of its lot's others was Ida (1 of 1)."
            })
    void mostIsSaidOfMoreThanHalfOnly(String others, String words) {
        String[] names = others.split(" ");
        CardLogbook built = CardLogbook.of(7).change("B1", b -> b.label(Batch.Label.OPERATOR, "Jon"));
        for (int i = 0; i < names.length; i++) {
            String name = names[i];
            built = built.change("B" + (i + 2), b -> b.label(Batch.Label.OPERATOR, name));
        }
        assertEquals(
                words == null ? List.of() : List.of(words),
                sentences(built, "B1").stream()
                        .filter(s -> s.startsWith("Its operator"))
                        .toList());
    }

    @Test
    void theRecipeIsToldLikeTheOperatorAndNothingIsSaidWhereNoneWasWritten() {
        CardLogbook built = CardLogbook.of(3)
                .change("B1", b -> b.label(Batch.Label.RECIPE, "espresso"))
                .change("B2", b -> b.label(Batch.Label.RECIPE, "filter").label(Batch.Label.OPERATOR, "Ida"));
        assertEquals(
                List.of("Its recipe was espresso; that of most of its lot's others was filter (1 of 1)."),
                sentences(built, "B1").stream()
                        .filter(s -> s.startsWith("Its "))
                        .toList());
        assertEquals(
                List.of(),
                sentences(built, "B3").stream()
                        .filter(s -> s.startsWith("Its "))
                        .toList());
    }

    /** Twelve of a lot, the last three on one day, of which one was charged 80 °C hotter. */
    @Test
    void theDaysOtherBatchesAreHeldBesideTheirOwnLots() {
        CardLogbook built = CardLogbook.of(12);
        for (int i = 10; i <= 12; i++) {
            int minute = 20 * (i - 10);
            built = built.change("B" + i, b -> b.roastedAt(CardLogbook.at(DAY, 9, minute)));
        }
        built = built.change("B11", b -> b.conditions(CardLogbook.conditions(2, 260)));
        assertEquals(
                "The day's other batches, each beside its own lot: 1 as usual, 1 unlike (B11).",
                sentences(built, "B12").get(sentences(built, "B12").size() - 1));
        CardLogbook little = built.change("B11", b -> b.conditions(CardLogbook.conditions(2, 186)));
        assertEquals(
                "The day's other batches, each beside its own lot: 1 as usual, 1 a little unlike (B11).",
                sentences(little, "B12").get(sentences(little, "B12").size() - 1));
        CardLogbook half = built.change("B11", b -> b.conditions(CardLogbook.conditions(1, 180)));
        assertEquals(
                "The day's other batches, each beside its own lot: 1 as usual, 1 of a charge that too few are like to say more (B11 a half"
                        + " charge (1 kg; usually 2 kg)).",
                sentences(half, "B12").get(sentences(half, "B12").size() - 1));
        CardLogbook few = CardLogbook.of(2)
                .change("B1", b -> b.roastedAt(CardLogbook.at(DAY, 9, 0)))
                .change("B2", b -> b.roastedAt(CardLogbook.at(DAY, 9, 20)));
        assertEquals(
                "The day's other batches, each beside its own lot: of 1 it cannot be told.",
                sentences(few, "B1").get(sentences(few, "B1").size() - 1));
    }
}
