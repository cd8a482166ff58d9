package parchment.evidence;

import java.util.Locale;
import java.util.stream.IntStream;
import parchment.evidence.finding.Verdict;

/**
 * Counts on drawn logbooks how often a control that moved with the drop stops an answer, and how often its separable twin is answered.
 *
 * <p>The table of docs/measurements/confounding.md is its output; the page names the command. Arguments: first seed and logbooks a row.
 */
final class ConfoundingStudy {
    private ConfoundingStudy() {}

    /** Holds counts over some logbooks. */
    record Counts(int cannotTell, int namesTheGas, int rightSignWithoutZero, int logbooks) {}

    /** Gas and drop as one: the score follows one of the two, nobody can say which. */
    static KnownTruth lockstep(double slope, double gas) {
        KnownTruth truth = twin();
        truth.gasWithDrop = -1;
        truth.slope = slope;
        truth.gasInScore = gas;
        return truth;
    }

    /** 240 batches on 60 days, gas and drop correlated -0.6 inside days, 0.15 points per °C. */
    static KnownTruth twin() {
        KnownTruth truth = new KnownTruth();
        truth.days = 60;
        truth.gasWithDrop = -0.6;
        return truth;
    }

    static Counts run(KnownTruth truth, int logbooks, long firstSeed) {
        int[][] all = IntStream.range(0, logbooks)
                .parallel()
                .mapToObj(i -> one(truth, firstSeed + i))
                .toArray(int[][]::new);
        int[] sums = new int[3];
        for (int[] one : all) {
            for (int k = 0; k < 3; k++) {
                sums[k] += one[k];
            }
        }
        return new Counts(sums[0], sums[1], sums[2], logbooks);
    }

    private static int[] one(KnownTruth truth, long seed) {
        KnownTruth.Drawn drawn = truth.draw(seed);
        Evidence evidence = new Question("sweetness", drawn.measure(), drawn.others(), EvidenceSettings.standard())
                .ask(drawn.logbook());
        boolean cannotTell = evidence.verdict() == Verdict.CANNOT_TELL;
        return new int[] {
            cannotTell ? 1 : 0,
            cannotTell && evidence.reasons().get(0).contains("gas in development") ? 1 : 0,
            !cannotTell && evidence.interval().lower() > 0 ? 1 : 0
        };
    }

    /** Prints the table. */
    public static void main(String[] arguments) {
        long first = arguments.length > 0 ? Long.parseLong(arguments[0]) : 1;
        int logbooks = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 100;
        System.out.println(
                "| 240 batches, 60 days | \"cannot tell\" | naming the gas | answered, right sign, no zero |");
        System.out.println("| --- | --- | --- | --- |");
        print("lockstep, the score follows the drop", run(lockstep(0.15, 0), logbooks, first));
        print("lockstep, the score follows the gas", run(lockstep(0, 0.45), logbooks, first + 100_000));
        print("separable twin, 0.15 points per °C", run(twin(), logbooks, first + 200_000));
    }

    private static void print(String what, Counts counts) {
        System.out.printf(
                Locale.ROOT,
                "| %s | %s | %s | %s |%n",
                what,
                share(counts.cannotTell(), counts),
                share(counts.namesTheGas(), counts),
                share(counts.rightSignWithoutZero(), counts));
    }

    private static String share(int count, Counts counts) {
        double share = (double) count / counts.logbooks();
        return String.format(
                Locale.ROOT, "%.1f ± %.1f %%", 100 * share, 100 * Math.sqrt(share * (1 - share) / counts.logbooks()));
    }
}
