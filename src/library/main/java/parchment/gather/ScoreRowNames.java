package parchment.gather;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.sheet.Words;

/**
 * Names the cup of each row of a table of scores, where a blank cell can go on with the one above it; rows are asked from the top.
 */
final class ScoreRowNames {
    private static final Set<ScorePart> MERGED = Set.of(
            ScorePart.BATCH,
            ScorePart.CODE,
            ScorePart.LOT,
            ScorePart.CUPPER,
            ScorePart.DAY,
            ScorePart.CUPPING,
            ScorePart.ROASTED);
    private static final Set<ScorePart> OF_ONE_CUP = Set.of(ScorePart.CUPPER, ScorePart.ATTRIBUTE, ScorePart.CUP);

    private final ScoreColumns columns;
    private final ScoreSurroundings around;
    private final Map<Integer, String> above = new LinkedHashMap<>();
    private final Map<Integer, String> carriedFrom = new LinkedHashMap<>();

    ScoreRowNames(ScoreColumns columns, ScoreSurroundings around) {
        this.columns = columns;
        this.around = around;
    }

    /** Returns what a row is known by. */
    Map<ScorePart, String> of(int row) {
        Map<ScorePart, String> known = new EnumMap<>(ScorePart.class);
        columns.keys().forEach((part, column) -> {
            String cell = columns.cell(row, column);
            if (cell.isEmpty() && MERGED.contains(part) && (isMerged(column) || goesOn(row, part, column))) {
                cell = above.getOrDefault(column, "");
                carriedFrom.putIfAbsent(column, columns.heads().get(column).written());
            }
            above.put(column, cell);
            if (!cell.isEmpty()) {
                known.put(part, cell);
            }
        });
        around.over(columns.table().lines().get(row)).forEach(known::putIfAbsent);
        return known;
    }

    private boolean isMerged(int column) {
        long blank = columns.table().rows().stream()
                .filter(r -> column >= r.size() || r.get(column).isBlank())
                .count();
        return 2 * blank >= columns.table().rows().size();
    }

    /** Returns whether a blank cell goes on with the one above: the cuppers and attributes from there on are others each. */
    private boolean goesOn(int row, ScorePart part, int column) {
        Set<String> seen = new LinkedHashSet<>();
        for (int above = row; above >= 0; above--) {
            int at = above;
            String who = OF_ONE_CUP.stream()
                    .filter(columns.keys()::containsKey)
                    .filter(other -> other != part)
                    .map(other -> columns.cell(at, columns.keys().getOrDefault(other, 0)))
                    .collect(Collectors.joining("|"));
            if (who.replace("|", "").isEmpty() || !seen.add(who)) {
                return false;
            }
            if (!columns.cell(above, column).isEmpty()) {
                return above < row;
            }
        }
        return false;
    }

    /** Returns where blank cells went on with those above, a sentence each. */
    List<String> told() {
        return carriedFrom.values().stream()
                .map(heading -> "Blank cells under " + Words.quote(heading)
                        + " are taken to go on with the cell above, as merged cells do.")
                .toList();
    }
}
