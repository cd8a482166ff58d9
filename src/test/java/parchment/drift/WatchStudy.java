package parchment.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import parchment.period.ProbeStudy;
import parchment.stats.series.WanderingDays;

/**
 * Counts on drawn series how often a watch signals although nothing changed, and how soon it sees a shift.
 *
 * <p>A table of docs/measurements/drift.md is its output; the page names the command. Arguments: series per cell, the
 * first and last cell to be run, and the seed of the first series.
 */
final class WatchStudy {
    /** Series drawn to set the limits of one: fewer than in use, to be quick; the rate is the same on average. */
    private static final int DRAWN = 1200;

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

    record Cell(Kind kind, int stretch, int watched, int adjusted, int aDay) {}

    record Counts(int series, double stated, int single, int shift, int seen, double promised) {}

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

    static Counts run(Cell cell, int series, long seed) {
        int n = cell.stretch() + cell.watched();
        int single = 0;
        int shift = 0;
        int seen = 0;
        double stated = 0;
        double promised = 0;
        for (int s = 0; s < series; s++) {
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
                columns.add(WanderingDays.normals(n, random));
            }
            double[] y = draw(cell, day, random);
            EstimatedLimits limits = EstimatedLimits.of(y, columns, day, dates, cell.stretch(), DRAWN);
            stated += limits.falseShifts();
            promised += limits.shiftSeenSoon();
            single += outside(limits.standard(), limits.singleStandardLimits(), n) ? 1 : 0;
            shift += shift(limits, n) ? 1 : 0;
            for (int i = cell.stretch(); i < n; i++) {
                y[i] += 1;
            }
            seen += shift(EstimatedLimits.of(y, columns, day, dates, cell.stretch(), DRAWN), 20) ? 1 : 0;
        }
        return new Counts(series, stated / series, single, shift, seen, promised / series);
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
            cells.add(new Cell(kind, 20, 30, 2, 2));
            cells.add(new Cell(kind, 40, 60, 2, 2));
            cells.add(new Cell(kind, 60, 140, 2, 2));
        }
        return cells;
    }

    /** Prints the table; the first argument is the number of series in each cell. */
    public static void main(String[] arguments) {
        int series = Integer.parseInt(arguments[0]);
        System.out.println(
                "| neighbours | limits from | watched | compared at like | stated | shift shown, nothing changed |"
                        + " single batch outside, nothing changed | shift of 1 seen within 20 | promised |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        int first = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 1;
        int last = arguments.length > 2 ? Integer.parseInt(arguments[2]) : cells().size();
        long seed = arguments.length > 3 ? Long.parseLong(arguments[3]) : 1000;
        for (Cell cell : cells().subList(first - 1, last)) {
            Counts c = run(cell, series, seed);
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %d | %d | %d | %.1f %% | %s | %s | %s | %.0f %% |%n",
                    cell.kind().words,
                    cell.stretch(),
                    cell.watched(),
                    cell.adjusted(),
                    100 * c.stated(),
                    ProbeStudy.percent(c.shift(), series),
                    ProbeStudy.percent(c.single(), series),
                    ProbeStudy.percent(c.seen(), series),
                    100 * c.promised());
        }
    }
}
