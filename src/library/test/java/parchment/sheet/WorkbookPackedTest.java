package parchment.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WorkbookPackedTest {
    @TempDir
    private Path folder;

    private Workbook xlsx(String sheetXml) throws IOException {
        return Workbook.read(PackedFiles.zip(folder.resolve("a.xlsx"), PackedFiles.xlsx(sheetXml)));
    }

    private Workbook ods(String tableXml) throws IOException {
        return Workbook.read(PackedFiles.zip(folder.resolve("a.ods"), PackedFiles.ods(tableXml)));
    }

    private static List<List<String>> rows(Workbook workbook) {
        return workbook.sheets().get(0).rows();
    }

    @ParameterizedTest
    @CsvSource({
        "0, 203.80000000000001, 203.8", "0, 12, 12", "0, 1.5E-7, 0.00000015", "0, 123456789012345, 123456789012345",
        "1, 47999, 2031-05-31", "1, 47999.5, 2031-05-31 12:00:00", "1, 59, 1900-02-28", "1, 61, 1900-03-01",
        "1, -1, -1", "2, 6.469907407407407E-3, 0:09:19", "2, 1.25, 30:00:00", "4, 6.469907407407407E-3, 0:09:19",
        "4, 6.47E-3, 0:09:19.008", "2, -0.5, -12:00:00", "4, 47999.25, 2031-05-31 06:00:00", "3, 0.15, 0.15"
    })
    void readsNumbersByTheirFormat(int style, String stored, String text) throws IOException {
        Workbook workbook = xlsx(
                "<sheetData><row r=\"1\"><c r=\"A1\" s=\"" + style + "\"><v>" + stored + "</v></c></row></sheetData>");
        assertEquals(List.of(List.of(text)), rows(workbook));
        assertEquals(
                style == 3
                        ? List.of(
                                "Cells shown as a percentage, read as the number that is stored (15 % is 0.15): 1, the first at A1 of sheet 'Batches'.")
                        : List.of(),
                workbook.told());
    }

    @Test
    void aWorkbookWithoutFormatsAndOneWhoseListLeavesPartsOutAreRead() throws IOException {
        Map<String, String> parts =
                PackedFiles.xlsx("<sheetData><row r=\"1\"><c r=\"A1\"><v>3</v></c></row></sheetData>");
        parts.remove("xl/styles.xml");
        parts.put(
                "[Content_Types].xml",
                "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                        + "<Default Extension=\"xml\" ContentType=\"application/xml\"/></Types>");
        Workbook workbook = Workbook.read(PackedFiles.zip(folder.resolve("a.xlsx"), parts));
        assertEquals(List.of(List.of("3")), rows(workbook));
        assertEquals(List.of(), workbook.told());
    }

    @Test
    void countsDaysFrom1904WhereTheWorkbookDoes() throws IOException {
        for (String from1904 : List.of("1", "true")) {
            countsFrom1904(from1904);
        }
    }

    private void countsFrom1904(String from1904) throws IOException {
        Map<String, String> parts =
                PackedFiles.xlsx("<sheetData><row r=\"1\"><c r=\"A1\" s=\"1\"><v>46538</v></c></row></sheetData>");
        parts.computeIfPresent(
                "xl/workbook.xml",
                (name, xml) -> xml.replace("<workbookPr/>", "<workbookPr date1904=\"" + from1904 + "\"/>"));
        assertEquals(
                List.of(List.of("2031-06-01")), rows(Workbook.read(PackedFiles.zip(folder.resolve("a.xlsx"), parts))));
    }

    @Test
    void readsTextsTruthsAndStoredValuesOfFormulas() throws IOException {
        Workbook workbook =
                xlsx("<sheetData><row r=\"1\"><c r=\"A1\" t=\"s\"><v>0</v></c><c r=\"B1\" t=\"b\"><v>1</v></c>"
                        + "<c r=\"D1\" t=\"inlineStr\"><is><t>in line</t></is></c></row><row r=\"3\"><c r=\"A3\"><f>1+1</f><v>2</v></c>"
                        + "<c r=\"B3\" t=\"str\"><f>A1</f><v>so</v></c><c r=\"C3\"><f>A9</f></c><c r=\"D3\" t=\"e\"><f>1/0</f><v>#DIV/0!</v></c>"
                        + "<c r=\"E3\" t=\"e\"><v>#N/A</v></c><c r=\"F3\" t=\"str\"><v>#1</v></c></row></sheetData>");
        assertEquals(
                List.of(List.of("Low Orchard", "true", "", "in line"), List.of(), List.of("2", "so", "", "", "", "#1")),
                rows(workbook));
        assertEquals(
                List.of(
                        "Cells with a formula whose value the file does not hold, read as blank (open it in a spreadsheet and save it anew): 1, the first at C3 of sheet 'Batches'.",
                        "Cells that hold an error such as #DIV/0!, read as blank: 2, the first at D3 of sheet 'Batches'."),
                workbook.told());
    }

    @Test
    void repeatsAMergedHeadAndKeepsATitleOneCell() throws IOException {
        Workbook workbook = xlsx(
                "<cols><col min=\"2\" max=\"3\" hidden=\"1\"/></cols><sheetData>"
                        + row(1, "A", "Title") + "<row r=\"2\" hidden=\"1\">" + text("A2", "Batch")
                        + text("B2", "Scores") + "</row></sheetData>"
                        + "<mergeCells><mergeCell ref=\"A1:C1\"/><mergeCell ref=\"B2:C2\"/><mergeCell ref=\"A2:A3\"/></mergeCells>");
        assertEquals(List.of(List.of("Title"), List.of("Batch", "Scores", "Scores")), rows(workbook));
        assertEquals(
                List.of(
                        "Sheet 'Batches' has hidden columns, read all the same: B to C.",
                        "Sheet 'Batches' has 1 hidden row, read all the same; the first is row 2."),
                workbook.told());
    }

    private static String row(int row, String column, String text) {
        return "<row r=\"" + row + "\">" + text(column + row, text) + "</row>";
    }

    private static String text(String place, String text) {
        return "<c r=\"" + place + "\" t=\"inlineStr\"><is><t>" + text + "</t></is></c>";
    }

    @Test
    void readsAHiddenTab() throws IOException {
        Map<String, String> parts = PackedFiles.xlsx("<sheetData>" + row(1, "A", "x") + "</sheetData>");
        parts.computeIfPresent("xl/workbook.xml", (name, xml) -> xml.replace("sheetId=", "state=\"hidden\" sheetId="));
        Workbook workbook = Workbook.read(PackedFiles.zip(folder.resolve("a.xlsx"), parts));
        assertEquals(List.of(List.of("x")), rows(workbook));
        assertEquals(List.of("Sheet 'Batches' is hidden; it is read all the same."), workbook.told());
    }

    @ParameterizedTest
    @CsvSource({
        "ALL1, 1000, false",
        "ALM1, 0, true",
        "ZZZZZZZZ1, 0, true",
        "A300000, 1, false",
        "A300001, 0, true",
        "A1048576, 0, true"
    })
    void leavesOutCellsBeyondTheBounds(String place, int width, boolean told) throws IOException {
        Workbook workbook = xlsx("<sheetData><row r=\"" + place.replaceAll("[A-Z]", "") + "\">" + text(place, "x")
                + "</row></sheetData>");
        List<List<String>> rows = rows(workbook);
        assertEquals(width, rows.isEmpty() ? 0 : rows.get(rows.size() - 1).size());
        assertEquals(told, workbook.told().size() == 1, workbook.told().toString());
    }

    @Test
    void readsEveryKindOfValueOfAnOdsFile() throws IOException {
        Workbook workbook = ods(
                "<table:table-column/><table:table-column table:visibility=\"collapse\"/><table:table-row>"
                        + value("float", "value", "203.8") + value("float", "value", "1.5e-7")
                        + value("percentage", "value", "0.15")
                        + value("date", "date-value", "2031-06-01") + value("date", "date-value", "2031-06-01T08:00:00")
                        + value("time", "time-value", "PT00H09M19S")
                        + value("time", "time-value", "PT30H00M00.000000001S")
                        + value("boolean", "boolean-value", "true")
                        + "<table:table-cell office:value-type=\"string\"><text:p>a<text:s text:c=\"2\"/>"
                        + "<text:span>b</text:span></text:p> <text:p>c</text:p></table:table-cell></table:table-row>"
                        + "<table:table-row table:number-rows-repeated=\"2\"><table:table-cell table:number-columns-repeated=\"16384\"/></table:table-row>"
                        + "<table:table-row><table:table-cell table:formula=\"of:=1/0\" office:value-type=\"string\" office:string-value=\"\" calcext:value-type=\"error\">"
                        + "<text:p>#DIV/0!</text:p></table:table-cell><table:table-cell table:formula=\"of:=A1\"/>"
                        + "<table:table-cell office:value-type=\"string\" table:number-columns-repeated=\"2\"><text:p>x</text:p></table:table-cell></table:table-row>"
                        + "<table:table-row table:number-rows-repeated=\"1048570\"><table:table-cell table:number-columns-repeated=\"16384\"/></table:table-row>");
        assertEquals(
                List.of(
                        List.of(
                                "203.8",
                                "0.00000015",
                                "0.15",
                                "2031-06-01",
                                "2031-06-01 08:00:00",
                                "0:09:19",
                                "30:00:00",
                                "true",
                                "a  b\nc"),
                        List.of(),
                        List.of(),
                        List.of("", "", "x", "x")),
                rows(workbook));
        assertEquals(
                List.of(
                        "Sheet 'Batches' has hidden columns, read all the same: B.",
                        "Cells shown as a percentage, read as the number that is stored (15 % is 0.15): 1, the first at C1 of sheet 'Batches'.",
                        "Cells that hold an error such as #DIV/0!, read as blank: 1, the first at A4 of sheet 'Batches'.",
                        "Cells with a formula whose value the file does not hold, read as blank (open it in a spreadsheet and save it anew): 1, the first at B4 of sheet 'Batches'."),
                workbook.told());
    }

    private static String value(String type, String attribute, String stored) {
        return "<table:table-cell office:value-type=\"" + type + "\" office:" + attribute + "=\"" + stored
                + "\"><text:p>shown</text:p></table:table-cell>";
    }
}
