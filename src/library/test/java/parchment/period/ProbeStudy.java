package parchment.period;

import java.util.List;
import java.util.Locale;
import parchment.stats.series.DayRegression;
import parchment.stats.series.WanderingDays;

/**
 * Counts on drawn logbooks how often a probe change is invented, found, and dated rightly.
 *
 * <p>The first table of docs/measurements/drift.md is its output; the page names the command. Arguments: logbooks per cell, then the
 * numbers of the cells to run (all if none is given).
 */
public final class ProbeStudy {
    private ProbeStudy() {}

    /**
     * Holds what one cell gave.
     *
     * @param logbooks how many
     * @param invented with a change called a probe's where there was none, or beside the true one
     * @param near with the true change called found within two roast days
     * @param held with the true day in the 90 % date set, of those found
     * @param found with a found change that is nearest to the true one
     * @param offsetHeld offsets whose 90 % interval held the truth, of two per found change
     * @param setDays mean number of days in the set
     */
    record Counts(int logbooks, int invented, int near, int held, int found, int offsetHeld, double setDays) {}

    static Counts run(KnownDays truth, int logbooks, long firstSeed) {
        int invented = 0;
        int near = 0;
        int held = 0;
        int found = 0;
        int offsetHeld = 0;
        double days = 0;
        for (int i = 0; i < logbooks; i++) {
            KnownDays.Drawn drawn = truth.draw(firstSeed + i);
            ChangeSearch.Result result = drawn.search(firstSeed + i);
            List<ChangeSearch.Step> called = result.steps().stream()
                    .filter(s -> s.shape() == ChangeSearch.Shape.STEP && s.supporting() >= 2)
                    .toList();
            long apart = called.stream()
                    .filter(s -> drawn.firstDay < 0
                            || Math.abs(s.firstDay() - drawn.firstDay) > 2
                                    && !s.days().contains(drawn.firstDay))
                    .count();
            invented += apart > 0 ? 1 : 0;
            var best = called.stream()
                    .filter(s -> drawn.firstDay >= 0)
                    .min((a, b) -> Math.abs(a.firstDay() - drawn.firstDay) - Math.abs(b.firstDay() - drawn.firstDay));
            if (best.isPresent()) {
                found++;
                near += Math.abs(best.get().firstDay() - drawn.firstDay) <= 2 ? 1 : 0;
                held += best.get().days().contains(drawn.firstDay) ? 1 : 0;
                days += best.get().days().size();
                for (Indicator indicator : drawn.indicators) {
                    List<double[]> columns = indicator.rawColumns();
                    columns.add(ChangeSearch.step(
                            indicator, drawn.dayOfRow, best.get().firstDay()));
                    DayRegression fit = DayRegression.fit(
                            new WanderingDays(drawn.dayOfRow, drawn.dates),
                            indicator.y().raw(),
                            columns,
                            DayRegression.By.RESTRICTED);
                    offsetHeld += fit.term("offset", columns.size() - 1)
                                    .interval(0.90)
                                    .contains(truth.step)
                            ? 1
                            : 0;
                }
            }
        }
        return new Counts(logbooks, invented, near, held, found, offsetHeld, found == 0 ? Double.NaN : days / found);
    }

    static KnownDays cell(double neighbours, double step, double daySpread, double batchSpread) {
        KnownDays truth = new KnownDays();
        truth.neighbours = neighbours;
        truth.step = step;
        truth.daySpread = daySpread;
        truth.batchSpread = batchSpread;
        return truth;
    }

    private record Named(String words, KnownDays truth) {}

    private static KnownDays with(KnownDays truth, double climb, double season, int days) {
        truth.climb = climb;
        truth.season = season;
        truth.days = days;
        return truth;
    }

    static List<Named> cells() {
        return List.of(
                new Named("no change, days independent", cell(0, 0, 0.8, 1.5)),
                new Named("no change, neighbouring days 0.5", cell(0.5, 0, 0.8, 1.5)),
                new Named("no change, neighbouring days 0.8", cell(0.8, 0, 0.8, 1.5)),
                new Named("no change, a climb of 3 °C", with(cell(0, 0, 0.8, 1.5), 3, 0, 60)),
                new Named("no change, an annual wave of ± 1.5 °C", with(cell(0, 0, 0.8, 1.5), 0, 1.5, 60)),
                new Named("moved by 2.5 °C, days independent", cell(0, 2.5, 0.8, 1.5)),
                new Named("moved by 2.5 °C, 30 roast days", with(cell(0, 2.5, 0.8, 1.5), 0, 0, 30)),
                new Named("moved by 2.5 °C, neighbouring days 0.5", cell(0.5, 2.5, 0.8, 1.5)),
                new Named("moved by 1.2 °C, days independent", cell(0, 1.2, 0.8, 1.5)),
                new Named("moved by 2.5 °C, annual wave of ± 1.5 °C", with(cell(0, 2.5, 0.8, 1.5), 0, 1.5, 60)));
    }

    /** Prints the table, one row per cell. */
    public static void main(String[] arguments) {
        int logbooks = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 400;
        System.out.println(
                "| condition | logbooks | probe period invented | found within two roast days | day held by the 90 %"
                        + " date set | days in the set | offset held by its 90 % interval |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- |");
        List<Named> cells = cells();
        for (int k = 0; k < cells.size(); k++) {
            String number = Integer.toString(k + 1);
            if (arguments.length > 1
                    && !List.of(arguments).subList(1, arguments.length).contains(number)) {
                continue;
            }
            KnownDays truth = cells.get(k).truth();
            Counts counts = run(truth, logbooks, 1_000_000L * (k + 1));
            boolean none = truth.step == 0;
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %d | %s | %s | %s | %s | %s |%n",
                    cells.get(k).words(),
                    logbooks,
                    percent(counts.invented(), logbooks),
                    none ? "not asked" : percent(counts.near(), logbooks),
                    none ? "not asked" : percent(counts.held(), counts.found()),
                    none ? "not asked" : String.format(Locale.ROOT, "%.1f", counts.setDays()),
                    none ? "not asked" : percent(counts.offsetHeld(), 2 * counts.found()));
        }
    }

    /** Returns a share with its Monte-Carlo error, in words. */
    public static String percent(int count, int of) {
        if (of == 0) {
            return "none";
        }
        double share = count / (double) of;
        return String.format(Locale.ROOT, "%.1f ± %.1f %%", 100 * share, 100 * Math.sqrt(share * (1 - share) / of));
    }
}
