package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import parchment.logbook.MarkKind;
import parchment.sheet.DateOrder;
import parchment.sheet.Words;

/** Reads the rows of a list of batches one by one. What cannot be read as its column is meant is kept in the row's note. */
final class BatchRows {
    private static final double MANY_BLANK = 0.2;

    private final ListColumns columns;
    private final FoundTable table;
    private final List<String> told;
    private final BatchCells cells;
    private final BatchTimes times;
    private final BatchRowNames names;
    private final boolean daysCarried;
    private final Optional<LocalDate> dayOfName;
    private final Optional<LocalDate> dayAbove;
    private @Nullable LocalDate lastDay;
    private int carried;

    BatchRows(ListColumns columns, DateOrder order, List<String> told) {
        this.columns = columns;
        this.table = columns.table();
        this.told = told;
        this.cells = new BatchCells(columns, told);
        this.times = new BatchTimes(table.sheet().decimal(), order, told);
        this.names = new BatchRowNames(columns, told);
        this.dayOfName = dayOfName(columns, order);
        Optional<String> above = dayOfName.isEmpty() && hasNoDays(columns) ? RowDays.above(table) : Optional.empty();
        this.dayAbove = above.flatMap(WrittenDay::find).flatMap(day -> day.on(order));
        dayAbove.ifPresent(
                day -> told.add("The list has no column of days: its rows are of the day that stands above it, "
                        + Words.quote(above.orElse("")) + "."));
        // Many hands write the day once and leave it blank below.
        daysCarried = columns.of(ListMeaning.DATE)
                .map(column -> {
                    long blank = table.column(column.place()).stream()
                            .filter(String::isBlank)
                            .count();
                    return blank >= MANY_BLANK * table.rows().size()
                            && !table.rows().get(0).get(column.place()).isBlank();
                })
                .orElse(false);
    }

    /** A list without days may stand on a tab, or in a file, that is named after its day. */
    private static Optional<LocalDate> dayOfName(ListColumns columns, DateOrder order) {
        if (!hasNoDays(columns)) {
            return Optional.empty();
        }
        TablePlace source = TablePlace.of(columns.table());
        return WrittenDay.ofCell(source.tab().isBlank() ? source.stem() : source.tab())
                .filter(day -> !day.isShort())
                .flatMap(day -> day.on(order));
    }

    private static boolean hasNoDays(ListColumns columns) {
        return columns.of(ListMeaning.DATE).isEmpty()
                && columns.of(ListMeaning.ROASTED_AT).isEmpty();
    }

    List<ListedBatch> read() {
        List<ListedBatch> batches = new ArrayList<>();
        dayOfName.ifPresent(day ->
                told.add("The list has no column of days: its rows are of the day it is named after, " + day + "."));
        Optional<ListColumn> dates = columns.of(ListMeaning.DATE).or(() -> columns.of(ListMeaning.ROASTED_AT));
        Map<Integer, Integer> slips =
                YearSlips.of(times.days(table, dates), table.sheet().tab());
        for (int i = 0; i < table.rows().size(); i++) {
            batches.add(new Row(i).read(Optional.ofNullable(slips.get(i))));
        }
        if (carried > 0) {
            told.add(Words.count(carried, "row has", "rows have") + " no date of " + (carried == 1 ? "its" : "their")
                    + " own and got the one above.");
        }
        times.tellDeveloped();
        return batches;
    }

    /** Is one row while it is read. */
    private final class Row {
        private final int place;
        private final List<String> row;
        private final int line;
        private final Map<String, String> written = new LinkedHashMap<>();
        private final Map<MarkKind, Double> marks = new LinkedHashMap<>();
        private final List<String> notes = new ArrayList<>();
        private Optional<LocalDate> day = Optional.empty();
        private Optional<LocalTime> time = Optional.empty();
        private boolean unread;

        Row(int place) {
            this.place = place;
            this.row = table.rows().get(place);
            this.line = table.lines().get(place);
        }

        ListedBatch read(Optional<Integer> otherYear) {
            for (ListColumn column : columns.columns()) {
                String cell = cell(column);
                if (CellForm.of(cell) != CellForm.BLANK) {
                    read(column, cell, otherYear);
                }
            }
            columns.of(ListMeaning.DEVELOPMENT_TIME)
                    .filter(column -> CellForm.of(cell(column)) != CellForm.BLANK)
                    .ifPresent(column -> times.develop(marks, cell(column), column));
            settleDay();
            Optional<LocalDate> on = day;
            Optional<LocalDateTime> at = time.flatMap(clock -> on.map(date -> date.atTime(clock)));
            if (time.isPresent() && on.isEmpty()) {
                notes.add("time of charge " + time.get() + ", day not written");
                told.add("Line " + line + " has the time " + time.get() + " and no day.");
            }
            columns.of(ListMeaning.RUNNING_NUMBER)
                    .filter(column -> CellForm.of(cell(column)) != CellForm.BLANK && !names.isNumberOfDay(row, on))
                    .ifPresent(column -> cells.put(written, column, place));
            return new ListedBatch(
                    names.of(row, on, line),
                    at,
                    at.isPresent() ? Optional.empty() : on,
                    written,
                    marks,
                    notes,
                    table,
                    line);
        }

        private String cell(ListColumn column) {
            return row.get(column.place()).strip();
        }

        private void read(ListColumn column, String cell, Optional<Integer> otherYear) {
            switch (column.meaning()) {
                case BATCH, RUNNING_NUMBER, BLANK -> {
                    // Names are made when the day is known.
                }
                case DATE, ROASTED_AT -> date(column, cell, otherYear);
                case TIME_OF_DAY -> {
                    Optional<LocalTime> read = times.time(cell, column, line);
                    boolean other = read.isEmpty() || time.isPresent() && !time.equals(read);
                    if (other) {
                        keep(column, cell);
                    }
                    time = time.or(() -> read);
                }
                case YELLOWING, FIRST_CRACK_START, FIRST_CRACK_END, SECOND_CRACK_START, DROP -> {
                    Optional<Double> seconds = times.sinceCharge(cell, column, line);
                    seconds.ifPresentOrElse(
                            at -> marks.put(column.meaning().mark().orElseThrow(), at), () -> keep(column, cell));
                }
                case GREEN_MASS, ROASTED_MASS -> {
                    Optional<String> far = cells.far(column, place);
                    far.ifPresent(words -> {
                        told.add("Line " + line + ": " + Words.quote(cell) + words);
                        keep(column, cell);
                    });
                    if (far.isEmpty()) {
                        cells.put(written, column, place);
                    }
                }
                default -> cells.put(written, column, place);
            }
        }

        private void keep(ListColumn column, String cell) {
            notes.add(column.heading() + ": " + cell);
        }

        private void date(ListColumn column, String cell, Optional<Integer> otherYear) {
            Optional<LocalDateTime> at = times.instant(cell);
            if (at.isEmpty()) {
                told.add("Line " + line + ": " + Words.quote(cell) + " under " + Words.quote(column.heading())
                        + " is no date that can be read"
                        + (daysCarried ? ", so the row stays without one; " : "; ")
                        + "it is kept in the note.");
                keep(column, cell);
                unread = true;
                return;
            }
            if (otherYear.isPresent()) {
                told.add("Line " + line + ": " + Words.quote(cell) + " under " + Words.quote(column.heading())
                        + " is a year or more from the rows around it, which are of " + otherYear.get()
                        + ": its day is left open.");
                notes.add("day written as " + cell);
                unread = true;
                return;
            }
            Optional<LocalDate> here = at.map(LocalDateTime::toLocalDate);
            Optional<LocalTime> clock = at.map(LocalDateTime::toLocalTime)
                    .filter(read -> column.meaning() == ListMeaning.ROASTED_AT && BatchTimes.hasClock(cell, column));
            if (day.isPresent() && !day.equals(here) || time.isPresent() && clock.isPresent() && !time.equals(clock)) {
                keep(column, cell);
            }
            day = day.or(() -> here);
            time = time.or(() -> clock);
        }

        private void settleDay() {
            day = day.or(() -> dayOfName).or(() -> dayAbove);
            if (day.isEmpty() && unread) {
                // Somebody wrote another day here, so neither this row nor the blank ones below it are of the day
                // above.
                lastDay = null;
            } else if (day.isEmpty() && daysCarried && lastDay != null) {
                day = Optional.of(lastDay);
                carried++;
            } else {
                lastDay = day.orElse(lastDay);
            }
        }
    }
}
