package parchment.gather;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** Settles what the parts of the headings over scores are: attributes, cuppers, batches, codes, cups. */
final class ScoreHeads {
    /** Share of the words on one level that must be attributes for the rest to be taken for them; common practice, no source. */
    private static final double ENOUGH = 0.25;

    private final ScoreColumns columns;
    private final ScoreClues clues;
    private final ScoreSurroundings around;

    private ScoreHeads(ScoreColumns columns, ScoreClues clues, ScoreSurroundings around) {
        this.columns = columns;
        this.clues = clues;
        this.around = around;
    }

    static Map<Integer, Map<ScorePart, String>> of(ScoreColumns columns, ScoreClues clues, ScoreSurroundings around) {
        return new ScoreHeads(columns, clues, around).read();
    }

    private Map<Integer, Map<ScorePart, String>> read() {
        Map<Integer, List<Integer>> byCount = new TreeMap<>();
        Map<Integer, Map<ScorePart, String>> meanings = new LinkedHashMap<>();
        for (int column : columns.scoreColumns()) {
            byCount.computeIfAbsent(columns.heads().get(column).parts().size(), n -> new ArrayList<>())
                    .add(column);
            meanings.put(column, new EnumMap<>(ScorePart.class));
        }
        for (Map.Entry<Integer, List<Integer>> alike : byCount.entrySet()) {
            boolean[] done = new boolean[alike.getKey()];
            // Levels with a word that is known come first: what is left then has fewer meanings.
            for (int pass = 0; pass < 2; pass++) {
                for (int level = 0; level < alike.getKey(); level++) {
                    if (!done[level] && (pass == 1 || isKnown(alike.getValue(), level))) {
                        done[level] = true;
                        level(alike.getValue(), level, meanings);
                    }
                }
            }
        }
        return meanings;
    }

    private boolean isKnown(List<Integer> alike, int level) {
        return parts(alike, level).stream().anyMatch(part -> known(part).isPresent());
    }

    private Set<String> parts(List<Integer> alike, int level) {
        Set<String> parts = new LinkedHashSet<>();
        alike.forEach(column -> parts.add(columns.heads().get(column).parts().get(level)));
        return parts;
    }

    private void level(List<Integer> alike, int level, Map<Integer, Map<ScorePart, String>> meanings) {
        Set<String> parts = parts(alike, level);
        boolean rowsNameAttributes = columns.keys().containsKey(ScorePart.ATTRIBUTE);
        long attributes = parts.stream().filter(ScoreWords::isAttribute).count();
        long means = parts.stream()
                .filter(part -> ScoreWords.isMean(part) || ScoreWords.isTotal(part))
                .count();
        boolean areAttributes = !rowsNameAttributes && attributes > 0 && attributes >= ENOUGH * (parts.size() - means);
        Set<ScorePart> settled = new LinkedHashSet<>();
        alike.forEach(
                column -> settled.addAll(meanings.getOrDefault(column, Map.of()).keySet()));
        boolean alone =
                areAttributes && columns.heads().get(alike.get(0)).parts().size() == 1;
        ScorePart rest = areAttributes ? ScorePart.ATTRIBUTE : unknown(parts, settled, rowsNameAttributes);
        for (int column : alike) {
            String part = columns.heads().get(column).parts().get(level);
            Map<ScorePart, String> meaning = meanings.computeIfAbsent(column, c -> new EnumMap<>(ScorePart.class));
            ScorePart is = known(part).orElse(rest);
            // Beside attributes alone, a mean is one over them, not over cuppers.
            if (is == ScorePart.MEAN && attributes >= 2 && alone && !settled.contains(ScorePart.CUPPER)) {
                is = ScorePart.ATTRIBUTE;
            }
            if (is == ScorePart.ATTRIBUTE) {
                String bare = withoutMean(part);
                if (!bare.equals(part)) {
                    meaning.put(ScorePart.MEAN, part);
                }
                meaning.put(ScorePart.ATTRIBUTE, bare);
            } else if (meaning.containsKey(is) && is != ScorePart.SCORE) {
                meaning.put(is, meaning.get(is) + " " + part);
            } else {
                meaning.put(is, is == ScorePart.CUPPER || is == ScorePart.BATCH ? bare(part) : part);
            }
        }
    }

    private Optional<ScorePart> known(String part) {
        Optional<ScorePart> stated =
                Optional.ofNullable(clues.stated().get(part)).flatMap(ScorePart::of);
        if (stated.isPresent()) {
            return stated;
        }
        if (clues.cuppers().stream().anyMatch(part::equalsIgnoreCase)) {
            return Optional.of(ScorePart.CUPPER);
        }
        if (clues.batches().contains(bare(part))) {
            return Optional.of(ScorePart.BATCH);
        }
        if (ScoreWords.cupNumber(part) > 0) {
            return Optional.of(ScorePart.CUP);
        }
        if (ScoreWords.isMean(part)) {
            return Optional.of(ScorePart.MEAN);
        }
        boolean both = ScoreWords.isTotal(part) || ScoreWords.isAttribute(part);
        return ScoreWords.isScore(part) && !both
                ? Optional.of(ScorePart.SCORE)
                : both ? Optional.of(ScorePart.ATTRIBUTE) : Optional.empty();
    }

    private ScorePart unknown(Set<String> all, Set<ScorePart> settled, boolean rowsNameAttributes) {
        List<String> parts = all.stream().filter(part -> known(part).isEmpty()).toList();
        Map<ScorePart, Integer> keys = columns.keys();
        boolean cups = keys.containsKey(ScorePart.BATCH)
                || keys.containsKey(ScorePart.CODE)
                || keys.containsKey(ScorePart.LOT)
                || keys.containsKey(ScorePart.CUP) && !rowsNameAttributes
                || settled.contains(ScorePart.BATCH)
                || settled.contains(ScorePart.CODE);
        boolean cupsAround = !(around.said(ScorePart.BATCH) + around.said(ScorePart.CODE)).isEmpty();
        boolean cuppers = keys.containsKey(ScorePart.CUPPER) || settled.contains(ScorePart.CUPPER);
        // Where it is known who filled in the sheet, its headings are not who scored.
        String by = around.said(ScorePart.CUPPER);
        boolean ofOne = clues.cuppers().stream().anyMatch(by::equalsIgnoreCase)
                && parts.stream().noneMatch(by::equalsIgnoreCase);
        boolean names = !ofOne && parts.stream().filter(ScoreWords::isName).count() >= 0.7 * parts.size();
        boolean codes = parts.stream().filter(ScoreWords::isCode).count() >= 0.7 * parts.size();
        boolean digits = parts.stream().filter(p -> p.matches(".*\\d.*")).count() >= 0.7 * parts.size();
        boolean attributes = rowsNameAttributes || settled.contains(ScorePart.ATTRIBUTE);
        if (!cups && (codes || digits)) {
            return codes && !parts.stream().allMatch(p -> p.matches("\\d+")) ? ScorePart.CODE : ScorePart.BATCH;
        }
        if (!cuppers
                && names
                && (cups || cupsAround || around.said(ScorePart.CUPPER).isEmpty())) {
            return ScorePart.CUPPER;
        }
        if (!cups && !cupsAround && attributes) {
            return ScorePart.BATCH;
        }
        return attributes ? cuppers ? ScorePart.OTHER : ScorePart.CUPPER : ScorePart.ATTRIBUTE;
    }

    /** Returns a name without the word for what it names before it, as in "Batch 101". */
    static String bare(String part) {
        return part.replaceFirst(
                        "(?iu)^(batch|charge|roast|cupper|taster|verkoster|catador|torra|tueste)(\\s*(no|nr|number|nummer|n)\\b[.°º]?)?\\s*[:#]?\\s+(?=\\S)",
                        "")
                .replaceFirst("^#\\s*", "");
    }

    /** Returns the words of a heading without one that says it is a mean. */
    private static String withoutMean(String part) {
        List<String> left = new ArrayList<>();
        for (String word : part.split("\\s+")) {
            if (!ScoreWords.isMean(word.replaceAll("[().]", ""))) {
                left.add(word);
            }
        }
        return left.isEmpty() ? part : String.join(" ", left);
    }
}
