package parchment.feature;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookException;
import parchment.period.ProbePeriods;
import parchment.phase.ExampleRoast;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;

class BatchTableTest {
    private static final Batch FULL = ExampleLogbook.full().build();
    private static final Batch HALF = ExampleRoast.unwritten()
            .writtenMark(MarkKind.DROP, Elapsed.seconds(740))
            .roastedAt(OffsetDateTime.of(2025, 3, 4, 9, 20, 0, 0, ZoneOffset.UTC))
            .machine("drum")
            .build();

    private static Batch renamed(Batch batch, String name) {
        Batch.Builder builder = Batch.named(name).readerUnit(batch.readerUnit());
        for (MarkKind kind : MarkKind.values()) {
            batch.writtenMark(kind).ifPresent(at -> builder.writtenMark(kind, at));
        }
        for (Quantity quantity : Quantity.values()) {
            batch.curve(quantity).ifPresent(curve -> builder.curve(quantity, curve));
        }
        batch.roastedAt().ifPresent(builder::roastedAt);
        batch.machine().ifPresent(builder::machine);
        batch.lot().ifPresent(builder::lot);
        batch.extras().forEach(builder::extra);
        return builder.conditions(batch.conditions()).build();
    }

    private static final Logbook TWO = ExampleLogbook.of(FULL, renamed(HALF, "113"));

    @Test
    void keepsMissingValuesMissingAndSaysWhy() {
        BatchTable table = BatchTable.of(TWO, Features.dropTemperature(), Features.developmentTime());
        assertArrayEquals(new double[] {140, Double.NaN}, table.values(Features.developmentTime()));
        assertEquals(228, table.values("drop temperature")[1], 0.01);
        assertEquals(Map.of("113", "first crack start is missing."), table.whyMissing(Features.developmentTime()));
        assertTrue(Double.isNaN(table.standardErrors(Features.developmentTime())[1]));
        assertEquals("2 features of 2 batches of example, 1 of 4 numbers missing", table.toString());
    }

    @Test
    void showsUnitsAndReasonsOnThePage() {
        String page = BatchTable.of(TWO, Features.dropTemperature(), Features.developmentRatio())
                .text();
        assertTrue(page.contains("drop temperature [°C]"), page);
        assertTrue(page.contains("18.9"), page);
        assertTrue(page.contains("missing"), page);
        assertTrue(
                page.contains(
                        "Development ratio is missing in 1 of 2 batches (113), because first crack start is missing."),
                page);
    }

    /** A roast clock shows 2:20 and not 140 s; for reckoning the numbers stay seconds. */
    @Test
    void aPageShowsTimesAsARoastClockDoesAndTheNumbersStaySeconds() {
        BatchTable table = BatchTable.of(TWO, Features.developmentTime());
        String page = table.text();
        assertTrue(page.contains("2:20"), page);
        assertFalse(page.contains("[s]"), page);
        assertTrue(page.contains("Times are in minutes and seconds; values(...) gives them in seconds."), page);
        assertEquals(140, table.values(Features.developmentTime())[0]);
        assertFalse(BatchTable.of(TWO, Features.dropTemperature()).text().contains("Times are"));
    }

    /** What was written and set aside was written; one reading is not none. */
    @Test
    void saysTrulyWhyMassLossAndTheCurveAreMissing() {
        Batch one = Batch.named("114")
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        Curve.of("bean temperature", Unit.TEMPERATURE, new double[] {10}, new double[] {150}))
                .build();
        Batch none = Batch.named("115").build();
        String page = BatchTable.of(
                        ExampleLogbook.of(FULL, one, none), Features.massLoss(), Features.secondsBetween(150, 200))
                .text();
        assertTrue(
                page.contains(
                        "Mass loss is missing in 2 of 3 batches (114, 115), because green mass was not written, or was set"
                                + " aside (see the problems)."),
                page);
        assertEquals(
                Map.of(
                        "114", "too little bean temperature was logged for a path (1 reading).",
                        "115", "no bean temperature was logged."),
                BatchTable.of(ExampleLogbook.of(FULL, one, none), Features.secondsBetween(150, 200))
                        .whyMissing(Features.secondsBetween(150, 200)));
    }

    @Test
    void showsTheSameInFahrenheit() {
        Logbook fahrenheit = ExampleLogbook.of(TemperatureUnit.FAHRENHEIT, List.of(FULL, renamed(HALF, "113")));
        BatchTable table = BatchTable.of(fahrenheit, Features.dropTemperature());
        assertArrayEquals(
                BatchTable.of(TWO, Features.dropTemperature()).values("drop temperature"),
                table.values("drop temperature"));
        assertTrue(table.text().contains("drop temperature [°F]"), table.text());
        assertTrue(table.text().contains("442.4"), table.text());
    }

    @Test
    void countsTheDayOnEachMachine() {
        BatchTable table = BatchTable.of(TWO, Features.batchOfTheDay(), Features.minutesSinceLastDrop());
        assertArrayEquals(new double[] {1, 2}, table.values(Features.batchOfTheDay()));
        // Charged at 9:00 and 9:20; the first was dropped after 12 min 20 s.
        assertEquals(20 - 740 / 60.0, table.values(Features.minutesSinceLastDrop())[1], 1e-9);
        assertEquals(
                "it was the first batch of the day on its machine.",
                table.whyMissing(Features.minutesSinceLastDrop()).get("112"));
    }

    @Test
    void marksMakeFeaturesErrTogether() {
        // A late first crack lengthens browning by as much as it shortens development.
        BatchTable table = BatchTable.of(TWO);
        List<Feature> pair = List.of(Features.browningTime(), Features.developmentTime(), Features.dropTime());
        double[][] covariance = table.covariance("112", pair);
        double rounding = 1.0 / 12;
        assertEquals(100 + 25 + 2 * rounding, covariance[0][0], 1e-9);
        assertEquals(25 + 4 + 2 * rounding, covariance[1][1], 1e-9);
        assertEquals(-(25 + rounding), covariance[0][1], 1e-9);
        assertEquals(4 + rounding, covariance[1][2], 1e-9);
        assertEquals(0, covariance[0][2], 1e-9);
        for (int i = 0; i < 3; i++) {
            assertEquals(Math.sqrt(covariance[i][i]), table.standardErrors(pair.get(i))[0], 1e-9);
        }
    }

    @Test
    void covarianceHasTheDiagonalOfTheStandardErrors() {
        BatchTable table = BatchTable.of(TWO);
        double[][] covariance = table.covariance("112", table.features());
        for (int i = 0; i < covariance.length; i++) {
            double error = table.standardErrors(table.features().get(i))[0];
            if (Double.isNaN(error)) {
                assertTrue(Double.isNaN(covariance[i][i]), table.names().get(i));
            } else {
                assertEquals(
                        error * error,
                        covariance[i][i],
                        1e-9 + 1e-6 * error * error,
                        table.names().get(i));
            }
        }
    }

    @Test
    void doesNotMixScalesOfAControl() {
        Curve mbar = ExampleRoast.curve("gas", Unit.labelled("mbar"), t -> t < 370 ? 20 : 14, -40, 740, 2);
        Batch other = renamed(FULL, "113").toBuilder().curve(Quantity.GAS, mbar).build();
        Batch third = renamed(FULL, "114");
        BatchTable table = BatchTable.of(ExampleLogbook.of(FULL, other, third), Features.gasInDrying());
        assertEquals(
                "gas is logged in 'mbar' here, but in '%' in most batches; scales are not mixed.",
                table.whyMissing(Features.gasInDrying()).get("113"));
    }

    @Test
    void saysWhichFeatureTheTableDoesNotHold() {
        BatchTable table = BatchTable.of(TWO, Features.dropTemperature());
        LogbookException refused = assertThrows(LogbookException.class, () -> table.values("drop temperatur"));
        assertEquals(
                "This table of batches has no feature 'drop temperatur'. Did you mean 'drop temperature'? It was made with: drop"
                        + " temperature.",
                refused.getMessage());
    }

    @Test
    void saysWhichColumnIsMissing() {
        LogbookException refused =
                assertThrows(LogbookException.class, () -> BatchTable.of(TWO, Features.column("tasting fe")));
        assertEquals(
                "The logbook 'example' has no column 'tasting fe' in batches.csv. Did you mean 'tasting fee'? Columns beyond the known"
                        + " ones: tasting fee, mood, barcode.",
                refused.getMessage());
    }

    @Test
    void refusesTwoFeaturesOfOneName() {
        assertThrows(
                LogbookException.class,
                () -> BatchTable.of(TWO, Features.dropTemperature(), Features.dropTemperature()));
    }

    @Test
    void meetsALogbookWithoutBatches() {
        BatchTable table = BatchTable.of(ExampleLogbook.of());
        assertEquals(0, table.size());
        assertFalse(table.text().isBlank());
    }

    @Test
    void orderOfBatchesChangesNothing() {
        Random random = new Random(11);
        List<Batch> batches = new java.util.ArrayList<>();
        for (int i = 0; i < 12; i++) {
            double late = 40 * random.nextDouble();
            batches.add(ExampleRoast.written()
                    .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(Math.rint(340 + late)))
                    .build());
            batches.set(i, renamed(batches.get(i), "b" + i));
        }
        Map<String, Double> first = drying(batches);
        java.util.Collections.shuffle(batches, random);
        assertEquals(first, drying(batches));
    }

    private static Map<String, Double> drying(List<Batch> batches) {
        BatchTable table = BatchTable.of(ExampleLogbook.of(TemperatureUnit.CELSIUS, batches), Features.dryingRate());
        Map<String, Double> byName = new java.util.TreeMap<>();
        for (int i = 0; i < table.size(); i++) {
            byName.put(table.batches().get(i).name(), table.values("mean rate of rise in drying")[i]);
        }
        return byName;
    }

    @Test
    void tellsReadingsOnTodaysProbeAndLeavesOutWhatHangsOnAProbeThatWasChanged() {
        Logbook harbour = Logbook.open(Path.of("..", "datasets", "harbour"));
        Feature own = Feature.of(
                "a reading of my own",
                Unit.TEMPERATURE,
                "bean temperature at 300 s",
                path -> path.beanTemperatureAt(300));
        Feature slow = Features.secondsBetween(150, 180);
        BatchTable read = BatchTable.of(
                harbour, Features.dropTemperature(), Features.dropTime(), Features.riseAfterFirstCrack(), own, slow);
        BatchTable today = read.onTodaysProbe();
        int first = 0;
        int last = read.size() - 1;
        Estimate added = ProbePeriods.of(harbour)
                .toToday(
                        harbour.batch("H001"),
                        read.cell(first, Features.dropTemperature()).value());
        assertEquals("H001", read.batches().get(first).name());
        assertEquals(
                read.cell(first, Features.dropTemperature()).value() + added.estimate(),
                today.cell(first, Features.dropTemperature()).value(),
                1e-12);
        assertEquals(added.standardError(), today.sharedErrors(Features.dropTemperature())[first], 1e-12);
        assertEquals(0, today.sharedErrors(Features.dropTemperature())[last]);
        for (Feature free : List.of(Features.dropTime(), Features.riseAfterFirstCrack())) {
            assertArrayEquals(read.values(free), today.values(free), free.name());
        }
        for (Feature hanging : List.of(own, slow)) {
            assertTrue(today.cell(first, hanging).isMissing(), hanging.name());
            assertEquals(
                    "the probe was changed since, and by how much that changes the number is not known.",
                    today.cell(first, hanging).whyMissing());
            assertEquals(read.cell(last, hanging), today.cell(last, hanging));
        }
        assertSame(today, today.onTodaysProbe(), "told once, not moved twice");
    }
}
