package parchment.gather.corpus;

import com.github.miachm.sods.Sheet;
import com.github.miachm.sods.SpreadSheet;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** Writes tables as spreadsheets in the two open formats. */
final class Spreadsheets {
    private static final double DAY = 86_400;

    private Spreadsheets() {}

    /** Writes the file, as its name's ending says. */
    static void write(Path file, Grid... sheets) throws IOException {
        write(file, List.of(sheets));
    }

    static void write(Path file, List<Grid> sheets) throws IOException {
        Files.createDirectories(file.getParent());
        if (file.toString().endsWith(".ods")) {
            openDocument(file, sheets);
        } else {
            officeOpen(file, sheets);
        }
    }

    private static void officeOpen(Path file, List<Grid> sheets) throws IOException {
        try (OutputStream out = Files.newOutputStream(file);
                Workbook workbook = new Workbook(out, "Parchment", "1.0")) {
            for (Grid grid : sheets) {
                Worksheet sheet = workbook.newWorksheet(grid.name());
                for (int row = 0; row < grid.rows().size(); row++) {
                    List<Object> cells = grid.rows().get(row);
                    for (int column = 0; column < cells.size(); column++) {
                        cell(sheet, row, column, cells.get(column));
                    }
                }
                grid.hidden().forEach(sheet::hideColumn);
                grid.merged()
                        .forEach(range -> sheet.range(range[0], range[1], range[2], range[3])
                                .merge());
            }
        }
    }

    private static void cell(Worksheet sheet, int row, int column, Object value) {
        if (value instanceof Number number) {
            sheet.value(row, column, number);
        } else if (value instanceof LocalDateTime at) {
            sheet.value(row, column, at);
            sheet.style(row, column).format("yyyy-mm-dd hh:mm:ss").set();
        } else if (value instanceof LocalDate day) {
            sheet.value(row, column, day);
            sheet.style(row, column).format("yyyy-mm-dd").set();
        } else if (value instanceof LocalTime clock) {
            sheet.value(row, column, clock.toSecondOfDay() / DAY);
            sheet.style(row, column).format("hh:mm:ss").set();
        } else if (value instanceof Cells.Span span) {
            sheet.value(row, column, span.seconds() / DAY);
            sheet.style(row, column).format(span.pattern()).set();
        } else if (!String.valueOf(value).isEmpty()) {
            sheet.value(row, column, String.valueOf(value));
        }
    }

    private static void openDocument(Path file, List<Grid> sheets) throws IOException {
        SpreadSheet book = new SpreadSheet();
        for (Grid grid : sheets) {
            Grid full = grid.padded();
            Sheet sheet = new Sheet(grid.name(), full.rows().size(), Math.max(1, full.width()));
            Object[][] values = new Object[full.rows().size()][];
            for (int row = 0; row < values.length; row++) {
                values[row] = full.rows().get(row).stream()
                        .map(Spreadsheets::openValue)
                        .toArray();
            }
            sheet.getDataRange().setValues(values);
            grid.hidden().forEach(sheet::hideColumn);
            book.appendSheet(sheet);
        }
        book.save(file.toFile());
    }

    private static Object openValue(Object value) {
        if (value instanceof Cells.Span span) {
            return java.time.Duration.ofSeconds((long) span.seconds());
        }
        if (value instanceof LocalTime clock) {
            return java.time.Duration.ofSeconds(clock.toSecondOfDay());
        }
        return value;
    }
}
