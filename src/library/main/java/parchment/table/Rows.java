package parchment.table;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.sheet.Numbers;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.DateTimeColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** Makes a table of Tablesaw column by column, by asking each row for its own. */
final class Rows<R> {
    private final List<R> rows;
    private final TemperatureUnit reader;
    private final List<Column<?>> columns = new ArrayList<>();
    private final Set<String> headings = new LinkedHashSet<>();

    private Rows(List<R> rows, TemperatureUnit reader) {
        this.rows = rows;
        this.reader = reader;
    }

    static <R> Rows<R> of(List<R> rows, TemperatureUnit reader) {
        return new Rows<>(rows, reader);
    }

    /** Returns a heading with its unit, as the logbook format writes it. */
    static String heading(String name, String unit) {
        return unit.isEmpty() ? name : name + " [" + unit + "]";
    }

    /** Tablesaw tells columns apart without regard to case. */
    private String unused(String heading) {
        String free = heading;
        for (int i = 2; !headings.add(free.toLowerCase(Locale.ROOT)); i++) {
            free = heading + " (" + i + ")";
        }
        return free;
    }

    Rows<R> text(String heading, Function<? super R, Optional<String>> value) {
        StringColumn column = StringColumn.create(unused(heading));
        for (R row : rows) {
            column.append(value.apply(row).orElse(""));
        }
        columns.add(column);
        return this;
    }

    /** Adds numbers as the library keeps them; they stand in the table in the reader's unit. */
    Rows<R> number(String name, Unit unit, ToDoubleFunction<? super R> value) {
        return numbers(
                heading(name, unit.symbol(reader)),
                unit,
                rows.stream()
                        .mapToDouble(row -> unit.shown(value.applyAsDouble(row), reader))
                        .toArray());
    }

    /** Adds differences or standard errors, to which no zero of a scale is added. */
    Rows<R> step(String name, Unit unit, ToDoubleFunction<? super R> value) {
        return numbers(
                heading(name, unit.symbol(reader)),
                unit,
                rows.stream()
                        .mapToDouble(row -> unit.shownStep(value.applyAsDouble(row), reader))
                        .toArray());
    }

    private Rows<R> numbers(String heading, Unit unit, double[] shown) {
        DoubleColumn column = DoubleColumn.create(unused(heading), shown);
        column.setPrintFormatter(new RoundedNumbers(unit));
        columns.add(column);
        return this;
    }

    Rows<R> whole(String name, String unit, Function<? super R, OptionalInt> value) {
        IntColumn column = IntColumn.create(unused(heading(name, unit)));
        for (R row : rows) {
            value.apply(row).ifPresentOrElse(column::append, column::appendMissing);
        }
        columns.add(column);
        return this;
    }

    Rows<R> date(String heading, Function<? super R, Optional<LocalDate>> value) {
        DateColumn column = DateColumn.create(unused(heading));
        for (R row : rows) {
            value.apply(row).ifPresentOrElse(column::append, column::appendMissing);
        }
        columns.add(column);
        return this;
    }

    /** Adds times of day as the logbook's zone has them. */
    Rows<R> time(String heading, Function<? super R, Optional<OffsetDateTime>> value) {
        DateTimeColumn column = DateTimeColumn.create(unused(heading));
        for (R row : rows) {
            value.apply(row)
                    .map(OffsetDateTime::toLocalDateTime)
                    .ifPresentOrElse(column::append, column::appendMissing);
        }
        columns.add(column);
        return this;
    }

    /** Adds what else was filled in: a column in which every cell is a number as numbers, any other in words. */
    Rows<R> extras(Function<? super R, Map<String, String>> value) {
        Set<String> found = new LinkedHashSet<>();
        rows.forEach(row -> found.addAll(value.apply(row).keySet()));
        for (String heading : found) {
            List<String> cells = rows.stream()
                    .map(row -> value.apply(row).getOrDefault(heading, ""))
                    .toList();
            double[] numbers = cells.stream()
                    .mapToDouble(cell -> Numbers.parse(cell, Numbers.Decimal.POINT))
                    .toArray();
            boolean allNumbers = true;
            for (int i = 0; i < numbers.length; i++) {
                allNumbers &= cells.get(i).isBlank() || Double.isFinite(numbers[i]);
            }
            columns.add(
                    allNumbers
                            ? DoubleColumn.create(unused(heading), numbers)
                            : StringColumn.create(unused(heading), cells));
        }
        return this;
    }

    Table table(String name) {
        return Table.create(name, columns);
    }
}
