package parchment.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WorkbookHostileTest {
    private static final String CELL = "<sheetData><row r=\"1\"><c r=\"A1\"><v>1</v></c></row></sheetData>";

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void name() {
        file = folder.resolve("list.xlsx");
    }

    /** Reads within a second, the classes once loaded, and returns what is said. */
    private String refused() {
        return Assertions.assertTimeout(
                Duration.ofSeconds(2),
                () -> assertThrows(NoTableException.class, () -> Workbook.read(file))
                        .getMessage());
    }

    private static void says(String expected, String said) {
        assertTrue(said.contains(expected), said);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "xl/sharedStrings.xml",
                "xl/styles.xml",
                "xl/workbook.xml",
                "xl/worksheets/sheet1.xml",
                "content.xml"
            })
    void wordsOfItsOwnAreRefused(String part) throws IOException {
        Path secret = Files.writeString(folder.resolve("secret.txt"), "secret");
        String fetch = "<!DOCTYPE a [<!ENTITY x SYSTEM \"" + secret.toUri() + "\">]>";
        StringBuilder laughs = new StringBuilder("<!DOCTYPE a [<!ENTITY l0 \"ha\">");
        for (int i = 1; i < 12; i++) {
            laughs.append("<!ENTITY l")
                    .append(i)
                    .append(" \"")
                    .append(("&l" + (i - 1) + ";").repeat(10))
                    .append("\">");
        }
        for (String start : new String[] {fetch, laughs + "]>"}) {
            Map<String, String> parts = part.equals("content.xml") ? PackedFiles.ods("") : PackedFiles.xlsx(CELL);
            parts.computeIfPresent(part, (name, xml) -> xml.replace(PackedFiles.HEAD, PackedFiles.HEAD + start));
            PackedFiles.zip(file, parts);
            says("defines words of its own (DOCTYPE)", refused());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"xl/sharedStrings.xml", "xl/worksheets/sheet1.xml", "content.xml", "xl/styles.xml"})
    void aBombIsRefusedAfterAFewMegabytes(String part) throws IOException {
        try (OutputStream out = Files.newOutputStream(file);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry(part));
            byte[] zeros = new byte[1 << 20];
            for (int i = 0; i < 40; i++) {
                zip.write(zeros);
            }
            zip.closeEntry();
        }
        says("is blown up beyond any table", refused());
    }

    @Test
    void aMillionTinyPartsAreRefusedBeforeTheyAreListed() throws IOException {
        Map<String, String> parts = new LinkedHashMap<>();
        for (int i = 0; i <= SheetBounds.MOST_PARTS; i++) {
            parts.put("p" + i, "");
        }
        PackedFiles.zip(file, parts);
        says("with more than 10000 files in it", refused());
    }

    @Test
    void asManyPartsAsTheBoundAreRead() throws IOException {
        Map<String, String> parts = PackedFiles.xlsx(CELL);
        for (int i = parts.size(); i < SheetBounds.MOST_PARTS; i++) {
            parts.put("p" + i, "");
        }
        assertEquals(
                "1", Workbook.read(PackedFiles.zip(file, parts)).sheets().get(0).cell(0, 0));
    }

    @Test
    void aNameThatLeadsOutIsRefused() throws IOException {
        Map<String, String> parts = PackedFiles.xlsx(CELL);
        parts.put("../x", "x");
        PackedFiles.zip(file, parts);
        says("a name that leads out of it, '../x'", refused());
    }

    @Test
    void aCutWorkbookIsNamedSo() throws IOException {
        byte[] whole = Files.readAllBytes(PackedFiles.zip(file, PackedFiles.xlsx(CELL)));
        Files.write(file, Arrays.copyOf(whole, whole.length / 2));
        says("cut off or damaged", refused());
    }

    @Test
    void oldAndLockedWorkbooksSayWhatToDo() throws IOException {
        byte[] ole = new byte[2048];
        byte[] sign = {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0, (byte) 0xA1, (byte) 0xB1, 0x1A, (byte) 0xE1};
        System.arraycopy(sign, 0, ole, 0, sign.length);
        Files.write(file, ole);
        assertEquals("a workbook in the old form (.xls); open it in a spreadsheet and save it as .xlsx", refused());
        byte[] name = "EncryptedPackage".getBytes(StandardCharsets.UTF_16LE);
        System.arraycopy(name, 0, ole, 1024, name.length);
        Files.write(file, ole);
        says("locked with a password", refused());
        Map<String, String> parts = PackedFiles.ods("");
        parts.put("content.xml", "\u0001\u0002 not XML");
        parts.put("META-INF/manifest.xml", "<manifest><file-entry><encryption-data/></file-entry></manifest>");
        PackedFiles.zip(file, parts);
        says("locked with a password", refused());
    }

    @Test
    void theContentAndNotTheNameSaysWhatAFileIs() throws IOException {
        Files.writeString(file, "a,b\n1,2\n");
        assertEquals("2", Workbook.read(file).sheets().get(0).cell(1, 1));
        Path csv = PackedFiles.zip(folder.resolve("list.csv"), PackedFiles.xlsx(CELL));
        assertEquals("Batches", Workbook.read(csv).sheets().get(0).tab());
        PackedFiles.zip(file, Map.of("word/document.xml", "<a/>"));
        says("a packed file but no workbook", refused());
        PackedFiles.zip(file, Map.of("xl/workbook.bin", "x"));
        says("binary workbook (.xlsb)", refused());
    }

    @Test
    void aDamagedPartEndsInWords() throws IOException {
        PackedFiles.zip(file, PackedFiles.xlsx("<sheetData><row r=\"1\"><c>"));
        says("cannot be read", refused());
    }

    @Test
    void oneLongFormulaSharedByManyCellsTakesNoRoom() throws IOException {
        StringBuilder rows =
                new StringBuilder("<sheetData><row r=\"1\"><c r=\"A1\"><f t=\"shared\" ref=\"A1:A5000\" si=\"0\">"
                        + "B1+".repeat(200_000) + "B1</f><v>1</v></c></row>");
        for (int i = 2; i <= 5000; i++) {
            rows.append("<row r=\"")
                    .append(i)
                    .append("\"><c r=\"A")
                    .append(i)
                    .append("\"><f t=\"shared\" si=\"0\"/><v>1</v></c></row>");
        }
        PackedFiles.zip(file, PackedFiles.xlsx(rows + "</sheetData>"));
        Workbook workbook = Assertions.assertTimeout(Duration.ofSeconds(5), () -> Workbook.read(file));
        assertEquals(5000, workbook.sheets().get(0).rows().size());
    }

    @Test
    void aSheetRepeatedOverEveryPlaceStopsAtTheBounds() throws IOException {
        PackedFiles.zip(
                file,
                PackedFiles.ods(
                        "<table:table-row table:number-rows-repeated=\"1048576\"><table:table-cell"
                                + " table:number-columns-repeated=\"16384\" office:value-type=\"float\" office:value=\"1\"/></table:table-row>"));
        Workbook workbook = Assertions.assertTimeout(Duration.ofSeconds(8), () -> Workbook.read(file));
        says("has more than 1000 columns", workbook.told().get(0));
        says("The file has more than 3000000 cells", workbook.told().get(1));
    }
}
