package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import parchment.virtual.ScoreShape.Score;
import parchment.virtual.people.GivenScore;
import parchment.virtual.written.VirtualCupping;

/**
 * Holds invented scores against four published panels: consumers of carrots and ham, assessors of television sets, judges of wine.
 * See reference/score-shape/README.md for sources. No published panel of coffee cuppers is among them.
 */
class PanelRealityTest {
    private static final List<String> TELEVISION = List.of(
            "Coloursaturation",
            "Colourbalance",
            "Noise",
            "Depth",
            "Sharpness",
            "Lightlevel",
            "Contrast",
            "Sharpnessofmovement",
            "Flickeringstationary",
            "Flickeringmovement",
            "Distortion",
            "Dimglasseffect",
            "Cutting",
            "Flossyedges",
            "Elasticeffect");
    private static final Map<String, ScoreShape> PUBLISHED = published();

    private static String resource(String path) {
        try (InputStream stream = PanelRealityTest.class.getResourceAsStream("/reference/" + path)) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static List<CSVRecord> rows(String path) {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser = CSVParser.parse(resource(path), format)) {
            return parser.getRecords();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static List<Score> scores(String path, String person, List<String> product, List<String> attributes) {
        List<Score> scores = new ArrayList<>();
        for (CSVRecord row : rows(path)) {
            List<String> cells = attributes.stream().map(row::get).toList();
            if (cells.stream().allMatch(cell -> cell.matches("[0-9.]+"))) {
                scores.add(new Score(
                        row.get(person),
                        String.join("", product.stream().map(row::get).toList()),
                        cells.stream().map(Double::valueOf).toList()));
            }
        }
        return scores;
    }

    private static Map<String, ScoreShape> published() {
        Map<String, ScoreShape> shapes = new TreeMap<>();
        shapes.put(
                "carrots",
                ScoreShape.of(
                        scores(
                                "lme4/carrots.csv",
                                "Consumer",
                                List.of("Product"),
                                List.of("Preference", "Sweetness", "Bitter", "Crisp")),
                        6));
        shapes.put(
                "ham",
                ScoreShape.of(scores("lme4/ham.csv", "Consumer", List.of("Product"), List.of("Informed.liking")), 8));
        shapes.put(
                "TVbo",
                ScoreShape.of(scores("lme4/TVbo.csv", "Assessor", List.of("TVset", "Picture"), TELEVISION), 15));
        shapes.put(
                "wine",
                ScoreShape.of(
                        scores("ordinal/wine.csv", "judge", List.of("temp", "contact"), List.of("response")), 100));
        return shapes;
    }

    private static ScoreShape invented(String scenario, long seed) {
        List<Score> scores = new ArrayList<>();
        VirtualLogbook logbook =
                VirtualRoastery.of(Scenario.named(scenario)).withSeed(seed).run();
        for (VirtualCupping cupping : logbook.cuppings()) {
            for (GivenScore score : cupping.scores()) {
                scores.add(new Score(score.cupper(), cupping.name() + score.batch(), score.points()));
            }
        }
        return ScoreShape.of(scores, 10);
    }

    /** Our arithmetic against NumPy and pandas, to 1e-6. */
    @Test
    void agreesWithTheShapesThatNumpyFinds() {
        int compared = 0;
        for (CSVRecord row : rows("score-shape/score-shape.csv")) {
            ScoreShape found = PUBLISHED.get(row.get("panel"));
            Map<String, Double> numbers = new HashMap<>();
            numbers.put("person share", found.personShare());
            numbers.put("spread", found.spread());
            numbers.put("unevenness", found.unevenness());
            numbers.put("repeat", found.repeat());
            numbers.put("halo", found.halo());
            for (Map.Entry<String, Double> number : numbers.entrySet()) {
                String expected = row.get(number.getKey());
                if (!expected.equals("nan")) {
                    assertEquals(
                            Double.parseDouble(expected), number.getValue(), 1e-6, row.get(0) + " " + number.getKey());
                    compared++;
                }
            }
        }
        assertEquals(17, compared);
    }

    /** Untrained tasters: each of the five numbers lies within the range of the published panels, for each of three seeds. */
    @Test
    void theMarketTableScoresAsPublishedPanelsDo() {
        for (long seed = 1; seed <= 3; seed++) {
            ScoreShape shape = invented("market-table", seed);
            within("person share", 0.10, 0.45, shape.personShare(), shape);
            within("spread", 0.17, 0.29, shape.spread(), shape);
            within("unevenness", 0.25, 0.42, shape.unevenness(), shape);
            within("repeat", 0.44, 1.10, shape.repeat(), shape);
            within("halo", 0.08, 0.46, shape.halo(), shape);
        }
        for (ScoreShape shape : PUBLISHED.values()) {
            within("person share", 0.10, 0.45, shape.personShare(), shape);
            within("spread", 0.17, 0.29, shape.spread(), shape);
            within("unevenness", 0.25, 0.42, shape.unevenness(), shape);
            if (!Double.isNaN(shape.repeat())) {
                within("repeat", 0.44, 1.10, shape.repeat(), shape);
            }
            if (!Double.isNaN(shape.halo())) {
                within("halo", 0.08, 0.46, shape.halo(), shape);
            }
        }
    }

    /**
     * The demo's cuppers differ from one another as published persons do and lean on a halo like the trained panel's; but they use half
     * as much of the scale as the published panels, are more alike in how widely they score, and have no tastes of their own.
     */
    @Test
    void theHarboursCuppersAreMoreAlikeThanPublishedOnesAndUseLessOfTheScale() {
        for (long seed = 1; seed <= 3; seed++) {
            ScoreShape shape = invented("harbour", seed);
            within("person share", 0.10, 0.60, shape.personShare(), shape);
            within("halo", 0.03, 0.20, shape.halo(), shape);
            within("spread", 0.07, 0.14, shape.spread(), shape);
            within("unevenness", 0.03, 0.20, shape.unevenness(), shape);
            within("repeat", 0.95, 1.15, shape.repeat(), shape);
        }
    }

    /** Rounding: the step against the standard deviation of scores lies between that of tenths on a line and of whole numbers 1 to 7. */
    @Test
    void scoresAreRoundedNoFinerAndNoCoarserThanPublishedOnes() {
        double tenths = 0.1 / 15 / PUBLISHED.get("TVbo").spread();
        double whole = 1.0 / 6 / PUBLISHED.get("carrots").spread();
        double demo = 0.25 / 10 / invented("harbour", 1).spread();
        double market = 0.5 / 10 / invented("market-table", 1).spread();
        assertTrue(tenths < demo && demo < whole, tenths + " " + demo + " " + whole);
        assertTrue(tenths < market && market < whole, tenths + " " + market + " " + whole);
    }

    private static void within(String what, double low, double high, double value, ScoreShape shape) {
        assertTrue(value >= low && value <= high, what + " " + value + " of " + shape);
    }
}
