package parchment.trial;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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
        System.out.println(
                "| sets x size | cuppers | followed | lots | lost | false | power | formula | assigned held | achieved held | not bounded | bounds held |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        Map<String, TrialDraws.Cell> cells = cells();
        for (Map.Entry<String, TrialDraws.Cell> entry : cells.entrySet()) {
            TrialDraws.Cell cell = entry.getValue();
            if (cell.slope != 0) {
                continue;
            }
            TrialTally none = found.get(entry.getKey());
            TrialTally some = found.get(entry.getKey().replace("slope 0", "slope 1/6"));
            if (none == null || some == null) {
                continue;
            }
            System.out.printf(
                    Locale.ROOT,
                    "| %d x %d | %d | %.0f %% | %d | %.0f %% | %s | %s | %s | %s / %s | %s / %s | %s / %s | %s |%n",
                    cell.sets,
                    cell.size,
                    cell.cuppers,
                    100 * cell.followed,
                    cell.lots,
                    100 * cell.loss,
                    percent(none.found()),
                    percent(some.found()),
                    cell.followed == 1 && cell.loss == 0 ? percent(formula(cell)) : "-",
                    percent(none.held()),
                    percent(some.held()),
                    percent(none.share(Count.ACHIEVED_HELD, Count.READ)),
                    percent(some.share(Count.ACHIEVED_HELD, Count.READ)),
                    percent(none.share(Count.NOT_BOUNDED, Count.READ)),
                    percent(some.share(Count.NOT_BOUNDED, Count.READ)),
                    cell.loss == 0
                            ? "-"
                            : percent(none.share(Count.BOUNDS_HELD, Count.BOUNDED)) + " / "
                                    + percent(some.share(Count.BOUNDS_HELD, Count.BOUNDED)));
        }
        long fewest =
                found.values().stream().mapToLong(t -> t.of(Count.TRIALS)).min().orElse(0);
        System.out.println("\nTrials per condition: at least " + fewest + ", conditions: " + found.size());
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
