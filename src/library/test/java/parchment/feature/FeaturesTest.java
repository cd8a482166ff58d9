package parchment.feature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.feature.kind.Need;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.Batch;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.BatchPlan;
import parchment.phase.ExampleRoast;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;

class FeaturesTest {
    private static final BatchPath PATH =
            BatchPath.of(ExampleLogbook.of(ExampleLogbook.full().build())).get(0);

    /**
     * The values follow from the roast: T = 80 + 0.2 t + 100 exp(-t/25) °C, yellowing 360 s, first crack 600 s, drop 740 s, turning
     * point 74.893 s at 99.979 °C, air 230 °C.
     */
    @ParameterizedTest
    @CsvSource({
        "drop temperature, 228, 0.01",
        "first crack temperature, 200, 0.01",
        "yellowing temperature, 152, 0.01",
        "turning point temperature, 99.979, 0.1",
        "charge temperature, 180, 0.01",
        "rise after first crack, 28, 0.01",
        "rise in browning, 48, 0.01",
        // Mean of 80 + 0.2 t from 74.893 to 740 s is 161.489; the rest of exp(-t/25) adds 100·25·exp(-2.99573)/665.107
        // = 0.188.
        "air above beans, 68.323, 0.1",
        "peak air temperature, 230, 0.001",
        "air temperature at first crack, 230, 0.001",
        "air temperature at drop, 230, 0.001",
        "drop time, 740, 0",
        "drying time, 360, 0",
        "browning time, 240, 0",
        "development time, 140, 0",
        "first crack time, 600, 0",
        "turning point time, 74.893, 0.5",
        "drying share, 0.486486486, 1e-8",
        "browning share, 0.324324324, 1e-8",
        "development ratio, 0.189189189, 1e-8",
        // √(1/2) ln(360/240) and √(2/3) ln(√(360·240)/140)
        "drying against browning, 0.286707130, 1e-8",
        "early phases against development, 0.605612, 1e-5",
        "mean rate of rise in drying, 10.948, 0.02",
        "mean rate of rise in browning, 12, 0.001",
        "mean rate of rise in development, 12, 0.001",
        "rate of rise at yellowing, 12, 0.001",
        "rate of rise at first crack, 12, 0.001",
        "rate of rise at drop, 12, 0.001",
        "change of rate across first crack, 0, 0.001",
        // 150 °C at 350 s and 180 °C at 500 s.
        "time from 150 to 180 °C, 150, 0.1",
        "first gas cut after yellowing, 10, 0",
        "last gas cut before drop, 180, 0",
        "number of control changes, 3, 0",
        "last control change before drop, 160, 0",
        "gas in drying, 100, 1e-9",
        "gas in development, 60, 1e-9",
        "airflow in development, 6, 1e-9",
        "airflow opened after first crack, -20, 0",
        "green mass, 2, 0",
        "mass loss, 0.15, 1e-12",
        "batch of the day, 1, 0",
        // 1 January to 4 March 2025, and 4 March to the cupping on 8 March.
        "days since arrival, 62, 0",
        "rest days, 4, 0",
        "room temperature, 20, 0",
        "room humidity, 0.55, 0",
        "room pressure, 1013, 0",
        "green temperature, 18, 0"
    })
    void agreesWithHandComputedValues(String name, double expected, double tolerance) {
        Measured measured = Features.named(name).measure(PATH);
        assertEquals(expected, measured.value(), tolerance, measured.toString());
        assertTrue(measured.standardError() >= 0, measured.toString());
    }

    /** What the marks of a log do not tell, its features do not either; they say the same. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "first crack temperature | 60 | no bean temperature at first crack start: read every 60 s, which is too seldom to tell one.",
                "rate of rise at first crack | 60 | no bean temperature at first crack start: read every 60 s, which is too seldom to tell one.",
                "first crack temperature | 4 | no bean temperature at first crack start: the log ends 60 s before.",
                "rate of rise at first crack | 4 | no bean temperature at first crack start: the log ends 60 s before."
            })
    void aMarkWithoutATemperatureGivesNoFeatureOfIt(String name, double every, String why) {
        double end = every == 60 ? 720 : 540;
        BatchPath path = BatchPath.of(Batch.named("7")
                .curve(
                        parchment.logbook.Quantity.BEAN_TEMPERATURE,
                        ExampleRoast.curve(
                                "bean temperature",
                                parchment.quantity.Unit.TEMPERATURE,
                                ExampleRoast.BEAN,
                                -60,
                                end,
                                every))
                .writtenMark(parchment.logbook.MarkKind.FIRST_CRACK_START, parchment.quantity.Elapsed.seconds(600))
                .writtenMark(parchment.logbook.MarkKind.DROP, parchment.quantity.Elapsed.seconds(720))
                .build());
        Measured measured = Features.named(name).measure(path);
        assertTrue(measured.isMissing(), measured.toString());
        assertEquals(why, measured.whyMissing());
    }

    @Test
    void logRatiosAreOrthonormalCoordinates() {
        // Distances between two roasts are the same in log-ratio coordinates as in centred log-ratios (Egozcue et al.
        // 2003).
        double[] a = {360, 240, 140};
        double[] b = {300, 270, 90};
        double clr = 0;
        double meanA = (Math.log(a[0]) + Math.log(a[1]) + Math.log(a[2])) / 3;
        double meanB = (Math.log(b[0]) + Math.log(b[1]) + Math.log(b[2])) / 3;
        for (int i = 0; i < 3; i++) {
            clr += Math.pow(Math.log(a[i]) - meanA - Math.log(b[i]) + meanB, 2);
        }
        BatchPath other = BatchPath.of(ExampleRoast.unwritten()
                .writtenMark(parchment.logbook.MarkKind.YELLOWING, parchment.quantity.Elapsed.seconds(300))
                .writtenMark(parchment.logbook.MarkKind.FIRST_CRACK_START, parchment.quantity.Elapsed.seconds(570))
                .writtenMark(parchment.logbook.MarkKind.DROP, parchment.quantity.Elapsed.seconds(660))
                .build());
        double ilr = 0;
        for (Feature feature : new Feature[] {Features.dryingAgainstBrowning(), Features.earlyAgainstDevelopment()}) {
            ilr += Math.pow(
                    feature.measure(PATH).value() - feature.measure(other).value(), 2);
        }
        assertEquals(clr, ilr, 1e-12);
    }

    @Test
    void offersAtLeastThirtyFeaturesWithUniqueNames() {
        Set<String> names = new HashSet<>(Features.all().names());
        assertEquals(Features.all().list().size(), names.size());
        assertTrue(names.size() >= 30, names.size() + " features");
    }

    @Test
    void saysOfEachFeatureWhatItIsAndWhatItNeeds() {
        for (Feature feature : Features.all()) {
            assertTrue(feature.definition().length() > 15, feature.name());
            assertFalse(feature.needs().isEmpty(), feature.name());
            assertTrue(feature.naturalStep() > 0, feature.name());
            assertFalse(feature.family().words().isBlank(), feature.name());
            // Names are full words in lower case, as a table's heading shows them.
            assertTrue(feature.name().matches("[a-z][a-z0-9 °C-]*"), feature.name());
        }
    }

    @Test
    void everyFeatureSaysWhyItIsMissingFromAnEmptyBatch() {
        BatchPath empty = BatchPath.of(Batch.named("empty").build());
        for (Feature feature : Features.all()) {
            Measured measured = feature.measure(empty);
            assertTrue(measured.isMissing(), feature.name() + " is " + measured);
            assertTrue(measured.whyMissing().endsWith("."), feature.name() + ": " + measured.whyMissing());
        }
    }

    @Test
    void everyFeatureIsMissingWithoutWhatItNeeds() {
        // Declared needs are checked by taking one away at a time.
        Map<Need, BatchPath> without = Map.of(
                Need.BEAN_TEMPERATURE,
                path(ExampleRoast.written(), false, true),
                Need.AIR_TEMPERATURE,
                path(ExampleRoast.written(), true, false));
        for (Feature feature : Features.all()) {
            without.forEach((need, path) -> {
                if (feature.needs().contains(need)) {
                    assertTrue(feature.measure(path).isMissing(), feature.name() + " without " + need.words());
                }
            });
        }
    }

    /** What a roaster is told to write has to have a place: the page of the format names it. */
    @Test
    void whatIsAskedForHasAColumnOrIsLogged() throws IOException {
        String page = Files.readString(Path.of("..", "docs", "logbook-format.md"));
        String batches = page.substring(page.indexOf("### batches.csv"), page.indexOf("### lots.csv"));
        String curves = page.substring(page.indexOf("### curves/"), page.indexOf("### batches.csv"));
        Map<String, String> headings = Map.of("day", "roasted at", "time", "roasted at");
        Set<String> elsewhere = Set.of("day its lot arrived", "cupping", "control");
        for (Feature feature : Features.all()) {
            String[] asked = Need.howToHave(feature).split("write ", -1);
            assertFalse(asked[0].isEmpty() && asked.length < 2, feature.name());
            for (int i = 0; i < asked.length; i++) {
                for (String one : asked[i].replaceFirst("^log ", "").split(" and ")) {
                    String name = one.strip().replaceFirst("^(the|a) ", "");
                    assertTrue(
                            name.isEmpty()
                                    || elsewhere.contains(name)
                                    || (i == 0 ? curves : batches).contains(headings.getOrDefault(name, name)),
                            feature.name() + " asks for " + name);
                }
            }
        }
        assertEquals("log the bean temperature and write the drop", Need.howToHave(Features.dropTemperature()));
        assertEquals(
                "", Need.howToHave(Feature.of("mine", Unit.SECONDS, "a number of my own", path -> Measured.exact(1))));
    }

    private static BatchPath path(Batch.Builder marks, boolean bean, boolean air) {
        Batch all = ExampleLogbook.full().build();
        Batch.Builder builder = Batch.named("part");
        all.curve(parchment.logbook.Quantity.BEAN_TEMPERATURE)
                .filter(c -> bean)
                .ifPresent(c -> builder.curve(parchment.logbook.Quantity.BEAN_TEMPERATURE, c));
        all.curve(parchment.logbook.Quantity.AIR_TEMPERATURE)
                .filter(c -> air)
                .ifPresent(c -> builder.curve(parchment.logbook.Quantity.AIR_TEMPERATURE, c));
        for (parchment.logbook.MarkKind kind : parchment.logbook.MarkKind.values()) {
            marks.build().writtenMark(kind).ifPresent(at -> builder.writtenMark(kind, at));
        }
        return BatchPath.of(builder.build());
    }

    @Test
    void givesABuiltInFeatureByItsName() {
        assertSame(Features.dropTemperature(), Features.named(" Drop Temperature "));
    }

    @Test
    void saysWhichFeatureWasProbablyMeant() {
        LogbookException refused = assertThrows(LogbookException.class, () -> Features.named("drop temprature"));
        assertEquals(
                "There is no feature 'drop temprature'. Did you mean 'drop temperature'? Features.all() lists the "
                        + Features.all().list().size()
                        + " features there are; a column of batches.csv is had with Features.column(\"drop temprature\").",
                refused.getMessage());
    }

    @Test
    void makesAFeatureOfAnyNumericColumn() {
        Measured fee = Features.column("Tasting Fee").measure(PATH);
        assertEquals(12.5, fee.value());
        assertEquals(
                "missing: the column 'mood' holds 'good', which is not a number.",
                Features.column("mood").measure(PATH).toString());
        assertEquals(
                "missing: the column 'barcode' holds '12345678901234567', which is too long a number to count with.",
                Features.column("barcode").measure(PATH).toString());
        assertSame(Features.groundColour(), Features.column("ground colour"));
    }

    /** What was meant stands beside what was read, though no column of its own has to be there. */
    @Test
    void thePlannedDropIsAColumnThatCanBeShown() {
        Feature planned = Features.column("Planned drop temperature [°C]");
        assertEquals("planned drop temperature", planned.name());
        Batch drawn = Batch.named("A1")
                .plan(new BatchPlan(Optional.of(Temperature.celsius(203)), BatchPlan.PlannedBy.CHANCE))
                .build();
        assertEquals(203, planned.measure(BatchPath.of(drawn)).value());
        assertEquals(
                "missing: planned drop temperature was not written.",
                planned.measure(BatchPath.of(Batch.named("A2").build())).toString());
        assertFalse(Features.all().list().contains(planned), "it is no path feature to be compared with scores");
    }

    @Test
    void takesAFeatureOfTheReadersOwn() {
        Feature own = Feature.of(
                "rate of rise at 160 °C",
                parchment.quantity.Unit.RATE_OF_RISE,
                "the rate where the beans pass 160 °C",
                path -> path.rateAtTemperature(160));
        assertEquals(12, own.measure(PATH).value(), 0.001);
    }

    @Test
    void refusesTemperaturesInTheWrongOrder() {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> Features.secondsBetween(180, 150));
        assertEquals(
                "The time between two temperatures needs the lower one first; it was given 180.0 and 150.0 °C.",
                refused.getMessage());
    }
}
