package parchment.pipeline;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.evidence.Evidence;
import parchment.evidence.finding.Verdict;
import parchment.logbook.Logbook;
import parchment.otherroastery.DropHabit;
import parchment.otherroastery.OtherLot;
import parchment.otherroastery.OtherRoastery;
import parchment.otherroastery.PlantedFaults;
import parchment.otherroastery.RoastDays;
import parchment.otherroastery.TrueCourse;
import parchment.otherroastery.Truth;
import parchment.stats.Interval;

/** The named cells on the other roastery. */
final class OtherCells {
    static final String ASKED = "sweetness";
    static final double MOVE = -2.8;
    private static final double SLOPE = 0.15;
    private static final double AGEING = -0.006;
    private static final int TABLES = 12;

    private static final List<Cell.Count> BEST = List.of(
            Cell.Count.share("held", "set holds the lot's best drop, as read at the end", "87-93"),
            Cell.Count.share("own held", "set holds the top of a noise-free square over the lot's own batches", ""),
            Cell.Count.share("bounded", "set ends on both sides", ""),
            Cell.Count.share("all held", "set holds the mean of the lots' best", ""),
            Cell.Count.mean("width", "mean width of bounded sets, °C"));

    private OtherCells() {}

    static List<Cell> all() {
        return List.of(
                new Cell(
                        "moved-probe",
                        "the probe moved by -2.8 °C, not written; 60 days x 3",
                        BEST,
                        (seed, folder) -> best(moved(), seed, folder)),
                new Cell(
                        "unmoved-probe",
                        "the probe stays; 60 days x 3",
                        BEST,
                        (seed, folder) -> best(OtherRoastery.ordinary(), seed, folder)),
                new Cell(
                        "lockstep",
                        "gas and drop in lockstep; 60 days x 3, 0.15 points per °C",
                        List.of(
                                Cell.Count.share("cannot tell", "cannot tell", "95 or more"),
                                Cell.Count.mean("gas", "correlation of first gas and drop inside days")),
                        OtherCells::lockstep),
                new Cell(
                        "separable",
                        "the separable twin; 60 days x 4, 0.15 points per °C",
                        List.of(
                                Cell.Count.share("seen", "right sign, zero left out, not cannot tell", "80 or more"),
                                Cell.Count.share("clear", "right sign, zero left out", ""),
                                Cell.Count.share("held", "slope held", "87-93"),
                                Cell.Count.mean("gas", "correlation of first gas and drop inside days"),
                                Cell.Count.mean("last gas", "of last gas and drop")),
                        OtherCells::separable),
                new Cell(
                        "no-effect",
                        "no effect; 60 days x 3",
                        List.of(
                                Cell.Count.share("finding", "called a finding", "6.5 or less"),
                                Cell.Count.share("held", "zero held by the slope's interval", "87-93"),
                                Cell.Count.share("nothing seen", "nothing seen", "")),
                        OtherCells::noEffect),
                new Cell(
                        "ageing",
                        "a lot of 144 days whose mass loss falls by 0.6 points in 100 days; 60 days x 4 in all",
                        List.of(
                                Cell.Count.share("seen", "right sign, zero left out", "80 or more"),
                                Cell.Count.share("held", "interval holds the truth", "87-93"),
                                Cell.Count.share("told", "a number is given", ""),
                                Cell.Count.share("own", "called the lot's own", ""),
                                Cell.Count.mean("width", "mean width, points per 100 days")),
                        OtherCells::ageing),
                new Cell(
                        "halo",
                        "no halo; 24 days x 3 on 12 tables, 3 cuppers",
                        List.of(
                                Cell.Count.share("held", "interval holds zero", "87-93"),
                                Cell.Count.share("told", "an interval is given", ""),
                                Cell.Count.mean("width", "mean width")),
                        OtherCells::halo),
                new Cell(
                        "trade-off",
                        "sweetness and acidity mirror each other, ± 0.12 points per °C; 60 days x 3, usual aims",
                        List.of(
                                Cell.Count.share("held", "compromise held", "87-93"),
                                Cell.Count.share("named", "a compromise is named", ""),
                                Cell.Count.mean("width", "mean width, °C")),
                        OtherCells::tradeOff));
    }

    private static OtherRoastery moved() {
        return OtherRoastery.ordinary()
                .withFaults(PlantedFaults.none().withProbeMoved(MOVE, 0.55, 1.12, PlantedFaults.Entry.NOT_WRITTEN));
    }

    private static Map<String, Double> best(OtherRoastery roastery, long seed, Path folder) throws IOException {
        Truth truth = roastery.withSeed(seed).writeTo(folder);
        Evidence evidence = Answers.ask(ASKED, Logbook.open(folder));
        List<Double> each = new ArrayList<>();
        for (OtherLot lot : roastery.lots()) {
            each.add(truth.bestReading(lot.name(), ASKED));
        }
        Answers.Best best = Answers.best(evidence, roastery.lots().get(0).name());
        Map<String, Double> values = best(
                best, each.get(0), each.stream().mapToDouble(x -> x).average().orElseThrow());
        values.put(
                "own held", yes(best.holds(truth.ownBest(roastery.lots().get(0).name(), ASKED))));
        return values;
    }

    static Map<String, Double> best(Answers.Best best, double own, double all) {
        Map<String, Double> values = new LinkedHashMap<>();
        values.put("held", yes(best.holds(own)));
        values.put("bounded", yes(best.bounded()));
        values.put("all held", yes(best.holds(all)));
        values.put("width", best.bounded() ? best.upper() - best.lower() : Double.NaN);
        values.put("truth", own);
        values.put("lower", best.lower());
        values.put("upper", best.upper());
        return values;
    }

    private static Map<String, Double> lockstep(long seed, Path folder) throws IOException {
        OtherRoastery roastery = OtherRoastery.ordinary();
        Truth truth = roastery.withEveryLot(ASKED, TrueCourse.slope(6, SLOPE))
                .withDrop(roastery.drop().by(DropHabit.Choice.LOCKSTEP).withHiddenCause(0.1, 0))
                .withSeed(seed)
                .writeTo(folder);
        Answers.Line line = Answers.line(Answers.ask(ASKED, Logbook.open(folder)));
        return Map.of(
                "cannot tell",
                yes(line.verdict() == Verdict.CANNOT_TELL),
                "gas",
                truth.insideDays(Truth.BatchTruth::gas, Truth.BatchTruth::endReading));
    }

    private static Map<String, Double> separable(long seed, Path folder) throws IOException {
        OtherRoastery roastery = OtherRoastery.ordinary();
        Truth truth = roastery.withEveryLot(ASKED, TrueCourse.slope(6, SLOPE))
                .withDays(RoastDays.of(60, 4))
                .withDrop(roastery.drop().by(DropHabit.Choice.LEANING))
                .withSeed(seed)
                .writeTo(folder);
        Answers.Line line = Answers.line(Answers.ask(ASKED, Logbook.open(folder)));
        boolean clear = line.interval().lower() > 0;
        return Map.of(
                "seen",
                yes(clear && line.verdict() != Verdict.CANNOT_TELL),
                "clear",
                yes(clear),
                "held",
                yes(line.interval().contains(truth.ownSlope(ASKED))),
                "gas",
                truth.insideDays(Truth.BatchTruth::gas, Truth.BatchTruth::endReading),
                "last gas",
                truth.insideDays(Truth.BatchTruth::lastGas, Truth.BatchTruth::endReading));
    }

    private static Map<String, Double> noEffect(long seed, Path folder) throws IOException {
        OtherRoastery.ordinary()
                .withEveryLot(ASKED, TrueCourse.none(6))
                .withSeed(seed)
                .writeTo(folder);
        return nothing(Answers.line(Answers.ask(ASKED, Logbook.open(folder))));
    }

    static Map<String, Double> nothing(Answers.Line line) {
        return Map.of(
                "finding",
                yes(line.finding()),
                "held",
                held(line.interval(), 0),
                "nothing seen",
                yes(line.verdict() == Verdict.NOTHING_SEEN));
    }

    private static Map<String, Double> ageing(long seed, Path folder) throws IOException {
        OtherRoastery roastery = OtherRoastery.ordinary();
        List<OtherLot> lots = List.of(
                roastery.lots().get(0).there(0.15, 0.75).ageing(AGEING),
                roastery.lots().get(1).there(0, 0.55).ageing(AGEING / 2),
                roastery.lots().get(2).there(0.35, 1).ageing(AGEING / 3));
        roastery.withLots(lots)
                .withDays(RoastDays.of(60, 4))
                .withDrop(roastery.drop().withPlan(DropHabit.Plan.WRITTEN))
                .withSeed(seed)
                .writeTo(folder);
        Answers.Ageing found = Answers.ageing(lots.get(0).name(), Logbook.open(folder));
        return Map.of(
                "seen",
                yes(found.told() && found.interval().upper() < 0),
                "held",
                held(found.interval(), AGEING),
                "told",
                yes(found.told()),
                "own",
                yes(found.own()),
                "width",
                100 * found.interval().width());
    }

    private static Map<String, Double> halo(long seed, Path folder) throws IOException {
        OtherRoastery roastery = OtherRoastery.ordinary();
        roastery.withDays(RoastDays.of(2 * TABLES, 3))
                .withPanel(roastery.panel().withoutHalo())
                .withSeed(seed)
                .writeTo(folder);
        Interval interval = Answers.halo(Logbook.open(folder));
        return Map.of(
                "held", held(interval, 0), "told", yes(!Double.isNaN(interval.lower())), "width", interval.width());
    }

    private static Map<String, Double> tradeOff(long seed, Path folder) throws IOException {
        OtherRoastery roastery = OtherRoastery.ordinary();
        List<OtherLot> lots = new ArrayList<>();
        // Levels and slopes mirror each other, so that the usual aims do too, and both are equally welcome at the mean
        // of
        // the drops.
        double[] above = {0.3, -0.3, 0};
        for (int i = 0; i < above.length; i++) {
            lots.add(roastery.lots()
                    .get(i)
                    .with("sweetness", TrueCourse.slope(6 + above[i], 0.12))
                    .with("acidity", TrueCourse.slope(6 - above[i], -0.12)));
        }
        Truth truth = roastery.withLots(lots).withSeed(seed).writeTo(folder);
        Answers.Line found = Answers.compromise("sweetness", "acidity", Logbook.open(folder));
        return Map.of(
                "held",
                held(found.interval(), truth.meanEndReading()),
                "named",
                yes(found.finding()),
                "width",
                found.interval().width());
    }

    static double yes(boolean so) {
        return so ? 1 : 0;
    }

    /** Whether an interval holds a value; NaN if none is given. */
    static double held(Interval interval, double value) {
        return Double.isNaN(interval.lower()) ? Double.NaN : yes(interval.contains(value));
    }
}
