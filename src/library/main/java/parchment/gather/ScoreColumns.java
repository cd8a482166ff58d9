package parchment.gather;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.sheet.Words;

/** Settles what each column of a table of scores is: something that a cup is known by, a note, or scores. */
final class ScoreColumns {
    private final ScoreCells cells;
    private final ScoreClues clues;
    private final ScoreSurroundings around;
    private final ScoreRoles roles = new ScoreRoles();
    private Map<Integer, Map<ScorePart, String>> meanings = new LinkedHashMap<>();

    private ScoreColumns(ScoreCells cells, ScoreClues clues, ScoreSurroundings around) {
        this.cells = cells;
        this.clues = clues;
        this.around = around;
    }

    static ScoreColumns of(FoundTable table, ScoreClues clues, ScoreSurroundings around) {
        ScoreColumns columns = new ScoreColumns(ScoreCells.of(table, around), clues, around);
        ScoreKeyColumns.settle(columns.cells, clues, around, columns.roles);
        ScoreNumberColumns.settle(columns.cells, clues, columns.roles);
        ScoreValueColumns.settle(columns.cells, clues, columns.roles);
        columns.meanings = ScoreHeads.of(columns, clues, around);
        columns.people();
        columns.loneCup();
        return columns;
    }

    /** Settles columns of names, once it is known what the headings are. */
    private void people() {
        boolean headsNameCuppers = meanings.values().stream().anyMatch(m -> m.containsKey(ScorePart.CUPPER));
        for (int i = 0; i < cells.width(); i++) {
            if (roles.isTaken(i) || cells.isEmpty(i)) {
                continue;
            }
            boolean named = headsNameCups()
                    || cells.specialRows().values().stream().anyMatch(ScoreRoles.NAMES_OF_CUPS::contains)
                    || ScoreRoles.NAMES_OF_CUPS.stream().anyMatch(roles::has)
                    || isSaidAround();
            boolean names = cells.mostly(i, ScoreWords::isName);
            if (names && named && !headsNameCuppers && !roles.has(ScorePart.CUPPER)) {
                roles.take(ScorePart.CUPPER, i);
            } else if (!named && i < 2 && !ScoreWords.speaksAgainst(cells.written(i))) {
                roles.take(ScorePart.BATCH, i);
            } else {
                roles.other(i);
            }
        }
    }

    private boolean headsNameCups() {
        return meanings.values().stream()
                .anyMatch(m -> m.keySet().stream().anyMatch(ScoreRoles.NAMES_OF_CUPS::contains));
    }

    private boolean isSaidAround() {
        return ScoreRoles.NAMES_OF_CUPS.stream()
                .anyMatch(part -> !around.said(part).isEmpty());
    }

    /** A column of cups with nothing else that tells them apart holds the codes they were served under. */
    private void loneCup() {
        Integer cup = roles.keys().get(ScorePart.CUP);
        boolean named = ScoreRoles.NAMES_OF_CUPS.stream().anyMatch(roles::has)
                || isSaidAround()
                || headsNameCups()
                || roles.has(ScorePart.ROASTED)
                || cells.specialRows().values().stream().anyMatch(ScoreRoles.NAMES_OF_CUPS::contains);
        if (cup != null && !named) {
            roles.keys().remove(ScorePart.CUP);
            roles.keys().put(ScorePart.CODE, cup);
        }
    }

    Optional<LocalDate> day(String cell) {
        return clues.day(cell);
    }

    String cell(int row, int column) {
        return cells.cell(row, column);
    }

    List<ScoreHead> heads() {
        return cells.heads();
    }

    /** Returns the column of each thing that a cup is known by. */
    Map<ScorePart, Integer> keys() {
        return roles.keys();
    }

    /** Returns what the heading of each column of scores says of them. */
    Map<Integer, Map<ScorePart, String>> meanings() {
        return meanings;
    }

    List<Integer> scoreColumns() {
        return roles.scores();
    }

    /** Returns the rows of a sheet with cups side by side that hold no scores. */
    Map<Integer, ScorePart> specialRows() {
        return cells.specialRows();
    }

    List<Integer> notes() {
        return roles.notes();
    }

    List<Integer> others() {
        return roles.others();
    }

    FoundTable table() {
        return cells.table();
    }

    /** Returns what the columns leave open: a question each. */
    List<String> open() {
        return roles.open();
    }

    /** Returns what was taken for attributes without a word that is known, in a sentence; nothing if every word is. */
    List<String> told() {
        List<String> unknown = meanings.values().stream()
                .map(meaning -> meaning.getOrDefault(ScorePart.ATTRIBUTE, ""))
                .filter(word -> !word.isEmpty()
                        && !ScoreWords.isAttribute(word)
                        && !ScoreWords.isTotal(word)
                        && !ScoreWords.isMean(word)
                        && !clues.stated().containsKey(word))
                .distinct()
                .toList();
        return unknown.isEmpty()
                ? List.of()
                : List.of((unknown.size() == 1
                                ? "This is no word that is known, and is taken for an attribute: "
                                : "These are no words that are known, and are taken for attributes: ")
                        + Words.all(unknown)
                        + ". The numbers under "
                        + (unknown.size() == 1 ? "it" : "them")
                        + " lie on the scale of the sheet, one for each cup.");
    }
}
