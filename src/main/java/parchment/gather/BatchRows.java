package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import parchment.logbook.MarkKind;
import parchment.sheet.DateOrder;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Reads the rows of a list of batches one by one. */
final class BatchRows {
    private final ListColumns columns;
    private final Table table;
    private final DateOrder order;
    private final List<String> told;
    private final Map<Integer, String> headings = new LinkedHashMap<>();
    private final boolean daysCarried;
    private final Map<Integer, ColumnValues> masses = new LinkedHashMap<>();
    private final Map<LocalDate, Integer> letters = new LinkedHashMap<>();
    private @Nullable LocalDate lastDay;
    private int carried;
    private int cracks;
    private int drops;

    BatchRows(ListColumns columns, DateOrder order, List<String> told) {
        this.columns = columns;
        this.table = columns.table();
        this.order = order;
        this.told = told;
        Set<String> used = new HashSet<>(Set.of("batch", "roasted at"));
        // A column that means something has its heading before one that is only called so: the lot before batches under
        // "Lot".
        List<ListColumn> known = columns.columns().stream()
                .sorted(Comparator.comparing((ListColumn column) -> column.meaning() == ListMeaning.EXTRA)
                        .thenComparing(column ->
                                !heading(column).startsWith(column.meaning().words())))
                .toList();
        for (ListColumn column : known) {
            headings.put(column.place(), GatherColumns.heading(column.place(), heading(column), used));
        }
        // Many hands write the day once and leave it blank below.
        daysCarried = columns.of(ListMeaning.DATE)
                .map(column -> {
                    long blank = table.column(column.place()).stream()
                            .filter(String::isBlank)
                            .count();
                    return blank >= 0.2 * table.rows().size()
                            && !table.rows().get(0).get(column.place()).isBlank();
                })
                .orElse(false);
    }

    /** Returns the heading under which a column's values are kept: the logbook's own, or the roaster's. */
    private static String heading(ListColumn column) {
        return switch (column.meaning()) {
            case LOT, MACHINE, OPERATOR, RECIPE, PURPOSE, NOTE ->
                column.meaning().words();
            case GREEN_MASS,
                    ROASTED_MASS,
                    CHARGE_TEMPERATURE,
                    PLANNED_DROP_TEMPERATURE,
                    ROOM_TEMPERATURE,
                    GREEN_TEMPERATURE -> column.written();
            case ROOM_HUMIDITY -> column.meaning().words() + " [%]";
            case WHOLE_BEAN_COLOUR, GROUND_COLOUR -> column.written();
            case ROOM_PRESSURE -> column.unit().isEmpty() ? column.heading() : column.written();
            default -> column.heading();
        };
    }

    List<ListedBatch> read() {
        List<ListedBatch> batches = new ArrayList<>();
        Map<Integer, Integer> slips = YearSlips.of(days(), table.sheet().tab());
        for (int i = 0; i < table.rows().size(); i++) {
            batches.add(row(table.rows().get(i), table.lines().get(i), Optional.ofNullable(slips.get(i))));
        }
        if (carried > 0) {
            told.add(Words.count(carried, "row has", "rows have") + " no date of " + (carried == 1 ? "its" : "their")
                    + " own and got the one above.");
        }
        if (cracks > 0) {
            told.add("The first crack of " + Words.count(cracks, "row", "rows")
                    + " is the drop less the development time.");
        }
        if (drops > 0) {
            told.add("The drop of " + Words.count(drops, "row", "rows")
                    + " is the first crack and the development time.");
        }
        return batches;
    }

    /** Returns the days of the rows as far as they can be read, without a word. */
    private List<Optional<LocalDate>> days() {
        Optional<ListColumn> column = columns.of(ListMeaning.DATE).or(() -> columns.of(ListMeaning.ROASTED_AT));
        return table.rows().stream()
                .map(row -> column.map(c -> row.get(c.place()).strip())
                        .flatMap(this::instant)
                        .map(LocalDateTime::toLocalDate))
                .toList();
    }

    private ListedBatch row(List<String> row, int line, Optional<Integer> otherYear) {
        Map<String, String> written = new LinkedHashMap<>();
        Map<MarkKind, Double> marks = new LinkedHashMap<>();
        List<String> notes = new ArrayList<>();
        Optional<LocalDate> day = Optional.empty();
        Optional<LocalTime> time = Optional.empty();
        double development = Double.NaN;
        boolean unread = false;
        for (ListColumn column : columns.columns()) {
            String cell = row.get(column.place()).strip();
            if (CellForm.of(cell) == CellForm.BLANK) {
                continue;
            }
            switch (column.meaning()) {
                case BATCH, RUNNING_NUMBER, BLANK -> {
                    // Names are made when the day is known.
                }
                case DATE, ROASTED_AT -> {
                    Optional<LocalDateTime> at = instant(cell, column, line);
                    if (otherYear.isPresent() && at.isPresent()) {
                        told.add("Line " + line + ": " + Words.quote(cell) + " under " + Words.quote(column.heading())
                                + " is a year or more from the rows around it, which are of " + otherYear.get()
                                + ": its day is left open.");
                        notes.add("day written as " + cell);
                        unread = true;
                        continue;
                    }
                    unread |= at.isEmpty();
                    day = day.or(() -> at.map(LocalDateTime::toLocalDate));
                    if (column.meaning() == ListMeaning.ROASTED_AT && hasClock(cell, column)) {
                        time = at.map(LocalDateTime::toLocalTime);
                    }
                }
                case TIME_OF_DAY -> time = time(cell, column, line);
                case YELLOWING, FIRST_CRACK_START, FIRST_CRACK_END, SECOND_CRACK_START, DROP ->
                    mark(cell, column, line)
                            .ifPresent(
                                    seconds -> marks.put(column.meaning().mark().orElseThrow(), seconds));
                case DEVELOPMENT_TIME -> {
                    development = ColumnTimes.seconds(cell, column.unit(), decimal());
                    put(written, column, cell);
                }
                case GREEN_MASS, ROASTED_MASS -> {
                    Optional<String> far = far(column, cell);
                    far.ifPresent(words -> told.add("Line " + line + ": " + Words.quote(cell) + words));
                    if (far.isEmpty()) {
                        put(written, column, cell);
                    }
                }
                default -> put(written, column, cell);
            }
        }
        if (day.isEmpty() && unread) {
            // Somebody wrote another day here, so neither this row nor the blank ones below it are of the day above.
            lastDay = null;
        } else if (day.isEmpty() && daysCarried && lastDay != null) {
            day = Optional.of(lastDay);
            carried++;
        } else {
            lastDay = day.orElse(lastDay);
        }
        developed(marks, development);
        Optional<LocalDate> on = day;
        Optional<LocalDateTime> at = time.flatMap(clock -> on.map(date -> date.atTime(clock)));
        if (time.isPresent() && on.isEmpty()) {
            notes.add("time of charge " + time.get() + ", day not written");
            told.add("Line " + line + " has the time " + time.get() + " and no day.");
        }
        return new ListedBatch(
                name(row, on, line), at, at.isPresent() ? Optional.empty() : on, written, marks, notes, table, line);
    }

    private Optional<String> far(ListColumn column, String cell) {
        ColumnValues values = masses.computeIfAbsent(column.place(), place -> ColumnValues.of(table, place));
        double mass = single(column, cell).number(0);
        double own = CellNumber.of(cell, decimal())
                .filter(number -> !ColumnValues.plainUnit(number.unit()).equals(values.unit()))
                .flatMap(number -> CellUnit.between(ColumnValues.plainUnit(number.unit()), values.unit())
                        .map(unit -> unit.of(number.value())))
                .orElse(mass);
        return MassGroups.far(own, values, column);
    }

    private Numbers.Decimal decimal() {
        return table.sheet().decimal();
    }

    private static boolean hasClock(String cell, ListColumn column) {
        return column.unit().equals(ColumnDayFit.SERIAL)
                || WrittenDay.find(cell).flatMap(WrittenDay::clock).isPresent();
    }

    private Optional<LocalDateTime> instant(String cell, ListColumn column, int line) {
        Optional<LocalDateTime> at = instant(cell);
        if (at.isEmpty()) {
            told.add("Line " + line + ": " + Words.quote(cell) + " under " + Words.quote(column.heading())
                    + " is no date that can be read" + (daysCarried ? ", so the row stays without one." : "."));
        }
        return at;
    }

    private Optional<LocalDateTime> instant(String cell) {
        double number = CellNumber.of(cell, decimal()).map(CellNumber::value).orElse(Double.NaN);
        return !Double.isNaN(number)
                ? ColumnDayFit.serial(number)
                : WrittenDay.find(cell)
                        .flatMap(day -> day.on(order)
                                .map(date -> date.atTime(day.clock().orElse(LocalTime.MIDNIGHT))));
    }

    private Optional<LocalTime> time(String cell, ListColumn column, int line) {
        double share = CellNumber.of(cell, decimal()).map(CellNumber::value).orElse(Double.NaN);
        Optional<LocalTime> time =
                share >= 0 && share < 1 ? Optional.of(ColumnDayFit.clock(share, cell)) : WrittenDay.timeOfDay(cell);
        if (time.isEmpty()) {
            told.add("Line " + line + ": " + Words.quote(cell) + " under " + Words.quote(column.heading())
                    + " is no time of day that can be read.");
        }
        return time;
    }

    private Optional<Double> mark(String cell, ListColumn column, int line) {
        double seconds = ColumnTimes.seconds(cell, column.unit(), decimal());
        if (seconds >= 0) {
            return Optional.of(seconds);
        }
        told.add("Line " + line + ": " + Words.quote(cell) + " under " + Words.quote(column.heading())
                + " is no time for the " + column.meaning().words() + ".");
        return Optional.empty();
    }

    /** A development time gives the mark that is missing: first crack from the drop, or the drop from first crack. */
    private void developed(Map<MarkKind, Double> marks, double development) {
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

    private void put(Map<String, String> written, ListColumn column, String cell) {
        written.put(headings.get(column.place()), value(column, cell));
    }

    /** Returns a value with a decimal point and without its unit, which its heading has. */
    private String value(ListColumn column, String cell) {
        if (CellForm.of(cell) != CellForm.NUMBER || column.meaning().kind() == ListMeaning.Kind.WORD) {
            return cell;
        }
        ColumnValues values = single(column, cell);
        Optional<CellUnit> other = column.unit().equals(values.unit())
                ? Optional.empty()
                : CellNumber.of(cell, decimal())
                        .filter(own -> ColumnValues.plainUnit(own.unit()).equals(values.unit()))
                        .flatMap(own -> CellUnit.between(values.unit(), column.unit()));
        double number = other.map(unit -> unit.of(values.number(0))).orElse(values.number(0));
        boolean own = column.meaning() == ListMeaning.EXTRA;
        return Double.isNaN(number) || own && cell.matches(".*\\p{L}.*")
                ? cell
                : number == Math.rint(number) && Math.abs(number) < 1e9
                        ? String.format(Locale.ROOT, "%.0f", number)
                        : cell.matches("[+-]?\\d+[.,]\\d+") ? cell.replace(',', '.') : Double.toString(number);
    }

    private ColumnValues single(ListColumn column, String cell) {
        return ColumnValues.of(
                new Table(
                        table.sheet(),
                        List.of(),
                        List.of(column.heading()),
                        List.of(List.of(cell)),
                        List.of(1),
                        List.of()),
                0);
    }

    /** Returns the roaster's own name or number, the day and its running number, or the day and a letter. */
    private String name(List<String> row, Optional<LocalDate> day, int line) {
        String own = columns.of(ListMeaning.BATCH)
                .map(column -> row.get(column.place()).strip())
                .orElse("");
        if (!own.isEmpty()) {
            return whole(own);
        }
        String running = columns.of(ListMeaning.RUNNING_NUMBER)
                .map(column -> row.get(column.place()).strip())
                .orElse("");
        if (day.isPresent() && !running.isEmpty()) {
            return day.get() + "-" + whole(running);
        }
        if (day.isEmpty()) {
            told.add("Line " + line + " names no batch and no day.");
            return "";
        }
        int number = letters.merge(day.get(), 1, Integer::sum);
        String letter = number <= 26 ? String.valueOf((char) ('a' + number - 1)) : Integer.toString(number);
        return day.get() + "-" + letter;
    }

    /** A spreadsheet may write batch 101 as 101.0. */
    private static String whole(String name) {
        return name.matches("\\d+[.,]0+")
                ? name.substring(0, name.indexOf(name.contains(".") ? '.' : ','))
                : name.replaceFirst("^#\\s?(?=\\d)", "");
    }
}
