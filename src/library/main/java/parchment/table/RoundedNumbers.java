package parchment.table;

import parchment.quantity.Unit;
import tech.tablesaw.columns.numbers.NumberColumnFormatter;

/** Prints the numbers of a column with as many decimals as every page does; the column itself keeps every digit. */
final class RoundedNumbers extends NumberColumnFormatter {
    private final Unit unit;

    RoundedNumbers(Unit unit) {
        this.unit = unit;
    }

    @Override
    public String format(double value) {
        return Double.isNaN(value) ? "" : unit.number(value);
    }
}
