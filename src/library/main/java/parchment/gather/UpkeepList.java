package parchment.gather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import parchment.logbook.LogbookFiles;
import parchment.sheet.DateOrder;
import parchment.sheet.Header;
import parchment.sheet.Words;

/**
 * The work on machines that a list tells of, with what was told while it was read.
 *
 * @param work one for each row with a day and words, in the list's order
 * @param told what could not be read or stands elsewhere: a sentence each
 */
record UpkeepList(List<ListedUpkeep> work, List<String> told) {
    UpkeepList {
        work = List.copyOf(work);
        told = List.copyOf(told);
    }

    /** Reads the rows of a list whose columns are known; the order decides dates that do not say which number is the day. */
    static UpkeepList of(ListColumns columns, DateOrder order) {
        return new Rows(columns, order).read();
    }

    private static final class Rows {
        private final ListColumns columns;
        private final FoundTable table;
        private final DateOrder order;
        private final List<String> told;
        private final int date;
        private final int what;
        private final int kind;

        Rows(ListColumns columns, DateOrder order) {
            this.columns = columns;
            this.table = columns.table();
            this.order = order;
            this.told = new ArrayList<>(table.leftOut());
            this.date = place(ListMeaning.DATE, ListMeaning.ROASTED_AT);
            this.what = place(ListMeaning.WORK, ListMeaning.NOTE);
            this.kind = columns.columns().stream()
                    .map(ListColumn::place)
                    .filter(place -> place != what && place != date && isKind(place))
                    .findFirst()
                    .orElse(-1);
        }

        private int place(ListMeaning first, ListMeaning second) {
            return columns.of(first)
                    .or(() -> columns.of(second))
                    .map(ListColumn::place)
                    .orElse(-1);
        }

        /** A column has kinds if it is called so, or if nothing else stands in it. */
        private boolean isKind(int place) {
            List<String> filled = table.column(place).stream()
                    .filter(cell -> CellForm.of(cell) != CellForm.BLANK)
                    .toList();
            return Header.name(table.headings().get(place)).equals("kind")
                    || !filled.isEmpty()
                            && filled.stream()
                                    .allMatch(cell ->
                                            LogbookFiles.kindOfUpkeep(cell).isPresent());
        }

        UpkeepList read() {
            List<ListedUpkeep> work = new ArrayList<>();
            for (int i = 0; i < table.rows().size(); i++) {
                row(table.rows().get(i), table.lines().get(i)).ifPresent(work::add);
            }
            return new UpkeepList(work, told);
        }

        private Optional<ListedUpkeep> row(List<String> row, int line) {
            String machine = "";
            String typed = "";
            String words = what < 0 ? "" : row.get(what).strip();
            List<String> notes = new ArrayList<>();
            for (ListColumn column : columns.columns()) {
                String cell = row.get(column.place()).strip();
                if (CellForm.of(cell) == CellForm.BLANK || column.place() == date || column.place() == what) {
                    continue;
                }
                Optional<String> known = column.place() == kind ? LogbookFiles.kindOfUpkeep(cell) : Optional.empty();
                if (known.isPresent()) {
                    typed = known.get();
                } else if (column.meaning() == ListMeaning.MACHINE) {
                    machine = cell;
                } else {
                    notes.add(column.meaning() == ListMeaning.NOTE ? cell : column.heading() + ": " + cell);
                }
            }
            if (CellForm.of(words) == CellForm.BLANK && !notes.isEmpty()) {
                words = notes.remove(0);
            }
            String cell = date < 0 ? "" : row.get(date).strip();
            Optional<LocalDate> day = LotListRows.day(cell, table, order)
                    .or(() -> WrittenDay.find(cell).flatMap(d -> d.on(order)));
            if (day.isEmpty() || CellForm.of(words) == CellForm.BLANK) {
                leaveOut(row, line, cell, day.isPresent());
                return Optional.empty();
            }
            WrittenDay.find(cell)
                    .flatMap(WrittenDay::clock)
                    .filter(clock -> !clock.equals(java.time.LocalTime.MIDNIGHT))
                    .ifPresent(clock -> notes.add("at " + clock));
            return Optional.of(new ListedUpkeep(machine, day.get(), words, typed, String.join("; ", notes), line));
        }

        private void leaveOut(List<String> row, int line, String date, boolean dated) {
            List<String> filled = row.stream().filter(cell -> !cell.isBlank()).toList();
            if (!filled.isEmpty()) {
                told.add("Line " + line + ": "
                        + (dated
                                ? "no words say what was done"
                                : date.isEmpty()
                                        ? "no day is written"
                                        : Words.quote(date) + " is no date that can be read")
                        + "; left out: " + Words.all(filled) + ".");
            }
        }
    }
}
