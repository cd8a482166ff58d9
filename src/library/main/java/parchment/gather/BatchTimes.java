package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.MarkKind;
import parchment.sheet.DateOrder;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Reads the dates, times of day and times since the charge of a list of batches; what cannot be read is told. */
final class BatchTimes {
    private final Numbers.Decimal decimal;
    private final DateOrder order;
    private final List<String> told;
    private int cracks;
    private int drops;

    BatchTimes(Numbers.Decimal decimal, DateOrder order, List<String> told) {
        this.decimal = decimal;
        this.order = order;
        this.told = told;
    }

    static boolean hasClock(String cell, ListColumn column) {
        return column.unit().equals(ColumnDayFit.SERIAL)
                || WrittenDay.find(cell).flatMap(WrittenDay::clock).isPresent();
    }

    Optional<LocalDateTime> instant(String cell) {
        double number = CellNumber.of(cell, decimal).map(CellNumber::value).orElse(Double.NaN);
        return !Double.isNaN(number)
                ? ColumnDayFit.serial(number)
                : WrittenDay.find(cell)
                        .flatMap(day -> day.on(order)
                                .map(date -> date.atTime(day.clock().orElse(LocalTime.MIDNIGHT))));
    }

    Optional<LocalTime> time(String cell, ListColumn column, int line) {
        double share = CellNumber.of(cell, decimal).map(CellNumber::value).orElse(Double.NaN);
        Optional<LocalTime> time =
                share >= 0 && share < 1 ? Optional.of(ColumnDayFit.clock(share, cell)) : WrittenDay.timeOfDay(cell);
        if (time.isEmpty()) {
            told.add("Line " + line + ": " + Words.quote(cell) + " under " + Words.quote(column.heading())
                    + " is no time of day that can be read; it is kept in the note.");
        }
        return column.unit().equals(ColumnTimes.TWELVE_HOURS) ? time.map(ClockTurn::afterNoon) : time;
    }

    /** Returns the seconds of a mark's or another time since the charge. */
    Optional<Double> sinceCharge(String cell, ListColumn column, int line) {
        double seconds = ColumnTimes.seconds(cell, column.unit(), decimal);
        if (seconds >= 0) {
            return Optional.of(seconds);
        }
        told.add("Line " + line + ": " + Words.quote(cell) + " under " + Words.quote(column.heading())
                + " is no time for the " + column.meaning().words() + "; it is kept in the note.");
        return Optional.empty();
    }

    /** A development time gives the mark that is missing: first crack from the drop, or the drop from first crack. */
    void develop(Map<MarkKind, Double> marks, String cell, ListColumn column) {
        double development = ColumnTimes.seconds(cell, column.unit(), decimal);
        if (!(development > 0)) {
            return;
        }
        Double drop = marks.get(MarkKind.DROP);
        Double crack = marks.get(MarkKind.FIRST_CRACK_START);
        if (drop != null && crack == null && drop > development) {
            marks.put(MarkKind.FIRST_CRACK_START, drop - development);
            cracks++;
        } else if (drop == null && crack != null) {
            marks.put(MarkKind.DROP, crack + development);
            drops++;
        }
    }

    /** Tells how many marks were worked out. */
    void tellDeveloped() {
        if (cracks > 0) {
            told.add("The first crack of " + Words.count(cracks, "row", "rows")
                    + " is the drop less the development time.");
        }
        if (drops > 0) {
            told.add("The drop of " + Words.count(drops, "row", "rows")
                    + " is the first crack and the development time.");
        }
    }

    /** Returns the days of rows as far as they can be read, without a word. */
    List<Optional<LocalDate>> days(FoundTable table, Optional<ListColumn> column) {
        return table.rows().stream()
                .map(row -> column.map(c -> row.get(c.place()).strip())
                        .flatMap(this::instant)
                        .map(LocalDateTime::toLocalDate))
                .toList();
    }
}
