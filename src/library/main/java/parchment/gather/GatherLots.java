package parchment.gather;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import parchment.sheet.Words;

/** Collects the lists of lots of a folder, and tells which lot each batch is of, whatever it is called there. */
final class GatherLots {
    private static final String LOT = ListMeaning.LOT.words();

    private final GatherQuestions questions;
    private final GatherDates dates;
    private final GatherSheets sheets;
    private final Map<String, FoundTable> lists = new LinkedHashMap<>();
    private final Map<String, FoundTable> shorts = new LinkedHashMap<>();

    GatherLots(GatherQuestions questions, GatherDates dates, GatherSheets sheets) {
        this.questions = questions;
        this.dates = dates;
        this.sheets = sheets;
    }

    /** Returns the lots that the lists of a folder name, in small letters, if a table could be one of their short names. */
    static Set<String> used(Iterable<FoundTable> tables, GatherSheets sheets) {
        Set<String> used = new HashSet<>();
        boolean any = false;
        for (FoundTable table : tables) {
            any |= ShortNames.hasForm(table);
        }
        for (FoundTable table : tables) {
            if (any && table.headings().size() > 2) {
                sheets.found(table)
                        .of(ListMeaning.LOT)
                        .ifPresent(column ->
                                table.column(column.place()).forEach(cell -> used.add(LotName.anyCase(cell))));
            }
        }
        return used;
    }

    void addList(String letter, FoundTable table) {
        lists.put(letter, table);
    }

    void addShortNames(String letter, FoundTable table) {
        shorts.put(letter, table);
    }

    /** Returns the lots, and the batches with their full names. */
    GatheredLots of(List<GatheredBatch> batches) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        Map<String, Set<String>> writings = new TreeMap<>();
        for (GatheredBatch batch : batches) {
            String written = batch.written().getOrDefault(LOT, "");
            if (!written.isBlank()) {
                counts.merge(LotName.plain(written), 1, Integer::sum);
                writings.computeIfAbsent(LotName.plain(written), n -> new LinkedHashSet<>())
                        .add(written.strip());
            }
        }
        writings.forEach((name, all) -> {
            if (all.size() > 1) {
                questions.say("  Lot " + Words.quote(name) + " is written in " + all.size()
                        + " ways that differ in blanks or in the signs of one letter only: they are one.");
            }
        });
        List<ListedLot> listed = read(counts.keySet());
        Map<String, String> names = LotNames.of(counts, listed, questions);
        List<GatheredBatch> named = batches.stream()
                .map(batch -> {
                    String written = LotName.plain(batch.written().getOrDefault(LOT, ""));
                    return written.isEmpty() ? batch : batch.withWritten(LOT, names.getOrDefault(written, written));
                })
                .toList();
        Map<String, Map<String, String>> lots = new LinkedHashMap<>();
        listed.forEach(lot -> put(lots, names.getOrDefault(lot.name(), lot.name()), lot));
        Set<String> bare = new LinkedHashSet<>();
        for (GatheredBatch batch : named) {
            String name = batch.written().getOrDefault(LOT, "");
            if (!name.isBlank() && lots.putIfAbsent(name, new LinkedHashMap<>()) == null) {
                bare.add(name);
            }
        }
        if (!bare.isEmpty()) {
            questions.say("  Of "
                    + (bare.size() == 1 ? "this lot" : "these lots")
                    + " no list says more, so only the name is written: " + Words.all(bare) + ".");
        }
        return new GatheredLots(named, lots, List.copyOf(bare));
    }

    private List<ListedLot> read(Set<String> named) {
        Set<String> used = new HashSet<>();
        named.forEach(name -> used.add(LotName.anyCase(name)));
        List<ListedLot> listed = new ArrayList<>();
        lists.forEach((letter, table) -> {
            questions.say("");
            questions.say("Lots of " + TablePlace.of(table).shown() + ":");
            ListColumns columns = sheets.columns(LotColumns.of(sheets.found(table), used), "sheet." + letter + ".");
            OptionalInt shortNames = LotColumns.shortNames(columns, used);
            LotList list = LotList.of(columns, shortNames, dates.of(table));
            sheets.say(table, list.told());
            listed.addAll(list.lots());
        });
        shorts.forEach((letter, table) ->
                listed.addAll(LotList.ofShortNames(ShortNames.of(table, used)).lots()));
        return listed;
    }

    /** Adds a row to those of its lot: the first value stands, and another one is kept in the note. */
    private void put(Map<String, Map<String, String>> lots, String name, ListedLot lot) {
        Map<String, String> known = lots.computeIfAbsent(name, n -> new LinkedHashMap<>());
        List<String> other = new ArrayList<>();
        lot.written().forEach((heading, value) -> {
            String before = known.putIfAbsent(heading, value);
            if (before != null && !before.equals(value)) {
                other.add(heading + " " + value);
            }
        });
        if (!other.isEmpty()) {
            String more = "another row: " + String.join(", ", other);
            known.merge("note", more, (note, added) -> note + "; " + added);
            questions.leaveOut("Lot " + Words.quote(name) + " stands on more rows than one, line " + lot.line()
                    + " the last, with other values: the first ones stand, the others are in the note.");
        }
    }
}
