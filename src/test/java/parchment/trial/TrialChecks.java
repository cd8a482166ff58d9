package parchment.trial;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.Locale;
import parchment.stats.ReferenceData;
import parchment.trial.TrialTally.Count;
import parchment.trial.TrialTally.Part;

/**
 * Prints every row of the outside simulations beside the same row on drawn trials of our own; the second table of docs/measurements/coin-flip.md.
 *
 * <p>Argument: trials per row.
 */
final class TrialChecks {
    private TrialChecks() {}

    private static double slope(JsonObject row) {
        double slope = row.get("slope").getAsDouble();
        return slope == 0.167 ? 1.0 / 6 : slope == 0.333 ? 1.0 / 3 : slope;
    }

    private static double number(JsonObject row, String... names) {
        for (String name : names) {
            if (row.has(name)) {
                return row.get(name).getAsDouble();
            }
        }
        return Double.NaN;
    }

    public static void main(String[] arguments) {
        int trials = Integer.parseInt(arguments[0]);
        System.out.println("| row | found | assigned held | achieved held | not bounded | bounds held |");
        System.out.println("| --- | --- | --- | --- | --- | --- |");
        for (String check : new String[] {
            "coin_flip_null",
            "coin_flip_power_simulated",
            "coin_flip_sets_of_two",
            "coin_flip_compliance_simulated",
            "coin_flip_lost",
            "coin_flip_unblinding"
        }) {
            for (JsonElement element :
                    ReferenceData.expected("coin-flip", check).getAsJsonArray("expected")) {
                JsonObject row = element.getAsJsonObject();
                row(check.substring(10), row, cell(check, row), trials);
            }
        }
    }

    private static TrialDraws.Cell cell(String check, JsonObject row) {
        TrialDraws.Cell cell = new TrialDraws.Cell();
        cell.slope = row.has("slope") ? slope(row) : check.endsWith("compliance_simulated") ? 1.0 / 6 : 0;
        cell.cuppers = row.has("cuppers") ? row.get("cuppers").getAsInt() : 3;
        cell.followed = row.has("follow") ? row.get("follow").getAsDouble() : 1;
        cell.hope = row.has("hope") ? row.get("hope").getAsDouble() : 0;
        cell.size = row.has("size") ? row.get("size").getAsInt() : 3;
        cell.sets = row.has("sets") ? row.get("sets").getAsInt() : 12;
        cell.levels = check.endsWith("sets_of_two") ? 2 : 3;
        if (row.has("batches") || row.has("hope")) {
            cell.size = 4;
            cell.sets = row.has("batches") ? row.get("batches").getAsInt() / 4 : 8;
        }
        if (row.has("mode")) {
            cell.loss = row.get("rate").getAsDouble();
            cell.how = switch (row.get("mode").getAsString()) {
                case "dark" -> TrialDraws.Loss.DARK;
                case "bad" -> TrialDraws.Loss.POOR;
                default -> TrialDraws.Loss.RANDOM;
            };
        }
        return cell;
    }

    private static void row(String check, JsonObject row, TrialDraws.Cell cell, int trials) {
        boolean lost = row.has("mode");
        TrialTally tally = TrialTally.of(
                cell, 500_000, trials, lost ? List.of(Part.ACHIEVED, Part.BOUNDS) : List.of(Part.ACHIEVED));
        String what = String.format(
                Locale.ROOT,
                "%s: %d x %d, cuppers %d, slope %.3f%s%s%s",
                check.replace('_', ' '),
                cell.sets,
                cell.size,
                cell.cuppers,
                cell.slope,
                cell.followed < 1 ? String.format(Locale.ROOT, ", followed %.0f %%", 100 * cell.followed) : "",
                lost
                        ? String.format(
                                Locale.ROOT,
                                ", lost %s %.0f %%",
                                row.get("mode").getAsString(),
                                100 * cell.loss)
                        : "",
                cell.hope > 0 ? ", hope " + cell.hope : "");
        System.out.printf(
                Locale.ROOT,
                "| %s | %s | %s | %s | %s | %s |%n",
                what,
                both(
                        number(row, "power", "as_assigned_power", "false", "false_findings", "randomisation"),
                        tally.found()),
                both(number(row, "cover90", "as_assigned_cover90", "cov"), tally.held()),
                both(number(row, "ar_cover90", "ar90"), tally.share(Count.ACHIEVED_HELD, Count.READ)),
                both(number(row, "ar_not_bounded", "not_bounded"), tally.share(Count.NOT_BOUNDED, Count.READ)),
                lost ? both(number(row, "bound_cov"), tally.share(Count.BOUNDS_HELD, Count.BOUNDED)) : "");
    }

    private static String both(double outside, double ours) {
        return Double.isNaN(outside)
                ? String.format(Locale.ROOT, "%.1f", 100 * ours)
                : String.format(Locale.ROOT, "%.1f (%.1f)", 100 * ours, 100 * outside);
    }
}
