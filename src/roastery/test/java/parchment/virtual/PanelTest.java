package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import parchment.virtual.people.GivenScore;
import parchment.virtual.written.VirtualBatch;
import parchment.virtual.written.VirtualCupping;

class PanelTest {
    private static final VirtualLogbook LOGBOOK =
            VirtualRoastery.harbour().withSeed(11).run();

    /** With bias, scale and noise taken out by averaging, mean scores must follow the truth. */
    @Test
    void meanScoresFollowTheTruth() {
        Map<String, Double> truth = new TreeMap<>();
        for (VirtualBatch batch : LOGBOOK.batches()) {
            truth.put(batch.name(), batch.flavour().get(0));
        }
        Map<String, List<Double>> scores = new TreeMap<>();
        for (VirtualCupping cupping : LOGBOOK.cuppings()) {
            for (GivenScore score : cupping.scores()) {
                scores.computeIfAbsent(score.batch(), name -> new ArrayList<>())
                        .add(score.points().get(0));
            }
        }
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        scores.forEach((batch, points) -> {
            x.add(truth.get(batch));
            y.add(points.stream().mapToDouble(p -> p).average().orElseThrow());
        });
        double correlation = correlation(x, y);
        assertTrue(correlation > 0.8 && correlation < 0.99, "correlation " + correlation);
    }

    @Test
    void attributesOfACupLeanTogetherMoreThanTheTruthDoes() {
        List<Double> acidity = new ArrayList<>();
        List<Double> body = new ArrayList<>();
        Map<String, VirtualBatch> batches = new TreeMap<>();
        for (VirtualBatch batch : LOGBOOK.batches()) {
            batches.put(batch.name(), batch);
        }
        List<Double> trueAcidity = new ArrayList<>();
        List<Double> trueBody = new ArrayList<>();
        for (VirtualCupping cupping : LOGBOOK.cuppings()) {
            for (GivenScore score : cupping.scores()) {
                acidity.add(score.points().get(0));
                body.add(score.points().get(2));
                trueAcidity.add(batches.get(score.batch()).flavour().get(0));
                trueBody.add(batches.get(score.batch()).flavour().get(2));
            }
        }
        assertTrue(correlation(acidity, body) > correlation(trueAcidity, trueBody) + 0.1);
    }

    @Test
    void everyCupperMeetsEveryCupOnceInAnOrderOfTheirOwn() {
        for (VirtualCupping cupping : LOGBOOK.cuppings()) {
            Map<String, List<Integer>> places = new TreeMap<>();
            for (GivenScore score : cupping.scores()) {
                places.computeIfAbsent(score.cupper(), name -> new ArrayList<>())
                        .add(score.position());
            }
            for (List<Integer> of : places.values()) {
                for (int i = 0; i < of.size(); i++) {
                    assertEquals(i + 1, of.get(i));
                }
            }
            assertTrue(places.size() >= 3 && places.size() <= 5);
        }
    }

    @Test
    void peopleWhoSpeakFirstAgreeMore() {
        double[] spread = new double[2];
        int[] count = new int[2];
        for (long seed = 1; seed <= 4; seed++) {
            for (VirtualCupping cupping :
                    VirtualRoastery.harbour().withSeed(seed).run().cuppings()) {
                int kind = cupping.beforeDiscussion() == VirtualCupping.Talk.SCORED_BEFORE ? 0 : 1;
                spread[kind] += spreadWithinBatches(cupping);
                count[kind]++;
            }
        }
        assertTrue(count[1] >= 5, count[1] + " tables spoke first");
        assertTrue(spread[1] / count[1] < 0.7 * spread[0] / count[0]);
    }

    private static double spreadWithinBatches(VirtualCupping cupping) {
        Map<String, List<Double>> points = new TreeMap<>();
        for (GivenScore score : cupping.scores()) {
            points.computeIfAbsent(score.batch(), name -> new ArrayList<>())
                    .add(score.points().get(1));
        }
        double sum = 0;
        for (List<Double> of : points.values()) {
            double mean = of.stream().mapToDouble(p -> p).average().orElseThrow();
            double squares =
                    of.stream().mapToDouble(p -> (p - mean) * (p - mean)).sum();
            sum += Math.sqrt(squares / (of.size() - 1));
        }
        return sum / points.size();
    }

    private static double correlation(List<Double> x, List<Double> y) {
        double meanX = x.stream().mapToDouble(v -> v).average().orElseThrow();
        double meanY = y.stream().mapToDouble(v -> v).average().orElseThrow();
        double xy = 0;
        double xx = 0;
        double yy = 0;
        for (int i = 0; i < x.size(); i++) {
            xy += (x.get(i) - meanX) * (y.get(i) - meanY);
            xx += (x.get(i) - meanX) * (x.get(i) - meanX);
            yy += (y.get(i) - meanY) * (y.get(i) - meanY);
        }
        return xy / Math.sqrt(xx * yy);
    }
}
