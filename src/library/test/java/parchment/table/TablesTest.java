package parchment.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.logbook.MarkKind;
import parchment.logbook.Problems;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.logbook.written.Problem;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import tech.tablesaw.api.ColumnType;
import tech.tablesaw.api.Table;

class TablesTest {
    private static final Logbook HILLSIDE = Logbook.open(Path.of("..", "datasets", "hillside"));

    private static Batch.Builder batch(String name) {
        return Batch.named(name)
                .roastedAt(OffsetDateTime.of(2026, 3, 4, 23, 30, 0, 0, ZoneOffset.UTC))
                .lot("North")
                .conditions(BatchConditions.NOT_WRITTEN
                        .withGreenMass(Mass.kilograms(2))
                        .withRoastedMass(Mass.kilograms(1.7)))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(480))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(600));
    }

    private static Logbook written() {
        return Logbook.of(LogbookContents.ofBatches(
                        "Harbour",
                        List.of(
                                batch("1")
                                        .extra("sacks", "3")
                                        .extra("weather", "rain")
                                        .build(),
                                batch("2")
                                        .extra("sacks", "")
                                        .extra("weather", "7")
                                        .build(),
                                Batch.named("3").build()))
                .toBuilder()
                .zone(ZoneId.of("Europe/Athens"))
                .massUnit(MassUnit.POUND)
                .lots(List.of(new Lot(
                        "North",
                        Optional.of("a hill"),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(LocalDate.of(2025, 11, 2)),
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.of(0.112),
                        OptionalDouble.empty(),
                        Optional.empty(),
                        Map.of("bags", "12"))))
                .cups(List.of(
                        cup("1", 2, Map.of("sweetness", 6.5, "acidity", 5.0)),
                        cup("2", OptionalInt.empty(), Map.of("acidity", 4.25))))
                .cuppings(List.of(new Cupping("Friday", Cupping.Said.YES, Cupping.Said.NOT_WRITTEN, Map.of())))
                .problems(new Problems(List.of(
                        new Problem(
                                "batches.csv",
                                3,
                                "drop",
                                "12:99",
                                "minutes and seconds",
                                "value treated as missing",
                                "2"),
                        new Problem("notes.txt", 0, "", "no table", "a table", "file left out"),
                        new Problem("lots.csv", 1, "lot", "", "a name", "column left out"))))
                .build());
    }

    private static CupScores cup(String batch, int position, Map<String, Double> scores) {
        return cup(batch, OptionalInt.of(position), scores);
    }

    private static CupScores cup(String batch, OptionalInt position, Map<String, Double> scores) {
        return new CupScores(
                "Friday",
                LocalDate.of(2026, 3, 10),
                "Ines",
                batch,
                Optional.of("K7"),
                Optional.empty(),
                position,
                scores,
                Optional.empty());
    }

    @Test
    void namesEachNumberWithTheUnitOfItsLogbook() {
        Table table = Tables.batches(
                written(), Features.dropTemperature(), Features.dropTime(), Features.greenMass(), Features.massLoss());
        assertEquals(
                List.of(
                        "batch",
                        "roasted at",
                        "lot",
                        "machine",
                        "operator",
                        "recipe",
                        "purpose",
                        "drop temperature [°C]",
                        "drop time [s]",
                        "green mass [lb]",
                        "mass loss [%]",
                        "note",
                        "sacks",
                        "weather"),
                table.columnNames());
        assertEquals("Batches of Harbour, times of Europe/Athens", table.name());
        assertEquals(3, table.rowCount());
        assertEquals(
                "drop temperature [°F]",
                Tables.heading(Features.dropTemperature(), written().in(TemperatureUnit.FAHRENHEIT)));
        assertEquals("green mass [lb]", Tables.heading(Features.greenMass(), written()));
        assertEquals("batch of the day", Tables.heading(Features.batchOfTheDay(), written()));
    }

    @Test
    void keepsEveryDigitAndPrintsAsManyAsAPageDoes() {
        Table table = Tables.batches(written(), Features.greenMass(), Features.massLoss());
        assertEquals(
                MassUnit.POUND.fromKilograms(2),
                table.doubleColumn("green mass [lb]").getDouble(0));
        assertEquals("4.41", table.doubleColumn("green mass [lb]").getString(0));
        assertEquals(15, table.doubleColumn("mass loss [%]").getDouble(0), 1e-9);
        assertEquals("15.0", table.doubleColumn("mass loss [%]").getString(0));
        assertEquals("", table.doubleColumn("mass loss [%]").getString(2));
    }

    @Test
    void keepsTypesAndWhatIsMissing() {
        Table table = Tables.batches(written(), Features.dropTime());
        assertEquals(
                LocalDateTime.of(2026, 3, 5, 1, 30),
                table.dateTimeColumn("roasted at").get(0));
        assertTrue(table.dateTimeColumn("roasted at").isMissing(2));
        assertTrue(table.stringColumn("lot").isMissing(2));
        assertTrue(table.doubleColumn("drop time [s]").isMissing(2));
        // A column of numbers alone is one of numbers; a single word makes it words.
        assertEquals(ColumnType.DOUBLE, table.column("sacks").type());
        assertTrue(table.doubleColumn("sacks").isMissing(1));
        assertEquals(ColumnType.STRING, table.column("weather").type());
    }

    /** One fact, one place: what a batch's row says is what the table of features measured. */
    @Test
    void saysOfBatchesWhatTheTableOfFeaturesSays() {
        Logbook fahrenheit = HILLSIDE.in(TemperatureUnit.FAHRENHEIT);
        BatchTable measured = BatchTable.of(fahrenheit);
        Table table = Tables.batches(fahrenheit);
        for (Feature feature : measured.features()) {
            double[] kept = measured.values(feature);
            String heading = Tables.heading(feature, fahrenheit);
            for (int i = 0; i < kept.length; i++) {
                assertEquals(
                        feature.unit().shown(kept[i], TemperatureUnit.FAHRENHEIT),
                        table.doubleColumn(heading).getDouble(i),
                        heading);
            }
        }
        assertEquals(measured.size(), table.rowCount());
    }

    @Test
    void takesATableToldOnTodaysProbe() {
        BatchTable today = BatchTable.of(HILLSIDE, Features.dropTemperature()).onTodaysProbe();
        Table table = Tables.batches(today);
        assertEquals(
                HILLSIDE.readerUnit().fromCelsius(today.values(Features.dropTemperature())[0]),
                table.doubleColumn(Tables.heading(Features.dropTemperature(), HILLSIDE))
                        .getDouble(0));
    }

    @Test
    void givesEachMarkWithItsErrorsAndItsSource() {
        Table table = Tables.marks(HILLSIDE);
        int row = 0;
        for (Phases phases : Phases.of(HILLSIDE)) {
            for (Mark mark : phases.marks()) {
                assertEquals(phases.batch().name(), table.stringColumn("batch").get(row));
                assertEquals(mark.kind().words(), table.stringColumn("mark").get(row));
                assertEquals(
                        mark.seconds(),
                        table.doubleColumn("time since charge [s]").getDouble(row));
                assertEquals(
                        mark.standardError(),
                        table.doubleColumn("standard error of the time [s]").getDouble(row));
                String unit = HILLSIDE.readerUnit().symbol();
                assertEquals(
                        mark.beanTemperature()
                                .map(t -> HILLSIDE.readerUnit().fromCelsius(t.celsius()))
                                .orElse(Double.NaN),
                        table.doubleColumn("bean temperature [" + unit + "]").getDouble(row));
                // An error has no zero: a scale that begins elsewhere adds nothing to it.
                assertEquals(
                        HILLSIDE.readerUnit().stepFromCelsius(mark.beanTemperatureStandardError()),
                        table.doubleColumn("standard error of the temperature [" + unit + "]")
                                .getDouble(row));
                assertEquals(mark.source().words(), table.stringColumn("source").get(row));
                assertEquals(
                        phases.questioned().contains(mark.kind()) ? "yes" : "no",
                        table.stringColumn("to check").get(row));
                row++;
            }
        }
        assertEquals(row, table.rowCount());
        assertTrue(row > 100, row + " marks");
    }

    @Test
    void givesEachCupWithItsLotItsRestAndAColumnForEachAttribute() {
        Table table = Tables.cups(written());
        assertEquals(2, table.rowCount());
        assertEquals(LocalDate.of(2026, 3, 10), table.dateColumn("tasted on").get(0));
        assertEquals("North", table.stringColumn("lot").get(0));
        // Roasted half an hour before midnight of Greenwich: the next day at the harbour.
        assertEquals(5, table.intColumn("rest [days]").getInt(0));
        assertEquals("yes", table.stringColumn("blind").get(0));
        assertEquals(2, table.intColumn("serving position").getInt(0));
        assertTrue(table.intColumn("serving position").isMissing(1));
        assertEquals(6.5, table.doubleColumn("sweetness [points]").getDouble(0));
        assertTrue(table.doubleColumn("sweetness [points]").isMissing(1), "not scored is not 0");
        assertEquals("4.25", table.doubleColumn("acidity [points]").getString(1));
        assertTrue(table.stringColumn("cup").isMissing(0));
    }

    @Test
    void givesLotsAndProblemsAsTheyWereWritten() {
        Table lots = Tables.lots(written());
        assertEquals(11.2, lots.doubleColumn("moisture [%]").getDouble(0), 1e-9);
        assertTrue(lots.doubleColumn("density [g/L]").isMissing(0));
        assertEquals(LocalDate.of(2025, 11, 2), lots.dateColumn("arrived on").get(0));
        assertTrue(lots.dateColumn("harvested on").isMissing(0));
        assertEquals(12, lots.doubleColumn("bags").getDouble(0));
        Table problems = Tables.problems(written());
        assertEquals(List.of("file", "line", "column", "batch", "found", "expected", "done"), problems.columnNames());
        assertEquals(3, problems.intColumn("line").getInt(0));
        assertTrue(problems.intColumn("line").isMissing(1), "not on one line");
        assertEquals(1, problems.intColumn("line").getInt(2), "the line of the headings");
        assertEquals("12:99", problems.stringColumn("found").get(0));
    }

    @Test
    void keepsTwoColumnsApartThatAreCalledTheSame() {
        Logbook logbook = Logbook.of(LogbookContents.ofBatches(
                "Twice",
                List.of(Batch.named("1")
                        .extra("Drop time [s]", "3")
                        .extra("batch", "x")
                        .build())));
        List<String> names = Tables.batches(logbook, Features.dropTime()).columnNames();
        assertTrue(names.contains("drop time [s]") && names.contains("Drop time [s] (2)"), names.toString());
        assertTrue(names.contains("batch (2)"), names.toString());
    }

    @Test
    void hasItsColumnsWhereThereIsNoRow() {
        Logbook empty = Logbook.of(LogbookContents.ofBatches("Empty", List.of()));
        for (Table table : List.of(
                Tables.batches(empty),
                Tables.marks(empty),
                Tables.cups(empty),
                Tables.lots(empty),
                Tables.problems(empty))) {
            assertEquals(0, table.rowCount(), table.name());
            assertTrue(table.columnCount() >= 7, table.name());
        }
        assertEquals(0, Tables.cups(empty).countBy("cupper").rowCount());
    }

    /** What somebody would do next: Tablesaw's own words find the columns by their names, and keep how numbers are printed. */
    @Test
    void isFilteredAndSummarisedByTablesaw() {
        Table marks = Tables.marks(HILLSIDE);
        Table drops = marks.where(marks.stringColumn("mark").isEqualTo("drop"));
        assertFalse(drops.isEmpty());
        double mean = Phases.of(HILLSIDE).stream()
                .flatMap(phases -> phases.mark(MarkKind.DROP).stream())
                .mapToDouble(Mark::seconds)
                .average()
                .orElseThrow();
        assertEquals(mean, drops.doubleColumn("time since charge [s]").mean(), 1e-9);
        assertEquals(
                String.format(
                        Locale.ROOT,
                        "%.0f",
                        drops.doubleColumn("time since charge [s]").getDouble(0)),
                drops.doubleColumn("time since charge [s]").getString(0));
        assertEquals(0, Unit.SECONDS.digits());
    }
}
