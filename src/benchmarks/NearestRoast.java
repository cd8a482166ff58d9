import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.stats.warp.CurveLibrary;
import parchment.stats.warp.DynamicTimeWarping;
import parchment.stats.warp.StepPattern;
import parchment.stats.warp.Window;

/**
 * Searches the nearest of many simulated roasts, beside all distances with the same code, and prints both times for each of twenty.
 *
 * <p>Takes a logbook's folder. The last twenty batches are the questions, the rest are searched; each bean temperature from charge to the
 * end of its log, at 800 equal steps of its own time, in a band of 80.
 */
public final class NearestRoast {
    private static final int POINTS = 800;
    private static final int QUESTIONS = 20;

    private NearestRoast() {}

    public static void main(String[] args) {
        List<double[]> curves = new ArrayList<>();
        for (Batch batch : Logbook.open(Path.of(args[0])).batches()) {
            batch.beanTemperature()
                    .map(curve -> curve.between(0, 3600))
                    .filter(curve -> curve.size() > 50)
                    .ifPresent(curve -> curves.add(steps(curve)));
        }
        List<double[]> searched = curves.subList(0, curves.size() - QUESTIONS);
        CurveLibrary library = CurveLibrary.of(searched, POINTS / 10);
        DynamicTimeWarping band = DynamicTimeWarping.of(StepPattern.SYMMETRIC1).withWindow(Window.band(POINTS / 10));
        double[] search = new double[QUESTIONS];
        double[] ratios = new double[QUESTIONS];
        for (int round = 0; round < 2; round++) { // The first warms up.
            for (int q = 0; q < QUESTIONS; q++) {
                double[] question = curves.get(searched.size() + q);
                long begun = System.nanoTime();
                double found = library.nearest(question, 1).get(0).distance();
                search[q] = (System.nanoTime() - begun) / 1e6;
                begun = System.nanoTime();
                double least = Double.POSITIVE_INFINITY;
                for (double[] curve : searched) {
                    least = Math.min(least, band.distance(question, curve));
                }
                ratios[q] = (System.nanoTime() - begun) / 1e6 / search[q];
                if (Math.abs(found - least) > 1e-9 * least) {
                    throw new IllegalStateException("The search found " + found + ", all distances " + least);
                }
            }
        }
        Arrays.sort(search);
        Arrays.sort(ratios);
        System.out.printf(
                Locale.ROOT,
                "%d roasts searched %d times: median %.0f ms (%.0f to %.0f); all distances take %.1f times as long (%.1f to %.1f)%n",
                searched.size(),
                QUESTIONS,
                search[QUESTIONS / 2],
                search[0],
                search[QUESTIONS - 1],
                ratios[QUESTIONS / 2],
                ratios[0],
                ratios[QUESTIONS - 1]);
    }

    private static double[] steps(Curve curve) {
        double[] seconds = curve.seconds();
        double[] values = curve.values();
        double[] out = new double[POINTS];
        int at = 0;
        for (int i = 0; i < POINTS; i++) {
            double time = seconds[0] + (seconds[seconds.length - 1] - seconds[0]) * i / (POINTS - 1);
            while (at < seconds.length - 2 && seconds[at + 1] < time) {
                at++;
            }
            double share = (time - seconds[at]) / (seconds[at + 1] - seconds[at]);
            out[i] = values[at] + (values[at + 1] - values[at]) * Math.max(0, Math.min(1, share));
        }
        return out;
    }
}
