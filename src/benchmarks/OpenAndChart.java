import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import parchment.feature.BatchTable;
import parchment.logbook.Logbook;
import parchment.phase.BatchChart;

/**
 * Opens a logbook, computes the features of all its batches and draws the first chart, and prints how long each took.
 *
 * <p>Run by {@code open_logbook.py} as a whole process, so that the start of the Java machine is counted too.
 */
public final class OpenAndChart {
    private OpenAndChart() {}

    /** Takes the logbook's folder. */
    public static void main(String[] args) {
        long started = ManagementFactory.getRuntimeMXBean().getStartTime();
        Logbook logbook = Logbook.open(Path.of(args[0]));
        long opened = System.currentTimeMillis();
        BatchTable table = BatchTable.of(logbook);
        long measured = System.currentTimeMillis();
        int letters =
                BatchChart.of(logbook.batches().get(0)).svg().orElseThrow().length();
        long drawn = System.currentTimeMillis();
        System.out.printf(
                java.util.Locale.ROOT,
                "{\"batches\": %d, \"features\": %d, \"letters\": %d, \"open\": %.3f, \"features_s\": %.3f, \"chart\": %.3f}%n",
                logbook.batches().size(),
                table.features().size(),
                letters,
                (opened - started) / 1000.0,
                (measured - opened) / 1000.0,
                (drawn - measured) / 1000.0);
    }
}
