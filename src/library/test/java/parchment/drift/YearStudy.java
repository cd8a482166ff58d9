package parchment.drift;

import java.util.List;
import java.util.Locale;
import parchment.drift.found.YearPart;
import parchment.feature.Features;
import parchment.period.ProbeStudy;

/**
 * Counts on drawn logbooks how often the year of a lot is told rightly, and how often it says that it cannot tell.
 *
 * <p>The second table of docs/measurements/drift.md is its output; the page names the command. Arguments: logbooks per cell, and the
 * first cell to be run.
 */
final class YearStudy {
    private YearStudy() {}

    /**
     * Holds what one cell gave.
     *
     * @param logbooks how many
     * @param told with an ageing that is called the lot's own
     * @param held whose 90 % interval of what was said (ageing, or its sum with drift) held the truth, of those with a number
     * @param numbers with a number
     * @param clear right sign and zero left out, of those told, or of all sums where no season is told
     * @param seasonTold with the time of year told
     * @param seasonHeld whose 90 % interval of mid-January against mid-July held the truth, of those
     */
    record Counts(int logbooks, int told, int held, int numbers, int clear, int seasonTold, int seasonHeld) {}

    enum Anchor {
        REFERENCE,
        NONE
    }

    static Counts run(KnownYear truth, Anchor anchor, int logbooks, long firstSeed) {
        int told = 0;
        int held = 0;
        int numbers = 0;
        int clear = 0;
        int seasonTold = 0;
        int seasonHeld = 0;
        for (int i = 0; i < logbooks; i++) {
            KnownYear.Drawn drawn = truth.draw(firstSeed + i);
            LotYear year = LotYear.of(KnownYear.LOT, Features.massLoss(), drawn.logbook());
            if (anchor == Anchor.REFERENCE) {
                year = year.withReference(KnownYear.REFERENCE);
            }
            YearPart ageing = year.ageing().orElseThrow();
            boolean season = year.parts().stream()
                    .anyMatch(p -> p.name().startsWith("mid-January") && p.verdict() == YearPart.Verdict.TOLD);
            if (ageing.verdict() == YearPart.Verdict.SUM_ONLY && !season) {
                numbers++;
                held += ageing.estimate().interval(0.90).contains(drawn.sum()) ? 1 : 0;
                clear += ageing.estimate().interval(0.90).upper() < 0 ? 1 : 0;
            }
            if (ageing.verdict() != YearPart.Verdict.CANNOT_TELL && season) {
                boolean own = ageing.verdict() == YearPart.Verdict.TOLD;
                double right = drawn.ageing() + (own ? 0 : truth.drift);
                numbers++;
                held += ageing.estimate().interval(0.90).contains(right) ? 1 : 0;
                told += own ? 1 : 0;
                clear += own && ageing.estimate().interval(0.90).upper() < 0 ? 1 : 0;
            }
            for (YearPart part : year.parts()) {
                if (part.name().startsWith("mid-January") && part.verdict() == YearPart.Verdict.TOLD) {
                    seasonTold++;
                    seasonHeld += part.estimate().interval(0.90).contains(truth.season) ? 1 : 0;
                }
            }
        }
        return new Counts(logbooks, told, held, numbers, clear, seasonTold, seasonHeld);
    }

    record Cell(String words, KnownYear truth, Anchor anchor) {}

    static KnownYear wandering(double neighbours) {
        KnownYear truth = new KnownYear();
        truth.neighbours = neighbours;
        return truth;
    }

    private static KnownYear of(int months, int lots, int life) {
        KnownYear truth = new KnownYear();
        truth.months = months;
        truth.lots = lots;
        truth.life = life;
        return truth;
    }

    private static KnownYear winters() {
        KnownYear truth = new KnownYear();
        truth.months12 = List.of(11, 12, 1, 2);
        return truth;
    }

    /** Fourteen months of a lot that loses 0.6 points in 100 days; the room is written and follows the season. */
    static KnownYear oneYear(double season, double drift) {
        KnownYear truth = of(14, 4, 8);
        truth.roomSwing = 10;
        truth.aimSpread = 4;
        truth.season = season;
        truth.drift = drift;
        return truth;
    }

    private static KnownYear oneYearWandering() {
        KnownYear truth = oneYear(0, 0);
        truth.neighbours = 0.5;
        return truth;
    }

    static List<Cell> cells() {
        return List.of(
                new Cell("30 months, lots overlap, a reference coffee", wandering(0), Anchor.REFERENCE),
                new Cell("the same, neighbouring days 0.5", wandering(0.5), Anchor.REFERENCE),
                new Cell("the same, neighbouring days 0.8", wandering(0.8), Anchor.REFERENCE),
                new Cell("confounded: the same without a reference", wandering(0), Anchor.NONE),
                new Cell("confounded: 10 months of roasting, a reference coffee", of(10, 3, 8), Anchor.REFERENCE),
                new Cell("confounded: 30 months, roasted in winters only", winters(), Anchor.REFERENCE),
                new Cell("30 months, lots one after the other, no reference", of(30, 5, 6), Anchor.NONE),
                new Cell("14 months, room and aimed drop written, no drift, no season", oneYear(0, 0), Anchor.NONE),
                new Cell("the same, neighbouring days 0.5", oneYearWandering(), Anchor.NONE),
                new Cell("the same, a season of 0.4 %, a drift of -0.1 %", oneYear(0.004, -0.001), Anchor.NONE));
    }

    /** Prints the table; the first argument is the number of logbooks in each cell. */
    public static void main(String[] arguments) {
        int logbooks = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 400;
        System.out.println(
                "| condition | logbooks | ageing called the lot's own | number said held by its 90 % interval | right sign,"
                        + " zero left out | time of year told | held by its 90 % interval |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- |");
        List<Cell> cells = cells();
        int first = arguments.length > 1 ? Integer.parseInt(arguments[1]) - 1 : 0;
        for (int k = first; k < cells.size(); k++) {
            Counts c = run(cells.get(k).truth(), cells.get(k).anchor(), logbooks, 1_000_000L * (k + 1));
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %d | %s | %s | %s | %s | %s |%n",
                    cells.get(k).words(),
                    logbooks,
                    ProbeStudy.percent(c.told(), logbooks),
                    ProbeStudy.percent(c.held(), c.numbers()),
                    ProbeStudy.percent(c.clear(), c.told() > 0 ? c.told() : c.seasonTold() > 0 ? 0 : c.numbers()),
                    ProbeStudy.percent(c.seasonTold(), logbooks),
                    ProbeStudy.percent(c.seasonHeld(), c.seasonTold()));
        }
    }
}
