package parchment.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Consumer;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.stats.Interval;

/**
 * Counts on drawn score sheets how often the interval of the halo holds the truth.
 *
 * <p>The table of docs/measurements/halo.md is its output; the page names the command. Arguments: tables per cell, then the first seed (0 if
 * none is given), so that a long run can be had in parts.
 */
final class HaloStudy {
    private HaloStudy() {}

    /** Holds one simulated condition. */
    static final class Cell {
        int cuppings = 8;
        int batches = 6;
        int cuppers = 3;
        int attributes = 2;

        /** The true correlation of two attributes in one cupper's scores alone. */
        double alone = 0;

        double inTheCup = 0.5;
        double cupSpread = 1;

        /** Batches in a cupping vary from 2 to twice the number less 2. */
        boolean uneven = false;

        /** Each cupper misses a cupping by this chance. */
        double missing = 0;

        /** Cuppings differ in how widely scores are spread: standard deviation of the logarithm. */
        double unequal = 0;

        /** Scores are rounded to this step; 0 for none. */
        double step = 0;

        List<CupScores> draw(long seed) {
            Random random = new Random(seed * 7919 + 13);
            List<CupScores> cups = new ArrayList<>();
            double[] tendency = new double[cuppers * attributes];
            for (int i = 0; i < tendency.length; i++) {
                tendency[i] = random.nextGaussian();
            }
            for (int cupping = 0; cupping < cuppings; cupping++) {
                int here = uneven ? 2 + random.nextInt(2 * batches - 3) : batches;
                double scale = Math.exp(unequal * random.nextGaussian());
                boolean[] there = new boolean[cuppers];
                int present = 0;
                for (int k = 0; k < cuppers; k++) {
                    there[k] = random.nextDouble() >= missing;
                    present += there[k] ? 1 : 0;
                }
                if (present == 0) {
                    there[0] = true;
                }
                for (int batch = 0; batch < here; batch++) {
                    double[] cup = shared(random, inTheCup);
                    for (int cupper = 0; cupper < cuppers; cupper++) {
                        double[] own = shared(random, alone);
                        if (!there[cupper]) {
                            continue;
                        }
                        Map<String, Double> scores = new TreeMap<>();
                        for (int a = 0; a < attributes; a++) {
                            double score = 6 + tendency[cupper * attributes + a] + cupSpread * cup[a] + scale * own[a];
                            scores.put("attribute " + a, step > 0 ? Math.rint(score / step) * step : score);
                        }
                        cups.add(cup("C" + cupping, "cupper " + cupper, "B" + cupping + "-" + batch, scores));
                    }
                }
            }
            return cups;
        }

        /** Draws normal numbers of variance 1, each two correlated as wanted. */
        private double[] shared(Random random, double correlation) {
            double common = random.nextGaussian();
            double[] values = new double[attributes];
            for (int a = 0; a < attributes; a++) {
                values[a] = Math.sqrt(correlation) * common + Math.sqrt(1 - correlation) * random.nextGaussian();
            }
            return values;
        }

        List<String> names() {
            List<String> names = new ArrayList<>();
            for (int a = 0; a < attributes; a++) {
                names.add("attribute " + a);
            }
            return names;
        }
    }

    static CupScores cup(String cupping, String cupper, String batch, Map<String, Double> scores) {
        return new CupScores(
                cupping,
                LocalDate.of(2024, 3, 4),
                cupper,
                batch,
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                scores,
                Optional.empty());
    }

    /** Returns the conditions by name, in the order of the table; the number of cuppings is set by whoever runs them. */
    static Map<String, Cell> cells() {
        Map<String, Cell> cells = new LinkedHashMap<>();
        cells.put("3 cuppers, 6 batches, no halo", new Cell());
        cells.put("the same, halo 0.5", with(cell -> cell.alone = 0.5));
        cells.put("the same, halo 0.8", with(cell -> cell.alone = 0.8));
        cells.put("no halo, cups differ twice as much", with(cell -> cell.cupSpread = 2));
        cells.put("no halo, 2 cuppers, 3 batches", with(cell -> {
            cell.cuppers = 2;
            cell.batches = 3;
        }));
        cells.put("no halo, 5 attributes, 4 cuppers, 4 batches", with(cell -> {
            cell.attributes = 5;
            cell.cuppers = 4;
            cell.batches = 4;
        }));
        cells.put("halo 0.3, 5 attributes", with(cell -> {
            cell.attributes = 5;
            cell.alone = 0.3;
        }));
        cells.put("no halo, 2 to 10 batches", with(cell -> cell.uneven = true));
        cells.put("halo 0.4, 2 to 10 batches, cuppers miss 4 of 10 cuppings", with(cell -> {
            cell.uneven = true;
            cell.missing = 0.4;
            cell.alone = 0.4;
        }));
        cells.put("halo 0.4, one cupper, cups alike", with(cell -> {
            cell.cuppers = 1;
            cell.cupSpread = 0;
            cell.alone = 0.4;
        }));
        cells.put("halo 0.4, half points", with(cell -> {
            cell.step = 0.5;
            cell.alone = 0.4;
        }));
        cells.put("halo 0.4, cuppings of very unequal spread", with(cell -> {
            cell.unequal = 0.7;
            cell.alone = 0.4;
        }));
        return cells;
    }

    private static Cell with(Consumer<Cell> change) {
        Cell cell = new Cell();
        change.accept(cell);
        return cell;
    }

    /** Holds how many drawn tables had an interval and how many of these held the truth. */
    record Count(int known, int held) {}

    static Count count(Cell cell, int tables, long firstSeed) {
        int known = 0;
        int held = 0;
        Logbook empty = empty();
        for (long seed = firstSeed; seed < firstSeed + tables; seed++) {
            Interval interval = Halo.of(logbook(empty, cell.draw(seed))).interval();
            known += Double.isNaN(interval.lower()) ? 0 : 1;
            held += interval.contains(cell.alone) ? 1 : 0;
        }
        return new Count(known, held);
    }

    static Logbook empty() {
        KnownTruth none = new KnownTruth();
        none.days = 1;
        none.cuppedShare = 0;
        return none.draw(1).logbook();
    }

    static Logbook logbook(Logbook empty, List<CupScores> cups) {
        return Logbook.of(empty.contents().toBuilder().cups(cups).build());
    }

    /** Prints the table. */
    public static void main(String[] arguments) {
        int tables = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2000;
        long firstSeed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 0;
        int[] cuppings = {8, 12, 20, 40};
        System.out.println("| truth held, of tables with an interval | 8 cuppings | 12 | 20 | 40 |");
        System.out.println("| --- | --- | --- | --- | --- |");
        cells().forEach((name, cell) -> {
            StringBuilder row = new StringBuilder("| " + name);
            for (int number : cuppings) {
                cell.cuppings = number;
                Count count = count(cell, tables, firstSeed);
                double share = (double) count.held() / count.known();
                row.append(String.format(
                        Locale.ROOT,
                        " | %.1f ± %.1f %%",
                        100 * share,
                        100 * Math.sqrt(share * (1 - share) / count.known())));
                if (count.known() < tables) {
                    row.append(String.format(Locale.ROOT, " (of %.0f %%)", 100.0 * count.known() / tables));
                }
            }
            System.out.println(row + " |");
        });
    }
}
