package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import parchment.evidence.finding.Verdict;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;

/**
 * Measures, on drawn logbooks whose scores are rounded to few steps and stop at both ends of their scale, how often the difference between
 * the two readings is held and how often something false is called a finding: by numbers alone, and with the second look by steps.
 *
 * <p>The table of docs/measurements/few-steps.md is its output; the page names the command. Arguments: logbooks per cell, then a pattern of the
 * conditions wanted (all if none is given).
 */
final class FewStepsStudy {
    /** The scale is so wide, in points; its ends lie here. */
    private static final double WIDTH = 3;

    static final double IN_THE_MIDDLE = 7.5;
    static final double NEAR_ITS_END = 6.5;

    private static final Map<Double, String> WHERE =
            Map.of(IN_THE_MIDDLE, "in the middle of the scale", NEAR_ITS_END, "near its upper end");

    private FewStepsStudy() {}

    /** One condition: so many steps up to the highest score, and the slope of what is felt, in points per °C. */
    record Cell(int steps, double highest, double slope) {
        KnownTruth truth(double cupSpread) {
            KnownTruth truth = new KnownTruth();
            truth.days = 14;
            truth.batchesPerDay = 6;
            truth.slope = slope;
            truth.measureError = 0;
            truth.cupSpread = cupSpread;
            return truth;
        }

        /** Puts what is felt on the nearest step of the scale; beyond its ends there is none. */
        double given(double felt) {
            double step = WIDTH / (steps - 1);
            double lowest = highest - WIDTH;
            return lowest + step * Math.rint((Math.max(lowest, Math.min(highest, felt)) - lowest) / step);
        }

        String words() {
            return String.format(
                    Locale.ROOT,
                    "%d steps, cups %s, %s",
                    steps,
                    WHERE.get(highest),
                    slope == 0 ? "no effect" : "slope " + slope);
        }
    }

    /**
     * Shares of one cell's logbooks.
     *
     * @param held the true difference of the scores given lies in the 90 % interval by numbers
     * @param heldBySteps the same by steps
     * @param found a slope or a bend is a finding by numbers
     * @param foundByBoth the same where the steps do not gainsay it
     * @param bend a bend is seen by numbers
     * @param bendByBoth the same where the steps do not gainsay it
     * @param fitted a second answer could be fitted
     */
    record Counts(
            double held,
            double heldBySteps,
            double found,
            double foundByBoth,
            double bend,
            double bendByBoth,
            double fitted,
            int logbooks) {}

    private record One(
            boolean held,
            boolean heldBySteps,
            boolean found,
            boolean foundByBoth,
            boolean bend,
            boolean bendByBoth,
            boolean fitted) {}

    static Counts run(Cell cell, int logbooks, long firstSeed) {
        List<One> all = IntStream.range(0, logbooks)
                .parallel()
                .mapToObj(i -> one(cell, firstSeed + i))
                .toList();
        double fitted = share(all.stream().filter(One::fitted).count(), logbooks);
        return new Counts(
                share(all.stream().filter(One::held).count(), logbooks),
                share(all.stream().filter(One::heldBySteps).count(), Math.max(1, (int) Math.rint(fitted * logbooks))),
                share(all.stream().filter(One::found).count(), logbooks),
                share(all.stream().filter(One::foundByBoth).count(), logbooks),
                share(all.stream().filter(One::bend).count(), logbooks),
                share(all.stream().filter(One::bendByBoth).count(), logbooks),
                fitted,
                logbooks);
    }

    private static double share(long count, int of) {
        return (double) count / of;
    }

    private static One one(Cell cell, long seed) {
        KnownTruth.Drawn felt = cell.truth(0.5).draw(seed);
        KnownTruth.Drawn drawn = new KnownTruth.Drawn(changed(felt.logbook(), cell::given), felt.measure(), felt.gas());
        EvidenceSettings settings = EvidenceSettings.standard();
        Analysis analysis = Analysis.of(
                        KnownTruth.material(drawn),
                        drawn.measure(),
                        settings,
                        SmallestDifference.of("sweetness", drawn.logbook(), settings))
                .orElseThrow();
        OrdinalCheck check = analysis.ordinal();
        TwoReadings told = TwoReadings.of(analysis, drawn.measure(), Verdict.CANNOT_TELL);
        double truth = trueDifference(cell, seed, told);
        boolean found = analysis.slopeSeen() || analysis.bendSeen();
        return new One(
                told.difference().interval(0.90).contains(truth),
                check.fitted() && check.ordinal().interval(0.90).contains(truth),
                found,
                found && !check.doesNotShow(analysis.slopeSeen()),
                analysis.bendSeen(),
                analysis.bendSeen() && check.seesTheDifference() && !check.bendIsDoubtful(),
                check.fitted());
    }

    /**
     * Returns the mean difference of the scores that the same cuppers would have given to the same batches at the two readings: the same draw
     * without the scatter from cup to cup, moved to either reading, the scatter then put back as a distribution.
     */
    private static double trueDifference(Cell cell, long seed, TwoReadings told) {
        ModelFrame still = KnownTruth.material(cell.truth(0).draw(seed));
        double sum = 0;
        for (ScoreRow score : still.scores()) {
            double rest = score.score() - cell.slope() * still.batchOf(score).measure();
            sum += expected(cell, rest + cell.slope() * told.to()) - expected(cell, rest + cell.slope() * told.from());
        }
        return sum / still.scores().size();
    }

    private static double expected(Cell cell, double felt) {
        double sum = 0;
        double weights = 0;
        for (int k = -40; k <= 40; k++) {
            double weight = Math.exp(-0.01 * k * k / 2);
            sum += weight * cell.given(felt + 0.5 * 0.1 * k);
            weights += weight;
        }
        return sum / weights;
    }

    private static Logbook changed(Logbook logbook, DoubleUnaryOperator given) {
        List<CupScores> cups = new ArrayList<>();
        for (CupScores cup : logbook.cups()) {
            cups.add(cup.withScores(Map.of("sweetness", given.applyAsDouble(cup.score("sweetness")))));
        }
        return Logbook.of(logbook.contents().toBuilder().cups(cups).build());
    }

    /** Prints the table; the first argument is the number of logbooks in each cell. */
    public static void main(String[] arguments) {
        int logbooks = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 400;
        System.out.println(
                "| condition | difference held, by numbers | difference held, by steps | a finding by numbers | a finding by both"
                        + " | a bend by numbers | a bend by both | no second answer |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- |");
        int number = 0;
        for (double highest : new double[] {IN_THE_MIDDLE, NEAR_ITS_END}) {
            for (int steps : new int[] {3, 4, 5, 7}) {
                for (double slope : new double[] {0, 0.06, 0.15}) {
                    Cell cell = new Cell(steps, highest, slope);
                    number++;
                    if (arguments.length > 1 && !cell.words().matches(arguments[1])) {
                        continue;
                    }
                    Counts counts = run(cell, logbooks, 100_000L * number);
                    System.out.printf(
                            Locale.ROOT,
                            "| %s | %s | %s | %s | %s | %s | %s | %.1f %% |%n",
                            cell.words(),
                            percent(counts.held(), logbooks),
                            percent(counts.heldBySteps(), logbooks),
                            percent(counts.found(), logbooks),
                            percent(counts.foundByBoth(), logbooks),
                            percent(counts.bend(), logbooks),
                            percent(counts.bendByBoth(), logbooks),
                            100 - 100 * counts.fitted());
                }
            }
        }
    }

    private static String percent(double share, int logbooks) {
        return String.format(
                Locale.ROOT, "%.1f ± %.1f %%", 100 * share, 100 * Math.sqrt(share * (1 - share) / logbooks));
    }
}
