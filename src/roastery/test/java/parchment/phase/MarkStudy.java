package parchment.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parchment.logbook.MarkKind;
import parchment.virtual.SealedTruth;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;

/**
 * Measures on logbooks of the virtual roastery how often the intervals of foretold marks hold what was written, and separately what happened.
 *
 * <p>Run {@link #main} for the table of docs/measurements/marks.md; the tests hold a short version.
 */
final class MarkStudy {
    /** What became of one condition; shares from 0 to 1, their errors with the logbooks as the units. */
    record Cell(
            String what,
            MarkKind kind,
            int logbooks,
            int marks,
            double medianSeconds,
            double medianCelsius,
            double within50,
            double within90,
            double error90,
            double event90,
            double eventError90,
            double signatureUsed) {
        String row() {
            return String.format(
                    Locale.ROOT,
                    "| %s | %s | %d | %d | %.1f | %.1f | %.1f | %.1f ± %.1f | %.1f ± %.1f | %.0f |",
                    what,
                    kind.words(),
                    logbooks,
                    marks,
                    medianSeconds,
                    medianCelsius,
                    100 * within50,
                    100 * within90,
                    100 * error90,
                    100 * event90,
                    100 * eventError90,
                    100 * signatureUsed);
        }
    }

    private static final Map<MarkKind, String> EVENTS =
            Map.of(MarkKind.YELLOWING, "yellowing [s]", MarkKind.FIRST_CRACK_START, "first pop [s]");

    private MarkStudy() {}

    /** Runs a roastery with seeds first, first + 1, ... and sums up both kinds of mark. */
    static List<Cell> run(String what, VirtualRoastery roastery, long first, int logbooks) {
        List<MarkReport> reports = new ArrayList<>();
        List<SealedTruth> truths = new ArrayList<>();
        for (int i = 0; i < logbooks; i++) {
            VirtualLogbook made = roastery.withSeed(first + i).run();
            reports.add(MarkReport.of(made.opened()));
            truths.add(made.truth());
        }
        return LearntHabit.KINDS.stream()
                .map(kind -> cell(what, kind, reports, truths))
                .toList();
    }

    private static Cell cell(String what, MarkKind kind, List<MarkReport> reports, List<SealedTruth> truths) {
        List<double[]> written = new ArrayList<>();
        List<double[]> events = new ArrayList<>();
        List<Double> seconds = new ArrayList<>();
        List<Double> celsius = new ArrayList<>();
        int half = 0;
        int used = 0;
        for (int i = 0; i < reports.size(); i++) {
            double[] held = new double[2];
            double[] happened = new double[2];
            for (MarkReport.Comparison c : reports.get(i).comparisons(kind)) {
                held[0]++;
                held[1] += c.prediction().most().contains(c.writtenSeconds()) ? 1 : 0;
                half += c.prediction().half().contains(c.writtenSeconds()) ? 1 : 0;
                seconds.add(Math.abs(c.secondsOff()));
                celsius.add(Math.abs(c.celsiusOff()));
                Double event = truths.get(i).batch(c.prediction().batch()).get(EVENTS.get(kind));
                if (event != null) {
                    happened[0]++;
                    happened[1] += c.prediction().most().contains(event) ? 1 : 0;
                }
            }
            written.add(held);
            events.add(happened);
            used += reports.get(i).habit().model(kind).gain.weight() > 0 ? 1 : 0;
        }
        double[] share = share(written);
        double[] event = share(events);
        int marks = (int) written.stream().mapToDouble(w -> w[0]).sum();
        return new Cell(
                what,
                kind,
                reports.size(),
                marks,
                median(seconds),
                median(celsius),
                (double) half / marks,
                share[0],
                share[1],
                event[0],
                event[1],
                (double) used / reports.size());
    }

    private static double median(List<Double> values) {
        double[] sorted = values.stream()
                .mapToDouble(Double::doubleValue)
                .filter(v -> !Double.isNaN(v))
                .sorted()
                .toArray();
        return sorted[sorted.length / 2];
    }

    /** The ratio estimator over logbooks. */
    private static double[] share(List<double[]> counts) {
        double all = counts.stream().mapToDouble(c -> c[0]).sum();
        double held = counts.stream().mapToDouble(c -> c[1]).sum();
        double share = held / all;
        double squares = counts.stream()
                .mapToDouble(c -> Math.pow(c[1] - share * c[0], 2))
                .sum();
        int n = counts.size();
        return new double[] {share, Math.sqrt(squares * n / Math.max(1, n - 1)) / all};
    }

    /** Prints the table; the argument is how many logbooks each condition gets (default 20). */
    public static void main(String[] args) {
        int logbooks = args.length > 0 ? Integer.parseInt(args[0]) : 20;
        System.out.println(
                "| condition | mark | logbooks | marks | median, s | median, °C | 1-in-2 holds written, % | 9-in-10 holds"
                        + " written, % | 9-in-10 holds event, % | bend used in, % of logbooks |");
        System.out.println("|---|---|---|---|---|---|---|---|---|---|");
        List<Cell> cells = new ArrayList<>();
        cells.addAll(run("harbour, 240 batches", VirtualRoastery.harbour(), 7000, logbooks));
        cells.addAll(run("harbour, 120 batches", VirtualRoastery.harbour().withBatches(120), 8000, logbooks));
        cells.addAll(run("harbour, 60 batches", VirtualRoastery.harbour().withBatches(60), 9000, logbooks));
        cells.addAll(run("hillside, 40 batches", VirtualRoastery.hillside(), 10000, logbooks));
        cells.addAll(run("hillside, 120 batches", VirtualRoastery.hillside().withBatches(120), 11000, logbooks));
        cells.stream().map(Cell::row).forEach(System.out::println);
    }
}
