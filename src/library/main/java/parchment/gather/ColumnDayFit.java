package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Optional;

/** Finds out whether a column holds dates, written or as the serial numbers of a spreadsheet, and reads those. */
final class ColumnDayFit {
    /** Days since this one are a spreadsheet's dates; right for every day since 1 March 1900. */
    static final LocalDate SERIAL_ZERO = LocalDate.of(1899, 12, 30);

    private static final double FIRST_SERIAL = 36_526;
    private static final double LAST_SERIAL = 73_050;
    private static final int DECIMALS_WITHOUT_SECONDS = 4;
    static final String SERIAL = "serial number";

    private ColumnDayFit() {}

    static ColumnFit day(ColumnValues column) {
        if (isSerial(column)) {
            return column.isWhole()
                    ? ColumnFit.known(0.8, SERIAL, "holds a spreadsheet's serial numbers of days")
                    : ColumnFit.none();
        }
        int dates = column.count(CellForm.DATE) + column.count(CellForm.DATE_AND_TIME);
        if (dates == 0 || dates < 0.8 * column.filled()) {
            return ColumnFit.none();
        }
        return column.count(CellForm.DATE_AND_TIME) == 0 || atMidnight(column)
                ? ColumnFit.known(1, "", "holds dates")
                : ColumnFit.none();
    }

    static ColumnFit dateAndTime(ColumnValues column) {
        if (isSerial(column)) {
            return column.isWhole()
                    ? ColumnFit.none()
                    : ColumnFit.known(0.9, SERIAL, "holds a spreadsheet's serial numbers of days with times");
        }
        int dates = column.count(CellForm.DATE) + column.count(CellForm.DATE_AND_TIME);
        boolean timed = column.count(CellForm.DATE_AND_TIME) > 0 && !atMidnight(column);
        return dates >= 0.8 * column.filled() && timed
                ? ColumnFit.known(1, "", "holds dates with times")
                : ColumnFit.none();
    }

    private static boolean atMidnight(ColumnValues column) {
        return column.cells().stream()
                .flatMap(cell -> WrittenDay.find(cell).stream())
                .allMatch(day -> day.clock().isEmpty() || day.clock().get().equals(LocalTime.MIDNIGHT));
    }

    /** Numbers in the forty-thousands could be batches: they are days if the heading says so, days repeat, or hours stand behind the point. */
    static boolean isSerial(ColumnValues column) {
        if (!column.mostly(CellForm.NUMBER) || !column.unit().isEmpty()) {
            return false;
        }
        boolean range = column.quantile(0) >= FIRST_SERIAL && column.quantile(1) <= LAST_SERIAL;
        boolean named = column.named().whole().stream()
                .anyMatch(m -> m.kind() == ListMeaning.Kind.DAY || m.kind() == ListMeaning.Kind.DATE_AND_TIME);
        return range && (named || !column.isWhole());
    }

    /** Returns the date and time of a serial number. */
    static Optional<LocalDateTime> serial(double number) {
        if (!(number >= FIRST_SERIAL && number <= LAST_SERIAL)) {
            return Optional.empty();
        }
        double share = number - Math.floor(number);
        return Optional.of(
                SERIAL_ZERO.plusDays((long) Math.floor(number)).atTime(clock(share, Double.toString(number))));
    }

    /** Returns the time of day of a share of a day; one with so few decimals that seconds are not in it is a whole minute. */
    static LocalTime clock(double share, String written) {
        int sign = Math.max(written.lastIndexOf('.'), written.lastIndexOf(','));
        long step = written.length() - sign - 1 <= DECIMALS_WITHOUT_SECONDS ? 60 : 1;
        return LocalTime.ofSecondOfDay(Math.min(86_399, Math.round(share * 86_400 / step) * step));
    }
}
