package parchment.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

class PolylineTest {
    @Test
    void leavesOutWhatLiesOnTheLine() {
        Polyline path = new Polyline();
        for (int i = 0; i <= 100; i++) {
            path.to(i, 2 * i);
        }
        assertEquals("M0 0l100 200", path.data());
    }

    @Test
    void breaksWhereItIsLifted() {
        assertEquals(
                "M0 0h1M3 0v-1.5",
                new Polyline().to(0, 0).to(1, 0).lift().to(3, 0).to(3, -1.5).data());
    }

    @RepeatedTest(20)
    void leavesOutMostPointsOfASmoothCourseAndKeepsItsTurns(RepetitionInfo info) {
        int n = 300;
        double length = 20 + info.getCurrentRepetition();
        double[] xs = new double[n];
        double[] ys = new double[n];
        for (int i = 0; i < n; i++) {
            xs[i] = 2 * i;
            ys[i] = 100 * Math.sin(i / length);
        }
        boolean[] kept = Polyline.simplify(xs, ys, n, 0.5);
        int count = 0;
        for (boolean one : kept) {
            count += one ? 1 : 0;
        }
        assertTrue(count < n / 3, count + " of " + n + " points are kept");
        assertTrue(count > 4, count + " of " + n + " points are kept");
    }

    @Test
    void aPointIsKeptFromTheToleranceOn() {
        double[] xs = {0, 10, 20};
        assertArrayEquals(new boolean[] {true, false, true}, Polyline.simplify(xs, new double[] {0, 0.49, 0}, 3, 0.5));
        assertArrayEquals(new boolean[] {true, true, true}, Polyline.simplify(xs, new double[] {0, 0.51, 0}, 3, 0.5));
    }

    @RepeatedTest(20)
    void staysWithinTheToleranceOfEveryPoint(RepetitionInfo info) {
        Random random = new Random(info.getCurrentRepetition());
        int n = 300;
        double[] xs = new double[n];
        double[] ys = new double[n];
        for (int i = 0; i < n; i++) {
            xs[i] = 2 * i;
            ys[i] = 100 * Math.sin(i / (10.0 + random.nextInt(40))) + random.nextGaussian();
        }
        boolean[] kept = Polyline.simplify(xs, ys, n, 0.5);
        assertTrue(kept[0] && kept[n - 1], "both ends are kept");
        int from = 0;
        for (int to = 1; to < n; to++) {
            if (kept[to]) {
                for (int i = from + 1; i < to; i++) {
                    double along = (xs[i] - xs[from]) / (xs[to] - xs[from]);
                    double off = Math.abs(ys[i] - ys[from] - along * (ys[to] - ys[from]));
                    double slope = (ys[to] - ys[from]) / (xs[to] - xs[from]);
                    assertTrue(off / Math.hypot(1, slope) <= 0.5 + 1e-9, "point " + i + " is off by " + off);
                }
                from = to;
            }
        }
    }
}
