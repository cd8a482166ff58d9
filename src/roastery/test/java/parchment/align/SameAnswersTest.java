package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Interval;
import parchment.stats.warp.FunctionalComponents;
import parchment.stats.warp.SimultaneousBand;
import parchment.virtual.Scenario;
import parchment.virtual.VirtualRoastery;

/** Every answer of the room must say the same of the same roasts: on either scale, and whatever the order of the rows. */
@Tag("holds-for-any")
class SameAnswersTest {
    @TempDir
    static Path folder;

    private static Logbook logbook;
    private static Map<String, List<Object>> expected;

    @BeforeAll
    static void writeALogbook() throws IOException {
        VirtualRoastery.of(Scenario.named("steady-hand"))
                .withSeed(4)
                .withBatches(50)
                .write(folder);
        logbook = Logbook.open(folder);
        expected = answers(logbook);
    }

    /** Everything that the answers hold as numbers and names, as the library keeps them. */
    private static Map<String, List<Object>> answers(Logbook book) {
        Map<String, List<Object>> all = new LinkedHashMap<>();
        Batch last = book.lastWithCurve();
        all.put(
                "Unusual",
                Unusual.of(book).list().stream()
                        .flatMap(one -> Stream.<Object>of(
                                one.batch().name(),
                                one.comparedWith(),
                                one.depth(),
                                one.secondsOff(),
                                one.reasons().size()))
                        .toList());
        all.put(
                "Nearest",
                Nearest.to(last, book).list().stream()
                        .flatMap(one -> Stream.<Object>of(one.batch().name(), one.secondsElsewhere(), one.sameLot()))
                        .toList());
        for (Clock clock : List.of(Clock.BY_BEAN_TEMPERATURE, Clock.BY_ALL_MARKS)) {
            OneClock one = OneClock.of(book, clock);
            List<Object> found = numbers(one.positions(), one.mean());
            found.addAll(one.averaged().stream().map(Batch::name).toList());
            one.band().ifPresent(band -> found.addAll(band(band)));
            all.put("OneClock " + clock, found);
        }
        Shapes shapes = Shapes.of(OneClock.of(book, Clock.BY_BEAN_TEMPERATURE));
        FunctionalComponents components = shapes.components().orElseThrow();
        List<Object> shape = numbers(components.grid(), components.shape(0), components.shape(1));
        shape.add(shapes.count());
        all.put("Shapes", shape);
        SpreadSplit split = SpreadSplit.of(book);
        List<Object> parts = numbers(new double[] {split.byTheClock(), split.byTheStage(), split.timingShare()});
        split.marks().forEach(mark -> parts.addAll(ofMark(mark)));
        split.steps()
                .forEach(step -> parts.addAll(List.of(step.meanSeconds(), step.standardDeviation(), step.share())));
        all.put("SpreadSplit", parts);
        Difference lots = Difference.betweenLots(book);
        List<Object> difference = numbers(lots.positions());
        lots.band().ifPresent(band -> difference.addAll(band(band)));
        all.put("Difference", difference);
        all.put(
                "WhereTimeWent",
                WhereTimeWent.of(last, book).steps().stream()
                        .flatMap(step -> Stream.<Object>of(
                                step.from(), step.to(), step.seconds(), step.usual(), step.low(), step.high()))
                        .toList());
        return all;
    }

    private static List<Object> ofMark(SpreadSplit.OfMark mark) {
        Interval interval = mark.paceInterval();
        return List.of(
                mark.kind(),
                mark.batches(),
                mark.usualCelsius(),
                mark.standardDeviation(),
                mark.paceShare(),
                interval.lower(),
                interval.upper(),
                mark.errorShare());
    }

    private static List<Object> band(SimultaneousBand band) {
        return numbers(band.difference(), band.lower(), band.upper());
    }

    private static List<Object> numbers(double[]... arrays) {
        List<Object> all = new ArrayList<>();
        for (double[] array : arrays) {
            Arrays.stream(array).forEach(all::add);
        }
        return all;
    }

    @Test
    void areGivenAtAll() {
        expected.forEach((answer, parts) -> assertTrue(parts.size() > 5, answer + " says nothing: " + parts));
    }

    @Test
    void onEitherScale() {
        Logbook other = logbook.in(TemperatureUnit.FAHRENHEIT);
        assertEquals(expected, answers(other));
        assertTrue(WhereTimeWent.of(other.lastWithCurve(), other).toString().contains("°F"));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void whateverTheOrderOfTheRows(long seed) throws IOException {
        Path file = folder.resolve("batches.csv");
        String written = Files.readString(file);
        List<String> rows = new ArrayList<>(written.lines().toList());
        String header = rows.remove(0);
        Collections.shuffle(rows, new Random(seed));
        rows.add(0, header);
        String shuffled = String.join("\n", rows) + "\n";
        assertNotEquals(written, shuffled);
        try {
            Files.writeString(file, shuffled);
            assertEquals(expected, answers(Logbook.open(folder)));
        } finally {
            Files.writeString(file, written);
        }
    }

    @Test
    void cutsAtTheSameTemperaturesForEveryReaderAndSaysThemInTheReadersUnit() {
        assertEquals("[150.0, 160.0, 170.0]", Arrays.toString(Stretches.edges(149.5, 170)));
        assertEquals("between 150 and 160 °C", Stretches.between(150, 160, TemperatureUnit.CELSIUS));
        assertEquals("between 302 and 320 °F", Stretches.between(150, 160, TemperatureUnit.FAHRENHEIT));
        assertEquals("around 302 °F", Stretches.between(150, 150.1, TemperatureUnit.FAHRENHEIT));
    }
}
