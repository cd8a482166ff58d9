package parchment.trial;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import parchment.trial.TrialTally.Count;
import parchment.trial.TrialTally.Part;

/**
 * Runs drawn trials over the conditions of docs/measurements/coin-flip.md and counts false findings, power and how often intervals hold the truth.
 *
 * <p>Arguments: the file of counts, trials per condition, the first seed. Each condition adds a line to the file when it is done, and one that has its line for that
 * seed is not run again, so a run can be stopped and taken up. With the file alone, the tables of the page are printed from all its lines.
 */
final class TrialStudy {
    private static final double SLOPE = 1.0 / 6;

    private TrialStudy() {}

    static Map<String, TrialDraws.Cell> cells() {
        Map<String, TrialDraws.Cell> cells = new LinkedHashMap<>();
        for (int size : new int[] {2, 3, 4}) {
            for (int sets : new int[] {4, 8, 16}) {
                for (int cuppers : new int[] {1, 3}) {
                    for (double followed : new double[] {1, 0.5, 0.05}) {
                        for (int lots : new int[] {1, 2}) {
                            for (double loss : new double[] {0, 0.1}) {
                                for (double slope : new double[] {0, SLOPE}) {
                                    TrialDraws.Cell cell = new TrialDraws.Cell();
                                    cell.size = size;
                                    cell.levels = size == 2 ? 2 : 3;
                                    cell.sets = sets;
                                    cell.cuppers = cuppers;
                                    cell.followed = followed;
                                    cell.lots = lots;
                                    cell.loss = loss;
                                    cell.slope = slope;
                                    cells.put(name(cell), cell);
                                }
                            }
                        }
                    }
                }
            }
        }
        return cells;
    }

    private static String name(TrialDraws.Cell cell) {
        return String.format(
                Locale.ROOT,
                "%dx%d cuppers %d followed %.2f lots %d loss %.1f slope %s",
                cell.sets,
                cell.size,
                cell.cuppers,
                cell.followed,
                cell.lots,
                cell.loss,
                cell.slope == 0 ? "0" : "1/6");
    }

    public static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments[0]);
        if (arguments.length == 1) {
            print(file);
            return;
        }
        int trials = Integer.parseInt(arguments[1]);
        long first = arguments.length > 2 ? Long.parseLong(arguments[2]) : 0;
        List<String> done = Files.exists(file) ? Files.readAllLines(file) : List.of();
        for (Map.Entry<String, TrialDraws.Cell> entry : cells().entrySet()) {
            String start = entry.getKey() + ";" + first + ";";
            if (done.stream().anyMatch(line -> line.startsWith(start))) {
                continue;
            }
            List<Part> parts = new ArrayList<>(List.of(Part.ACHIEVED));
            if (entry.getValue().loss > 0) {
                parts.add(Part.BOUNDS);
            }
            TrialTally tally = TrialTally.of(entry.getValue(), first, trials, parts);
            Files.writeString(
                    file,
                    start + tally.line() + "\n",
                    StandardCharsets.UTF_8,
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND);
        }
    }

    private static Map<String, TrialTally> read(Path file) throws IOException {
        Map<String, TrialTally> found = new LinkedHashMap<>();
        for (String line : Files.readAllLines(file)) {
            String[] parts = line.split(";");
            found.merge(parts[0], new TrialTally().plus(parts[2]), (so, more) -> so.plus(parts[2]));
        }
        return found;
    }

    private static void print(Path file) throws IOException {
        Map<String, TrialTally> found = read(file);
        Map<String, List<String>> rows = new LinkedHashMap<>();
        Map<String, TrialDraws.Cell> cells = cells();
        cells.forEach((name, cell) -> {
            if (found.containsKey(name)) {
                rows.computeIfAbsent(
                                String.format(
                                        Locale.ROOT,
                                        "%d sets of %d, followed %.0f %%",
                                        cell.sets,
                                        cell.size,
                                        100 * cell.followed),
                                key -> new ArrayList<>())
                        .add(name);
            }
        });
        System.out.println(
                "| sets | false findings | power | formula | assigned held | achieved held | achieved without an end | bounds held |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- |");
        rows.forEach((row, names) -> {
            Predicate<TrialDraws.Cell> none = cell -> cell.slope == 0;
            Predicate<TrialDraws.Cell> whole = cell -> cell.slope > 0 && cell.loss == 0;
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %s | %s, %s | %s | %s | %s | %s | %s |%n",
                    row,
                    range(names, cells, found, none, TrialTally::found),
                    range(names, cells, found, whole.and(cell -> cell.cuppers == 1), TrialTally::found),
                    range(names, cells, found, whole.and(cell -> cell.cuppers == 3), TrialTally::found),
                    row.endsWith(" 100 %") ? formulas(names, cells) : "",
                    range(names, cells, found, cell -> true, TrialTally::held),
                    range(names, cells, found, cell -> true, t -> t.share(Count.ACHIEVED_HELD, Count.READ)),
                    range(names, cells, found, cell -> true, t -> t.share(Count.NOT_BOUNDED, Count.READ)),
                    range(names, cells, found, cell -> cell.loss > 0, t -> t.share(Count.BOUNDS_HELD, Count.BOUNDED)));
        });
        worst(found, cells);
    }

    private static String formulas(List<String> names, Map<String, TrialDraws.Cell> cells) {
        return names.stream()
                .map(name -> Objects.requireNonNull(cells.get(name)))
                .mapToDouble(TrialStudy::formula)
                .distinct()
                .mapToObj(TrialStudy::percent)
                .collect(Collectors.joining(", "));
    }

    private static String range(
            List<String> names,
            Map<String, TrialDraws.Cell> cells,
            Map<String, TrialTally> found,
            Predicate<TrialDraws.Cell> which,
            ToDoubleFunction<TrialTally> share) {
        double[] shares = names.stream()
                .filter(name -> which.test(Objects.requireNonNull(cells.get(name))))
                .mapToDouble(name -> share.applyAsDouble(Objects.requireNonNull(found.get(name))))
                .sorted()
                .toArray();
        return shares.length == 0 ? "" : percent(shares[0]) + " to " + percent(shares[shares.length - 1]);
    }

    /** Prints the conditions farthest from what is wanted, and how many trials stand behind the fewest. */
    private static void worst(Map<String, TrialTally> found, Map<String, TrialDraws.Cell> cells) {
        say("most false findings", found, cells, cell -> cell.slope == 0, TrialTally::found, -1);
        say("assigned held least", found, cells, cell -> true, TrialTally::held, 1);
        say("assigned held most", found, cells, cell -> true, TrialTally::held, -1);
        say("achieved held least", found, cells, cell -> true, t -> t.share(Count.ACHIEVED_HELD, Count.READ), 1);
        say("achieved held most", found, cells, cell -> true, t -> t.share(Count.ACHIEVED_HELD, Count.READ), -1);
        say(
                "bounds held least",
                found,
                cells,
                cell -> cell.loss > 0,
                t -> t.share(Count.BOUNDS_HELD, Count.BOUNDED),
                1);
        cells.entrySet().stream()
                .filter(entry -> found.containsKey(entry.getKey()))
                .filter(entry ->
                        entry.getValue().slope > 0 && entry.getValue().loss == 0 && entry.getValue().followed == 1)
                .sorted(Comparator.comparingDouble(entry -> -Math.abs(
                        Objects.requireNonNull(found.get(entry.getKey())).found() - formula(entry.getValue()))))
                .limit(8)
                .forEach(entry -> System.out.println("power "
                        + percent(Objects.requireNonNull(found.get(entry.getKey()))
                                .found()) + ", formula " + percent(formula(entry.getValue())) + ": " + entry.getKey()));
        System.out.println("trials per condition: "
                + found.values().stream()
                        .mapToLong(t -> t.of(Count.TRIALS))
                        .min()
                        .orElse(0) + " to "
                + found.values().stream()
                        .mapToLong(t -> t.of(Count.TRIALS))
                        .max()
                        .orElse(0) + ", conditions "
                + found.size());
        say(
                "false findings over all",
                Map.of("all", sum(found, cells, cell -> cell.slope == 0)),
                Map.of(),
                cell -> true,
                TrialTally::found,
                1);
    }

    private static TrialTally sum(
            Map<String, TrialTally> found, Map<String, TrialDraws.Cell> cells, Predicate<TrialDraws.Cell> which) {
        TrialTally sum = new TrialTally();
        for (Map.Entry<String, TrialTally> entry : found.entrySet()) {
            TrialDraws.Cell cell = cells.get(entry.getKey());
            sum = cell != null && which.test(cell) ? sum.plus(entry.getValue().line()) : sum;
        }
        return sum;
    }

    private static void say(
            String what,
            Map<String, TrialTally> found,
            Map<String, TrialDraws.Cell> cells,
            Predicate<TrialDraws.Cell> which,
            ToDoubleFunction<TrialTally> share,
            int direction) {
        found.entrySet().stream()
                .filter(entry -> !cells.containsKey(entry.getKey())
                        || which.test(Objects.requireNonNull(cells.get(entry.getKey()))))
                .sorted(Comparator.comparingDouble(entry -> direction * share.applyAsDouble(entry.getValue())))
                .limit(4)
                .forEach(entry -> System.out.println(
                        what + " " + percent(share.applyAsDouble(entry.getValue())) + ": " + entry.getKey()));
    }

    /** The formula's power for a slope of 1/6 point per degree, with the noise of the draws. */
    static double formula(TrialDraws.Cell cell) {
        double variance = 0.04 + 0.04 + 0.25 * SLOPE * SLOPE + 0.0625 / 2 + (0.3725 + 0.0625 / 12) / (2 * cell.cuppers);
        double squares = (cell.size == 4 ? 2.75 : 2) * 1.5 * 1.5;
        return new TrialPower(SLOPE, variance, cell.size, squares, 0.05).at(cell.sets);
    }

    private static String percent(double share) {
        return Double.isNaN(share) ? "-" : String.format(Locale.ROOT, "%.1f", 100 * share);
    }
}
