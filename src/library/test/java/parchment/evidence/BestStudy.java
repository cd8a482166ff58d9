package parchment.evidence;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Counts on drawn logbooks how often the set of the best place, as read on today's probe, holds the truth.
 *
 * <p>The table of docs/measurements/best-per-lot.md is its output; the page names the command. Arguments: first seed and logbooks a row.
 */
final class BestStudy {
    private BestStudy() {}

    /** Holds how often sets held the truth, and of how many. */
    record Counts(int common, int first, int second, int named, int logbooks) {}

    /** 60 days of three batches; the probe moved by -2.8 °C half way and nobody wrote by how much, known to so many °C. */
    static KnownTruth moved(double error) {
        KnownTruth truth = new KnownTruth();
        truth.days = 60;
        truth.batchesPerDay = 3;
        truth.lots = 2;
        truth.slope = 0;
        truth.bend = -0.03;
        truth.probeMovedOnDay = 30;
        truth.probeShift = -2.8;
        truth.shiftError = error;
        return truth;
    }

    static KnownTruth unmoved() {
        KnownTruth truth = moved(0);
        truth.probeMovedOnDay = Integer.MAX_VALUE;
        return truth;
    }

    /** The second lot is best 4 °C higher. */
    static KnownTruth apart(double error) {
        KnownTruth truth = moved(error);
        truth.lotOffset = new double[] {0, 4};
        return truth;
    }

    static Counts run(KnownTruth truth, int logbooks, long firstSeed) {
        boolean moved = truth.probeMovedOnDay < truth.days;
        double best = truth.center + (moved ? truth.probeShift : 0);
        double second = best + (truth.lotOffset.length > 1 ? truth.lotOffset[1] : 0);
        int[][] all = IntStream.range(0, logbooks)
                .parallel()
                .mapToObj(i -> one(truth.draw(firstSeed + i), best, second))
                .toArray(int[][]::new);
        int[] sums = new int[4];
        for (int[] one : all) {
            for (int k = 0; k < sums.length; k++) {
                sums[k] += one[k];
            }
        }
        return new Counts(sums[0], sums[1], sums[2], sums[3], logbooks);
    }

    private static int[] one(KnownTruth.Drawn drawn, double best, double second) {
        ModelFrame material = KnownTruth.material(drawn);
        TodaysCourse course = TodaysCourse.of(material, FittedScores.of(material, ModelForm.STANDARD));
        TriedRange range = TriedRange.of(course.line().design());
        Optional<Peak> common = course.bend().map(bend -> Peak.of(bend, range, 0.90));
        List<LotBest> lots =
                Bests.of(course.line().design().material(), range, 0.90).lots();
        return new int[] {
            common.map(peak -> peak.contains(best)).orElse(true) ? 1 : 0,
            lots.get(0).best().contains(best) ? 1 : 0,
            lots.get(1).best().contains(second) ? 1 : 0,
            common.filter(peak -> peak.answer() == Peak.Answer.INSIDE).isPresent() ? 1 : 0
        };
    }

    /** Prints the table. */
    public static void main(String[] arguments) {
        long first = arguments.length > 0 ? Long.parseLong(arguments[0]) : 1;
        int logbooks = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 200;
        System.out.println("| 60 days x 3 batches, 2 lots | common course | first lot | second lot | best named |");
        System.out.println("| --- | --- | --- | --- | --- |");
        print("probe not moved", run(unmoved(), logbooks, first), true);
        print("probe moved -2.8 °C, known to 0.3 °C", run(moved(0.3), logbooks, first + 100_000), true);
        print("probe moved -2.8 °C, known to 0.8 °C", run(moved(0.8), logbooks, first + 200_000), true);
        print("the same to 0.3 °C, second lot best 4 °C higher", run(apart(0.3), logbooks, first + 300_000), false);
    }

    private static void print(String what, Counts counts, boolean common) {
        System.out.printf(
                Locale.ROOT,
                "| %s | %s | %s | %s | %s |%n",
                what,
                common ? share(counts.common(), counts) : "not asked",
                share(counts.first(), counts),
                share(counts.second(), counts),
                share(counts.named(), counts));
    }

    private static String share(int count, Counts counts) {
        double share = (double) count / counts.logbooks();
        return String.format(
                Locale.ROOT, "%.1f ± %.1f %%", 100 * share, 100 * Math.sqrt(share * (1 - share) / counts.logbooks()));
    }
}
