package parchment.gather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;
import parchment.sheet.Sheet;
import parchment.sheet.Words;

/** Makes batches of recordings and the rows that belong to them, and tells what of a row has no place there. */
final class JoinedBatches {
    private static final double SAME_MARK_SECONDS = 15;

    private final GatherQuestions questions;
    private final GatherLosses losses = new GatherLosses();
    private final GatherNames names;
    private final Map<GatheredBatch, List<String>> otherNames = new IdentityHashMap<>();

    JoinedBatches(GatherQuestions questions) {
        this.questions = questions;
        this.names = new GatherNames(questions);
    }

    /** Returns the rows put together by the batch they name, in the order of the lists; a row without a name stays alone. */
    static List<ListedRoast> roasts(List<ListedBatch> listed) {
        RepeatedNames repeated = RepeatedNames.in(listed);
        Map<String, List<ListedBatch>> byName = new LinkedHashMap<>();
        int unnamed = 0;
        for (ListedBatch row : listed) {
            if (row.name().isEmpty()
                    && row.day().isEmpty()
                    && row.roastedAt().isEmpty()
                    && row.written().isEmpty()
                    && row.marks().isEmpty()) {
                continue; // Nothing stands in it.
            }
            String key = row.name().isEmpty() ? "\u0000" + unnamed++ : repeated.nameOf(row);
            byName.computeIfAbsent(key, name -> new ArrayList<>()).add(row);
        }
        List<ListedRoast> roasts = new ArrayList<>();
        byName.forEach((name, rows) -> roasts.add(new ListedRoast(name.startsWith("\u0000") ? "" : name, rows)));
        return roasts;
    }

    /**
     * Returns the batches: the recordings in their order, each with its row, then the rows without a recording.
     *
     * @param earlier the names of an earlier gathering, by where a recording stands
     */
    List<GatheredBatch> of(
            List<GatheredBatch> curves, List<ListedRoast> roasts, List<Join> joins, Map<String, String> earlier) {
        Map<GatheredBatch, ListedRoast> rows = new IdentityHashMap<>();
        Set<ListedRoast> used = Collections.newSetFromMap(new IdentityHashMap<>());
        joins.forEach(join -> {
            rows.put(join.curve(), join.roast());
            used.add(join.roast());
        });
        List<ListedRoast> alone =
                roasts.stream().filter(roast -> !used.contains(roast)).toList();
        MinuteStamps stamps = new MinuteStamps(curves, roasts);
        BatchNaming naming = new BatchNaming(curves, rows, alone, earlier);
        List<GatheredBatch> batches = new ArrayList<>();
        for (GatheredBatch curve : curves) {
            GatheredBatch named = curve.named(names.ofRecording(naming.of(curve)));
            ListedRoast roast = rows.get(curve);
            GatheredBatch batch = roast == null ? named : with(stamps.of(named, roast), roast);
            List<String> called = new ArrayList<>(Gathering.namesOf(curve));
            if (roast != null && !roast.name().isEmpty()) {
                called.add(roast.name());
            }
            otherNames.put(batch, called);
            batches.add(batch);
        }
        Map<LocalDate, Integer> ofDay = new TreeMap<>();
        for (ListedRoast roast : alone) {
            String name = roast.name().isEmpty() ? unnamed(roast, ofDay) : roast.name();
            GatheredBatch batch = with(GatheredBatch.of(names.ofRow(name)), roast);
            otherNames.put(batch, List.of(name));
            batches.add(batch);
        }
        losses.say(questions);
        stamps.say(questions);
        return batches;
    }

    /** Returns what else each batch is called, in its files and lists. */
    Map<GatheredBatch, List<String>> otherNames() {
        return otherNames;
    }

    private static String unnamed(ListedRoast roast, Map<LocalDate, Integer> ofDay) {
        return roast.day()
                .map(day -> day + "-" + ofDay.merge(day, 1, Integer::sum))
                .orElse("row " + roast.rows().get(0).line());
    }

    private GatheredBatch with(GatheredBatch batch, ListedRoast roast) {
        GatheredBatch known = batch;
        Map<String, String> said = new LinkedHashMap<>();
        Set<FoundTable> tables = Collections.newSetFromMap(new IdentityHashMap<>());
        for (ListedBatch row : roast.rows()) {
            // What differs within one list was told when it was read.
            if (tables.add(row.table())) {
                losses.otherValues(batch.name(), said, row.written());
            }
            losses.otherTime(known, row.roastedAt(), row.day());
            row.written().forEach(said::putIfAbsent);
            known = marked(known, row.marks()).with(row.written(), row.roastedAt(), row.day());
        }
        return known.noted(roast.notes());
    }

    private GatheredBatch marked(GatheredBatch batch, Map<MarkKind, Double> listed) {
        Map<MarkKind, Double> marks = new LinkedHashMap<>(batch.marks());
        listed.forEach((mark, seconds) -> {
            Double typed = marks.putIfAbsent(mark, seconds);
            if (typed != null && Math.abs(typed - seconds) > SAME_MARK_SECONDS) {
                questions.leaveOut("Batch " + Words.quote(batch.name()) + ": the " + mark
                        + " was typed beside the readings " + Math.round(Math.abs(typed - seconds))
                        + " s away from where the sheet has it, " + Elapsed.seconds(seconds)
                        + "; the typed one is kept.");
            }
        });
        return batch.withMarks(marks);
    }

    /** Tells names that stand for one batch each from those that begin again every day. */
    private record RepeatedNames(Set<FoundTable> tables) {
        private static final int FEWEST = 3;

        static RepeatedNames in(List<ListedBatch> listed) {
            Map<FoundTable, Set<LocalDate>> ofTable = new IdentityHashMap<>();
            listed.forEach(row -> day(row).ifPresent(day ->
                    ofTable.computeIfAbsent(row.table(), t -> new HashSet<>()).add(day)));
            // Tables of a day each, under one another in one sheet, are one list that counts anew each day.
            Map<Sheet, Set<FoundTable>> together = new IdentityHashMap<>();
            ofTable.forEach((table, days) -> {
                if (days.size() == 1) {
                    together.computeIfAbsent(table.sheet(), s -> identities()).add(table);
                }
            });
            Map<FoundTable, Map<String, Set<LocalDate>>> days = new IdentityHashMap<>();
            Map<FoundTable, Set<FoundTable>> lists = new IdentityHashMap<>();
            for (ListedBatch row : listed) {
                Set<FoundTable> list =
                        ofTable.getOrDefault(row.table(), Set.of()).size() == 1
                                ? together.getOrDefault(row.table().sheet(), Set.of())
                                : Set.of(row.table());
                if (!list.isEmpty()) {
                    FoundTable first = list.iterator().next();
                    lists.put(first, list);
                    day(row).ifPresent(day -> days.computeIfAbsent(first, t -> new LinkedHashMap<>())
                            .computeIfAbsent(row.name(), n -> new HashSet<>())
                            .add(day));
                }
            }
            Set<FoundTable> again = identities();
            days.forEach((first, names) -> {
                long repeated =
                        names.values().stream().filter(d -> d.size() > 1).count();
                if (repeated >= FEWEST && 2 * repeated >= names.size()) {
                    again.addAll(lists.getOrDefault(first, Set.of()));
                }
            });
            return new RepeatedNames(again);
        }

        private static Set<FoundTable> identities() {
            return Collections.newSetFromMap(new IdentityHashMap<>());
        }

        private static Optional<LocalDate> day(ListedBatch row) {
            return row.roastedAt().map(at -> at.toLocalDate()).or(row::day);
        }

        String nameOf(ListedBatch row) {
            return tables.contains(row.table())
                    ? day(row).map(day -> day + "-" + row.name()).orElse(row.name())
                    : row.name();
        }
    }
}
