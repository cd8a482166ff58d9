package parchment.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import parchment.feature.Features;
import parchment.period.ProbeStudy;
import parchment.stats.series.WanderingDays;

/**
 * Counts on drawn series how often a watch signals although nothing changed, and how soon it sees a shift.
 *
 * <p>A table of docs/measurements/drift.md is its output; the page names the command. Arguments: series per cell, the
 * first and last cell to be run, and the seed of the first series; or "logbooks" and how many of them a row.
 */
final class WatchStudy {
    /** Series drawn to set the limits of one: fewer than in use, to be quick. */
    private static final int DRAWN = 4000;

    private static final int SOON = 60;

    private WatchStudy() {}

    /** How neighbouring batches resemble each other. */
    enum Kind {
        INDEPENDENT("independent"),
        NEIGHBOURS_03("neighbouring batches 0.3"),
        NEIGHBOURS_05("neighbouring batches 0.5"),
        DAYS("days differ by half of the variance, neighbouring days 0.5"),
        ALTERNATING("neighbouring batches -0.4");

        final String words;

        Kind(String words) {
            this.words = words;
        }
    }

    /**
     * @param adjusted how many columns rows are compared at like
     * @param aDay batches a roast day
     */
    record Cell(Kind kind, int stretch, int watched, int adjusted, int aDay) {}

    /**
     * What was counted: single batches outside and shifts in all of the watched rows, and in the first 60 of them.
     *
     * @param seen a shift of one standard deviation that came with the first watched row, within 20 rows
     * @param least the least shift said to show in 8 of 10 charts, at most 6
     */
    record Counts(
            int series,
            double stated,
            int single,
            int shift,
            int singleSoon,
            int shiftSoon,
            int seen,
            double promised,
            double least) {}

    static double[] draw(Cell cell, int[] day, Random random) {
        int n = day.length;
        double[] y = new double[n];
        double phi = switch (cell.kind()) {
            case NEIGHBOURS_03 -> 0.3;
            case NEIGHBOURS_05 -> 0.5;
            case ALTERNATING -> -0.4;
            default -> 0;
        };
        double[] ofDay = new double[day[n - 1] + 1];
        for (int d = 0; d < ofDay.length; d++) {
            ofDay[d] = d == 0 ? random.nextGaussian() : 0.5 * ofDay[d - 1] + Math.sqrt(0.75) * random.nextGaussian();
        }
        double before = random.nextGaussian();
        for (int i = 0; i < n; i++) {
            double e = random.nextGaussian();
            before = i == 0 ? e : phi * before + Math.sqrt(1 - phi * phi) * e;
            y[i] = cell.kind() == Kind.DAYS ? Math.sqrt(0.5) * ofDay[day[i]] + Math.sqrt(0.5) * e : before;
        }
        return y;
    }

    /** Series that share their days and columns: what is drawn to set limits is drawn once for them. */
    private static final int OF_ONE_DESIGN = 100;

    static Counts run(Cell cell, int series, long seed) {
        int n = cell.stretch() + cell.watched();
        int single = 0;
        int shift = 0;
        int seen = 0;
        double stated = 0;
        double promised = 0;
        double least = 0;
        int singleSoon = 0;
        int shiftSoon = 0;
        for (int s = 0; s < series; s += OF_ONE_DESIGN) {
            Random random = new Random(seed + 7919L * s);
            int[] day = new int[n];
            for (int i = 0; i < n; i++) {
                day[i] = i / cell.aDay();
            }
            double[] dates = new double[day[n - 1] + 1];
            for (int d = 1; d < dates.length; d++) {
                dates[d] = dates[d - 1] + 4 + random.nextInt(5);
            }
            List<double[]> columns = new ArrayList<>();
            double[] ones = new double[n];
            Arrays.fill(ones, 1);
            columns.add(ones);
            for (int k = 0; k < cell.adjusted(); k++) {
                columns.add(centred(WanderingDays.normals(n, random), cell.stretch()));
            }
            WatchDesign design = new WatchDesign(columns, new RowsInTime(day, dates, cell.stretch()), DRAWN);
            for (int of = s; of < Math.min(series, s + OF_ONE_DESIGN); of++) {
                double[] y = draw(cell, day, random);
                EstimatedLimits limits = EstimatedLimits.of(y, design, cell.stretch());
                stated += limits.falseShifts();
                promised += limits.shiftSeenSoon();
                least += Math.min(6, limits.leastSeen());
                single += outside(limits.standard(), limits.singleStandardLimits(), n) ? 1 : 0;
                shift += shift(limits, n) ? 1 : 0;
                singleSoon += outside(limits.standard(), limits.singleStandardLimits(), SOON) ? 1 : 0;
                shiftSoon += shift(limits, SOON) ? 1 : 0;
                for (int i = cell.stretch(); i < n; i++) {
                    y[i] += 1;
                }
                seen += shift(EstimatedLimits.of(y, design, cell.stretch()), 20) ? 1 : 0;
            }
        }
        return new Counts(
                series, stated / series, single, shift, singleSoon, shiftSoon, seen, promised / series, least / series);
    }

    private static double[] centred(double[] column, int stretch) {
        double mean = Arrays.stream(column, 0, stretch).average().orElse(0);
        return Arrays.stream(column).map(v -> v - mean).toArray();
    }

    private static boolean shift(EstimatedLimits limits, int within) {
        return outside(limits.weightedMean(), limits.weightedMeanLimits(), within)
                || outside(limits.sumAbove(), limits.sumLimits(), within)
                || outside(limits.sumBelow(), limits.sumLimits(), within);
    }

    private static boolean outside(double[] values, double[] limits, int within) {
        boolean any = false;
        for (int i = 0; i < Math.min(within, values.length); i++) {
            any |= Math.abs(values[i]) > limits[i];
        }
        return any;
    }

    static List<Cell> cells() {
        List<Cell> cells = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            for (int stretch : new int[] {20, 40, 60}) {
                cells.add(new Cell(kind, stretch, 140, 2, 2));
            }
        }
        return cells;
    }

    /**
     * Watches whole logbooks in which nothing changed: one batch a day, of two masses and meant for one of seven drops, both of which move the loss, and
     * what is left of it like its neighbour's by so much. Stretch, columns and limits are the watch's own choice.
     */
    static Counts logbooks(double alike, int batches, int logbooks, long seed) {
        int single = 0;
        int shift = 0;
        double stated = 0;
        for (int s = 0; s < logbooks; s++) {
            Random random = new Random(seed + 7919L * s);
            List<BuiltBatch> rows = new ArrayList<>();
            double before = random.nextGaussian();
            for (int i = 0; i < batches; i++) {
                before = alike * before + Math.sqrt(1 - alike * alike) * random.nextGaussian();
                double mass = random.nextBoolean() ? 2 : 2.3;
                double aim = 203 + random.nextInt(7);
                double loss = 0.14 + 0.002 * before + 0.002 * (aim - 206) - 0.02 * (mass - 2);
                rows.add(BuiltBatch.losing(loss).withGreen(mass).withAim(aim));
            }
            Watch watch = Watch.of(BuiltBatch.logbook(rows), Features.massLoss());
            stated += watch.falseShifts();
            single += watch.signals().stream().anyMatch(a -> a.kind() == Watch.Kind.SINGLE_BATCH) ? 1 : 0;
            shift += watch.signals().stream().anyMatch(a -> a.kind() != Watch.Kind.SINGLE_BATCH) ? 1 : 0;
        }
        return new Counts(logbooks, stated / logbooks, single, shift, single, shift, 0, Double.NaN, Double.NaN);
    }

    private static void printLogbooks(int logbooks, long seed) {
        System.out.println("| neighbours | batches | stated | shift shown | single batch outside |");
        System.out.println("| --- | --- | --- | --- | --- |");
        for (double alike : new double[] {0, 0.5}) {
            for (int batches : new int[] {80, 100, 200}) {
                Counts c = logbooks(alike, batches, logbooks, seed);
                System.out.printf(
                        Locale.ROOT,
                        "| %.1f | %d | %.1f %% | %s | %s |%n",
                        alike,
                        batches,
                        100 * c.stated(),
                        ProbeStudy.percent(c.shift(), logbooks),
                        ProbeStudy.percent(c.single(), logbooks));
            }
        }
    }

    /** Prints the table; the first argument is the number of series in each cell. */
    public static void main(String[] arguments) {
        if (arguments[0].equals("logbooks")) {
            printLogbooks(Integer.parseInt(arguments[1]), 1000);
            return;
        }
        int series = Integer.parseInt(arguments[0]);
        System.out.println(
                "| neighbours | limits from | shift in 60 (stated 5.9 %) | single batch in 60 (5.9 %) | shift in 140 (13.1 %) |"
                        + " single batch in 140 (13.1 %) | shift of 1 seen within 20 | promised | seen in 8 of 10 |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        int first = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 1;
        int last = arguments.length > 2 ? Integer.parseInt(arguments[2]) : cells().size();
        long seed = arguments.length > 3 ? Long.parseLong(arguments[3]) : 1000;
        for (Cell cell : cells().subList(first - 1, last)) {
            Counts c = run(cell, series, seed);
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %d | %s | %s | %s | %s | %s | %.0f %% | %.1f |%n",
                    cell.kind().words,
                    cell.stretch(),
                    ProbeStudy.percent(c.shiftSoon(), series),
                    ProbeStudy.percent(c.singleSoon(), series),
                    ProbeStudy.percent(c.shift(), series),
                    ProbeStudy.percent(c.single(), series),
                    ProbeStudy.percent(c.seen(), series),
                    100 * c.promised(),
                    c.least());
        }
    }
}
