package parchment.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.github.miachm.sods.Sheet;
import com.github.miachm.sods.SpreadSheet;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Agrees with what other programs write: openpyxl's file, and grids drawn at random by the writers of fastexcel and SODS and as CSV. */
class WorkbookOtherProgramsTest {
    private static final String LETTERS = "abcXYZ0129 ,;|\"'\n\u00E4\u00F6\u00FC\u00DF\u00E9\u00B0.-";

    @TempDir
    private Path folder;

    @Test
    void agreesWithAWorkbookOfOpenpyxl() throws IOException {
        Workbook workbook = Workbook.read(Path.of("library/test/resources/reference/workbooks/batches.xlsx"));
        assertEquals(
                List.of(
                        List.of("Harbour roastery, June"),
                        List.of("Batch", "Date", "Drop", "Scores", "Scores"),
                        List.of("B1", "2031-06-01", "0:09:19", "84.25", "true"),
                        List.of("B2", "2031-06-01 08:30:00", "26:05:00", "0.3")),
                workbook.sheets().get(0).rows());
        assertEquals(List.of(List.of("größer – als")), workbook.sheets().get(1).rows());
        assertEquals(
                List.of(
                        "Sheet 'Batches' has hidden columns, read all the same: C.",
                        "Sheet 'Notes' is hidden; it is read all the same.",
                        "Cells with a formula whose value the file does not hold, read as blank (open it in a spreadsheet and save it anew): 1, the first at E4 of sheet 'Batches'."),
                workbook.told());
    }

    @RepeatedTest(40)
    void gridsAtRandomReadBackEqual(RepetitionInfo repetition) throws IOException {
        Random random = new Random(20_310_601L + repetition.getCurrentRepetition());
        List<List<String>> grid = grid(random);
        char sign = ",;\t|".charAt(random.nextInt(4));
        String end = List.of("\n", "\r\n", "\r").get(random.nextInt(3));
        Charset charset = List.of(
                        StandardCharsets.UTF_8,
                        StandardCharsets.UTF_16LE,
                        StandardCharsets.UTF_16BE,
                        Charset.forName("windows-1252"))
                .get(random.nextInt(4));
        Path csv = Files.write(
                folder.resolve("a.csv"), csv(grid, sign, end, random).getBytes(charset));
        assertEquals(grid, Workbook.read(csv).sheets().get(0).rows(), sign + " " + charset);
        assertEquals(trimmed(grid), Workbook.read(xlsx(grid)).sheets().get(0).rows());
        assertEquals(trimmed(grid), Workbook.read(ods(grid)).sheets().get(0).rows());
    }

    private static List<List<String>> grid(Random random) {
        int width = 2 + random.nextInt(5);
        List<List<String>> grid = new ArrayList<>();
        for (int r = 0; r < 4 + random.nextInt(20); r++) {
            List<String> row = new ArrayList<>();
            for (int c = 0; c < width; c++) {
                StringBuilder cell = new StringBuilder(r == 0 || c == 0 ? "n" : "");
                for (int i = random.nextInt(8); i > 0; i--) {
                    cell.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
                }
                // Blanks around a cell and apostrophes before it are not kept by everything that writes a table.
                row.add(cell.toString().strip().replaceAll("  +", " ").replace("'", "a"));
            }
            grid.add(row);
        }
        return grid;
    }

    private static String csv(List<List<String>> grid, char sign, String end, Random random) {
        // Stated, as a grid drawn at random may be cut as well by another sign.
        StringBuilder text = new StringBuilder("sep=" + sign + end);
        for (List<String> row : grid) {
            List<String> cells = row.stream()
                    .map(cell ->
                            random.nextInt(3) == 0 || cell.chars().anyMatch(c -> c == sign || c == '"' || c == '\n')
                                    ? "\"" + cell.replace("\"", "\"\"") + "\""
                                    : cell)
                    .toList();
            text.append(String.join(String.valueOf(sign), cells)).append(end);
        }
        return text.toString();
    }

    private static List<List<String>> trimmed(List<List<String>> grid) {
        List<List<String>> rows = new ArrayList<>();
        for (List<String> row : grid) {
            int width = row.size();
            while (width > 0 && row.get(width - 1).isEmpty()) {
                width--;
            }
            rows.add(row.subList(0, width));
        }
        return rows;
    }

    private Path xlsx(List<List<String>> grid) throws IOException {
        Path file = folder.resolve("a.xlsx");
        try (OutputStream out = Files.newOutputStream(file);
                org.dhatim.fastexcel.Workbook workbook = new org.dhatim.fastexcel.Workbook(out, "test", "1.0")) {
            Worksheet sheet = workbook.newWorksheet("Grid");
            for (int r = 0; r < grid.size(); r++) {
                for (int c = 0; c < grid.get(r).size(); c++) {
                    sheet.value(r, c, grid.get(r).get(c));
                }
            }
        }
        return file;
    }

    private Path ods(List<List<String>> grid) throws IOException {
        Path file = folder.resolve("a.ods");
        Sheet sheet = new Sheet("Grid", grid.size(), grid.get(0).size());
        Object[][] cells = grid.stream().map(row -> row.toArray()).toArray(Object[][]::new);
        sheet.getDataRange()
                .setValues(Arrays.stream(cells).flatMap(Arrays::stream).toArray());
        SpreadSheet workbook = new SpreadSheet();
        workbook.appendSheet(sheet);
        workbook.save(file.toFile());
        return file;
    }
}
