package parchment.evidence;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import parchment.evidence.finding.Verdict;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Measures on many drawn logbooks how often statements beside the first answer are right: the screen without an effect, destination and
 * path in separable and confounded twins, power for a small slope, and the cells of a sceptic.
 *
 * <p>The tables of docs/measurements/statements.md are its output; the page names the command. Arguments: logbooks per cell, then the parts wanted
 * (screen, twins, power, sceptic; all if none is named).
 */
final class StatementsStudy {
    private StatementsStudy() {}

    /** Prints the tables. */
    public static void main(String[] arguments) {
        int logbooks = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 400;
        List<String> parts = arguments.length > 1
                ? List.of(arguments).subList(1, arguments.length)
                : List.of("screen", "twins", "power", "sceptic");
        for (String part : parts) {
            switch (part) {
                case "screen" -> screen(logbooks);
                case "twins" -> twins(logbooks);
                case "power" -> power(logbooks);
                case "sceptic" -> sceptic(logbooks);
                default -> System.err.println("There is no part '" + part + "': screen, twins, power, sceptic.");
            }
        }
    }

    private static void screen(int logbooks) {
        System.out.println("| the screen, 8 features, no effect | a finding is called |");
        System.out.println("| --- | --- |");
        KnownTruth plain = new KnownTruth();
        plain.slope = 0;
        screenRow("80 batches, 20 days", plain, logbooks);
        KnownTruth drift = new KnownTruth();
        drift.slope = 0;
        drift.drift = 1;
        drift.driftOfDrop = 3;
        screenRow("80 batches, 20 days, drop and scores drift over the dates", drift, logbooks);
        KnownTruth days = new KnownTruth();
        days.slope = 0;
        days.daySpread = 1.5;
        days.dayShareOfDrop = 0.9;
        screenRow("80 batches, 20 days, days differ more than batches", days, logbooks);
    }

    private static void screenRow(String name, KnownTruth truth, int logbooks) {
        long found = IntStream.range(0, logbooks)
                .filter(i ->
                        !ScreenTest.screen(truth, 700_000L + i).aboveTheLine().isEmpty())
                .count();
        System.out.printf(Locale.ROOT, "| %s | %s |%n", name, percent((double) found / logbooks, logbooks));
    }

    private static void twins(int logbooks) {
        System.out.println();
        System.out.println(
                "| destination or path, 80 batches, 20 days | added time: cannot tell | faster finish: cannot tell"
                        + " | added time: truth held | faster finish: truth held | the one that counted: right sign, zero left out |");
        System.out.println("| --- | --- | --- | --- | --- | --- |");
        twin("drop temperature counts (0.15 points per °C), separable", 5, 12, 0.15, 0, logbooks);
        twin("development time counts (0.3 points per 10 s), separable", 5, 12, 0, 0.3, logbooks);
        twin("drop temperature counts, confounded (correlation 0.998)", 5, 1, 0.15, 0, logbooks);
        twin("nothing counts, separable", 5, 12, 0, 0, logbooks);
    }

    private static void twin(String name, double perDegree, double own, double drop, double development, int logbooks) {
        int[] counts = new int[5];
        for (int i = 0; i < logbooks; i++) {
            KnownTruth truth = new KnownTruth();
            truth.measureError = 0;
            truth.slope = drop + development / 10 * perDegree;
            KnownTruth.Drawn drawn = truth.draw(800_000L + i);
            Random random = new Random(900_000L + i);
            // Development follows the drop in part. Where it counts, the scores' own x is drop + own part / perDegree.
            Map<String, double[]> three = new LinkedHashMap<>();
            drawn.measure().readings().forEach((batch, reading) -> {
                double x = reading.value() - truth.center;
                double rest = own * random.nextGaussian();
                double early = 540 + 25 * random.nextGaussian();
                three.put(
                        batch,
                        development > 0
                                ? new double[] {truth.center + x - rest / perDegree * 0.5, 90 + perDegree * x, early}
                                : new double[] {truth.center + x, 90 + perDegree * x + rest, early});
            });
            List<Measure> measures = new ArrayList<>();
            String[] names = {"drop temperature", "development time", "first crack time"};
            for (int k = 0; k < 3; k++) {
                int column = k;
                Map<String, ModelFrames.Reading> readings = new LinkedHashMap<>();
                three.forEach((batch, row) -> readings.put(batch, new ModelFrames.Reading(row[column], Double.NaN)));
                measures.add(new Measure(
                        names[k], k == 0 ? Unit.TEMPERATURE : Unit.SECONDS, TemperatureUnit.CELSIUS, readings));
            }
            Measure rates = new Measure("development rate", Unit.RATE_OF_RISE, TemperatureUnit.CELSIUS, Map.of());
            DestinationOrPath asked = new PathQuestion(
                            "sweetness", measures, rates, Map.of(), List.of(), EvidenceSettings.standard())
                    .ask(drawn.logbook());
            PathContrast added = asked.contrast("added time");
            PathContrast finish = asked.contrast("faster finish");
            counts[0] += added.verdict() == Verdict.CANNOT_TELL ? 1 : 0;
            counts[1] += finish.verdict() == Verdict.CANNOT_TELL ? 1 : 0;
            counts[2] += added.interval().contains(development) ? 1 : 0;
            counts[3] += finish.interval().contains(drop) ? 1 : 0;
            counts[4] += (development > 0 ? added : finish).interval().lower() > 0 ? 1 : 0;
        }
        StringBuilder row = new StringBuilder("| " + name);
        for (int k = 0; k < 5; k++) {
            row.append(" | ").append(percent((double) counts[k] / logbooks, logbooks));
        }
        System.out.println(row + " |");
    }

    private static void power(int logbooks) {
        System.out.println();
        System.out.println("| slope 0.05 points per °C, 14 days | called a finding | held by 90 % interval |");
        System.out.println("| --- | --- | --- |");
        for (int batches : new int[] {40, 80, 160}) {
            KnownTruth truth = new KnownTruth();
            truth.days = 14;
            truth.batchesPerDay = Math.round(batches / 14f);
            truth.slope = 0.05;
            row(batches + " batches", truth, logbooks, 600_000L);
        }
    }

    private static void sceptic(int logbooks) {
        System.out.println();
        System.out.println(
                "| no effect unless said, made to break a statement | called a finding | truth held by 90 % interval |");
        System.out.println("| --- | --- | --- |");
        KnownTruth turn = new KnownTruth();
        turn.slope = 0;
        turn.days = 24;
        turn.lotsInTurn = true;
        turn.lotSpread = 1.5;
        turn.lotSpreadOfDrop = 4;
        turn.drift = 1;
        row("each lot in one season only, with its own drop and level", turn, logbooks, 500_000L);
        KnownTruth days = new KnownTruth();
        days.slope = 0;
        days.days = 24;
        days.daySpread = 1.5;
        days.batchSpread = 0.1;
        days.dayShareOfDrop = 0.9;
        row("days differ far more than batches", days, logbooks, 510_000L);
        KnownTruth good = new KnownTruth();
        good.slope = 0.15;
        good.days = 30;
        good.lotSpread = 0;
        good.leastCuppedTruth = 6;
        row(
                "slope 0.15, only batches above the mean cupped (tests the wording, not coverage)",
                good,
                logbooks,
                520_000L);
        KnownTruth reacting = new KnownTruth();
        reacting.slope = 0;
        reacting.days = 30;
        reacting.hiddenInDrop = 1.5;
        reacting.hiddenInScore = 0.4;
        row("the drop reacts to the beans (tests the wording, not coverage)", reacting, logbooks, 530_000L);
    }

    private static void row(String name, KnownTruth truth, int logbooks, long seed) {
        CoverageStudy.Counts counts = CoverageStudy.run(truth, logbooks, seed);
        System.out.printf(
                Locale.ROOT,
                "| %s | %s | %s |%n",
                name,
                percent(counts.findings(), logbooks),
                percent(counts.slopeCovered(), logbooks));
    }

    private static String percent(double share, int logbooks) {
        return String.format(
                Locale.ROOT, "%.1f ± %.1f %%", 100 * share, 100 * Math.sqrt(share * (1 - share) / logbooks));
    }
}
