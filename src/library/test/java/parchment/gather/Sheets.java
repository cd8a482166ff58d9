package parchment.gather;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import parchment.sheet.Numbers;
import parchment.sheet.Sheet;

/** Builds sheets for tests out of lines with a sign between the cells. */
final class Sheets {
    private Sheets() {}

    /** A sheet of a spreadsheet's file, with bars between the cells so that a case stays readable. */
    static Sheet of(String... lines) {
        return of(Numbers.Decimal.EITHER, lines);
    }

    static Sheet of(Numbers.Decimal decimal, String... lines) {
        List<List<String>> rows = Arrays.stream(lines)
                .map(line ->
                        Arrays.stream(line.split("\\|", -1)).map(String::strip).toList())
                .map(cells -> cells.size() == 1 && cells.get(0).isEmpty() ? List.<String>of() : cells)
                .toList();
        return new Sheet(Path.of("list.csv"), "", ';', decimal, rows);
    }

    /** The one table of such a sheet. */
    static FoundTable table(String... lines) {
        List<FoundTable> tables = FoundTable.in(of(lines));
        if (tables.size() != 1) {
            throw new AssertionError(tables.size() + " tables where one is expected");
        }
        return tables.get(0);
    }
}
