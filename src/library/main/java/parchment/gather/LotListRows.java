package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import parchment.logbook.LogbookFiles;
import parchment.sheet.DateOrder;
import parchment.sheet.Header;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Reads the rows of a list of lots one by one; what no date or number can be made of is kept under the list's own heading. */
final class LotListRows {
    private static final double MOST_MOISTURE = 100;
    private static final double DENSEST = 2000;
    /** Green coffee fills a litre with 550 to 900 g: common practice, no source. */
    private static final double LIGHTEST_IN_LITRES = 200;

    private static final double MOST_IN_MILLILITRES = 2;

    private final ListColumns columns;
    private final FoundTable table;
    private final OptionalInt shortNames;
    private final DateOrder order;
    private final List<String> told;
    private final Map<Integer, String> headings = new LinkedHashMap<>();
    private final Map<Integer, String> aside = new LinkedHashMap<>();
    private final Map<Integer, Double> factors = new LinkedHashMap<>();

    LotListRows(ListColumns columns, OptionalInt shortNames, DateOrder order, List<String> told) {
        this.columns = columns;
        this.table = columns.table();
        this.shortNames = shortNames;
        this.order = order;
        this.told = told;
        Set<String> used = new HashSet<>(Set.of("lot"));
        for (ListColumn column : columns.columns()) {
            own(column)
                    .ifPresent(heading ->
                            headings.put(column.place(), GatherColumns.heading(column.place(), heading, used)));
        }
        for (ListColumn column : columns.columns()) {
            Header header = Header.parse(column.heading());
            String other = LogbookFiles.isMeasuredOfLots(header) ? header.name() + " as written" : column.heading();
            if (!headings.containsKey(column.place())) {
                headings.put(column.place(), GatherColumns.heading(column.place(), other, used));
            } else if (isMeasured(column)) {
                aside.put(column.place(), GatherColumns.heading(column.place(), other, used));
                factors.put(column.place(), factor(column));
            }
        }
    }

    /** Returns the heading that the table of lots has for a column. */
    private static Optional<String> own(ListColumn column) {
        return switch (column.meaning()) {
            case ORIGIN, PROCESS, VARIETY, STORAGE, SCREEN_SIZE, NOTE, ARRIVED_ON, HARVESTED_ON ->
                Optional.of(column.meaning().words());
            case MOISTURE -> Optional.of("moisture [%]");
            case DENSITY -> Optional.of("density [g/L]");
            default -> Optional.empty();
        };
    }

    private static boolean isMeasured(ListColumn column) {
        return switch (column.meaning()) {
            case ARRIVED_ON, HARVESTED_ON, MOISTURE, DENSITY -> true;
            default -> false;
        };
    }

    /** Returns by what a column's numbers become per cent or grams in a litre; NaN if its unit is another. */
    private double factor(ListColumn column) {
        ColumnValues values = ColumnValues.of(table, column.place());
        double median = values.quantile(0.5);
        if (column.meaning() == ListMeaning.MOISTURE) {
            return converted(column, median < 1 ? 100 : 1, "%");
        }
        if (column.meaning() != ListMeaning.DENSITY) {
            return 1;
        }
        String unit = (column.unit().isEmpty() ? values.unit() : column.unit())
                .toLowerCase(Locale.ROOT)
                .replaceAll("[\\s^]", "")
                .replace('³', '3');
        return switch (unit) {
            case "g/l", "kg/m3" -> 1;
            case "g/ml", "kg/l", "g/cm3", "g/cc" -> converted(column, 1000, "g/L");
            case "" ->
                median >= LIGHTEST_IN_LITRES
                        ? 1
                        : median < MOST_IN_MILLILITRES ? converted(column, 1000, "g/L") : Double.NaN;
            default -> Double.NaN;
        };
    }

    private double converted(ListColumn column, double factor, String unit) {
        if (factor != 1) {
            told.add("The values under " + Words.quote(column.heading()) + " were multiplied by "
                    + Numbers.written(factor) + ", so that they are " + unit + ".");
        }
        return factor;
    }

    List<ListedLot> read() {
        List<ListedLot> lots = new ArrayList<>();
        for (int i = 0; i < table.rows().size(); i++) {
            List<String> row = table.rows().get(i);
            int line = table.lines().get(i);
            String name = LotName.plain(columns.of(ListMeaning.LOT)
                    .map(column -> row.get(column.place()))
                    .orElse(row.get(0)));
            Map<String, String> written = new LinkedHashMap<>();
            columns.columns()
                    .forEach(column ->
                            put(written, column, row.get(column.place()).strip(), line));
            if (CellForm.of(name) == CellForm.BLANK) {
                if (!written.isEmpty()) {
                    told.add("Line " + line + " names no lot: left out, with " + Words.all(written.values()) + ".");
                }
                continue;
            }
            List<String> shorts = shortNames.isEmpty()
                    ? List.of()
                    : List.of(LotName.plain(row.get(shortNames.getAsInt()))).stream()
                            .filter(each -> CellForm.of(each) != CellForm.BLANK)
                            .toList();
            lots.add(new ListedLot(name, shorts, written, line));
        }
        return lots;
    }

    private void put(Map<String, String> written, ListColumn column, String cell, int line) {
        if (column.meaning() == ListMeaning.LOT || CellForm.of(cell) == CellForm.BLANK) {
            return;
        }
        String heading = headings.getOrDefault(column.place(), column.heading());
        if (!isMeasured(column)) {
            written.put(heading, value(column, cell));
            return;
        }
        boolean day = column.meaning().kind() == ListMeaning.Kind.DAY;
        Optional<String> read = day ? day(cell, table, order).map(LocalDate::toString) : number(column, cell);
        String other = aside.getOrDefault(column.place(), column.heading());
        written.put(read.isPresent() ? heading : other, read.orElse(cell));
        if (read.isEmpty()) {
            told.add("Line " + line + ": " + Words.quote(cell) + " under " + Words.quote(column.heading()) + " is "
                    + (day ? "no date that can be read" : "no number in a known unit") + "; it is kept under "
                    + Words.quote(other) + ".");
        }
    }

    /** Returns the day that a cell holds, written or as a spreadsheet's serial number. */
    static Optional<LocalDate> day(String cell, FoundTable table, DateOrder order) {
        double number = CellNumber.of(cell, table.sheet().decimal())
                .map(CellNumber::value)
                .orElse(Double.NaN);
        return Double.isNaN(number)
                ? WrittenDay.ofCell(cell).flatMap(day -> day.on(order))
                : ColumnDayFit.serial(number).map(LocalDateTime::toLocalDate);
    }

    private Optional<String> number(ListColumn column, String cell) {
        double most = column.meaning() == ListMeaning.MOISTURE ? MOST_MOISTURE : DENSEST;
        double value = CellNumber.of(cell, table.sheet().decimal())
                        .map(CellNumber::value)
                        .orElse(Double.NaN)
                * factors.getOrDefault(column.place(), 1.0);
        double rounded = Math.round(value * 1e6) / 1e6;
        return value > 0 && value <= most ? Optional.of(Numbers.written(rounded)) : Optional.empty();
    }

    /** A decimal comma becomes a point; where three digits behind it can be thousands and nothing tells, the cell stays as it is. */
    private String value(ListColumn column, String cell) {
        if (table.sheet().decimal() == Numbers.Decimal.POINT || !cell.matches("[+-]?\\d+,\\d+")) {
            return cell;
        }
        ThreeDigits digits =
                ThreeDigits.isAmbiguous(cell) ? ThreeDigits.of(table, column.place(), ',', "") : ThreeDigits.DECIMALS;
        return switch (digits) {
            case DECIMALS -> cell.replace(',', '.');
            case THOUSANDS -> cell.replace(",", "");
            case OPEN -> cell;
        };
    }
}
