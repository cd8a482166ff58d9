package parchment.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import parchment.stats.Interval;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.RandomTerm;
import parchment.stats.mixed.ShareIntervals;

/**
 * Counts how often the intervals of variance shares hold the true share, in invented years of lots, roast days within lots, and batches
 * within days. {@code main(number of years a row)} prints the table of docs/measurements/drift.md.
 */
final class ShareStudy {
    private static final int DRAWS = 99;
    private static final List<String> SOURCES = List.of("lots", "roast days");

    private ShareStudy() {}

    /**
     * How many of each, and the standard deviations between lots, between days, and left over.
     *
     * @param kept the share of batches that is kept, by chance; 1 makes every day alike
     */
    record Design(int lots, int days, int batches, double lot, double day, double rest, double kept) {
        Design(int lots, int days, int batches, double lot, double day, double rest) {
            this(lots, days, batches, lot, day, rest, 1);
        }

        private Design halved() {
            return new Design(lots, days, batches, lot, day, rest, 0.5);
        }

        private double[] shares() {
            double sum = lot * lot + day * day + rest * rest;
            return new double[] {lot * lot / sum, day * day / sum, rest * rest / sum};
        }
    }

    public static void main(String[] arguments) {
        int years = Integer.parseInt(arguments[0]);
        for (Design design : List.of(
                new Design(3, 8, 4, 1, 1, 1),
                new Design(3, 8, 4, 3, 1, 1),
                new Design(6, 6, 3, 1, 1, 1),
                new Design(6, 6, 3, 0, 1, 1),
                new Design(6, 6, 3, 2, 0.5, 1),
                new Design(12, 4, 3, 1, 1, 1),
                new Design(3, 8, 4, 1, 1, 1).halved(),
                new Design(6, 6, 4, 2, 1, 1).halved(),
                new Design(12, 4, 4, 1, 1, 1).halved())) {
            StringBuilder row = new StringBuilder(String.format(
                    Locale.ROOT,
                    "| %d, %d, %d%s |",
                    design.lots,
                    design.days,
                    design.batches,
                    design.kept < 1 ? ", half of them left out" : ""));
            int[] held = held(design, years);
            for (int k = 0; k < held.length; k++) {
                row.append(String.format(Locale.ROOT, " %.2f: %.1f |", design.shares()[k], 100.0 * held[k] / years));
            }
            System.out.println(row);
        }
    }

    /** Returns in how many years the interval of each share held it. */
    static int[] held(Design design, int years) {
        Random chance = new Random(20261129);
        double[] truth = design.shares();
        int[] held = new int[truth.length];
        for (int year = 0; year < years; year++) {
            Interval[] intervals = intervals(drawn(design, chance), year);
            for (int k = 0; k < held.length; k++) {
                held[k] += intervals[k].contains(truth[k]) ? 1 : 0;
            }
        }
        return held;
    }

    private static MixedDesign drawn(Design design, Random chance) {
        List<String> lots = new ArrayList<>();
        List<String> days = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (int lot = 0; lot < design.lots; lot++) {
            double ofLot = design.lot * chance.nextGaussian();
            for (int day = 0; day < design.days; day++) {
                double ofDay = design.day * chance.nextGaussian();
                for (int batch = 0; batch < design.batches; batch++) {
                    if (design.kept < 1 && chance.nextDouble() > design.kept) {
                        continue;
                    }
                    lots.add("lot " + lot);
                    days.add("day " + lot + " " + day);
                    values.add(10 + ofLot + ofDay + design.rest * chance.nextGaussian());
                }
            }
        }
        return MixedDesign.of(
                        "value",
                        values.stream().mapToDouble(Double::doubleValue).toArray())
                .withRandom(RandomTerm.intercept("lots", lots))
                .withRandom(RandomTerm.intercept("roast days", days));
    }

    private static Interval[] intervals(MixedDesign drawn, int year) {
        LinearMixedModel model = drawn.fit();
        double[] variances = VarianceShares.variances(model, SOURCES);
        double[][] again = new double[variances.length][DRAWS];
        for (int d = 0; d < DRAWS; d++) {
            double[] one = VarianceShares.variances(
                    drawn.withResponse(model.simulate(1000L * year + d)).fit(), SOURCES);
            for (int k = 0; k < one.length; k++) {
                again[k][d] = one[k];
            }
        }
        int[] groups = SOURCES.stream()
                .mapToInt(source -> model.groupEffects(source).size())
                .toArray();
        return ShareIntervals.of(variances, again, groups);
    }
}
