package parchment.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.stats.linear.Vectors;
import parchment.stats.resample.GroupBootstrap;

/** Nothing that a mixed model says depends on how its table was sorted. */
class RowOrderTest {
    private static final int ROWS = 90;

    /** Uneven crossed groups, a covariate, a slope of its own per cupper, a smooth, a few missing numbers, some rows twice. */
    private static MixedDesign panel(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] x = new double[ROWS];
        double[] y = new double[ROWS];
        List<String> day = new ArrayList<>();
        List<String> cupper = new ArrayList<>();
        List<String> batch = new ArrayList<>();
        double[] dayEffect = random.doubles(15, -1, 1).toArray();
        for (int i = 0; i < ROWS; i++) {
            int own = random.nextInt(30);
            x[i] = 200 + own % 11 + (i % 17 == 0 ? Double.NaN : 0);
            day.add("day " + own / 2);
            batch.add("batch " + own);
            cupper.add("cupper " + random.nextInt(4));
            y[i] = i % 23 == 0 ? Double.NaN : Math.rint(4 * (6 + dayEffect[own / 2] + random.nextGaussian())) / 4;
        }
        double[] place = IntStream.range(0, ROWS).mapToDouble(i -> x[i] % 7).toArray();
        return MixedDesign.of("score", y)
                .withCovariate("x", x)
                .withRandom(RandomTerm.intercept("day", day))
                .withRandom(RandomTerm.intercept("batch", batch))
                .withRandom(RandomTerm.intercept("cupper", cupper).withSlope("x", x))
                .withRandom(RandomTerm.smooth("course", bendsAlong(place)));
    }

    /** Three waves of falling size: columns of a smooth whose effects share one variance. */
    private static List<double[]> bendsAlong(double[] place) {
        return IntStream.rangeClosed(1, 3)
                .mapToObj(wave -> Arrays.stream(place)
                        .map(at -> Math.sin(wave * at) / wave)
                        .toArray())
                .toList();
    }

    private static int[] shuffled(long seed) {
        List<Integer> order = new ArrayList<>(IntStream.range(0, ROWS).boxed().toList());
        Collections.shuffle(order, new Random(seed));
        return order.stream().mapToInt(Integer::intValue).toArray();
    }

    @RepeatedTest(6)
    @Tag("holds-for-any")
    void aFitIsTheSameToTheLastDigit(RepetitionInfo info) {
        long seed = info.getCurrentRepetition();
        MixedDesign design = panel(seed);
        MixedDesign other = design.withRows(shuffled(seed));
        LinearMixedModel model = design.fit();
        LinearMixedModel again = other.fit();
        assertEquals(model.criterion(), again.criterion());
        assertEquals(model.residualStandardDeviation(), again.residualStandardDeviation());
        assertArrayEquals(model.theta(), again.theta());
        assertArrayEquals(model.coefficients(), again.coefficients());
        assertEquals(model.terms(), again.terms());
        assertEquals(model.notes(), again.notes());
        assertEquals(model.used(), again.used());
        assertEquals(
                model.groupEffects("day").toString(), again.groupEffects("day").toString());
    }

    @RepeatedTest(6)
    @Tag("holds-for-any")
    void aDrawnResponseGoesWithItsRow(RepetitionInfo info) {
        long seed = 100 + info.getCurrentRepetition();
        MixedDesign design = panel(seed);
        int[] order = shuffled(seed);
        double[] drawn = design.fit().simulate(7);
        double[] again = design.withRows(order).fit().simulate(7);
        // Rows that are alike in everything may exchange what they drew.
        Map<String, List<Double>> byRow = new HashMap<>();
        Map<String, List<Double>> byRowAgain = new HashMap<>();
        for (int i = 0; i < ROWS; i++) {
            byRow.computeIfAbsent(contents(design, order[i]), key -> new ArrayList<>())
                    .add(drawn[order[i]]);
            byRowAgain
                    .computeIfAbsent(contents(design, order[i]), key -> new ArrayList<>())
                    .add(again[i]);
        }
        byRow.values().forEach(Collections::sort);
        byRowAgain.values().forEach(Collections::sort);
        assertTrue(byRow.equals(byRowAgain), "what was drawn moved with the order of the rows");
    }

    private static String contents(MixedDesign design, int row) {
        StringBuilder text = new StringBuilder().append(design.responseAt(row));
        design.fixed()
                .forEach(term -> term.columns().forEach(c -> text.append(' ').append(c[row])));
        design.randomTerms()
                .forEach(term -> text.append(' ')
                        .append(
                                term.kind() == RandomTerm.Kind.GROUPS
                                        ? term.groups().get(row)
                                        : ""));
        return text.toString();
    }

    @Test
    void sortsByGroupsThenColumnsThenResponse() {
        double none = Double.NaN;
        MixedDesign design = MixedDesign.of("y", new double[] {3, 1, 2, none, 5, 4})
                .withCovariate("x", new double[] {2, 2, 1, 0, none, 9})
                .withRandom(RandomTerm.intercept("g", List.of("b", "b", "b", "a", "a", "a")));
        assertArrayEquals(new int[] {5, 2, 1, 0}, RowOrder.of(design));
    }

    @Test
    @Tag("holds-for-any")
    void resampledGroupsAreTheSameHoweverTheRowsCome() {
        List<String> groups = List.of("c", "a", "b", "a", "", "c", "d", "b", "a", "e");
        double[] values = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
        int[] order = {9, 3, 7, 0, 4, 8, 1, 2, 6, 5};
        List<String> groupsAgain = Arrays.stream(order).mapToObj(groups::get).toList();
        double[] valuesAgain = Vectors.pick(values, order);
        for (int number = 0; number < 20; number++) {
            assertEquals(
                    sum(values, GroupBootstrap.of(groups, 5).draw(number).rows()),
                    sum(
                            valuesAgain,
                            GroupBootstrap.of(groupsAgain, 5).draw(number).rows()));
        }
    }

    private static double sum(double[] values, int[] rows) {
        return Arrays.stream(rows).mapToDouble(i -> values[i]).sum();
    }
}
