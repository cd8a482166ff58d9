package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.Column;
import parchment.display.Table;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.BatchPlan;
import parchment.logbook.written.Upkeep;
import parchment.phase.ExampleRoast;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;

/** What is said of a number that some batches have, and how they are laid side by side. */
class SideBySideTest {
    /** Batches that were dropped at the given times, in seconds; those at 0 without a written drop. */
    private static CardLogbook dropped(String seconds) {
        String[] parts = seconds.split(" ");
        CardLogbook built = CardLogbook.of(0).with("B", "one", parts.length, false);
        for (int i = 0; i < parts.length; i++) {
            int at = Integer.parseInt(parts[i]);
            built = at == 0
                    ? built
                    : built.change("B" + (i + 1), b -> b.writtenMark(MarkKind.DROP, Elapsed.seconds(at)));
        }
        return built;
    }

    private static SideBySide side(CardLogbook built) {
        return SideBySide.of(built.batches(), built.logbook());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0|",
                "0 0|",
                "670|11:10",
                "670 0|11:10 (known of 1)",
                "670 680|11:10 to 11:20",
                "670 680 0|11:10 to 11:20 (known of 2)",
                "670 670|11:10",
                "670 670 0|11:10 (known of 2)",
                "680 670 700|11:20 (11:10 to 11:40)",
                "680 670 700 0|11:20 (11:10 to 11:40, known of 3)",
                "670 670 670|11:10",
                "670 670 670 0|11:10 (known of 3)",
                "670 680 690 720|11:25 (11:10 to 12:00)"
            })
    void aNumberHasItsRangeAndFromThreeOnItsMiddleAndSaysOfHowManyItIsKnown(String seconds, String words) {
        assertEquals(words == null ? "" : words, side(dropped(seconds)).words(Features.dropTime()));
    }

    @Test
    void theMiddleIsThatOfTheKnownValues() {
        assertEquals(3, SideBySide.middle(new double[] {1, Double.NaN, 5, 3}));
        assertEquals(2, SideBySide.middle(new double[] {1, 3, Double.POSITIVE_INFINITY}));
        assertEquals(7, SideBySide.middle(new double[] {7}));
        assertTrue(Double.isNaN(SideBySide.middle(new double[] {Double.NaN})));
        assertTrue(Double.isNaN(SideBySide.middle(new double[0])));
    }

    private static List<List<String>> rows(CardLogbook built) {
        Table table = side(built).table(GoodBatches.of("one", built.logbook()));
        return IntStream.range(0, table.rowCount())
                .mapToObj(row -> IntStream.range(0, table.columns().size())
                        .mapToObj(column -> table.cell(row, column))
                        .toList())
                .toList();
    }

    private static List<String> row(CardLogbook built, String what) {
        return rows(built).stream()
                .filter(row -> row.get(0).equals(what))
                .findFirst()
                .orElse(List.of());
    }

    private static Table table(CardLogbook built) {
        return side(built).table(GoodBatches.of("one", built.logbook()));
    }

    private static List<String> said(Table table) {
        return table.notes().stream().filter(note -> note.startsWith("Times")).toList();
    }

    @Test
    void twoBatchesStandWithoutMiddleAndRangeAndThreeWith() {
        assertEquals(
                List.of("", "B1", "B2"),
                table(dropped("670 680")).columns().stream()
                        .map(Column::heading)
                        .toList());
        assertEquals(
                List.of("Times are since charge, in minutes and seconds; temperatures are those of the bean probe."),
                said(table(dropped("670 680"))));
        assertEquals(
                List.of("", "middle", "range", "B1", "B2", "B3"),
                table(dropped("670 680 690")).columns().stream()
                        .map(Column::heading)
                        .toList());
        assertEquals(
                List.of(
                        "Times are since charge, in minutes and seconds; temperatures are those of the bean probe. Middle and range are those of"
                                + " these 3 batches; the next one need not lie within. A number known of fewer than three has no middle. What was"
                                + " planned was meant, and need not have come."),
                said(table(dropped("670 680 690"))));
        assertEquals(List.of("drop time", "11:10", "11:20"), row(dropped("670 680"), "drop time"));
    }

    @Test
    void aRowHasAMiddleFromThreeKnownOnAndIsLeftOutWhereNothingIsKnown() {
        assertEquals(
                List.of("drop time", "11:20", "11:10 to 11:30", "11:10", "11:20", "11:30"),
                row(dropped("670 680 690"), "drop time"));
        assertEquals(
                List.of("drop time", "only 2", "11:10 to 11:30", "11:10", "–", "11:30"),
                row(dropped("670 0 690"), "drop time"));
        assertEquals(List.of("drop time", "only 1", "–", "11:10", "–", "–"), row(dropped("670 0 0"), "drop time"));
        assertEquals(List.of(), row(dropped("0 0 0"), "drop time"));
        assertEquals(
                List.of("roasted on", "–", "–", "2025-01-01", "2025-01-02", "2025-01-03"),
                row(dropped("0 0 0"), "roasted on"));
    }

    /** The example roast with every mark, a planned drop and 15 % lost. */
    private static CardLogbook whole(int batches) {
        CardLogbook built = CardLogbook.of(batches);
        for (int batch = 1; batch <= batches; batch++) {
            built = built.change(
                    "B" + batch,
                    b -> b.machine("drum")
                            .curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                            .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(360))
                            .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(600))
                            .writtenMark(MarkKind.DROP, Elapsed.seconds(740))
                            .plan(new BatchPlan(Optional.of(Temperature.celsius(230)), BatchPlan.PlannedBy.CHOICE))
                            .conditions(new BatchConditions(
                                    Optional.of(Mass.kilograms(2)),
                                    Optional.of(Mass.kilograms(1.7)),
                                    Optional.of(Temperature.celsius(180)),
                                    Optional.empty(),
                                    Optional.empty(),
                                    OptionalDouble.empty(),
                                    OptionalDouble.empty(),
                                    Optional.empty())));
        }
        return built;
    }

    @Test
    void theRowsStandInTheOrderInWhichTheyComeAbout() {
        List<String> what = new ArrayList<>();
        rows(whole(3)).forEach(row -> what.add(row.get(0)));
        assertEquals(
                List.of(
                        "roasted on",
                        "green mass",
                        "charge temperature",
                        "planned drop",
                        "turning point time",
                        "turning point temperature",
                        "yellowing time",
                        "yellowing temperature",
                        "first crack time",
                        "first crack temperature",
                        "drop time",
                        "drop temperature",
                        "development time",
                        "development ratio",
                        "mass loss"),
                what);
        assertEquals(
                List.of("planned drop", "230.0 °C", "230.0 °C", "230.0 °C", "230.0 °C", "230.0 °C"),
                row(whole(3), "planned drop"));
        assertEquals("15.0 %", row(whole(3), "mass loss").get(1));
    }

    /** Numbers that lie far apart lose the decimal that says nothing; a share of the mass keeps its one. */
    @Test
    void aShareKeepsItsDecimalAndATemperatureDoesNot() {
        CardLogbook built = whole(3);
        for (int batch = 1; batch <= 3; batch++) {
            double roasted = 1.8 - 0.04 * batch;
            double charge = 170 + 10 * batch;
            int drop = 680 + 20 * batch;
            built = built.change(
                    "B" + batch,
                    b -> b.writtenMark(MarkKind.DROP, Elapsed.seconds(drop))
                            .conditions(new BatchConditions(
                                    Optional.of(Mass.kilograms(2)),
                                    Optional.of(Mass.kilograms(roasted)),
                                    Optional.of(Temperature.celsius(charge)),
                                    Optional.empty(),
                                    Optional.empty(),
                                    OptionalDouble.empty(),
                                    OptionalDouble.empty(),
                                    Optional.empty())));
        }
        assertEquals(
                List.of("mass loss", "14.0 %", "12.0 to 16.0 %", "12.0 %", "14.0 %", "16.0 %"),
                row(built, "mass loss"));
        assertEquals(
                List.of("drop temperature", "224 °C", "220 to 228 °C", "220 °C", "224 °C", "228 °C"),
                row(built, "drop temperature"));
    }

    @Test
    void aScoreStandsWithTheNumberOfItsScores() {
        CardLogbook built = CardLogbook.of(6).cupBy("Jon", "open", "B1", "liking", 7);
        for (int batch = 1; batch <= 6; batch++) {
            built = built.cup("open", "B" + batch, "liking", 5 + 0.25 * batch);
        }
        CardLogbook once = new CardLogbook(
                built.batches(),
                built.cups().stream()
                        .filter(cup -> !cup.batch().equals("B2") || cup.score("liking") > 5.5)
                        .toList());
        List<String> row = row(once, "mean liking");
        assertEquals("5.8 (3 scores)", row.get(3));
        assertEquals("5.8 (1 score)", row.get(4));
        assertEquals("5.8 (2 scores)", row.get(5));
        assertEquals(List.of(), row(CardLogbook.of(6), "mean liking"));
    }

    /** B1 was roasted before the probe was moved, so of it no reading is told; what was planned then is not known on today's probe either. */
    @Test
    void whatWasReadBeforeTheProbeWasMovedIsLeftOutAndSaidToBe() {
        CardLogbook built = whole(3);
        Logbook logbook = Logbook.of(built.contents().toBuilder()
                .upkeep(List.of(new Upkeep("drum", LocalDate.of(2025, 1, 2), "bean probe moved", Optional.empty())))
                .build());
        SideBySide all = SideBySide.of(logbook.batches(), logbook);
        assertTrue(all.leavesOutChargeTemperatures());
        assertEquals("228.0 °C (known of 2)", all.words(Features.dropTemperature()));
        assertEquals("12:20", all.words(Features.dropTime()));
        assertEquals("180.0 °C (known of 2)", all.words(Features.chargeTemperature()));
        Table table = all.table(GoodBatches.of("one", logbook));
        assertEquals(
                List.of("planned drop", "only 2", "230.0 °C", "–", "230.0 °C", "230.0 °C"),
                IntStream.range(0, 6).mapToObj(column -> table.cell(3, column)).toList());
        assertFalse(SideBySide.of(logbook.batches().subList(1, 3), logbook).leavesOutChargeTemperatures());
        assertFalse(side(dropped("670 680")
                        .change("B1", b -> b.conditions(BatchConditions.NOT_WRITTEN))
                        .change("B2", b -> b.conditions(BatchConditions.NOT_WRITTEN)))
                .leavesOutChargeTemperatures());
    }

    /** Charges of 1.992 and 2.01 kg are 2 kg wherever a charge is told. */
    @Test
    void theMiddleOfTheChargesIsTheSizeThatTheyAre() {
        CardLogbook built = CardLogbook.of(4);
        for (int batch = 1; batch <= 4; batch++) {
            double mass = batch == 1 ? 2.01 : 1.992;
            built = built.change("B" + batch, b -> b.conditions(CardLogbook.conditions(mass, 180)));
        }
        String page = LotCard.of("one", built.logbook()).text();
        assertTrue(page.lines().anyMatch(line -> line.matches("green mass +2 kg +1\\.99 to 2\\.01 kg .*")), page);
    }
}
