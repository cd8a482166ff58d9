package parchment.gather;

import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Writes the cells of a list of batches as the logbook has them, under its headings or the list's own. */
final class BatchCells {
    private static final Set<ListMeaning.Kind> CONVERTED =
            Set.of(ListMeaning.Kind.MASS, ListMeaning.Kind.ROAST_TEMPERATURE, ListMeaning.Kind.ROOM_TEMPERATURE);

    private final FoundTable table;
    private final List<String> told;
    private final Map<Integer, String> headings = new LinkedHashMap<>();
    private final Map<Integer, ColumnValues> values = new LinkedHashMap<>();
    private final Set<Integer> toldOf = new LinkedHashSet<>();

    BatchCells(ListColumns columns, List<String> told) {
        this.table = columns.table();
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
            values.put(column.place(), ColumnValues.of(table, column.place(), unit(column)));
        }
    }

    private static String unit(ListColumn column) {
        return CONVERTED.contains(column.meaning().kind())
                        && ColumnValues.statedUnit(column.heading()).isEmpty()
                ? column.unit()
                : "";
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

    /** Writes a cell of a row under its heading. */
    void put(Map<String, String> written, ListColumn column, int row) {
        written.put(headings.getOrDefault(column.place(), column.heading()), value(column, row));
    }

    /** Returns what is said of a mass that is too far from its column's others; empty if it is near enough. */
    Optional<String> far(ListColumn column, int row) {
        ColumnValues masses = values(column);
        return MassGroups.far(masses.number(row), masses, column);
    }

    private ColumnValues values(ListColumn column) {
        return values.computeIfAbsent(column.place(), place -> ColumnValues.of(table, column.place(), unit(column)));
    }

    /** Returns a value with a decimal point and without its unit, which its heading has. */
    private String value(ListColumn column, int row) {
        String cell = table.rows().get(row).get(column.place()).strip();
        if (CellForm.of(cell) != CellForm.NUMBER || column.meaning().kind() == ListMeaning.Kind.WORD) {
            return cell;
        }
        boolean own = column.meaning() == ListMeaning.EXTRA;
        ThreeDigits digits = values(column).digits(row);
        if (digits == ThreeDigits.OPEN && ThreeDigits.sign(cell) == ',') {
            tellOpen(column, cell, own);
            if (own) {
                return cell;
            }
        }
        double number = number(column, row, cell);
        return Double.isNaN(number) || own && cell.matches(".*\\p{L}.*")
                ? cell
                : number == Math.rint(number) && Math.abs(number) < 1e9
                        ? String.format(Locale.ROOT, "%.0f", number)
                        : cell.matches("[+-]?\\d+[.,]\\d+") ? cell.replace(',', '.') : Double.toString(number);
    }

    /** Returns a number in its column's unit where its cell carries another one. */
    private double number(ListColumn column, int row, String cell) {
        double written = values(column).written(row);
        return CellNumber.of(cell, table.sheet().decimal())
                .flatMap(number -> CellUnit.between(ColumnValues.plainUnit(number.unit()), column.unit()))
                .map(unit -> unit.of(written))
                .orElse(written);
    }

    private void tellOpen(ListColumn column, String cell, boolean asWritten) {
        if (toldOf.add(column.place())) {
            double decimals = CellNumber.of(cell, Numbers.Decimal.EITHER)
                    .map(CellNumber::value)
                    .orElse(Double.NaN);
            told.add(Words.quote(cell) + " under " + Words.quote(column.heading()) + " can be "
                    + Numbers.written(decimals) + " or " + Numbers.written(Math.rint(1000 * decimals))
                    + ", and no number of the list shows which: such numbers are "
                    + (asWritten ? "kept as they are written." : "read with a decimal comma."));
        }
    }
}
