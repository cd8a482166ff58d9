package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import parchment.sheet.Words;

/** Collects the lists of work on machines of a folder. */
final class GatherUpkeep {
    private static final String ONE = "the machine";
    private static final String NOT_WRITTEN = "not written";

    private final GatherQuestions questions;
    private final GatherDates dates;
    private final GatherSheets sheets;
    private final Map<String, FoundTable> lists = new LinkedHashMap<>();

    GatherUpkeep(GatherQuestions questions, GatherDates dates, GatherSheets sheets) {
        this.questions = questions;
        this.dates = dates;
        this.sheets = sheets;
    }

    void add(String letter, FoundTable table) {
        lists.put(letter, table);
    }

    /** Returns the work, each on a machine; the same work on one day is told and stands once. */
    List<ListedUpkeep> of(List<GatheredBatch> batches) {
        Set<String> machines = new LinkedHashSet<>();
        batches.forEach(batch ->
                machines.add(batch.written().getOrDefault("machine", "").strip()));
        machines.remove("");
        Set<ListedUpkeep> all = new LinkedHashSet<>();
        lists.forEach((letter, table) -> {
            questions.say("");
            questions.say("Work on machines of " + TablePlace.of(table).shown() + ":");
            String own = "sheet." + letter + ".";
            ListColumns columns = sheets.columns(columns(sheets.found(table)), own);
            UpkeepList list = UpkeepList.of(columns, dates.of(table));
            List<String> told = new ArrayList<>(list.told());
            long unnamed = list.work().stream()
                    .filter(work -> work.machine().isEmpty())
                    .count();
            String only = unnamed == 0 ? "" : machine(own + "machine", table, machines, (int) unnamed);
            for (ListedUpkeep work : list.work()) {
                ListedUpkeep on = work.on(only);
                ListedUpkeep withoutLine =
                        new ListedUpkeep(on.machine(), on.doneOn(), on.what(), on.kind(), on.note(), 0);
                if (!all.add(withoutLine)) {
                    told.add("Line " + work.line() + ": " + Words.quote(work.what()) + " on " + work.doneOn()
                            + " stands on another line too; it is written once.");
                }
            }
            sheets.say(table, told);
        });
        return List.copyOf(all);
    }

    private String machine(String key, FoundTable table, Set<String> machines, int rows) {
        if (machines.size() > 1) {
            return questions.ask(
                    key,
                    "On which machine was the work of " + TablePlace.of(table).shown() + "? Batches name "
                            + Words.some(machines) + ".",
                    NOT_WRITTEN,
                    text -> !text.isBlank(),
                    "the name of a machine",
                    rows);
        }
        return questions.tell(
                key,
                Words.count(rows, "row names", "rows name") + " no machine; "
                        + (machines.isEmpty() ? "no batch names one" : "all batches that name one name this"),
                machines.isEmpty() ? ONE : machines.iterator().next(),
                text -> !text.isBlank(),
                "the name of the machine");
    }

    /** A list of work has no masses, marks or lots; what looks so is kept in the note. */
    private static ListColumns columns(ListColumns found) {
        Set<ListMeaning> own = Set.of(
                ListMeaning.DATE,
                ListMeaning.ROASTED_AT,
                ListMeaning.WORK,
                ListMeaning.MACHINE,
                ListMeaning.NOTE,
                ListMeaning.OPERATOR,
                ListMeaning.BLANK);
        return new ListColumns(
                found.table(),
                found.columns().stream()
                        .map(column -> new ListColumn(
                                column.place(),
                                column.heading(),
                                own.contains(column.meaning()) ? column.meaning() : ListMeaning.EXTRA,
                                own.contains(column.meaning()) ? column.unit() : "",
                                own.contains(column.meaning()) ? column.reason() : "is kept in the note",
                                ListColumn.Confidence.CERTAIN,
                                List.of()))
                        .toList());
    }
}
