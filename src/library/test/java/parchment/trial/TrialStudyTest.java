package parchment.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.stats.ReferenceData;
import parchment.stats.mixed.SlopeInsideSets;
import parchment.trial.TrialTally.Count;
import parchment.trial.TrialTally.Part;
import parchment.trial.sealed.TrialTerms;

/** Short versions of docs/measurements/coin-flip.md: the same counts on fewer drawn trials, held against an outside simulation of the same panel. */
class TrialStudyTest {
    private static JsonArray rows(String check) {
        return ReferenceData.expected("coin-flip", check).getAsJsonArray("expected");
    }

    private static double number(JsonElement row, String name) {
        return row.getAsJsonObject().get(name).getAsDouble();
    }

    /** Two shares agree if they lie within three errors of both simulations together. */
    private static void agree(double expected, double found, long trials, long outside, String what) {
        double p = Math.min(0.98, Math.max(0.02, (expected + found) / 2));
        double error = Math.sqrt(p * (1 - p) * (1.0 / trials + 1.0 / outside));
        assertEquals(expected, found, 3 * error, what + ", error " + error);
    }

    private static double slope(JsonElement row) {
        return number(row, "slope") == 0.167 ? 1.0 / 6 : number(row, "slope") == 0.333 ? 1.0 / 3 : number(row, "slope");
    }

    /** Four, eight, twelve sets of three, one cupper and three; sets of four are drawn by another rule there and are held against the formula. */
    @ParameterizedTest
    @ValueSource(ints = {0, 10, 24})
    @Tag("agrees-with")
    void powerAndCoverageAgreeWithTheOutsideSimulation(int index) {
        JsonObject row = rows("coin_flip_power_simulated").get(index).getAsJsonObject();
        TrialDraws.Cell cell = new TrialDraws.Cell();
        cell.slope = slope(row);
        cell.cuppers = row.get("cuppers").getAsInt();
        cell.sets = row.get("sets").getAsInt();
        cell.size = row.get("size").getAsInt();
        assertEquals(3, cell.size, "row " + index);
        int trials = 120;
        TrialTally tally = TrialTally.of(cell, 50_000, trials, List.of(Part.ACHIEVED));
        agree(number(row, "power"), tally.found(), trials, 600, "power of row " + index);
        agree(number(row, "cover90"), tally.held(), trials, 600, "coverage of row " + index);
        agree(
                number(row, "ar_cover90"),
                tally.share(Count.ACHIEVED_HELD, Count.READ),
                trials,
                600,
                "achieved of row " + index);
        assertEquals(number(row, "width90"), tally.width(), 0.06 * number(row, "width90"), "width of row " + index);
    }

    /** Sets of four there, as drawn here by the rule of one end: coverage as assigned and as achieved, and how often the set has no end. */
    @ParameterizedTest
    @ValueSource(ints = {0, 4, 8})
    @Tag("agrees-with")
    void missedTargetsAgreeWithTheOutsideSimulation(int index) {
        JsonObject row = rows("coin_flip_compliance_simulated").get(index).getAsJsonObject();
        TrialDraws.Cell cell = new TrialDraws.Cell();
        cell.slope = 1.0 / 6;
        cell.followed = row.get("follow").getAsDouble();
        cell.sets = 8;
        cell.size = 4;
        assertEquals(32, row.get("batches").getAsInt());
        int trials = 100;
        TrialTally tally = TrialTally.of(cell, 70_000, trials, List.of(Part.ACHIEVED));
        agree(0.90, tally.held(), trials, 100_000, "as assigned");
        agree(
                number(row, "ar_cover90"),
                tally.share(Count.ACHIEVED_HELD, Count.READ),
                trials,
                1500,
                "Anderson and Rubin");
        agree(
                number(row, "ar_not_bounded"),
                tally.share(Count.NOT_BOUNDED, Count.READ),
                trials,
                1500,
                "without an end");
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    @Tag("agrees-with")
    void chanceFindsNoMoreThanItMay(int index) {
        JsonObject row = rows("coin_flip_null").get(index).getAsJsonObject();
        TrialDraws.Cell cell = new TrialDraws.Cell();
        cell.sets = row.get("sets").getAsInt();
        cell.cuppers = row.get("cuppers").getAsInt();
        int trials = 120;
        TrialTally tally = TrialTally.of(cell, 90_000, trials, List.of());
        agree(number(row, "randomisation"), tally.found(), trials, 1000, "by shuffles");
        agree(number(row, "t_test"), tally.share(Count.BY_T, Count.COMPARED), trials, 1000, "by t");
    }

    @ParameterizedTest
    @ValueSource(strings = {"random 0.1 0", "random 0.3 0", "dark 0.1 0.167", "bad 0.2 0.167"})
    @Tag("agrees-with")
    void boundsOfLostBatchesHoldTheTruth(String which) {
        String[] words = which.split(" ");
        for (JsonElement row : rows("coin_flip_lost")) {
            JsonObject of = row.getAsJsonObject();
            boolean this_ = of.get("mode").getAsString().equals(words[0])
                    && of.get("rate").getAsDouble() == Double.parseDouble(words[1])
                    && of.get("slope").getAsDouble() == Double.parseDouble(words[2]);
            if (!this_) {
                continue;
            }
            TrialDraws.Cell cell = new TrialDraws.Cell();
            cell.sets = 12;
            cell.slope = slope(of);
            cell.loss = of.get("rate").getAsDouble();
            cell.how = switch (words[0]) {
                case "dark" -> TrialDraws.Loss.DARK;
                case "bad" -> TrialDraws.Loss.POOR;
                default -> TrialDraws.Loss.RANDOM;
            };
            int trials = 30;
            TrialTally tally = TrialTally.of(cell, 110_000, trials, List.of(Part.BOUNDS));
            double bounds = tally.share(Count.BOUNDS_HELD, Count.BOUNDED);
            assertTrue(bounds >= 0.90 - 3 * Math.sqrt(0.09 / trials), which + ": " + bounds);
            // How many of the poor are lost differs with the rule that picks them, so widths are held for losses by
            // chance only; those there
            // are by t, and ours by shuffles.
            if (cell.how == TrialDraws.Loss.RANDOM) {
                double width = of.get("bound_width").getAsDouble();
                assertEquals(width, tally.boundWidth(), 0.12 * width, which);
            }
            return;
        }
        assertTrue(false, "no row " + which);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 4})
    @Tag("agrees-with")
    void hopeOfCuppersWhoKnowTheTargetMakesFalseFindings(int index) {
        JsonObject row = rows("coin_flip_unblinding").get(index).getAsJsonObject();
        TrialDraws.Cell cell = new TrialDraws.Cell();
        cell.sets = 8;
        cell.size = 4;
        cell.hope = row.get("hope").getAsDouble();
        int trials = 100;
        TrialTally tally = TrialTally.of(cell, 130_000, trials, List.of());
        agree(number(row, "false_findings"), tally.found(), trials, 1000, "hope " + cell.hope);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    @Tag("agrees-with")
    void setsOfTwoAgreeWithTheOutsideSimulation(int index) {
        JsonObject row = rows("coin_flip_sets_of_two").get(index).getAsJsonObject();
        TrialDraws.Cell cell = new TrialDraws.Cell();
        cell.levels = 2;
        cell.sets = row.get("sets").getAsInt();
        cell.size = row.get("size").getAsInt();
        cell.slope = slope(row);
        cell.followed = row.has("follow") ? row.get("follow").getAsDouble() : 1;
        int trials = cell.sets == 16 ? 15 : 100;
        TrialTally tally = TrialTally.of(cell, 150_000, trials, List.of(Part.ACHIEVED));
        // Four sets of two have 16 ways of dealing: by shuffles nothing is found there, by t as often as it may be.
        double found = cell.sets == 4 ? tally.share(Count.BY_T, Count.COMPARED) : tally.found();
        agree(number(row, row.has("power") ? "power" : "false"), found, trials, 1500, "found, row " + index);
        double achieved = tally.share(Count.ACHIEVED_HELD, Count.READ);
        agree(row.has("ar90") ? number(row, "ar90") : 0.9, achieved, trials, 1500, "achieved, row " + index);
        if (row.has("not_bounded")) {
            agree(number(row, "not_bounded"), tally.share(Count.NOT_BOUNDED, Count.READ), trials, 1500, "no end");
            assertEquals(0, tally.found());
        }
    }

    /** Sets of three of normal means: a look a set, two planned looks, and what each costs and finds. */
    @Test
    @Tag("agrees-with")
    void looksAgreeWithTheOutsideSimulation() {
        JsonObject expected =
                ReferenceData.expected("coin-flip", "coin_flip_looks").getAsJsonObject("expected");
        JsonObject power = expected.getAsJsonObject("power_slope_1_6");
        int trials = 1500;
        int every = 0;
        int one = 0;
        int two = 0;
        int twoAtFive = 0;
        int foundByTwo = 0;
        double batches = 0;
        Random random = new Random(11);
        for (int trial = 0; trial < trials; trial++) {
            double[] p = chances(random, 0);
            every += Arrays.stream(p, 3, 16).anyMatch(chance -> chance <= 0.05) ? 1 : 0;
            one += p[15] <= TrialTerms.ONE_LOOK ? 1 : 0;
            two += p[7] <= TrialTerms.EACH_OF_TWO_LOOKS || p[15] <= TrialTerms.EACH_OF_TWO_LOOKS ? 1 : 0;
            twoAtFive += p[7] <= 0.05 || p[15] <= 0.05 ? 1 : 0;
            double[] with = chances(random, 1.0 / 6);
            boolean early = with[7] <= TrialTerms.EACH_OF_TWO_LOOKS;
            foundByTwo += early || with[15] <= TrialTerms.EACH_OF_TWO_LOOKS ? 1 : 0;
            batches += early ? 24 : 48;
        }
        agree(expected.get("every_set_at_05").getAsDouble(), (double) every / trials, trials, 20_000, "a look a set");
        agree(expected.get("one_look").getAsDouble(), (double) one / trials, trials, 20_000, "one look");
        agree(expected.get("two_looks_8_16_at_0294").getAsDouble(), (double) two / trials, trials, 20_000, "two looks");
        agree(
                expected.get("two_looks_05_each").getAsDouble(),
                (double) twoAtFive / trials,
                trials,
                20_000,
                "two at .05");
        agree(power.get("two_looks_8_16").getAsDouble(), (double) foundByTwo / trials, trials, 20_000, "power");
        assertEquals(power.get("mean_batches").getAsDouble(), batches / trials, 1.0);
    }

    /** Returns the chance by t after each set. */
    private static double[] chances(Random random, double slope) {
        List<String> sets = new ArrayList<>();
        double[] targets = new double[48];
        double[] scores = new double[48];
        double[] chances = new double[16];
        for (int set = 0; set < 16; set++) {
            for (int place = 0; place < 3; place++) {
                int row = 3 * set + place;
                sets.add("set " + set);
                targets[row] = 1.5 * (place - 1);
                scores[row] = slope * targets[row] + 0.424 * random.nextGaussian();
            }
            if (set >= 3) {
                int rows = 3 * set + 3;
                chances[set] = SlopeInsideSets.on(sets, Arrays.copyOf(targets, rows))
                        .slope("slope", Arrays.copyOf(scores, rows))
                        .probability();
            }
        }
        return chances;
    }

    /** The mixed model beside batch means: rejections and widths of the outside fits by lmerTest, at four sets and at eight. */
    @ParameterizedTest
    @ValueSource(ints = {2, 3})
    @Tag("agrees-with")
    void theMixedModelAgreesWithTheOutsideFits(int index) {
        JsonObject check = ReferenceData.expected("coin-flip", "coin_flip_mixed_model");
        JsonObject expected = check.getAsJsonObject("expected");
        TrialDraws.Cell cell = new TrialDraws.Cell();
        cell.sets = (int) ReferenceData.numbers(check.getAsJsonObject("inputs").get("sets"))[index];
        cell.slope = 1.0 / 6;
        int trials = 25;
        double width = 0;
        int held = 0;
        int found = 0;
        for (int seed = 0; seed < trials; seed++) {
            AsAssigned assigned =
                    AsAssigned.of(cell.draw(170_000 + seed), 3, 0.9).orElseThrow();
            var slope = TrialMixedModel.slope(assigned).orElseThrow();
            width += slope.interval(0.9).width() / trials;
            held += slope.interval(0.9).contains(1.0 / 6) ? 1 : 0;
            found += slope.probability() <= 0.05 ? 1 : 0;
        }
        double wanted = ReferenceData.numbers(expected.get("width"))[index];
        assertEquals(wanted, width, 0.12 * wanted);
        agree(ReferenceData.numbers(expected.get("cover90"))[index], (double) held / trials, trials, 250, "held");
        agree(ReferenceData.numbers(expected.get("reject"))[index], (double) found / trials, trials, 250, "found");
    }

    /** The formula lies within three points of drawn trials; held here for one condition, in the page for all. */
    @Test
    @Tag("agrees-with")
    void theFormulaAgreesWithDrawnTrials() {
        TrialDraws.Cell cell = new TrialDraws.Cell();
        cell.slope = 1.0 / 6;
        cell.sets = 4;
        int trials = 600;
        TrialTally tally = TrialTally.of(cell, 190_000, trials, List.of());
        agree(TrialStudy.formula(cell), tally.found(), trials, 100_000, "power of four sets of three");
    }

    @Test
    @Tag("holds-for-any")
    void countsOfPartsOfARunAddUp() {
        TrialDraws.Cell cell = new TrialDraws.Cell();
        cell.sets = 4;
        cell.loss = 0.1;
        List<Part> parts = List.of(Part.ACHIEVED, Part.TWIN, Part.BOUNDS);
        TrialTally whole = TrialTally.of(cell, 0, 8, parts);
        TrialTally sum = TrialTally.of(cell, 0, 5, parts)
                .plus(TrialTally.of(cell, 5, 3, parts).line());
        assertEquals(whole.line().replaceAll(",[^,]*,[^,]*$", ""), sum.line().replaceAll(",[^,]*,[^,]*$", ""));
        assertEquals(whole.width(), sum.width(), 1e-12);
        assertEquals(8, whole.of(Count.TWIN));
        assertTrue(whole.of(Count.TWIN_HELD) >= 6, whole.line());
    }
}
