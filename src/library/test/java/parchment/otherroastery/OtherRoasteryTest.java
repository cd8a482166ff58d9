package parchment.otherroastery;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.feature.BatchTable;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.quantity.TemperatureUnit;

/** Holds the other roastery to what it says: other numbers under the same name would make every study on it worthless. */
class OtherRoasteryTest {
    private static final OtherRoastery SMALL = OtherRoastery.ordinary().withDays(RoastDays.of(8, 3));

    @TempDir
    private Path folder;

    private static Map<String, String> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            Map<String, String> texts = new TreeMap<>();
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                texts.put(folder.relativize(file).toString(), Files.readString(file));
            }
            return texts;
        }
    }

    @Test
    void theSameSeedMakesTheSameFilesAndTheSameTruth() throws IOException {
        Truth first = SMALL.withSeed(5).writeTo(folder.resolve("one"));
        SMALL.withSeed(5).writeTo(folder.resolve("two"));
        SMALL.withSeed(6).writeTo(folder.resolve("three"));
        assertEquals(files(folder.resolve("one")), files(folder.resolve("two")));
        assertNotEquals(files(folder.resolve("one")), files(folder.resolve("three")));
        assertEquals(first, SMALL.withSeed(5).truth());
    }

    @ParameterizedTest
    @CsvSource({
        "CELSIUS, LOCAL_TIME, 2, 0.1",
        "FAHRENHEIT, UTC_IN_A_WESTERN_ZONE, 4.5, 1",
        "CELSIUS, LOCAL_TIME, 1, 0.5"
    })
    void itsFoldersAreReadWithoutAProblem(
            ReadingLogger.Unit unit, ReadingLogger.Stamps stamps, double interval, double step) throws IOException {
        Truth truth = SMALL.withLogger(
                        ReadingLogger.ordinary().in(unit).stamped(stamps).every(interval, step))
                .withDays(SMALL.days().onTwoMachines())
                .writeTo(folder);
        Logbook logbook = Logbook.open(folder);
        assertEquals(List.of(), logbook.problems().list());
        assertEquals(24, logbook.batches().size());
        assertEquals(2, logbook.machines().size());
        assertEquals(3 * 24, logbook.cups().size());
        assertEquals(
                unit == ReadingLogger.Unit.CELSIUS ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT,
                logbook.readerUnit());
        assertEquals(12, truth.batches().stream().filter(b -> b.machine() == 1).count());
    }

    @Test
    void curvesTurnRiseAndSlowDown() {
        Course course = ordinaryCourse(Probe.ordinary());
        int turning = 0;
        for (int second = 0; second < 200; second++) {
            turning = course.reading(second) < course.reading(turning) ? second : turning;
        }
        // Common practice, no source: the turning point after three quarters to one and a half minutes at 65 to 100 °C.
        assertTrue(turning >= 45 && turning <= 95, "turning point after " + turning + " s");
        assertTrue(course.reading(turning) > 65 && course.reading(turning) < 100, "at " + course.reading(turning));
        for (int second = turning + 1; second <= course.drop(); second++) {
            assertTrue(course.reading(second) > course.reading(second - 1), "falls again at " + second + " s");
            assertTrue(course.airReading(second) > course.bean(second), "air below beans at " + second + " s");
        }
        double early = course.reading(180) - course.reading(120);
        double middle = course.reading(360) - course.reading(300);
        double late = course.reading(course.drop()) - course.reading(course.drop() - 60);
        assertTrue(early > middle && middle > late && late > 2, early + ", " + middle + ", " + late);
        assertTrue(course.yellow() < course.cracked(0.02) && course.cracked(0.02) < course.drop());
        assertTrue(course.massLoss() > 0.11 && course.massLoss() < 0.18, "mass loss " + course.massLoss());
        assertTrue(course.reading(course.drop() + 20) < course.reading(course.drop()) - 5, "no fall after the drop");
    }

    private static Course ordinaryCourse(Probe other) {
        return Course.of(
                new Course.Start(
                        TwoNodeDrum.ordinary(), Beans.ordinary(), 5, 196, 12, 20, 20, 1, Probe.ordinary(), other),
                new Roaster(Roaster.Person.ALL.get(0), 76, DropHabit.Choice.HABIT, 205));
    }

    @Test
    void anotherProbeBesideItReadsTheSameBeans() {
        Course course = ordinaryCourse(Probe.ordinary().moved(-2.8, 1));
        for (int second = 0; second <= course.drop(); second += 30) {
            assertEquals(-2.8, course.otherReading(second) - course.reading(second), 1e-9);
        }
        Course lagging = ordinaryCourse(Probe.ordinary().moved(-2.8, 1.2));
        assertTrue(lagging.otherReading(lagging.drop()) - lagging.reading(lagging.drop()) < -2.9);
    }

    @Test
    void aFixedScheduleIsAHandToo() {
        Hand open = sight -> new Hand.Setting(60, 50, sight.seconds() == 500 ? Hand.Act.DROP : Hand.Act.GO_ON);
        Hand more = sight -> new Hand.Setting(
                sight.seconds() < 300 ? 60 : 70, 50, sight.seconds() == 500 ? Hand.Act.DROP : Hand.Act.GO_ON);
        Course.Start start = new Course.Start(
                TwoNodeDrum.ordinary(), Beans.ordinary(), 5, 196, 12, 20, 20, 1, Probe.ordinary(), Probe.ordinary());
        Course first = Course.of(start, open);
        Course second = Course.of(start, more);
        Course habit = SMALL.course("Q007");
        Course longer = Course.of(habit.start(), open);
        assertEquals(habit.reading(0), longer.reading(0));
        assertNotEquals(habit.reading(200), longer.reading(200));
        assertEquals(500, first.drop());
        assertEquals(first.reading(300), second.reading(300));
        assertTrue(second.reading(500) > first.reading(500) + 2);
    }

    @Test
    void theLibraryReadsTheDropThatTheProbeShowed() throws IOException {
        Truth truth = SMALL.writeTo(folder);
        BatchTable table = BatchTable.of(Logbook.open(folder), Features.dropTemperature());
        double[] read = table.values(Features.dropTemperature());
        double sum = 0;
        for (int i = 0; i < read.length; i++) {
            double miss = read[i] - truth.batch(table.batches().get(i).name()).reading();
            assertEquals(0, miss, 1.5, table.batches().get(i).name());
            sum += miss / read.length;
        }
        assertEquals(0, sum, 0.3);
    }

    @Test
    void anUnwrittenMoveIsInTheTruthAndNotInTheUpkeep() throws IOException {
        OtherRoastery moved =
                SMALL.withFaults(PlantedFaults.none().withProbeMoved(-2.8, 0.5, 1.1, PlantedFaults.Entry.NOT_WRITTEN));
        Truth truth = moved.writeTo(folder);
        LocalDate day = truth.probeMovedOn().orElseThrow();
        for (Truth.BatchTruth batch : truth.batches()) {
            double later = batch.endReading() - batch.reading();
            if (batch.day() < 4) {
                assertTrue(later < -2.7 && later > -3.8, batch.name() + ": " + later);
            } else {
                assertEquals(0, later, 1e-9);
            }
        }
        Logbook logbook = Logbook.open(folder);
        assertTrue(logbook.upkeep().stream().noneMatch(work -> work.what().contains("probe")));
        assertEquals(
                day,
                logbook.batch("Q013").roastedAt().orElseThrow().toLocalDate(),
                "the first batch of the fifth roast day");
        moved.withFaults(PlantedFaults.none().withProbeMoved(-2.8, 0.5, 1.1, PlantedFaults.Entry.WRITTEN))
                .writeTo(folder.resolve("written"));
        assertTrue(Logbook.open(folder.resolve("written")).upkeep().stream()
                .anyMatch(work ->
                        work.what().equals("probe moved") && work.doneOn().equals(day)));
    }

    @Test
    void theBestReadingIsWhereTheBeansAreBest() {
        Truth truth = OtherRoastery.ordinary().truth();
        double best = truth.bestReading("Amber", "sweetness");
        // Batches close to it are close to the lot's top of 6.8 points, others are not.
        for (Truth.BatchTruth batch : truth.batches()) {
            if (batch.lot().equals("Amber")) {
                double points = batch.roasted().get("sweetness");
                double away = Math.abs(batch.endReading() - best);
                assertTrue(away > 0.5 || points > 6.72, batch.toString());
                assertTrue(away < 4 || points < 6.6, batch.toString());
            }
        }
        // A square fitted to the noise-free points leans a little, because slow batches lag less.
        assertEquals(best, truth.ownBest("Amber", "sweetness"), 0.4);
        assertThrows(IllegalArgumentException.class, () -> truth.bestReading("Amber", "body"));
    }

    @Test
    void aStraightCourseHasItsOwnSlope() {
        Truth truth = OtherRoastery.ordinary()
                .withEveryLot("sweetness", TrueCourse.slope(6, 0.15))
                .truth();
        // A degree of reading is a little less than a degree of the beans: slower batches lag less.
        assertEquals(0.15, truth.ownSlope("sweetness"), 0.03);
        assertEquals(truth.slopePerReading("Birch", "sweetness"), truth.ownSlope("sweetness"), 0.01);
        assertEquals(0, truth.ownSlope("acidity"), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"LOCKSTEP, -1, -0.97", "LEANING, -0.6, -0.1", "HABIT, -0.3, 0.3", "CHANCE, -0.3, 0.3"})
    void gasGoesWithTheDropAsTheHabitSays(DropHabit.Choice choice, double least, double most) {
        OtherRoastery roastery = OtherRoastery.ordinary();
        Truth truth = roastery.withDays(RoastDays.of(60, 4))
                .withDrop(roastery.drop().by(choice).withHiddenCause(0.1, 0))
                .truth();
        double r = truth.insideDays(Truth.BatchTruth::gas, Truth.BatchTruth::endReading);
        assertTrue(r >= least && r <= most, choice + ": " + r);
    }

    @Test
    void drawnDropsAreWrittenAsDrawn() throws IOException {
        SMALL.withDrop(SMALL.drop().by(DropHabit.Choice.CHANCE)).writeTo(folder);
        Logbook logbook = Logbook.open(folder);
        assertEquals(
                5,
                logbook.batches().stream()
                        .map(b -> b.plan().dropTemperature().orElseThrow())
                        .collect(Collectors.toSet())
                        .size());
        SMALL.writeTo(folder.resolve("habit"));
        assertTrue(Logbook.open(folder.resolve("habit")).batches().stream()
                .allMatch(b -> b.plan().dropTemperature().isEmpty()));
    }

    @Test
    void anAgeingLotLosesJustSoMuchLess() {
        List<OtherLot> lots =
                SMALL.lots().stream().map(lot -> lot.ageing(-0.006)).toList();
        OtherRoastery year = SMALL.withDays(SMALL.days().over(360));
        Truth still = year.truth();
        Truth ageing = year.withLots(lots).truth();
        for (int i = 0; i < still.batches().size(); i++) {
            double change =
                    ageing.batches().get(i).massLoss() - still.batches().get(i).massLoss();
            double days = Roasting.date(year, still.batches().get(i).day()).toEpochDay()
                    - year.days().first().toEpochDay()
                    + 12;
            assertEquals(-0.006 * days / 100, change, 1e-12);
        }
    }

    @Test
    void plantedFaultsAreWhereTheTruthSays() throws IOException {
        Truth truth = SMALL.withFaults(PlantedFaults.none()
                        .withCracksAfterDrop(2)
                        .withHotProbe(1)
                        .withWrongCharges(1)
                        .withDuplicates(3))
                .writeTo(folder.resolve("faults"));
        SMALL.writeTo(folder.resolve("clean"));
        Map<String, String> faulty = files(folder.resolve("faults"));
        Logbook clean = Logbook.open(folder.resolve("clean"));

        assertEquals(2, truth.planted().get("crack after drop").size());
        for (String name : truth.planted().get("crack after drop")) {
            String[] cells = row(faulty, name);
            double after = Double.parseDouble(cells[14]) - Double.parseDouble(cells[15]);
            assertTrue(after >= 1 && after <= 5, name + ": " + after);
        }
        String hot = truth.planted().get("hot probe").get(0);
        double read = Logbook.open(folder.resolve("faults"))
                .batch(hot)
                .beanTemperature()
                .orElseThrow()
                .valueAt(60);
        assertEquals(7, read - clean.batch(hot).beanTemperature().orElseThrow().valueAt(60), 1e-6);
        assertEquals(7, truth.batch(hot).reading() - SMALL.truth().batch(hot).reading(), 1e-9);

        String wrong = truth.planted().get("wrong charge").get(0);
        double more = Double.parseDouble(row(faulty, wrong)[7])
                - Double.parseDouble(row(files(folder.resolve("clean")), wrong)[7]);
        assertEquals(wrong.equals(hot) ? 52 : 45, more);

        List<String> again = faulty.keySet().stream()
                .filter(file -> file.endsWith(" again.csv"))
                .toList();
        assertEquals(3, again.size());
        assertEquals(faulty.get(again.get(0).replace(" again", "")), faulty.get(again.get(0)));
        assertEquals(
                9,
                faulty.get("cuppings.csv")
                        .lines()
                        .filter(line -> line.contains(" again,"))
                        .count());
    }

    private static String[] row(Map<String, String> files, String batch) {
        return files.get("batches.csv")
                .lines()
                .filter(line -> line.startsWith(batch + ","))
                .findFirst()
                .orElseThrow()
                .split(",", -1);
    }

    @Test
    void stampsInTheWestEndOnTheNextDay() throws IOException {
        SMALL.withLogger(ReadingLogger.ordinary().stamped(ReadingLogger.Stamps.UTC_IN_A_WESTERN_ZONE))
                .writeTo(folder);
        LocalDate first = Roasting.date(SMALL, 0);
        String[] earliest = row(files(folder), "Q001");
        String[] last = row(files(folder), "Q003");
        assertTrue(earliest[1].startsWith(first + "T23:"), earliest[1]);
        assertTrue(last[1].startsWith(first.plusDays(1) + "T0") || last[1].startsWith(first + "T23:5"), last[1]);
        assertTrue(earliest[1].endsWith("Z"), earliest[1]);
    }

    @Test
    void withoutAHaloScoresOfACupMoveApart() {
        assertEquals(0, TastingPanel.ordinary().withoutHalo().trueHalo());
        assertEquals(
                0.35 * 0.35 / (0.35 * 0.35 + 0.55 * 0.55 + 0.25 / 12),
                TastingPanel.ordinary().trueHalo(),
                1e-12);
    }

    @Test
    void theBatchWithMarksHasThemInOrder() throws IOException {
        Truth truth = SMALL.writeTo(folder);
        Logbook logbook = Logbook.open(folder);
        for (Truth.BatchTruth batch : truth.batches()) {
            double crack = logbook.batch(batch.name())
                    .writtenMark(MarkKind.FIRST_CRACK_START)
                    .orElseThrow()
                    .seconds();
            double drop = logbook.batch(batch.name())
                    .writtenMark(MarkKind.DROP)
                    .orElseThrow()
                    .seconds();
            assertTrue(crack >= batch.firstPop() - 1 || crack == drop - 8, batch + ": " + crack);
            assertEquals(batch.drop(), drop, 2);
        }
    }
}
