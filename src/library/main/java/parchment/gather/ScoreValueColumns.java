package parchment.gather;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import parchment.sheet.Words;

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
                    && cells.canNameBatches(i, clues.batches())
                    && cells.share(called, clues.batches()::contains) == 0) {
                roles.replace(ScorePart.BATCH, i);
                return;
            }
        }
    }

    private void column(int i) {
        Predicate<String> cups = cell -> ScoreWords.cupNumber(cell) > 0;
        String written = cells.written(i);
        if (cells.canNameBatches(i, clues.batches())) {
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

    /** Takes words that stand once beside each cup, and beside many cups, for those who scored, or for attributes. */
    private void cuppers() {
        Optional<Integer> named = ScoreRoles.NAMES_OF_CUPS.stream()
                .filter(roles::has)
                .min(Comparator.naturalOrder())
                .map(part -> roles.keys().getOrDefault(part, 0));
        if (named.isEmpty() || roles.has(ScorePart.CUPPER)) {
            return;
        }
        List<Integer> words = new ArrayList<>();
        for (int i = 0; i < cells.width(); i++) {
            if (!roles.isTaken(i) && cells.mostly(i, ScoreValueColumns::canBeAPerson)) {
                words.add(i);
            }
        }
        for (int column : words) {
            if (crosses(named.get(), List.of(column))) {
                one(column);
                return;
            }
        }
        for (int column : words) {
            for (int other : words) {
                if (areNames(column) && isNoName(other) && crosses(named.get(), List.of(column, other))) {
                    roles.take(ScorePart.CUPPER, column);
                    if (!roles.has(ScorePart.ATTRIBUTE)) {
                        roles.take(ScorePart.ATTRIBUTE, other);
                    }
                    return;
                }
            }
        }
    }

    private void one(int column) {
        List<String> heads = roles.scores().stream()
                .flatMap(score -> cells.heads().get(score).parts().stream())
                .toList();
        boolean people = heads.size() > 1 && heads.stream().allMatch(ScoreWords::isName);
        boolean known = roles.has(ScorePart.ATTRIBUTE)
                || heads.stream()
                        .anyMatch(head ->
                                ScoreWords.isAttribute(head) || ScoreWords.isScore(head) || ScoreWords.isTotal(head));
        if (people && isNoName(column) && !known) {
            roles.take(ScorePart.ATTRIBUTE, column);
            return;
        }
        roles.take(ScorePart.CUPPER, column);
        if (!known && (people || isNoName(column))) {
            roles.ask("Are " + Words.all(new LinkedHashSet<>(cells.filled(column))) + " those who scored, and "
                    + Words.all(heads) + " attributes, or the other way round?");
        }
    }

    private boolean areNames(int column) {
        return cells.mostly(column, ScoreWords::isName);
    }

    private boolean isNoName(int column) {
        return cells.share(column, ScoreWords::isName) == 0;
    }

    private static boolean canBeAPerson(String cell) {
        return cell.matches("\\p{L}[\\p{L}\\p{M}'’.-]*( \\p{L}[\\p{L}\\p{M}'’.-]*){0,2}") && !ScoreWords.isMean(cell);
    }

    /** Returns whether the words stand together once beside a cup, each several times beside one cup, and beside many. */
    private boolean crosses(int cups, List<Integer> columns) {
        List<Map<String, Set<String>>> byWord = new ArrayList<>();
        columns.forEach(column -> byWord.add(new LinkedHashMap<>()));
        Set<String> named = new HashSet<>();
        Set<String> together = new HashSet<>();
        int filled = 0;
        String cup = "";
        for (int row = 0; row < cells.table().rows().size(); row++) {
            cup = cells.cell(row, cups).isEmpty() ? cup : cells.cell(row, cups);
            int at = row;
            List<String> words =
                    columns.stream().map(column -> cells.cell(at, column)).toList();
            if (words.stream().anyMatch(word -> word.isEmpty() || ScoreWords.isMean(word)) || ScoreWords.isMean(cup)) {
                continue;
            }
            filled++;
            named.add(cup);
            together.add(cup + words);
            for (int i = 0; i < columns.size(); i++) {
                byWord.get(i)
                        .computeIfAbsent(words.get(i), w -> new HashSet<>())
                        .add(cup);
            }
        }
        boolean each = filled >= ALL * cells.filled(cups).size()
                && together.size() >= ALL * filled
                && named.size() > 1
                && together.size() > named.size();
        return each
                && byWord.stream()
                        .allMatch(words -> words.size() >= 2
                                && words.values().stream().mapToInt(Set::size).sum()
                                        >= BESIDE * named.size() * words.size());
    }
}
