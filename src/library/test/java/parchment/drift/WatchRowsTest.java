package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.written.Upkeep;

class WatchRowsTest {
    private static final double[] QUIET = {
        0.3, -0.8, 0.5, 1.2, -0.4, -1.1, 0.9, 0.1, -0.6, 0.2, 1.0, -0.9, -0.2, 0.7, -1.3, 0.4, 0.6, -0.5, 0.8, -0.9
    };

    private static List<BuiltBatch> losses(int batches, IntToDoubleFunction more) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < batches; i++) {
            rows.add(BuiltBatch.losing(0.14 + 0.002 * QUIET[(i * 7) % 20] + more.applyAsDouble(i)));
        }
        return rows;
    }

    private static WatchRows loss(List<BuiltBatch> rows) {
        return WatchRows.of(BuiltBatch.logbook(rows), Features.massLoss());
    }

    private static WatchRows masses(double... kilograms) {
        return WatchRows.of(
                BuiltBatch.logbook(
                        Arrays.stream(kilograms).mapToObj(BuiltBatch::of).toList()),
                Features.greenMass());
    }

    private static String first(WatchRows rows) {
        return rows.batches().get(0).name();
    }

    @ParameterizedTest
    @CsvSource({"9,0", "10,10", "14,10", "15,15", "19,15", "20,20", "99,20", "100,40", "149,40", "150,60"})
    void theStretchGrowsWithTheChart(int batches, int stretch) {
        WatchRows rows = loss(losses(batches, i -> 0));
        assertEquals(stretch, rows.stretch());
        assertEquals(batches, rows.batches().size());
        assertEquals(batches, rows.values().length);
        assertEquals(
                stretch == 0 ? "there are 9 batches, and 10 are needed" : "the batches do not differ", rows.whyNone());
    }

    @Test
    void oneBatchIsNotCalledMany() {
        assertEquals(
                "there is 1 batch, and 10 are needed", loss(losses(1, i -> 0)).whyNone());
        assertEquals(
                "there are 2 batches, and 10 are needed",
                loss(losses(2, i -> 0)).whyNone());
    }

    /** Lots and machines, less one, each need five batches of the stretch; two are allowed in any. */
    @ParameterizedTest
    @CsvSource({"10,2,1,10", "10,1,2,10", "10,3,1,0", "10,2,2,0", "20,4,1,20", "20,3,2,20", "20,5,1,0", "20,4,2,0"})
    void moreGroupsThanOneForFiveBatchesSetNoLimits(int batches, int lots, int machines, int stretch) {
        List<BuiltBatch> rows = new ArrayList<>(losses(batches, i -> 0));
        for (int i = 0; i < batches; i++) {
            rows.set(i, rows.get(i).withLot("lot " + i % lots).withMachine("machine " + (i / lots) % machines));
        }
        WatchRows found = loss(rows);
        assertEquals(stretch, found.stretch());
        assertEquals(
                stretch == 0
                        ? "the batches are of " + (lots + machines - 1)
                                + " lots and machines; watch one lot, as in logbook.ofLot(...)"
                        : "the batches do not differ",
                found.whyNone());
        assertEquals(batches, found.batches().size());
    }

    @Test
    void saysTheMostGroupsThatAStretchHeldWhereAllHoldTooMany() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 22; i++) {
            rows.add(losses(22, k -> 0).get(i).withLot("lot " + (i < 16 ? i % 5 : i)));
        }
        assertEquals(
                "the batches are of 11 lots and machines; watch one lot, as in logbook.ofLot(...)",
                loss(rows).whyNone());
        assertEquals(22, loss(rows).batches().size());
        assertEquals("22 batches watched, none left out.", loss(rows).leftOutWords());
    }

    @Test
    void aLaterStretchWithFewerLotsIsTakenInstead() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            rows.add(losses(30, k -> 0).get(i).withLot("lot " + (i < 6 ? i : 6)));
        }
        WatchRows found = loss(rows);
        assertEquals("B4", first(found), "the first twenty batches in a row with four lots");
        assertEquals(20, found.stretch());
    }

    @Test
    void passesOverAStretchInWhichOneBatchLiesFarOffByStudentsT() {
        double low = 1;
        double high = 20;
        while (high - low > 1e-4) {
            double middle = (low + high) / 2;
            boolean kept = first(farOff(middle)).equals("B1");
            low = kept ? middle : low;
            high = kept ? high : middle;
        }
        double[] values = QUIET.clone();
        values[4] = low;
        double mean = Arrays.stream(values).average().orElse(0);
        double squares = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
        double off = low - mean;
        // Held against the spread of all residuals less its own share: the farthest of twenty, one in a hundred, 18
        // degrees.
        double t = off / Math.sqrt((squares - off * off) / 18);
        assertEquals(new TDistribution(18).inverseCumulativeProbability(1 - 0.01 / 40), t, 1e-3);
    }

    private static WatchRows farOff(double size) {
        double[] values = new double[30];
        for (int i = 0; i < 30; i++) {
            values[i] = 2 + 0.01 * (i == 4 ? size : i < 20 ? QUIET[i] : 0.1);
        }
        return masses(values);
    }

    @Test
    void degreesOfFreedomOfAFarBatchAreFewerWhereMassAndAimAreTakenIntoAccount() {
        double low = 0;
        double high = 0.05;
        while (high - low > 1e-7) {
            double middle = (low + high) / 2;
            boolean kept = first(loss(withAims(middle))).equals("B1");
            low = kept ? middle : low;
            high = kept ? high : middle;
        }
        List<BuiltBatch> rows = withAims(low).subList(0, 20);
        double[] residuals = leastSquares(
                rows.stream().mapToDouble(b -> 1 - b.roasted() / b.green()).toArray(),
                rows.stream().mapToDouble(BuiltBatch::aim).toArray());
        double squares = Arrays.stream(residuals).map(r -> r * r).sum();
        double t = residuals[4] / Math.sqrt((squares - residuals[4] * residuals[4]) / 17);
        assertEquals(new TDistribution(17).inverseCumulativeProbability(1 - 0.01 / 40), t, 1e-3);
    }

    private static List<BuiltBatch> withAims(double farther) {
        List<BuiltBatch> rows = new ArrayList<>();
        List<BuiltBatch> drawn = losses(30, i -> i == 4 ? farther : 0);
        for (int i = 0; i < 30; i++) {
            rows.add(drawn.get(i).withAim(203 + (i * 3) % 5));
        }
        return rows;
    }

    /** A line by hand. */
    private static double[] leastSquares(double[] y, double[] x) {
        double meanX = Arrays.stream(x).average().orElse(0);
        double meanY = Arrays.stream(y).average().orElse(0);
        double products = 0;
        double squares = 0;
        for (int i = 0; i < x.length; i++) {
            products += (x[i] - meanX) * (y[i] - meanY);
            squares += (x[i] - meanX) * (x[i] - meanX);
        }
        double slope = products / squares;
        return IntStream.range(0, x.length)
                .mapToDouble(i -> y[i] - meanY - slope * (x[i] - meanX))
                .toArray();
    }

    @Test
    void theLastStretchThatFitsIsTriedToo() {
        double[] values = new double[25];
        for (int i = 0; i < 25; i++) {
            values[i] = i == 4 ? 2.5 : 2 + 0.01 * QUIET[(i * 3) % 20];
        }
        WatchRows rows = masses(values);
        assertEquals("B6", first(rows));
        assertEquals(20, rows.stretch());
        assertEquals(
                "20 batches watched, left out: 5 before the stretch, in which one lies far off.", rows.leftOutWords());
    }

    @Test
    void whereNoStretchIsQuietTheEarliestThatVariesIsTaken() {
        double[] values = new double[24];
        for (int i = 0; i < 24; i++) {
            values[i] = 2 + 0.01 * QUIET[i % 20] + (i == 10 ? 1 : 0);
        }
        assertEquals("B1", first(masses(values)), "each stretch of 24 batches holds the eleventh");
        double[] alike = new double[21];
        Arrays.fill(alike, 2);
        alike[20] = 2.1;
        WatchRows rows = masses(alike);
        assertEquals("B2", first(rows), "the first twenty do not differ at all");
        assertEquals(20, rows.stretch());
        alike[20] = 2;
        assertEquals(0, masses(alike).stretch());
        assertEquals("the batches do not differ", masses(alike).whyNone());
        assertEquals(21, masses(alike).batches().size());
    }

    @Test
    void comparesAtLikeMassAndAimAndSaysSo() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            rows.add(losses(40, k -> 0).get(i).withGreen(2 + 0.1 * (i % 3)).withAim(203 + i % 5));
        }
        assertEquals(
                "Compared at like green mass, planned drop temperature.",
                loss(rows).likeWords());
        assertEquals(
                "Batches are compared as they are.", loss(losses(40, i -> 0)).likeWords());
        // Ten batches leave room for one number beside the level.
        assertEquals(
                "Compared at like green mass; planned drop temperature is not taken into account (the stretch is too short for"
                        + " it, it moved with the others, or it is not written everywhere).",
                loss(rows.subList(0, 12)).likeWords());
        List<BuiltBatch> lots = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            lots.add(rows.get(i).withLot(i % 2 == 0 ? "one" : "two"));
        }
        assertEquals(
                "Compared at like lot; green mass, planned drop temperature are not taken into account (the stretch is too short"
                        + " for it, it moved with the others, or it is not written everywhere).",
                loss(lots).likeWords());
        rows.set(3, rows.get(3).withAim(Double.NaN));
        assertEquals(
                "Compared at like green mass; planned drop temperature is not taken into account (the stretch is too short for"
                        + " it, it moved with the others, or it is not written everywhere).",
                loss(rows).likeWords());
    }

    @Test
    void countsWhatWasLeftOutAndWhy() {
        List<BuiltBatch> rows = new ArrayList<>(losses(26, i -> i == 1 ? 0.2 : 0));
        rows.set(20, BuiltBatch.of(2));
        rows.set(24, rows.get(24).withLot("another"));
        WatchRows found = loss(rows);
        assertEquals(
                "22 batches watched, left out: 1 without this feature or a date, 2 before the stretch, in which one lies far off,"
                        + " 1 of a lot, mass or aim that the stretch does not hold.",
                found.leftOutWords());
        assertEquals(
                "26 batches watched, none left out.", loss(losses(26, i -> 0)).leftOutWords());
    }

    @Test
    void countsWhatAnEarlierProbeRead() {
        List<BuiltBatch> rows = IntStream.range(0, 30)
                .mapToObj(i -> BuiltBatch.of(2).withCharge(200 + QUIET[i % 20]))
                .toList();
        Upkeep moved = new Upkeep("", LocalDate.of(2025, 1, 6), "probe moved", Optional.empty());
        Logbook logbook = Logbook.of(BuiltBatch.logbook(rows).contents().toBuilder()
                .upkeep(List.of(moved))
                .build());
        assertEquals(
                "25 batches watched, left out: 5 read before its machine's probe last changed, as written or found.",
                WatchRows.of(logbook, Features.chargeTemperature()).leftOutWords());
    }

    @ParameterizedTest
    @CsvSource({"2.19,1", "2.21,0", "1.81,1", "1.79,0"})
    void aMassThatTheStretchDoesNotHoldIsLeftOut(double mass, int watched) {
        List<BuiltBatch> rows = new ArrayList<>(losses(20, i -> 0));
        rows.add(BuiltBatch.losing(0.14).withGreen(mass));
        // The stretch is all of 2 kg; a twentieth of it is the same mass.
        assertEquals(
                mass > 2.1 || mass < 1.9 ? 20 : 20 + watched,
                loss(rows).batches().size());
        rows.set(0, rows.get(0).withGreen(2.09));
        rows.set(1, rows.get(1).withGreen(1.95));
        assertEquals("Compared at like green mass.", loss(rows).likeWords());
        assertEquals(21, loss(rows).batches().size());
    }

    @ParameterizedTest
    @CsvSource({"2.099,21", "2.101,20", "1.901,21", "1.899,20"})
    void aTwentiethOfTheMassIsTheSameMass(double mass, int batches) {
        List<BuiltBatch> rows = new ArrayList<>(losses(20, i -> 0));
        rows.add(BuiltBatch.losing(0.14).withGreen(mass));
        assertEquals(batches, loss(rows).batches().size());
    }

    @ParameterizedTest
    @CsvSource({"205.99,21", "206.01,20", "204.01,21", "203.99,20"})
    void aDegreeIsTheSameAim(double aim, int batches) {
        List<BuiltBatch> rows = new ArrayList<>();
        losses(20, i -> 0).forEach(b -> rows.add(b.withAim(205)));
        rows.add(BuiltBatch.losing(0.14).withAim(aim));
        assertEquals(batches, loss(rows).batches().size());
    }

    @Test
    void limitsComeFromTheStretchAloneAtLikeAim() {
        List<BuiltBatch> rows = withAims(0);
        Logbook logbook = BuiltBatch.logbook(rows);
        EstimatedLimits limits = WatchRows.of(logbook, Features.massLoss()).limits(new WatchDesigns());
        double[] residuals = leastSquares(
                rows.stream()
                        .limit(20)
                        .mapToDouble(b -> 1 - b.roasted() / b.green())
                        .toArray(),
                rows.stream().limit(20).mapToDouble(BuiltBatch::aim).toArray());
        assertArrayEquals(residuals, Arrays.copyOf(limits.deviations(), 20), 1e-12);
        double squares = Arrays.stream(residuals).map(r -> r * r).sum();
        assertEquals(Math.sqrt(squares / 18), limits.spread(), 1e-12);
        assertEquals(10, limits.standard().length);
    }
}
