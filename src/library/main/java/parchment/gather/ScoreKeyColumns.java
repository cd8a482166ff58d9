package parchment.gather;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Settles the columns that a cup is known by as their headings say, where their values do not speak against it. */
final class ScoreKeyColumns {
    /** Nobody scores so many things of one cup, or so many words beside the scores; common practice, no source. */
    private static final int MOST_ATTRIBUTES = 400;

    private final ScoreCells cells;
    private final ScoreClues clues;
    private final ScoreSurroundings around;
    private final ScoreRoles roles;
    private final SheetLanguage language;

    private ScoreKeyColumns(ScoreCells cells, ScoreClues clues, ScoreSurroundings around, ScoreRoles roles) {
        this.cells = cells;
        this.around = around;
        this.clues = clues;
        this.roles = roles;
        this.language =
                SheetLanguage.of(cells.heads().stream().map(ScoreHead::written).toList());
    }

    static void settle(ScoreCells cells, ScoreClues clues, ScoreSurroundings around, ScoreRoles roles) {
        ScoreKeyColumns columns = new ScoreKeyColumns(cells, clues, around, roles);
        for (int i = 0; i < cells.width(); i++) {
            columns.heading(i);
        }
        columns.lineNumbers();
        columns.attributeColumn();
    }

    private void heading(int column) {
        Optional<ScorePart> stated = Optional.ofNullable(
                        clues.stated().get(cells.table().headings().get(column)))
                .flatMap(ScorePart::of);
        String written = cells.written(column);
        Optional<ScorePart> part = stated.or(() -> ScoreWords.key(written));
        boolean numbers = cells.numbers(column) >= ScoreCells.MOST;
        if (stated.isPresent() && (stated.get() == ScorePart.SCORE || stated.get() == ScorePart.ATTRIBUTE && numbers)) {
            roles.score(column);
        } else if (stated.filter(p -> p == ScorePart.OTHER).isPresent()) {
            roles.other(column);
        } else if (part.isPresent() && !cells.isEmpty(column)) {
            if (stated.isPresent() || language.allows(written) || fits(column, part.get())) {
                key(column, part.get(), numbers, stated.isPresent());
            }
        } else if (ScoreWords.isAttribute(written)
                && !numbers
                && cells.numbers(column) < 0.3
                && !cells.isEmpty(column)
                && cells.heads().get(column).parts().size() == 1
                && ScoreWords.plain(written).matches(".*\\b(notes?|comments?|kommentar\\w*|notas?|note)\\b.*")) {
            roles.note(column);
        }
    }

    /** Returns whether the values say by themselves what the heading says. */
    private boolean fits(int column, ScorePart part) {
        return switch (part) {
            case BATCH -> batches(column) > 0.5;
            case DAY, ROASTED -> isDays(column);
            default -> false;
        };
    }

    private void key(int column, ScorePart part, boolean numbers, boolean stated) {
        ScorePart meant = part;
        if (part == ScorePart.ROASTED && !isDays(column) && ScoreWords.isBareRoasted(cells.written(column))) {
            return;
        }
        if (part == ScorePart.NOTE) {
            if (!numbers) {
                roles.note(column);
            }
            return;
        }
        if ((part == ScorePart.CUPPER || part == ScorePart.ATTRIBUTE) && numbers && !stated) {
            return;
        }
        boolean open =
                part == ScorePart.LOT || part == ScorePart.CODE && !ScoreWords.isCodeAlone(cells.written(column));
        if (open && !stated && batches(column) > 0.5) {
            meant = ScorePart.BATCH;
        } else if (part == ScorePart.CUPPING && isDays(column)) {
            meant = ScorePart.DAY;
        } else if (part == ScorePart.BATCH && !stated && isDays(column) && !isBareNumber(column)) {
            meant = ScorePart.ROASTED;
        } else if (part == ScorePart.BATCH && !stated && isCodes(column)) {
            meant = ScorePart.CODE;
        } else if (part == ScorePart.CUP && !cells.mostly(column, cell -> ScoreCells.cupNumber(cell) > 0)) {
            meant = ScorePart.CODE;
        }
        Integer before = roles.keys().get(meant);
        if (before != null && isBetter(meant, column, before)) {
            roles.replace(meant, column);
        } else {
            roles.take(meant, column);
        }
    }

    // Of two columns of batches the one with known names; of two of days the one that holds days.
    private boolean isBetter(ScorePart part, int column, int before) {
        return switch (part) {
            case BATCH -> rank(column) > rank(before);
            case DAY, ROASTED -> isDays(column) && !isDays(before);
            default -> false;
        };
    }

    /** Says how well a column names batches: known names first, then a heading that says more than "number". */
    private double rank(int column) {
        return 2 * batches(column) + (isBareNumber(column) ? 0 : 1);
    }

    private double batches(int column) {
        return cells.share(column, clues.batches()::contains);
    }

    private boolean isDays(int column) {
        return cells.mostly(column, ScoreClues::isDay);
    }

    /** "No" over codes that no batch is called by is how the cups were served. */
    private boolean isCodes(int column) {
        return isBareNumber(column) && cells.mostly(column, ScoreWords::isCode) && batches(column) < 0.5;
    }

    private boolean isBareNumber(int column) {
        return ScoreWords.isBareNumber(cells.written(column));
    }

    /** Takes 1, 2, 3 … under "No" for the lines of the sheet where a code or lot names each cup. */
    private void lineNumbers() {
        Integer batch = roles.keys().get(ScorePart.BATCH);
        if (batch != null
                && isBareNumber(batch)
                && cells.isRunning(batch)
                && (roles.has(ScorePart.CODE) || roles.has(ScorePart.LOT))
                && batches(batch) < 0.5) {
            roles.keys().remove(ScorePart.BATCH);
            roles.other(batch);
        }
    }

    /** Takes the first column for attributes where batches stand side by side: words, each once, that are no names, or of a sheet of one cupper. */
    private void unknownAttributes() {
        long heads = cells.heads().stream()
                .filter(head -> head.parts().stream().map(ScoreHeads::bare).anyMatch(clues.batches()::contains))
                .count();
        boolean sideBySide = heads > 1 || !cells.table().rows().isEmpty() && isRowOfBatches(0);
        List<String> words = cells.filled(0);
        boolean each = words.size() > 1
                && Set.copyOf(words).size() == words.size()
                && words.stream().allMatch(word -> word.matches("\\p{L}[^\\d]*"));
        boolean ofOne = !around.said(ScorePart.CUPPER).isEmpty();
        if (sideBySide && each && !roles.isTaken(0) && (ofOne || words.stream().noneMatch(ScoreWords::isName))) {
            roles.take(ScorePart.ATTRIBUTE, 0);
        }
    }

    private boolean isRowOfBatches(int row) {
        List<String> there = cells.table().rows().get(row).stream()
                .map(String::strip)
                .filter(cell -> !cell.isEmpty())
                .toList();
        return there.size() > 1
                && there.stream().filter(clues.batches()::contains).count() > 0.5 * there.size();
    }

    private void attributeColumn() {
        for (int i = 0; i < cells.width() && !roles.has(ScorePart.ATTRIBUTE); i++) {
            Set<String> distinct = new HashSet<>(cells.filled(i));
            if (distinct.size() > MOST_ATTRIBUTES) {
                continue;
            }
            // "9 (fruity)" is a score, whatever word stands beside it.
            distinct.removeIf(cell -> ScoreCell.of(cell).isScore());
            long attributes = distinct.stream().filter(ScoreWords::isAttribute).count();
            long known = distinct.stream()
                    .filter(cell -> ScoreWords.isAttribute(cell)
                            || ScoreWords.isTotal(cell)
                            || ScoreWords.isScore(cell)
                            || ScoreWords.key(cell).isPresent())
                    .count();
            if (attributes >= 2
                    && known >= 0.6 * distinct.size()
                    && !roles.notes().contains(i)) {
                roles.keys().values().remove(i);
                roles.keys().put(ScorePart.ATTRIBUTE, i);
            }
        }
        if (!roles.has(ScorePart.ATTRIBUTE)) {
            unknownAttributes();
        }
        Integer attribute = roles.keys().get(ScorePart.ATTRIBUTE);
        for (int r = 0; attribute != null && r < cells.table().rows().size(); r++) {
            String label = cells.cell(r, attribute);
            if (!ScoreWords.isAttribute(label) && !ScoreWords.isTotal(label) && !ScoreWords.isScore(label)) {
                int row = r;
                ScoreWords.key(label)
                        .or(() -> label.isEmpty() && isRowOfBatches(row)
                                ? Optional.of(ScorePart.BATCH)
                                : Optional.empty())
                        .ifPresent(part -> cells.specialRows().put(row, part));
            }
        }
    }
}
