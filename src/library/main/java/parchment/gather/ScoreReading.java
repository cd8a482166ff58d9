package parchment.gather;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.sheet.Words;

/** Goes through a table's cells and puts each into its cup. */
final class ScoreReading {
    /** Parts under which the word for a mean says that the row sums up the sheet; under the cupper it is one over cuppers. */
    private static final Set<ScorePart> NO_MEAN_OF_PEOPLE =
            Set.of(ScorePart.BATCH, ScorePart.CODE, ScorePart.LOT, ScorePart.DAY, ScorePart.CUPPING, ScorePart.CUP);

    private static final Set<String> TAKEN =
            Set.of("cupping", "tasted on", "cupper", "batch", "blind code", "cup", "serving position", "note");

    private final ScoreColumns columns;
    private final ScoreSurroundings around;
    private final Map<Map<ScorePart, String>, List<ScoredCup>> byKey = new LinkedHashMap<>();
    private final List<ScoredCup> cups = new ArrayList<>();
    private final Set<String> told = new LinkedHashSet<>();
    private final Map<String, double[]> scales = new LinkedHashMap<>();
    private final ScoreRowNames names;
    private final Map<String, Integer> signs = new LinkedHashMap<>();
    private String stroke = "";

    private ScoreReading(ScoreColumns columns, ScoreSurroundings around) {
        this.columns = columns;
        this.around = around;
        this.names = new ScoreRowNames(columns, around);
    }

    static ScoreReading of(ScoreColumns columns, ScoreSurroundings around) {
        ScoreReading reading = new ScoreReading(columns, around);
        Map<Integer, Map<ScorePart, String>> besides = reading.besides();
        for (int row = 0; row < columns.table().rows().size(); row++) {
            if (!columns.specialRows().containsKey(row)) {
                reading.row(row, besides);
            }
        }
        reading.notesAside(besides);
        return reading;
    }

    /** Returns what the rows of days, cuppers and the like say of each column. */
    private Map<Integer, Map<ScorePart, String>> besides() {
        Map<Integer, Map<ScorePart, String>> besides = new LinkedHashMap<>();
        for (int column : columns.scoreColumns()) {
            Map<ScorePart, String> more = new EnumMap<>(ScorePart.class);
            columns.specialRows().forEach((row, part) -> {
                String cell = columns.cell(row, column);
                if (part != ScorePart.NOTE && !cell.isEmpty()) {
                    more.put(part, cell);
                }
            });
            besides.put(column, more);
        }
        return besides;
    }

    private void row(int row, Map<Integer, Map<ScorePart, String>> besides) {
        int line = columns.table().lines().get(row);
        Map<ScorePart, String> known = names.of(row);
        if (known.entrySet().stream()
                .anyMatch(e -> NO_MEAN_OF_PEOPLE.contains(e.getKey())
                        && (ScoreWords.isMean(e.getValue()) || ScoreWords.isTotal(e.getValue())))) {
            told.add("Line " + line + " sums up other rows ("
                    + Words.quote(String.join(" | ", columns.table().rows().get(row))) + ") and is left out.");
            return;
        }
        if (known.containsKey(ScorePart.CUPPER) && ScoreWords.isMean(known.get(ScorePart.CUPPER))) {
            known.put(ScorePart.MEAN, known.get(ScorePart.CUPPER));
        }
        List<ScoredCup> ofRow = new ArrayList<>();
        for (int column : columns.scoreColumns()) {
            cell(row, column, line, known, besides).ifPresent(ofRow::add);
        }
        int before = cups.size();
        words(row, line, known, ofRow);
        if (ofRow.isEmpty() && cups.size() == before && !known.isEmpty()) {
            told.add("Line " + line + " holds no score: " + Words.quote(String.join(" | ", known.values())) + ".");
        }
    }

    private Optional<ScoredCup> cell(
            int row, int column, int line, Map<ScorePart, String> ofRow, Map<Integer, Map<ScorePart, String>> besides) {
        ScoreCell cell = ScoreCell.of(columns.cell(row, column));
        if (cell.kind() == ScoreCell.Kind.MISSING) {
            String sign = columns.cell(row, column);
            if (!sign.isEmpty()) {
                signs.merge(sign, 1, Integer::sum);
            }
            return Optional.empty();
        }
        Map<ScorePart, String> known = new EnumMap<>(ScorePart.class);
        known.putAll(columns.meanings().get(column));
        known.putAll(besides.get(column));
        known.putAll(ofRow);
        if (known.containsKey(ScorePart.MEAN)) {
            known.remove(ScorePart.CUPPER);
        }
        String attribute = attribute(known);
        String place =
                "Line " + line + ", " + Words.quote(columns.heads().get(column).written());
        ScoredCup cup = cup(known, attribute, line);
        if (!cell.isScore()) {
            told.add(place + ": " + Words.quote(cell.words()) + " is no score; it is kept in the note.");
            cup.notes.add(attribute + ": " + cell.words());
            return Optional.of(cup);
        }
        cup.scores.put(attribute, cell.score());
        columns.heads().get(column).scale().ifPresent(scale -> scales.putIfAbsent(attribute, scale));
        if (!Double.isNaN(cell.top())) {
            scales.putIfAbsent(attribute, new double[] {0, cell.top()});
            stroke = stroke.isEmpty() ? columns.cell(row, column) : stroke;
        }
        if (!cell.words().isEmpty()) {
            told.add(place + ": " + Words.quote(cell.words()) + " stands beside the score; it is kept in the note.");
            cup.notes.add(attribute + ": " + cell.words());
        }
        return Optional.of(cup);
    }

    private String attribute(Map<ScorePart, String> known) {
        String own = known.getOrDefault(ScorePart.ATTRIBUTE, "");
        if (own.isEmpty()) {
            own = around.use(ScorePart.ATTRIBUTE);
        }
        if (own.isEmpty()) {
            own = known.getOrDefault(ScorePart.SCORE, "overall");
        }
        ScoreHead head = ScoreHead.of(own);
        String name = String.join(" / ", head.parts())
                .toLowerCase(Locale.ROOT)
                .replaceAll("[\\[\\]]", "")
                .strip();
        String plain = ScoreWords.isTotal(name) ? "total" : TAKEN.contains(name) ? "score" : name;
        head.scale().ifPresent(scale -> scales.putIfAbsent(plain, scale));
        return plain;
    }

    private ScoredCup cup(Map<ScorePart, String> known, String attribute, int line) {
        Map<ScorePart, String> key = new EnumMap<>(ScorePart.class);
        key.putAll(known);
        key.remove(ScorePart.ATTRIBUTE);
        key.remove(ScorePart.SCORE);
        if (key.containsKey(ScorePart.MEAN)) {
            key.put(ScorePart.MEAN, "mean");
        }
        boolean long_ = columns.keys().containsKey(ScorePart.ATTRIBUTE);
        Map<ScorePart, String> sameCup = new EnumMap<>(ScorePart.class);
        sameCup.putAll(key);
        if (!long_) {
            sameCup.put(ScorePart.OTHER, String.valueOf(line));
        }
        List<ScoredCup> alike = byKey.computeIfAbsent(sameCup, k -> new ArrayList<>());
        for (ScoredCup cup : alike) {
            if (!cup.scores.containsKey(attribute)) {
                return cup;
            }
        }
        ScoredCup cup = new ScoredCup(key, line);
        alike.add(cup);
        cups.add(cup);
        return cup;
    }

    /** Puts comments and columns that are nothing known into the notes. */
    private void words(int row, int line, Map<ScorePart, String> known, List<ScoredCup> ofRow) {
        for (int column = 0; column < columns.heads().size(); column++) {
            String cell = columns.cell(row, column);
            boolean note = columns.notes().contains(column);
            boolean other = columns.others().contains(column);
            if (cell.isEmpty() || !note && !other) {
                continue;
            }
            String heading = columns.heads().get(column).written();
            boolean alone = note && columns.notes().size() == 1;
            if (other) {
                told.add("The column " + Words.quote(heading)
                        + " is nothing that a table of cups has; it is kept in the notes.");
            }
            String words = alone || heading.isEmpty() ? cell : heading + ": " + cell;
            List<ScoredCup> of = ofRow.isEmpty() ? List.of(cup(known, "", line)) : ofRow;
            of.forEach(cup -> cup.notes.add(words));
            if (of.stream().distinct().count() > 1) {
                told.add("What stands under " + Words.quote(heading)
                        + " is beside the scores of several; it is kept in the note of each of them.");
            }
        }
    }

    /** Puts rows of comments under cups that stand side by side into the notes. */
    private void notesAside(Map<Integer, Map<ScorePart, String>> besides) {
        columns.specialRows().forEach((row, part) -> {
            for (int column : columns.scoreColumns()) {
                String cell = columns.cell(row, column);
                if (part == ScorePart.NOTE && !cell.isEmpty()) {
                    Map<ScorePart, String> known = new EnumMap<>(ScorePart.class);
                    known.putAll(columns.meanings().get(column));
                    known.putAll(besides.get(column));
                    around.over(columns.table().lines().get(row)).forEach(known::putIfAbsent);
                    cup(known, "", columns.table().lines().get(row)).notes.add(cell);
                }
            }
        });
    }

    List<ScoredCup> cups() {
        return cups;
    }

    Map<String, double[]> scales() {
        return scales;
    }

    List<String> told() {
        List<String> all = new ArrayList<>(told);
        int missing = signs.values().stream().mapToInt(Integer::intValue).sum();
        if (missing > 0) {
            all.add(Words.count(missing, "cell holds", "cells hold") + " only a sign for nothing ("
                    + Words.all(signs.keySet()) + "), read as missing.");
        }
        if (!stroke.isEmpty()) {
            all.add("Scores such as " + Words.quote(stroke) + " are read as the number before the stroke.");
        }
        all.addAll(names.told());
        return all;
    }
}
