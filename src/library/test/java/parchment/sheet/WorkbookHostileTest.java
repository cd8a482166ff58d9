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
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
        Workbook workbook = Assertions.assertTimeout(Duration.ofSeconds(2), () -> Workbook.read(file));
        says("has more than 1000 columns", workbook.told().get(0));
        says(
                "Sheet 'Batches' states cells once and repeats them more than 20000 times; from AKU20 on repeated ones are left out.",
                workbook.told().get(1));
    }

    /** 100 rows of 200 equal cells are 19,999 repeated ones, and with one more row of two 20,000. */
    @ParameterizedTest
    @CsvSource({"2, 20002, 0", "3, 20002, 1"})
    void twentyThousandRepeatedCellsAreRead(int more, int cells, int told) throws IOException {
        PackedFiles.zip(file, PackedFiles.ods(repeated(100, 200) + repeated(1, more)));
        Workbook workbook = Workbook.read(file);
        assertEquals(told, workbook.told().size());
        assertEquals(
                cells,
                workbook.sheets().get(0).rows().stream()
                        .flatMap(row -> row.stream())
                        .filter(cell -> cell.equals("1"))
                        .count());
    }

    private static String repeated(int rows, int columns) {
        return "<table:table-row table:number-rows-repeated=\"" + rows + "\"><table:table-cell"
                + " table:number-columns-repeated=\"" + columns
                + "\" office:value-type=\"float\" office:value=\"1\"/></table:table-row>";
    }

    /** A place beyond the lists, none, and one that is no number; the cells beside are read. */
    @ParameterizedTest
    @CsvSource({"t, 99", "t, 1", "t, -1", "t, x", "t, 99999999999", "s, 99", "s, 5", "s, -1", "s, x"})
    void aCellThatPointsNowhereIsNamedAndTheRestIsRead(String list, String place) throws IOException {
        boolean text = list.equals("t");
        String odd = text
                ? "<c r=\"B2\" t=\"s\"><v>" + place + "</v></c>"
                : "<c r=\"B2\" s=\"" + place + "\"><v>47999</v></c>";
        PackedFiles.zip(
                file,
                PackedFiles.xlsx(
                        "<sheetData><row r=\"1\"><c r=\"A1\" t=\"s\"><v>0</v></c><c r=\"B1\" s=\"1\"><v>47999</v></c></row>"
                                + "<row r=\"2\"><c r=\"A2\"><v>7</v></c>" + odd
                                + "<c r=\"C2\"><v>8</v></c></row></sheetData>"));
        Workbook workbook = Workbook.read(file);
        assertEquals(
                List.of(List.of("Low Orchard", "2031-05-31"), List.of("7", text ? "" : "47999", "8")),
                workbook.sheets().get(0).rows());
        assertEquals(
                List.of(
                        text
                                ? "Cells whose text the file does not hold, read as blank: 1, the first at B2 of sheet 'Batches'."
                                : "Cells whose format the file does not hold, read without it (a date is a number): 1, the first at B2 of"
                                        + " sheet 'Batches'."),
                workbook.told());
    }

    @Test
    void valuesThatAreNoneOfTheirTypeAreReadAsTheyStand() throws IOException {
        PackedFiles.zip(
                file,
                PackedFiles.xlsx(
                        "<sheetData><row r=\"1\"><c r=\"A1\" t=\"b\"><v>maybe</v></c><c r=\"B1\" t=\"odd\"><v>word</v></c>"
                                + "<c r=\"C1\"><v>twelve</v></c><c r=\"D1\"><v>1e999</v></c><c r=\"E1\"><v>12</v></c>"
                                + "<c r=\"F1\"><v>1E59000000</v></c></row></sheetData>"));
        assertEquals(
                List.of(List.of("maybe", "word", "twelve", "1e999", "12", "1E59000000")),
                Assertions.assertTimeout(Duration.ofSeconds(2), () -> Workbook.read(file))
                        .sheets()
                        .get(0)
                        .rows());
    }

    /** A tenth of the memory, but never less than 4 nor more than 256 megabytes. */
    @ParameterizedTest
    @CsvSource({"16, 4, 67108", "256, 25, 1073741", "1024, 102, 3000000", "2550, 255, 3000000", "8192, 256, 3000000"})
    void theMemorySaysHowMuchIsUnpacked(long megabytes, long unpacked, int cells) {
        assertEquals(unpacked, SheetBounds.largestUnpacked(megabytes << 20) >> 20);
        assertEquals(cells, SheetBounds.mostCells(megabytes << 20));
    }

    /** Starts a run with little memory, in which both workbooks are too large. */
    @Test
    void aWorkbookTooLargeForTheMemoryIsRefusedInWords() throws IOException, InterruptedException {
        Random random = new Random(7);
        StringBuilder rows = new StringBuilder("<sheetData>");
        for (int i = 1; rows.length() < 12 << 20; i++) {
            rows.append("<row r=\"")
                    .append(i)
                    .append("\"><c r=\"A")
                    .append(i)
                    .append("\"><v>")
                    .append(random.nextInt());
            rows.append("</v></c></row>");
        }
        PackedFiles.zip(file, PackedFiles.xlsx(rows + "</sheetData>"));
        Path output = folder.resolve("said.txt");
        Process run = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx96m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        LittleMemory.class.getName(),
                        file.toString())
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
        assertTrue(run.waitFor(60, TimeUnit.SECONDS));
        assertEquals(
                "a workbook that unpacks to more than 9 MB, for which there is no room in the memory; save the sheets that matter"
                        + " as CSV, each as a file",
                Files.readString(output).strip());
    }

    /** Reads a file in a run of its own. */
    static final class LittleMemory {
        private LittleMemory() {}

        public static void main(String[] files) throws IOException {
            try {
                System.out.println(Workbook.read(Path.of(files[0])));
            } catch (NoTableException e) {
                System.out.println(e.getMessage());
            }
        }
    }
}
