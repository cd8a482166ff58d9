package parchment.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.Consumer;
import parchment.evidence.finding.Verdict;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;

/**
 * Counts on drawn logbooks how often the interval of a compromise holds the best place, with the usual aims and with stated ones.
 *
 * <p>The table of docs/measurements/trade-off.md is its output; the page names the command. Arguments: logbooks per cell, then the first
 * seed (1 if none is given), so that a long run can be had in parts.
 */
final class TradeOffStudy {
    private TradeOffStudy() {}

    /** Holds one simulated condition: sweetness as {@link KnownTruth} draws it, acidity beside it with differences of its own. */
    static final class Cell {
        final KnownTruth truth = new KnownTruth();
        double acidSlope = -0.15;
        double acidBend = 0;

        /** What moves sweetness and acidity of one cup together, in points. */
        double halo = 0.3;

        Desirability sweetAim = Desirability.larger(5, 7);
        Desirability acidAim = Desirability.larger(5, 7);

        Cell() {
            truth.days = 30;
        }
    }

    /** Holds a drawn logbook with the drop temperatures as they would be read. */
    record Drawn(Logbook logbook, Measure measure) {}

    static Drawn draw(Cell cell, long seed) {
        KnownTruth.Drawn drawn = cell.truth.draw(seed);
        Random random = new Random(seed + 5);
        Map<String, Double> days = new HashMap<>();
        Map<String, Double> batches = new HashMap<>();
        Map<String, String> dayOf = new HashMap<>();
        drawn.logbook()
                .batches()
                .forEach(batch -> dayOf.put(
                        batch.name(),
                        batch.roastedAt().orElseThrow().toLocalDate().toString()));
        List<CupScores> cups = new ArrayList<>();
        for (CupScores cup : drawn.logbook().cups()) {
            ModelFrames.Reading reading =
                    drawn.measure().readings().getOrDefault(cup.batch(), ModelFrames.Reading.NONE);
            boolean afterTheMove = cell.truth.probeMovedOnDay < cell.truth.days
                    && !reading.period().equals("before");
            double x = reading.value() - (afterTheMove ? cell.truth.probeShift : 0) - cell.truth.center;
            double together = cell.halo * random.nextGaussian();
            double day = days.computeIfAbsent(
                    dayOf.getOrDefault(cup.batch(), ""), key -> cell.truth.daySpread * random.nextGaussian());
            double batch = batches.computeIfAbsent(cup.batch(), key -> cell.truth.batchSpread * random.nextGaussian());
            Map<String, Double> scores = new LinkedHashMap<>(cup.scores());
            scores.put("sweetness", cup.score("sweetness") + together);
            scores.put(
                    "acidity",
                    6
                            + cell.acidSlope * x
                            + cell.acidBend * x * x
                            + day
                            + batch
                            + together
                            + cell.truth.cupSpread * random.nextGaussian());
            cups.add(cup.withScores(scores));
        }
        return new Drawn(
                Logbook.of(drawn.logbook().contents().toBuilder().cups(cups).build()), drawn.measure());
    }

    static TradeOff ask(Drawn drawn) {
        return TradeOff.of(
                List.of("sweetness", "acidity"), drawn.measure(), drawn.logbook(), EvidenceSettings.standard());
    }

    /** Returns where the compromise truly lies in the middle 80 % of what a logbook tried, with the usual aims or with the stated ones. */
    static double truth(Cell cell, TradeOff asked, boolean usual) {
        TradeOff.Found found = asked.found().orElseThrow();
        FittedScores fit = found.courses().fit(0);
        double[] own = fit.design().centered();
        double shift = found.courses().range().center() - cell.truth.center;
        double noise = Math.sqrt(cell.truth.batchSpread * cell.truth.batchSpread
                + (cell.truth.cupSpread * cell.truth.cupSpread + cell.halo * cell.halo) / cell.truth.cuppers);
        Desirability sweet = usual ? usual(own, shift, noise, cell.truth.slope, cell.truth.bend) : cell.sweetAim;
        Desirability acid = usual ? usual(own, shift, noise, cell.acidSlope, cell.acidBend) : cell.acidAim;
        double best = Double.NaN;
        double most = -1;
        TriedRange range = found.courses().range();
        for (int i = 0; i <= 1000; i++) {
            double place = range.low() + range.width() * i / 1000;
            double x = place - cell.truth.center;
            double all = Desirability.overall(List.of(
                    sweet.of(6 + cell.truth.slope * x + cell.truth.bend * x * x),
                    acid.of(6 + cell.acidSlope * x + cell.acidBend * x * x)));
            if (all > most) {
                most = all;
                best = place;
            }
        }
        return best;
    }

    /** Returns the mean of such batches' scores, give or take 1.2816 standard deviations: what the usual aims are without error. */
    private static Desirability usual(double[] own, double shift, double noise, double slope, double bend) {
        double mean = 0;
        double squares = 0;
        for (double x : own) {
            double course = 6 + slope * (x + shift) + bend * (x + shift) * (x + shift);
            mean += course / own.length;
            squares += course * course / own.length;
        }
        double half = 1.2816 * Math.sqrt(squares - mean * mean + noise * noise);
        return Desirability.larger(mean - half, mean + half);
    }

    static Map<String, Cell> cells() {
        Map<String, Cell> cells = new LinkedHashMap<>();
        cells.put("equal and opposite, 120 batches, 30 days", with(cell -> {}));
        cells.put("the same, days differ more", with(cell -> {
            cell.truth.daySpread = 0.6;
            cell.truth.dayShareOfDrop = 0.6;
        }));
        cells.put("unequal and opposite", with(cell -> cell.acidSlope = -0.08));
        cells.put("48 batches, 12 days", with(cell -> cell.truth.days = 12));
        cells.put("both bent, each with its own top", with(cell -> {
            cell.truth.slope = 0.08;
            cell.truth.bend = -0.02;
            cell.acidSlope = -0.12;
            cell.acidBend = -0.02;
        }));
        cells.put("one bent a little", with(cell -> {
            cell.truth.slope = 0.1;
            cell.truth.bend = -0.01;
            cell.acidSlope = -0.1;
        }));
        return cells;
    }

    private static Cell with(Consumer<Cell> change) {
        Cell cell = new Cell();
        change.accept(cell);
        return cell;
    }

    /** Holds how often the interval held the best place, and how often a compromise was named, with usual and with stated aims. */
    record Count(int logbooks, int usual, int usualNamed, int stated, int statedNamed) {}

    static Count count(Cell cell, int logbooks, long first) {
        // A compromise by stated aims is about these lots and cuppers; so that its truth is known, they do not differ.
        cell.truth.lotSpread = 0;
        cell.truth.cupperSpread = 0;
        cell.truth.cuppingSpread = 0;
        cell.truth.sittingSpread = 0;
        int usual = 0;
        int usualNamed = 0;
        int stated = 0;
        int statedNamed = 0;
        for (long seed = first; seed < first + logbooks; seed++) {
            TradeOff asked = ask(draw(cell, seed));
            usual += asked.compromise().contains(truth(cell, asked, true)) ? 1 : 0;
            usualNamed += asked.verdict() == Verdict.SUGGESTIVE ? 1 : 0;
            TradeOff aimed = asked.withAim("sweetness", cell.sweetAim).withAim("acidity", cell.acidAim);
            stated += aimed.compromise().contains(truth(cell, aimed, false)) ? 1 : 0;
            statedNamed += aimed.verdict() == Verdict.SUGGESTIVE ? 1 : 0;
        }
        return new Count(logbooks, usual, usualNamed, stated, statedNamed);
    }

    /** Prints the table; a third argument takes only the conditions whose name it matches. */
    public static void main(String[] arguments) {
        int logbooks = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 400;
        long first = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        System.out.println("| condition | usual aims: held | named | stated aims: held | named |");
        System.out.println("| --- | --- | --- | --- | --- |");
        cells().forEach((name, cell) -> {
            if (arguments.length < 3 || name.matches(arguments[2])) {
                Count count = count(cell, logbooks, first);
                System.out.printf(
                        Locale.ROOT,
                        "| %s | %s | %s | %s | %s |%n",
                        name,
                        percent(count.usual(), logbooks),
                        percent(count.usualNamed(), logbooks),
                        percent(count.stated(), logbooks),
                        percent(count.statedNamed(), logbooks));
            }
        });
    }

    private static String percent(int hits, int of) {
        double share = (double) hits / of;
        return String.format(Locale.ROOT, "%.1f ± %.1f %%", 100 * share, 100 * Math.sqrt(share * (1 - share) / of));
    }
}
