package parchment.logbook;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import parchment.quantity.MassUnit;
import parchment.sheet.Numbers;

/** Tells once of a column of masses that is written in another unit than its heading says, where else each row would have a problem of its own. */
final class WholeMassColumn {
    /** Fewest masses that say so. */
    static final int LEAST = 4;

    /** More than this share of the masses cannot be ones in the unit of the heading; common practice, no source. */
    static final double MOST = 0.75;

    private WholeMassColumn() {}

    /** Tells of the column if most of its numbers cannot be masses in its unit but can be in kilograms, where they are too small, or in grams. */
    static void tell(CsvTable table, String name, Bounds.Weighed what) {
        MassUnit unit = table.massUnit(name);
        Bounds.Range possible = what.in(unit);
        List<Row> written =
                table.rows().stream().filter(row -> row.text(name).isPresent()).toList();
        for (MassUnit other : List.of(MassUnit.KILOGRAM, MassUnit.GRAM)) {
            List<Row> fits = written.stream()
                    .filter(row -> number(table, row, name).stream()
                            .anyMatch(number -> !possible.holds(number)
                                    && number < possible.low() == (other == MassUnit.KILOGRAM)
                                    && what.in(other).holds(number)))
                    .toList();
            if (other != unit && fits.size() >= LEAST && fits.size() > MOST * written.size()) {
                Row first = fits.get(0);
                first.problem(
                        name,
                        String.format(
                                Locale.ROOT,
                                "%d of %d numbers that look like %s, such as %s",
                                fits.size(),
                                written.size(),
                                other.symbol(),
                                first.text(name).orElse("")),
                        "masses in " + unit.symbol() + ", as the heading says; if they are in " + other.symbol()
                                + ", write [" + other.symbol() + "] there",
                        "values treated as missing");
                table.tellAsAWhole(name);
            }
        }
    }

    private static OptionalDouble number(CsvTable table, Row row, String name) {
        return row.text(name).stream()
                .mapToDouble(text -> Numbers.parse(text, table.decimal()))
                .findFirst();
    }
}
