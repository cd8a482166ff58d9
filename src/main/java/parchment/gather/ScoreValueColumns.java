package parchment.gather;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Settles the columns whose headings say nothing by their values: names of batches, cuppers, days, codes. */
final class ScoreValueColumns {
    /** Share of the rows in which a column must be filled, and a cupper and a cup stand together once only; common practice, no source. */
    static final double ALL = 0.9;

    /** Share of the cups that each name must stand beside on the average; common practice, no source. */
    static final double BESIDE = 0.5;

    private final ScoreCells cells;
    private final ScoreClues clues;
    private final ScoreRoles roles;

    private ScoreValueColumns(ScoreCells cells, ScoreClues clues, ScoreRoles roles) {
        this.cells = cells;
        this.clues = clues;
        this.roles = roles;
    }

    static void settle(ScoreCells cells, ScoreClues clues, ScoreRoles roles) {
        ScoreValueColumns columns = new ScoreValueColumns(cells, clues, roles);
        columns.batches();
        for (int i = 0; i < cells.width(); i++) {
            if (!roles.isTaken(i) && !cells.isEmpty(i)) {
                columns.column(i);
            }
        }
        columns.cuppers();
    }

    /** Takes a column of known names for the batches before one that is only called so. */
    private void batches() {
        Integer called = roles.keys().get(ScorePart.BATCH);
        for (int i = 0; i < cells.width() && called != null; i++) {
            if (!roles.isTaken(i)
                    && cells.share(i, clues.batches()::contains) > 0.5
                    && cells.share(called, clues.batches()::contains) == 0) {
                roles.replace(ScorePart.BATCH, i);
                return;
            }
        }
    }

    private void column(int i) {
        Predicate<String> cups = cell -> ScoreWords.cupNumber(cell) > 0;
        String written = cells.written(i);
        if (cells.share(i, clues.batches()::contains) > 0.5) {
            roles.take(ScorePart.BATCH, i);
        } else if (cells.share(i, cell -> clues.cuppers().stream().anyMatch(cell::equalsIgnoreCase)) > 0.5) {
            roles.take(ScorePart.CUPPER, i);
        } else if (cells.mostly(i, ScoreClues::isDay)) {
            roles.take(ScorePart.DAY, i);
        } else if (cells.mostly(i, cups)) {
            roles.take(ScorePart.CUP, i);
        } else if (written.isEmpty()
                && i == 0
                && !cells.isRunning(i)
                && cells.mostly(i, cell -> cell.matches("#?\\d{1,6}"))) {
            roles.take(ScorePart.BATCH, i);
        } else if (cells.mostly(i, ScoreWords::isCode)
                && (written.isEmpty() || !roles.has(ScorePart.BATCH))
                && !ScoreWords.speaksAgainst(written)) {
            roles.take(ScorePart.CODE, i);
        }
    }

    /** Takes names that stand once beside each cup, and beside many cups, for those who scored. */
    private void cuppers() {
        Optional<Integer> named = List.of(ScorePart.BATCH, ScorePart.CODE, ScorePart.LOT).stream()
                .filter(roles::has)
                .findFirst()
                .map(part -> roles.keys().getOrDefault(part, 0));
        for (int i = 0; i < cells.width() && named.isPresent(); i++) {
            if (!roles.has(ScorePart.CUPPER)
                    && !roles.isTaken(i)
                    && cells.mostly(i, ScoreValueColumns::canBeAPerson)
                    && crosses(i, named.get())) {
                roles.take(ScorePart.CUPPER, i);
            }
        }
    }

    private static boolean canBeAPerson(String cell) {
        return cell.matches("\\p{L}[\\p{L}\\p{M}'’.-]*( \\p{L}[\\p{L}\\p{M}'’.-]*){0,2}") && !ScoreWords.isMean(cell);
    }

    /** Returns whether each name stands once beside a cup, several beside one cup, and each beside many. */
    private boolean crosses(int column, int cups) {
        Map<String, Set<String>> byName = new LinkedHashMap<>();
        Set<String> named = new HashSet<>();
        int filled = 0;
        int once = 0;
        for (int row = 0; row < cells.table().rows().size(); row++) {
            String name = cells.cell(row, column);
            String cup = cells.cell(row, cups);
            if (!cup.isEmpty() && !name.isEmpty() && !ScoreWords.isMean(name) && !ScoreWords.isMean(cup)) {
                filled++;
                named.add(cup);
                once += byName.computeIfAbsent(name, n -> new HashSet<>()).add(cup) ? 1 : 0;
            }
        }
        long rows = cells.filled(cups).size();
        return byName.size() >= 2
                && filled >= ALL * rows
                && once >= ALL * filled
                && once > named.size()
                && once >= BESIDE * named.size() * byName.size();
    }
}
