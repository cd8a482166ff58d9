package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import parchment.stats.Estimate;
import parchment.stats.series.DayRegression;
import parchment.stats.series.WanderingDays;

/**
 * Fits how a number moved through time on one machine: lots with a slope each, probe periods, the time of year, the room and what the
 * roaster did, on days that wander.
 *
 * <p>Columns come in parts. How much of a column is its own is the reciprocal of its variance inflation: the share of its squared
 * length that is left once the other parts are taken out.
 */
final class YearModel {
    /** Roasting needed before an annual wave is fitted, in days: 24 months. */
    static final double TWO_YEARS = 729;
    /** Months of the year in which there must be roast days for that. */
    private static final int MONTHS = 10;
    /** Variance inflation beyond which a part is said to move together with others; the usual bound, as Marquardt 1970 has it (from memory). */
    static final double TOO_ALIKE = 10;

    /** Roasting that holds most of a year, in days: ten months. */
    private static final double MOST_OF_A_YEAR = 300;

    /** What stands for the time of year. */
    enum Wave {
        /** A wave of the year beside age, where two years of roasting can tell it; else none. */
        IF_TOLD,
        /** A wave of the year that takes up what age and drift did too. */
        INSTEAD_OF_AGE
    }

    /** What a column stands for. */
    enum Part {
        LEVEL("the lots' own levels"),
        AGE("days since arrival"),
        PERIOD("the probe periods"),
        SEASON("the time of year"),
        ROOM("the room"),
        ROASTER("what the roaster did");

        private final String words;

        Part(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /** A column of the model, one value per row. */
    static final class Column {
        final String name;
        final Part part;
        final double[] values;
        final double step;

        /** @param step in which its slope is told: the column is kept in these steps */
        Column(String name, Part part, double[] values, double step) {
            this.name = name;
            this.part = part;
            this.step = step;
            this.values = new double[values.length];
            for (int i = 0; i < values.length; i++) {
                this.values[i] = values[i] / step;
            }
        }
    }

    private final List<Column> columns;
    private final DayRegression fit;
    private final WanderingDays days;
    private final double[] y;

    private YearModel(List<Column> columns, WanderingDays days, double[] y) {
        this.columns = List.copyOf(columns);
        this.days = days;
        this.y = y;
        this.fit = DayRegression.fit(days, y, raw(columns), DayRegression.By.RESTRICTED);
    }

    private static List<double[]> raw(List<Column> columns) {
        return columns.stream().map(c -> c.values).toList();
    }

    /**
     * Fits.
     *
     * @param y rows in order of time
     * @param dayOfRow number of each row's roast day, from 0
     * @param dates date of each roast day, in days
     * @param lot lot of each row
     * @param more columns besides lots, slopes and the time of year
     */
    static YearModel fit(double[] y, int[] dayOfRow, double[] dates, List<String> lot, List<Column> more, Wave stands) {
        List<Column> columns = new ArrayList<>();
        double[] ones = new double[y.length];
        Arrays.fill(ones, 1);
        columns.add(new Column("all", Part.LEVEL, ones, 1));
        Map<String, List<Integer>> rows = new TreeMap<>();
        for (int i = 0; i < y.length; i++) {
            rows.computeIfAbsent(lot.get(i), k -> new ArrayList<>()).add(i);
        }
        rows.forEach((name, own) -> {
            double[] in = new double[y.length];
            double[] since = new double[y.length];
            double mean =
                    own.stream().mapToDouble(i -> dates[dayOfRow[i]]).average().orElse(0);
            for (int i : own) {
                in[i] = 1;
                since[i] = dates[dayOfRow[i]] - mean;
            }
            columns.add(new Column(name, Part.LEVEL, in, 1));
            if (stands == Wave.IF_TOLD
                    && own.stream().mapToInt(i -> dayOfRow[i]).distinct().count() > 2) {
                columns.add(new Column(name, Part.AGE, since, 100));
            }
        });
        if (stands == Wave.INSTEAD_OF_AGE || showsSeason(dates)) {
            columns.add(new Column("mid-January", Part.SEASON, wave(dayOfRow, dates, 15), 1));
            columns.add(new Column("mid-April", Part.SEASON, wave(dayOfRow, dates, 15 + 91.3), 1));
        }
        columns.addAll(more);
        return new YearModel(columns, new WanderingDays(dayOfRow, dates), y);
    }

    /** Tells whether roast days span 24 months and lie in nearly every month of the year: a season can be told from a drift. */
    static boolean showsSeason(double[] dates) {
        return spans(dates, TWO_YEARS);
    }

    /** Tells whether roast days span ten months and lie in nearly every month of the year: what moved within it can be told. */
    static boolean showsMostOfAYear(double[] dates) {
        return spans(dates, MOST_OF_A_YEAR);
    }

    private static boolean spans(double[] dates, double days) {
        long months = Arrays.stream(dates)
                .mapToObj(date -> LocalDate.ofEpochDay((long) date).getMonth())
                .distinct()
                .count();
        return dates.length > 0 && dates[dates.length - 1] - dates[0] >= days && months >= MONTHS;
    }

    /** Returns a wave of a year whose highest day is the given one, and whose height from trough to crest is 1. */
    private static double[] wave(int[] dayOfRow, double[] dates, double highest) {
        double[] out = new double[dayOfRow.length];
        for (int i = 0; i < out.length; i++) {
            double dayOfYear = (dates[dayOfRow[i]] % 365.25 + 365.25) % 365.25;
            out[i] = 0.5 * Math.cos(2 * Math.PI * (dayOfYear - highest) / 365.25);
        }
        return out;
    }

    DayRegression regression() {
        return fit;
    }

    List<Column> columns() {
        return columns;
    }

    boolean has(Part part) {
        return columns.stream().anyMatch(c -> c.part == part);
    }

    /** Returns the place of a column; -1 if there is none of that name. */
    int place(Part part, String name) {
        for (int k = 0; k < columns.size(); k++) {
            if (columns.get(k).part == part && columns.get(k).name.equals(name)) {
                return k;
            }
        }
        return -1;
    }

    /** Returns the slope over age of each lot that has one. */
    List<Estimate> slopesOfAge() {
        return IntStream.range(0, columns().size())
                .filter(k -> columns().get(k).part == Part.AGE && regression().kept(k))
                .mapToObj(this::term)
                .toList();
    }

    /** Returns a column's coefficient, per its step. */
    Estimate term(int place) {
        return fit.term(columns.get(place).name, place);
    }

    /** Returns one coefficient less another. */
    Estimate difference(int first, int second) {
        double[] weights = new double[columns.size()];
        weights[first] = 1;
        weights[second] -= 1;
        return fit.contrast(columns.get(first).name + " less " + columns.get(second).name, weights);
    }

    /** Returns by how much the variance of a column's coefficient is inflated by the other columns, its lot's level left aside. */
    double inflation(int place) {
        List<double[]> levels = new ArrayList<>();
        List<double[]> others = new ArrayList<>();
        for (int k = 0; k < columns.size(); k++) {
            if (k != place) {
                others.add(columns.get(k).values);
                if (columns.get(k).part == Part.LEVEL) {
                    levels.add(columns.get(k).values);
                }
            }
        }
        double[] own = columns.get(place).values;
        return fit.with(y, levels).informationOn(own) / fit.with(y, others).informationOn(own);
    }

    /** Returns the part that a column moves together with most: without it the column is freest. */
    Part culprit(int place) {
        Part worst = Part.ROASTER;
        double freest = Double.NEGATIVE_INFINITY;
        for (Part part : Part.values()) {
            if (part == Part.LEVEL || !has(part)) {
                continue;
            }
            List<double[]> others = new ArrayList<>();
            for (int k = 0; k < columns.size(); k++) {
                if (k != place && columns.get(k).part != part) {
                    others.add(columns.get(k).values);
                }
            }
            double free = fit.with(y, others).informationOn(columns.get(place).values);
            if (free > freest) {
                freest = free;
                worst = part;
            }
        }
        return worst;
    }

    /** Returns what the columns of one part add to each row. */
    double[] contribution(Part part) {
        double[] coefficients = fit.coefficients();
        double[] out = new double[y.length];
        for (int k = 0; k < columns.size(); k++) {
            if (columns.get(k).part == part) {
                for (int i = 0; i < out.length; i++) {
                    out[i] += coefficients[k] * columns.get(k).values[i];
                }
            }
        }
        return out;
    }

    double[] y() {
        return y;
    }

    int days() {
        return days.days();
    }
}
