package parchment.gather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import parchment.gather.BlindKey.Entry;
import parchment.sheet.Words;

/** Finds keys of blind codes: a column of codes beside one of batches, in a sheet of its own, beside scores, or in a list of batches. */
final class BlindKeys {
    /** Share of a column's cells that must be codes; common practice, no source. */
    private static final double MOST = 0.7;

    private static final Set<ListMeaning> OF_LOTS = Set.of(
            ListMeaning.ORIGIN,
            ListMeaning.PROCESS,
            ListMeaning.VARIETY,
            ListMeaning.MOISTURE,
            ListMeaning.DENSITY,
            ListMeaning.ARRIVED_ON,
            ListMeaning.HARVESTED_ON);

    private final FoundTable table;
    private final ScoreClues clues;
    private final List<String> told = new ArrayList<>();

    private BlindKeys(FoundTable table, ScoreClues clues) {
        this.table = table;
        this.clues = clues;
    }

    static Optional<BlindKey> of(FoundTable table, ScoreClues clues) {
        return new BlindKeys(table, clues).read();
    }

    private Optional<BlindKey> read() {
        ScoreSurroundings around = ScoreSurroundings.of(table, clues);
        Map<ScorePart, Integer> columns = new HashMap<>();
        for (int i = 0; i < table.headings().size(); i++) {
            int column = i;
            String heading = table.headings().get(i);
            Optional<ScorePart> part = Optional.ofNullable(clues.stated().get(heading))
                    .flatMap(ScorePart::of)
                    .or(() -> ScoreWords.key(heading));
            boolean batches = share(i, clues.batches()::contains) > 0.5;
            // A sample can be a batch, and a cup with a letter is a code.
            if (part.filter(p -> p == ScorePart.CODE || p == ScorePart.LOT).isPresent() && batches) {
                part = Optional.of(ScorePart.BATCH);
            } else if (part.filter(p -> p == ScorePart.CUP).isPresent() && share(column, ScoreWords::isCode) > 0.5) {
                part = Optional.of(ScorePart.CODE);
            } else if (part.isEmpty() && batches) {
                part = Optional.of(ScorePart.BATCH);
            }
            part.ifPresent(p -> columns.putIfAbsent(p, column));
        }
        if (isOfLots(columns)) {
            return Optional.empty();
        }
        dayByValues(columns);
        numberForCode(columns);
        cupForCode(columns);
        byValues(columns);
        Integer code = columns.get(ScorePart.CODE);
        Integer batch = columns.get(ScorePart.BATCH);
        Integer lot = columns.get(ScorePart.LOT);
        Integer named = batch == null ? lot : batch;
        if (code == null || named == null) {
            return Optional.empty();
        }
        List<Entry> entries = entries(columns, day(around.said(ScorePart.DAY)));
        if (entries.isEmpty()) {
            return Optional.empty();
        }
        String called = (batch == null ? "lots" : "batches") + " under "
                + Words.quote(table.headings().get(named));
        List<String> all = new ArrayList<>(table.leftOut());
        all.addAll(told);
        return Optional.of(new BlindKey(
                entries,
                "It has codes under " + Words.quote(table.headings().get(code)) + " and " + called + ".",
                all));
    }

    /** A list of lots has a code too: what grew where, how it was processed and how moist it is stands in no key. */
    private boolean isOfLots(Map<ScorePart, Integer> columns) {
        return !columns.containsKey(ScorePart.BATCH)
                && table.headings().stream()
                                .filter(heading ->
                                        TradeWords.of(heading).whole().stream().anyMatch(OF_LOTS::contains))
                                .count()
                        >= 2;
    }

    /** The day on which codes were served stands under "tasting" as well as under "date". */
    private void dayByValues(Map<ScorePart, Integer> columns) {
        for (int i = 0; i < table.headings().size() && !columns.containsKey(ScorePart.DAY); i++) {
            boolean other = columns.containsValue(i) && !Integer.valueOf(i).equals(columns.get(ScorePart.CUPPING));
            boolean roasted = ScoreWords.key(table.headings().get(i)).equals(Optional.of(ScorePart.ROASTED));
            if (!other && !roasted && share(i, cell -> day(cell).isPresent()) >= MOST) {
                columns.put(ScorePart.DAY, i);
            }
        }
    }

    // A key of cups and batches: the cup's number is the code.
    private void cupForCode(Map<ScorePart, Integer> columns) {
        Integer cup = columns.get(ScorePart.CUP);
        boolean batches = columns.containsKey(ScorePart.BATCH) && !columns.containsKey(ScorePart.CODE);
        if (cup != null && batches && !columns.containsKey(ScorePart.CUPPER)) {
            columns.remove(ScorePart.CUP);
            columns.put(ScorePart.CODE, cup);
        }
    }

    // "No" beside the batch: the codes, each once, that no batch is called by.
    private void numberForCode(Map<ScorePart, Integer> columns) {
        for (int i = 0; i < table.headings().size() && !columns.containsKey(ScorePart.CODE); i++) {
            boolean number = ScoreWords.key(table.headings().get(i)).equals(Optional.of(ScorePart.BATCH));
            if (!number || share(i, ScoreWords::isCode) < MOST || share(i, clues.batches()::contains) > 0.5) {
                continue;
            }
            for (int k = 0; k < table.headings().size(); k++) {
                boolean batch = ScoreWords.key(table.headings().get(k)).equals(Optional.of(ScorePart.BATCH));
                boolean lot = k == columns.getOrDefault(ScorePart.LOT, -1);
                // A heading that says "roast" beside one that says "no" alone needs no known batches.
                boolean known = share(k, clues.batches()::contains) > 0.5;
                boolean said = batch
                        && ScoreWords.isBareNumber(table.headings().get(i))
                        && !ScoreWords.isBareNumber(table.headings().get(k));
                if (k != i && (said || known && (batch || lot))) {
                    columns.put(ScorePart.CODE, i);
                    columns.put(ScorePart.BATCH, k);
                }
            }
        }
    }

    // A key of two columns needs no headings.
    private void byValues(Map<ScorePart, Integer> columns) {
        if (table.headings().size() > 3 || columns.containsKey(ScorePart.CODE)) {
            return;
        }
        for (int i = 0; i < table.headings().size(); i++) {
            if (!columns.containsValue(i)
                    && share(i, ScoreWords::isCode) > 0.8
                    && columns.containsKey(ScorePart.BATCH)) {
                columns.put(ScorePart.CODE, i);
                return;
            }
        }
    }

    private List<Entry> entries(Map<ScorePart, Integer> columns, Optional<LocalDate> dayAround) {
        List<Entry> entries = new ArrayList<>();
        Map<String, Entry> seen = new LinkedHashMap<>();
        for (int row = 0; row < table.rows().size(); row++) {
            String code = said(row, columns, ScorePart.CODE);
            String batch = said(row, columns, ScorePart.BATCH);
            String lot = said(row, columns, ScorePart.LOT);
            int line = table.lines().get(row);
            if (code.isEmpty() || batch.isEmpty() && lot.isEmpty()) {
                if (!code.isEmpty()) {
                    told.add("Line " + line + ": the code " + Words.quote(code) + " has no batch beside it.");
                }
                continue;
            }
            Optional<LocalDate> day = day(said(row, columns, ScorePart.DAY));
            Entry entry = new Entry(code, batch, lot, day.or(() -> dayAround), table, line);
            Entry before = seen.putIfAbsent(CupJoin.plain(code) + entry.day(), entry);
            boolean other = before != null && !(before.batch() + before.lot()).equals(batch + lot);
            if (other) {
                told.add("Line " + line + ": the code " + Words.quote(code) + " stands for "
                        + Words.quote(batch.isEmpty() ? lot : batch)
                        + " here and for " + Words.quote(before.batch().isEmpty() ? before.lot() : before.batch())
                        + " on line "
                        + before.line() + "; cups of that code are asked about.");
            }
            if (before == null || other) {
                entries.add(entry);
            }
        }
        return entries;
    }

    private Optional<LocalDate> day(String cell) {
        return clues.day(cell);
    }

    private double share(int column, java.util.function.Predicate<String> asked) {
        List<String> cells = IntStream.range(0, table.rows().size())
                .mapToObj(row -> cell(row, column))
                .filter(cell -> !cell.isEmpty())
                .toList();
        return cells.isEmpty() ? 0 : cells.stream().filter(asked).count() / (double) cells.size();
    }

    private String said(int row, Map<ScorePart, Integer> columns, ScorePart part) {
        Integer column = columns.get(part);
        return column == null ? "" : cell(row, column);
    }

    private String cell(int row, int column) {
        List<String> cells = table.rows().get(row);
        return column < cells.size() ? cells.get(column).strip() : "";
    }
}
