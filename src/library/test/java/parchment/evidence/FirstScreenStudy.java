package parchment.evidence;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import parchment.evidence.finding.Verdict;

/**
 * Counts on drawn logbooks how often the interval between the two readings of an answer's first sentence holds the true difference.
 *
 * <p>The table of docs/measurements/first-screen.md is its output; the page names the command. Arguments: logbooks a row and the first seed.
 */
final class FirstScreenStudy {
    private FirstScreenStudy() {}

    /** Holds how often the interval held the truth, how often a top was named, and of how many logbooks. */
    record Count(int held, int heldOfTops, int tops, int logbooks) {}

    static Map<String, KnownTruth> cells() {
        Map<String, KnownTruth> cells = new LinkedHashMap<>();
        cells.put("a line, 0.12 points per °C", with(0.12, 0, 40));
        cells.put("no effect", with(0, 0, 40));
        cells.put("a hump in the middle", with(0, -0.03, 40));
        cells.put("a hump towards the end", with(0.1, -0.02, 40));
        cells.put("a faint bend", with(0.06, -0.008, 40));
        cells.put("a hump, 12 days", with(0, -0.03, 12));
        return cells;
    }

    private static KnownTruth with(double slope, double bend, int days) {
        KnownTruth truth = new KnownTruth();
        truth.days = days;
        truth.slope = slope;
        truth.bend = bend;
        return truth;
    }

    static Count count(KnownTruth truth, int logbooks, long first) {
        int[][] all = IntStream.range(0, logbooks)
                .mapToObj(i -> one(truth, first + i))
                .toArray(int[][]::new);
        int[] sums = new int[3];
        for (int[] one : all) {
            for (int k = 0; k < sums.length; k++) {
                sums[k] += one[k];
            }
        }
        return new Count(sums[0], sums[1], sums[2], logbooks);
    }

    private static int[] one(KnownTruth truth, long seed) {
        KnownTruth.Drawn drawn = truth.draw(seed);
        Measure measure = drawn.measure();
        Analysis analysis = Analysis.of(
                        KnownTruth.material(drawn),
                        drawn.measure(),
                        EvidenceSettings.standard(),
                        new SmallestDifference(0.5, "stated"))
                .orElseThrow();
        TwoReadings told = TwoReadings.of(analysis, measure, Verdict.SUGGESTIVE);
        double from = told.from() - truth.center;
        double to = told.to() - truth.center;
        double truly = truth.slope * (to - from) + truth.bend * (to * to - from * from);
        int held = told.interval().contains(truly) ? 1 : 0;
        int top = told.top().isPresent() ? 1 : 0;
        return new int[] {held, held * top, top};
    }

    /** Prints the table. */
    public static void main(String[] arguments) {
        int logbooks = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 400;
        long first = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        System.out.println("| true course | interval held the truth | a top was named | of those, held |");
        System.out.println("| --- | --- | --- | --- |");
        cells().forEach((name, truth) -> {
            Count count = count(truth, logbooks, first);
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %s | %s | %s |%n",
                    name,
                    percent(count.held(), count.logbooks()),
                    percent(count.tops(), count.logbooks()),
                    count.tops() == 0 ? "-" : percent(count.heldOfTops(), count.tops()));
        });
    }

    private static String percent(int hits, int of) {
        double share = (double) hits / of;
        return String.format(Locale.ROOT, "%.1f ± %.1f %%", 100 * share, 100 * Math.sqrt(share * (1 - share) / of));
    }
}
