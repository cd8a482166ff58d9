package parchment.gather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import parchment.logbook.contents.AssumedScale;

/**
 * Settles which columns hold scores: numbers from 0 to 100 under a word that is an attribute's, or under any word if they lie on the scale of the columns
 * beside them.
 */
final class ScoreNumberColumns {
    /** Share of a column's numbers that must lie on the scale of the columns beside it; common practice, no source. */
    static final double ON_THE_SCALE = 0.5;

    private final ScoreCells cells;
    private final ScoreClues clues;
    private final ScoreRoles roles;

    private ScoreNumberColumns(ScoreCells cells, ScoreClues clues, ScoreRoles roles) {
        this.cells = cells;
        this.clues = clues;
        this.roles = roles;
    }

    static void settle(ScoreCells cells, ScoreClues clues, ScoreRoles roles) {
        new ScoreNumberColumns(cells, clues, roles).settle();
    }

    private void settle() {
        Optional<Integer> batches = batches();
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < cells.width(); i++) {
            if (!roles.isTaken(i) && !batches.equals(Optional.of(i)) && holdsScores(i)) {
                found.add(i);
            }
        }
        double[] scale = scale(found);
        for (int column : found) {
            if (isKnown(column) || isOn(column, scale)) {
                roles.score(column);
            }
        }
    }

    /** Returns the column that names batches though its heading does not say so: the one with most different names, the first of them. */
    private Optional<Integer> batches() {
        Optional<Integer> best = Optional.empty();
        for (int i = 0; i < cells.width(); i++) {
            boolean known = cells.canNameBatches(i, clues.batches());
            if (!roles.has(ScorePart.BATCH)
                    && !roles.isTaken(i)
                    && known
                    && !ScoreWords.isAttribute(cells.written(i))
                    && (best.isEmpty() || different(i) > different(best.get()))) {
                best = Optional.of(i);
            }
        }
        return best;
    }

    private long different(int column) {
        return cells.filled(column).stream().distinct().count();
    }

    private boolean holdsScores(int column) {
        String written = cells.written(column);
        boolean numbers = cells.numbers(column) >= (ScoreWords.isAttribute(written) ? 0.5 : ScoreCells.MOST);
        boolean bounded = cells.mostly(column, cell -> {
            ScoreCell read = ScoreCell.of(cell);
            return !read.isScore() || read.score() >= 0 && read.score() <= 100;
        });
        // Rows that say what each column is stand for headings.
        boolean headed = !cells.heads().get(column).parts().isEmpty()
                || ScoreRoles.NAMES_OF_CUPS.stream().anyMatch(cells.specialRows()::containsValue);
        return numbers && bounded && headed && !ScoreWords.speaksAgainst(written) && !cells.isRunning(column);
    }

    private boolean isKnown(int column) {
        return cells.specialRows().size() > 0
                || cells.heads().get(column).parts().stream()
                        .anyMatch(part -> ScoreWords.isAttribute(part)
                                || ScoreWords.isTotal(part)
                                || ScoreWords.isMean(part)
                                || ScoreWords.isScore(part)
                                || ScoreWords.cupNumber(part) > 0
                                || clues.batches().contains(ScoreHeads.bare(part))
                                || clues.cuppers().stream().anyMatch(part::equalsIgnoreCase)
                                || clues.stated().containsKey(part));
    }

    /** Returns the ends of the scale that the columns share: that of attributes where some are known, else that of most columns. */
    private double[] scale(List<Integer> columns) {
        List<Integer> attributes = columns.stream()
                .filter(column -> cells.heads().get(column).parts().stream().anyMatch(ScoreWords::isAttribute))
                .toList();
        if (!attributes.isEmpty()) {
            double[] all = attributes.stream()
                    .flatMapToDouble(column -> Arrays.stream(cells.scores(column)))
                    .toArray();
            return new double[] {0, AssumedScale.of(all).top()};
        }
        Map<Double, Long> tops = columns.stream()
                .collect(Collectors.groupingBy(
                        column -> AssumedScale.of(cells.scores(column)).top(),
                        LinkedHashMap::new,
                        Collectors.counting()));
        return new double[] {
            0,
            tops.entrySet().stream()
                    .max(Map.Entry.<Double, Long>comparingByValue()
                            .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                    .map(Map.Entry::getKey)
                    .orElse(100.0)
        };
    }

    private boolean isOn(int column, double[] scale) {
        double[] scores = cells.scores(column);
        long on = Arrays.stream(scores)
                .filter(score -> score >= scale[0] && score <= scale[1])
                .count();
        return on >= ON_THE_SCALE * scores.length;
    }
}
