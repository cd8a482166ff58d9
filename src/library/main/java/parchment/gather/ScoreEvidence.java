package parchment.gather;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.gather.ScoreSheet.Confidence;
import parchment.sheet.Words;

/** Weighs whether a table holds scores: by the trade's words, and by what scores do, which is to lie on a few steps of a short scale. */
final class ScoreEvidence {
    private final boolean scores;
    private final Confidence confidence;
    private final String reason;
    private final List<String> open = new ArrayList<>();

    private ScoreEvidence(boolean scores, Confidence confidence, String reason) {
        this.scores = scores;
        this.confidence = confidence;
        this.reason = reason;
    }

    static ScoreEvidence of(ScoreColumns columns, ScoreClues clues, ScoreSurroundings around) {
        Set<String> attributes = new HashSet<>();
        Set<String> cuppers = new HashSet<>();
        boolean called = false;
        boolean means = false;
        for (Map<ScorePart, String> meaning : columns.meanings().values()) {
            String attribute = meaning.getOrDefault(ScorePart.ATTRIBUTE, "");
            if (ScoreWords.isAttribute(attribute)) {
                attributes.add(attribute);
            }
            called |= meaning.containsKey(ScorePart.SCORE) || ScoreWords.isTotal(attribute);
            means |= meaning.containsKey(ScorePart.MEAN);
            if (meaning.containsKey(ScorePart.CUPPER)) {
                cuppers.add(meaning.get(ScorePart.CUPPER));
            }
        }
        Integer rows = columns.keys().get(ScorePart.ATTRIBUTE);
        for (int r = 0; rows != null && r < columns.table().rows().size(); r++) {
            if (ScoreWords.isAttribute(columns.cell(r, rows))) {
                attributes.add(columns.cell(r, rows));
            }
        }
        if (!around.said(ScorePart.ATTRIBUTE).isEmpty()) {
            attributes.add(around.said(ScorePart.ATTRIBUTE));
        }
        long against = columns.heads().stream()
                .filter(head -> ScoreWords.speaksAgainst(head.written()))
                .count();
        boolean cups = Set.of(ScorePart.BATCH, ScorePart.CODE, ScorePart.LOT).stream()
                .anyMatch(part -> columns.keys().containsKey(part)
                        || columns.specialRows().containsValue(part)
                        || columns.meanings().values().stream().anyMatch(m -> m.containsKey(part))
                        || !around.said(part).isEmpty());
        boolean person = columns.keys().containsKey(ScorePart.CUPPER)
                || columns.keys().containsKey(ScorePart.CODE)
                || cuppers.stream().anyMatch(name -> clues.cuppers().stream().anyMatch(name::equalsIgnoreCase));
        if (columns.scoreColumns().isEmpty() || against > attributes.size() || !cups && attributes.size() < 2) {
            return new ScoreEvidence(false, Confidence.DOUBTFUL, "");
        }
        boolean ofOne =
                around.isCalledCupping() && !around.said(ScorePart.CUPPER).isEmpty();
        Steps steps = Steps.of(columns);
        called |= means && steps.few();
        boolean named = around.isCalledCupping() && cuppers.size() >= 2;
        if (attributes.size() >= 2) {
            return new ScoreEvidence(
                    true,
                    // Means lie on no steps, but nothing that is weighed or measured bears these names.
                    steps.few() || against == 0 ? Confidence.CLEAR : Confidence.LIKELY,
                    "It names " + Words.some(attributes.stream().sorted().toList())
                            + (steps.few() ? ", scored in few steps" : ""));
        }
        if (attributes.size() + (called ? 1 : 0) > 0 && (against == 0 || person)) {
            return new ScoreEvidence(
                    true,
                    (person || named && means) && steps.few() ? Confidence.CLEAR : Confidence.LIKELY,
                    "Its headings say that it holds scores" + (person ? ", and by whom or under which code" : ""));
        }
        boolean names = cuppers.size() >= 2 || person || ofOne;
        boolean few = steps.few() || around.isCalledCupping() && steps.onAGrid();
        if (names && cups && against == 0 && few) {
            ScoreEvidence found = new ScoreEvidence(
                    true,
                    named ? Confidence.CLEAR : person ? Confidence.LIKELY : Confidence.DOUBTFUL,
                    "Numbers on few steps of one scale stand "
                            + (cuppers.isEmpty()
                                    ? "beside batches or codes and who scored them"
                                    : "under what look like names")
                            + (named ? ", and it is called a cupping" : ""));
            if (!person && !cuppers.isEmpty()) {
                found.open.add("Are " + Words.some(cuppers.stream().sorted().toList())
                        + " cuppers, and their numbers overall scores?");
            }
            return found;
        }
        return cups && against == 0 && few
                ? unknown(columns, around)
                : new ScoreEvidence(false, Confidence.DOUBTFUL, "");
    }

    /** Weighs two columns or more under words that nobody knows, beside batches: they are scores if they lie as scores do. */
    private static ScoreEvidence unknown(ScoreColumns columns, ScoreSurroundings around) {
        List<String> words = columns.meanings().values().stream()
                .map(meaning -> meaning.getOrDefault(ScorePart.ATTRIBUTE, ""))
                .filter(word -> !word.isEmpty())
                .distinct()
                .toList();
        if (words.size() < 2) {
            return new ScoreEvidence(false, Confidence.DOUBTFUL, "");
        }
        ScoreEvidence found = new ScoreEvidence(
                true,
                around.isCalledCupping() ? Confidence.LIKELY : Confidence.DOUBTFUL,
                "Numbers on few steps of one scale stand beside batches or codes"
                        + (around.isCalledCupping() ? ", and it is called a cupping" : ""));
        if (!around.isCalledCupping()) {
            found.open.add("Are " + Words.all(words) + " attributes, and their numbers scores?");
        }
        return found;
    }

    /** Holds how scores lie: on quarter, half, tenth or whole steps, with many ties. */
    private record Steps(boolean few, boolean onAGrid) {
        /** Scores all on quarters, some between whole numbers, that are too many to lie there by chance; common practice, no source. */
        private static final int NO_CHANCE = 6;

        static Steps of(ScoreColumns columns) {
            List<Double> all = new ArrayList<>();
            for (int column : columns.scoreColumns()) {
                boolean mean = columns.meanings().getOrDefault(column, Map.of()).containsKey(ScorePart.MEAN);
                for (int row = 0; !mean && row < columns.table().rows().size(); row++) {
                    ScoreCell cell = ScoreCell.of(columns.cell(row, column));
                    if (cell.isScore() && !columns.specialRows().containsKey(row)) {
                        all.add(cell.score());
                    }
                }
            }
            long grid =
                    all.stream().filter(s -> isStep(4 * s) || isStep(10 * s)).count();
            int distinct = all.stream().collect(Collectors.toSet()).size();
            boolean quarters = all.size() >= NO_CHANCE
                    && all.stream().allMatch(s -> isStep(4 * s))
                    && !all.stream().allMatch(Steps::isStep);
            boolean onAGrid = grid >= 0.9 * all.size();
            return new Steps(onAGrid && (all.size() < 6 || quarters || distinct <= 0.75 * all.size()), onAGrid);
        }

        private static boolean isStep(double value) {
            return Math.abs(value - Math.rint(value)) < 1e-6;
        }
    }

    boolean isScores() {
        return scores;
    }

    Confidence confidence() {
        return confidence;
    }

    String reason() {
        return reason;
    }

    List<String> open() {
        return open;
    }
}
