package parchment.evidence;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parchment.evidence.finding.Verdict;

/**
 * Counts on drawn logbooks how often the batches that "what would tell" asks for, once added, do tell.
 *
 * <p>The table of docs/measurements/what-would-tell.md is its output; the page names the command. Arguments: first seed and logbooks a
 * row.
 */
final class WhatWouldTellStudy {
    private WhatWouldTellStudy() {}

    /**
     * Holds counts over some logbooks.
     *
     * @param asked logbooks that could not tell and named a number of batches
     * @param told of those, how many told once they were added: an interval without zero and of the right sign, or wholly inside the margin
     * @param wrongSign of those, how many left out zero on the wrong side
     * @param unaffordable logbooks that could not tell and named no number
     * @param batches the mean number asked for
     */
    record Counts(int asked, int told, int wrongSign, int unaffordable, double batches) {}

    private record One(boolean asked, boolean told, boolean wrong, boolean unaffordable, long batches) {}

    static Counts run(KnownTruth.Maker maker, int logbooks, long firstSeed) {
        List<One> all = IntStream.range(0, logbooks)
                .parallel()
                .mapToObj(i -> one(maker, firstSeed + i))
                .toList();
        return new Counts(
                (int) all.stream().filter(One::asked).count(),
                (int) all.stream().filter(One::told).count(),
                (int) all.stream().filter(One::wrong).count(),
                (int) all.stream().filter(One::unaffordable).count(),
                all.stream()
                        .filter(One::asked)
                        .mapToLong(One::batches)
                        .average()
                        .orElse(0));
    }

    private static One one(KnownTruth.Maker maker, long seed) {
        KnownTruth truth = maker.make();
        Evidence first = ask(truth, seed);
        if (first.verdict() != Verdict.CANNOT_TELL) {
            return new One(false, false, false, false, 0);
        }
        NextBatches next = first.nextBatches().orElseThrow();
        if (next.batches() == 0) {
            return new One(false, false, false, true, 0);
        }
        truth.moreDays = Math.toIntExact(next.roastDays());
        truth.morePerDay = Math.toIntExact(next.batches() / next.roastDays());
        truth.moreDrops = next.kind() == NextBatches.Kind.BEND
                ? new double[] {next.low(), (next.low() + next.high()) / 2, next.high()}
                : new double[] {next.low(), next.high()};
        Equivalence after = ask(truth, seed).equivalence().orElseThrow();
        double lower = after.differenceInterval().lower();
        double upper = after.differenceInterval().upper();
        boolean right = truth.slope > 0 ? lower > 0 : truth.slope < 0 && upper < 0;
        boolean wrong = truth.slope > 0 ? upper < 0 : truth.slope < 0 ? lower > 0 : lower > 0 || upper < 0;
        boolean inside = lower > -after.margin() && upper < after.margin();
        return new One(true, right || inside, wrong && !inside, false, next.batches());
    }

    private static Evidence ask(KnownTruth truth, long seed) {
        KnownTruth.Drawn drawn = truth.draw(seed);
        return new Question("sweetness", drawn.measure(), List.of(), EvidenceSettings.standard()).ask(drawn.logbook());
    }

    static KnownTruth truth(int days, double slope) {
        KnownTruth truth = new KnownTruth();
        truth.days = days;
        truth.slope = slope;
        truth.lots = 2;
        return truth;
    }

    /** Prints the table. */
    public static void main(String[] arguments) {
        long first = arguments.length > 0 ? Long.parseLong(arguments[0]) : 1;
        int logbooks = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 100;
        System.out.println(
                "| logbook | could not tell, a number named | told once added | wrong sign | no affordable number | mean number |");
        System.out.println("| --- | --- | --- | --- | --- | --- |");
        for (int days : new int[] {10, 20, 40}) {
            for (double slope : new double[] {0, 0.015, 0.03, 0.06}) {
                Counts counts = run(() -> truth(days, slope), logbooks, first + days * 10_000L);
                double share = (double) counts.told() / counts.asked();
                System.out.printf(
                        Locale.ROOT,
                        "| %d days, %.3f points per °C | %d of %d | %.0f ± %.0f %% | %d | %d | %.0f |%n",
                        days,
                        slope,
                        counts.asked(),
                        logbooks,
                        100 * share,
                        100 * Math.sqrt(share * (1 - share) / counts.asked()),
                        counts.wrongSign(),
                        counts.unaffordable(),
                        counts.batches());
            }
        }
    }
}
