package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.evidence.finding.Slope;
import parchment.stats.Interval;

/**
 * Measures on many drawn logbooks how often intervals hold the truth and how often chance alone is called a finding.
 *
 * <p>The table of docs/measurements/evidence-coverage.md is its output; the page names the command. Arguments: logbooks per cell, then a pattern of the
 * conditions wanted (all if none is given).
 */
final class CoverageStudy {
    private CoverageStudy() {}

    /**
     * Holds shares of one cell's logbooks.
     *
     * @param slopeCovered share in which the 90 % interval of the slope held the truth
     * @param peakCovered share in which the 90 % Fieller set of the common course, as told, held the truth, bounded or not
     * @param lotCovered the same for the set of the first lot by itself
     * @param findings share with a slope or a bend called a finding
     * @param zeroExcluded share with an interval of the right sign that leaves out zero
     * @param cannotTell share in which the measure's error alone forbids an answer
     * @param width mean width of the slope's interval
     * @param logbooks how many
     */
    record Counts(
            double slopeCovered,
            double peakCovered,
            double lotCovered,
            double findings,
            double zeroExcluded,
            double cannotTell,
            double width,
            int logbooks) {}

    private record One(
            boolean slope,
            boolean peak,
            boolean lot,
            boolean finding,
            boolean excluded,
            boolean cannotTell,
            double width) {}

    static Counts run(KnownTruth truth, int logbooks, long firstSeed) {
        List<One> all = IntStream.range(0, logbooks)
                .parallel()
                .mapToObj(i -> one(truth, firstSeed + i))
                .toList();
        return new Counts(
                share(all.stream().filter(One::slope).count(), logbooks),
                share(all.stream().filter(One::peak).count(), logbooks),
                share(all.stream().filter(One::lot).count(), logbooks),
                share(all.stream().filter(One::finding).count(), logbooks),
                share(all.stream().filter(One::excluded).count(), logbooks),
                share(all.stream().filter(One::cannotTell).count(), logbooks),
                all.stream()
                        .mapToDouble(One::width)
                        .filter(Double::isFinite)
                        .average()
                        .orElse(Double.NaN),
                logbooks);
    }

    private static double share(long count, int of) {
        return (double) count / of;
    }

    private static One one(KnownTruth truth, long seed) {
        ModelFrame material = KnownTruth.material(truth.draw(seed));
        FittedScores line = FittedScores.of(material, ModelForm.STANDARD);
        Reliability reliability = Reliability.of(
                material.within(),
                material.batches().stream().mapToDouble(TastedBatch::error).toArray(),
                line.measureVariance().variance());
        boolean forbidden = reliability.tooLow() || reliability.tooNarrow();
        Slope slope = reliability.corrects() ? reliability.corrected(line.slope()) : line.slope();
        Interval interval = slope.interval(0.90);
        TodaysCourse course = TodaysCourse.of(material, line);
        TriedRange range = TriedRange.of(course.line().design());
        Optional<Peak> peak = course.bend().map(found -> Peak.of(found, range, 0.90));
        double best = truth.center - truth.slope / (2 * truth.bend);
        List<LotBest> lots = truth.bend == 0
                ? List.of()
                : Bests.of(course.line().design().material(), range, 0.90).lots();
        boolean finding = !forbidden
                && (line.slope().chance() < VerdictRules.CHANCE_OF_SLOPE
                        || course.bend().isPresent()
                                && course.bend().get().slope(ScoreDesign.SQUARE).chance()
                                        < VerdictRules.CHANCE_OF_BEND);
        return new One(
                interval.contains(truth.slope),
                truth.bend == 0 || peak.map(found -> found.contains(best)).orElse(true),
                lots.isEmpty() || lots.get(0).best().contains(best),
                finding,
                truth.slope > 0 && interval.lower() > 0,
                forbidden,
                interval.width());
    }

    private static KnownTruth cell(int batches, int days, double slope, double bend, double error) {
        KnownTruth truth = new KnownTruth();
        truth.days = days;
        truth.batchesPerDay = Math.max(1, Math.round((float) batches / days));
        truth.slope = slope;
        truth.bend = bend;
        truth.measureError = error;
        return truth;
    }

    /** Prints the table; the first argument is the number of logbooks in each cell. */
    public static void main(String[] arguments) {
        int logbooks = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2000;
        List<String> names = new ArrayList<>();
        List<KnownTruth> cells = new ArrayList<>();
        for (int[] size : new int[][] {{40, 14}, {80, 14}, {80, 40}, {160, 14}, {160, 40}}) {
            add(names, cells, size, "no effect", 0, 0, 0.3);
            add(names, cells, size, "slope 0.15", 0.15, 0, 0.3);
            add(names, cells, size, "slope 0.15, measure error 1.5 °C", 0.15, 0, 1.5);
            add(names, cells, size, "peak, bend -0.02", 0, -0.02, 0.3);
        }
        KnownTruth one = cell(42, 14, 0.15, 0, 0.3);
        one.cuppers = 1;
        one.lots = 1;
        names.add("42 batches, 14 days, one cupper, one cup each, one lot, slope 0.15");
        cells.add(one);
        KnownTruth oneNothing = cell(42, 14, 0, 0, 0.3);
        oneNothing.cuppers = 1;
        oneNothing.lots = 1;
        names.add("42 batches, 14 days, one cupper, one cup each, one lot, no effect");
        cells.add(oneNothing);
        KnownTruth drifting = cell(80, 40, 0, 0, 0.3);
        drifting.drift = 1;
        drifting.season = 0.6;
        drifting.driftOfDrop = 3;
        names.add("80 batches, 40 days, no effect, drop and scores drift over the dates");
        cells.add(drifting);
        KnownTruth eight = cell(80, 14, 0.15, 0, 0.3);
        eight.cuppers = 8;
        names.add("80 batches, 14 days, eight cuppers, slope 0.15");
        cells.add(eight);
        KnownTruth hidden = cell(160, 40, 0, 0, 0.3);
        hidden.hiddenInDrop = 1;
        hidden.hiddenInScore = 0.2;
        names.add(
                "160 batches, 40 days, no effect, a hidden state of the beans moves both (tests the wording, not coverage)");
        cells.add(hidden);
        System.out.println(
                "| condition | slope held by 90 % interval | peak held by 90 % Fieller set | the first lot's own | called a finding"
                        + " | interval leaves out 0, right sign | measure too coarse | mean width, points per °C |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- |");
        for (int i = 0; i < cells.size(); i++) {
            if (arguments.length > 1 && !names.get(i).matches(arguments[1])) {
                continue;
            }
            Counts counts = run(cells.get(i), logbooks, 100_000L * (i + 1));
            boolean bends = cells.get(i).bend != 0;
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %s | %s | %s | %s | %s | %.1f %% | %.3f |%n",
                    names.get(i),
                    bends ? "not asked" : percent(counts.slopeCovered(), logbooks),
                    bends ? percent(counts.peakCovered(), logbooks) : "not asked",
                    bends ? percent(counts.lotCovered(), logbooks) : "not asked",
                    percent(counts.findings(), logbooks),
                    cells.get(i).slope > 0 ? percent(counts.zeroExcluded(), logbooks) : "not asked",
                    100 * counts.cannotTell(),
                    counts.width());
        }
    }

    private static void add(
            List<String> names,
            List<KnownTruth> cells,
            int[] size,
            String what,
            double slope,
            double bend,
            double error) {
        names.add(size[0] + " batches, " + size[1] + " days, " + what);
        cells.add(cell(size[0], size[1], slope, bend, error));
    }

    private static String percent(double share, int logbooks) {
        return String.format(
                Locale.ROOT, "%.1f ± %.1f %%", 100 * share, 100 * Math.sqrt(share * (1 - share) / logbooks));
    }
}
