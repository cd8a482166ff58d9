package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.gather.ScoreSheet.Served;
import parchment.sheet.Words;

/**
 * Reads tables of scores, whatever their layout. Each score belongs to a cup, a cupper and an attribute; each of these stands in a column
 * of its own, in the headings, above the table or in its name, and no layout is preferred.
 */
final class ScoreSheets {
    /** Says that cups have no day of tasting. */
    static final String WHICH_DAY = "On which day was this tasted? Cups without a day of tasting cannot be written.";

    private ScoreSheets() {}

    /** Returns the cups of a table, or nothing if it is no score sheet. */
    static Optional<ScoreSheet> of(FoundTable table, ScoreClues clues) {
        ScoreSurroundings around = ScoreSurroundings.of(table, clues);
        ScoreColumns columns = ScoreColumns.of(table, clues, around);
        ScoreEvidence evidence = ScoreEvidence.of(columns, clues, around);
        if (!evidence.isScores()) {
            return Optional.empty();
        }
        ScoreReading reading = ScoreReading.of(columns, around);
        ScoreTotals totals = ScoreTotals.of(reading.cups());
        ScoreTasted tasted = new ScoreTasted(columns, around);
        RepeatedCups repeated = RepeatedCups.of(tasted.of(totals.cups()));
        List<TastedCup> cups = repeated.cups();
        if (cups.isEmpty()) {
            return Optional.empty();
        }
        ScoreScales scales = ScoreScales.of(cups, reading.scales(), around.scale());
        List<String> told = new ArrayList<>(around.leftOut(table));
        told.addAll(around.told());
        told.addAll(columns.told());
        told.addAll(reading.told());
        told.addAll(totals.told());
        told.addAll(repeated.told());
        told.addAll(scales.told());
        List<String> open = new ArrayList<>(evidence.open());
        open.addAll(columns.open());
        open.addAll(tasted.open());
        open.addAll(repeated.open());
        open.addAll(missing(cups, tasted.open().isEmpty()));
        open.addAll(scales.open());
        boolean codes = cups.stream()
                .allMatch(cup -> !cup.code().isEmpty()
                        && cup.batch().isEmpty()
                        && cup.lot().isEmpty());
        return Optional.of(new ScoreSheet(
                table,
                cups,
                scales.scales(),
                evidence.confidence(),
                evidence.reason() + ": " + summary(cups) + ".",
                codes ? Served.CODES_ALONE : Served.NAMED,
                told,
                open));
    }

    private static List<String> missing(List<TastedCup> cups, boolean daysRead) {
        List<String> open = new ArrayList<>();
        if (daysRead && waiting(cups) > 0) {
            open.add(WHICH_DAY);
        }
        if (cups.stream().anyMatch(cup -> cup.cupper().isEmpty())) {
            open.add(WhoScored.OPEN + " Without an answer the cupper is written as '" + CuppingsWriter.PANEL
                    + "', as for means over cuppers.");
        }
        List<String> nameless = cups.stream()
                .filter(cup -> cup.batch().isEmpty()
                        && cup.code().isEmpty()
                        && cup.lot().isEmpty())
                .map(cup -> String.valueOf(cup.line()))
                .distinct()
                .toList();
        if (!nameless.isEmpty()) {
            open.add("Which batch is each cup of? " + (nameless.size() == 1 ? "Line " : "Lines ")
                    + String.join(", ", nameless) + (nameless.size() == 1 ? " names" : " name")
                    + " no batch, code or lot.");
        }
        return open;
    }

    /** Returns how many cups wait for their day of tasting; where cuppers are named, a row of nobody's may be a mean, and has no day. */
    static long waiting(List<TastedCup> cups) {
        boolean named = cups.stream().anyMatch(cup -> !cup.cupper().isEmpty());
        return cups.stream()
                .filter(cup ->
                        cup.tastedOn().isEmpty() && !(named && cup.cupper().isEmpty()))
                .count();
    }

    private static String summary(List<TastedCup> cups) {
        Set<String> attributes = new LinkedHashSet<>();
        Set<String> cuppers = new LinkedHashSet<>();
        for (TastedCup cup : cups) {
            attributes.addAll(cup.scores().keySet());
            if (!cup.cupper().isEmpty()) {
                cuppers.add(cup.cupper());
            }
        }
        long batches = cups.stream()
                .map(cup -> Map.of("b", cup.batch(), "c", cup.code(), "l", cup.lot()))
                .distinct()
                .count();
        return Words.some(attributes) + " of " + Words.count(batches, "batch or code", "batches or codes") + " by "
                + (cuppers.isEmpty() ? "nobody named" : Words.some(cuppers));
    }
}
