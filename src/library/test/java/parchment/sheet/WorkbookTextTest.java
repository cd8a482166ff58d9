package parchment.sheet;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WorkbookTextTest {
    @TempDir
    private Path folder;

    private Workbook read(byte[] bytes) throws IOException {
        return Workbook.read(Files.write(folder.resolve("list.csv"), bytes));
    }

    private Workbook read(String text) throws IOException {
        return read(text.getBytes(UTF_8));
    }

    private static Sheet only(Workbook workbook) {
        assertEquals(1, workbook.sheets().size());
        return workbook.sheets().get(0);
    }

    @ParameterizedTest
    @CsvSource({
        "windows-1252, Windows-1252",
        "ISO-8859-1, Windows-1252",
        "UTF-16LE, UTF-16 without a mark",
        "UTF-16BE, UTF-16 without a mark"
    })
    void tellsOfLettersThatAreNotUtf8(String charset, String words) throws IOException {
        Workbook workbook = read("Batch;Röstgrad [°C]\nA;Größe\n".getBytes(Charset.forName(charset)));
        assertEquals(
                List.of(List.of("Batch", "Röstgrad [°C]"), List.of("A", "Größe")),
                only(workbook).rows());
        assertEquals(
                List.of("The letters of the file are not UTF-8: read as " + words + ", first on line 1."),
                workbook.told());
    }

    @Test
    void readsMarkedTextWithoutAWord() throws IOException {
        for (Charset charset : List.of(UTF_8, UTF_16LE, UTF_16BE)) {
            Workbook workbook = read("\uFEFFBatch,Größe\n1,2\n".getBytes(charset));
            assertEquals(List.of("Batch", "Größe"), only(workbook).rows().get(0));
            assertEquals(List.of(), workbook.told());
        }
    }

    @Test
    void namesTheFirstLineWithAnOldLetter() throws IOException {
        Workbook workbook = read("a,b\r\n1,2\r\n3,\u00E9\r\n".getBytes(ISO_8859_1));
        assertEquals(
                List.of("The letters of the file are not UTF-8: read as Windows-1252, first on line 3."),
                workbook.told());
    }

    @Test
    void keepsUtf8AroundOneBadByte() throws IOException {
        byte[] bytes = "a,\u00E9\nb,?\nc,\u00E9\n".getBytes(UTF_8);
        bytes[7] = (byte) 0x80;
        assertEquals(
                List.of(List.of("a", "é"), List.of("b", "€"), List.of("c", "é")),
                only(read(bytes)).rows());
    }

    @Test
    void readsTheFiveOpenBytesAsControlSigns() throws IOException {
        byte[] bytes = {'a', ',', (byte) 0x81, (byte) 0x8D, (byte) 0x8F, (byte) 0x90, (byte) 0x9D, '\n'};
        assertEquals(
                "\u0081\u008D\u008F\u0090\u009D",
                only(read(bytes)).rows().get(0).get(1));
    }

    @Test
    void readsAnOldMacintoshTextByItsLineEndsAndLetters() throws IOException {
        byte[] mac = "Batch,R\u00F6stgrad \u00B0C\rA,1\r".getBytes(Charset.forName("x-MacRoman"));
        Workbook workbook = read(mac);
        assertEquals("Röstgrad °C", only(workbook).rows().get(0).get(1));
        assertTrue(
                workbook.told().get(0).contains("read as Mac Roman"),
                workbook.told().toString());
        Workbook logger = read("Batch,\u00B0C\rA,1\r".getBytes(ISO_8859_1));
        assertEquals("°C", only(logger).rows().get(0).get(1));
    }

    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '!',
            delimiter = '~',
            value = {
                "a;b\\n1,5;2,5\\n3,5;4~;",
                "a,b,c\\n1,2,x; y\\n3,4,z; w\\n~,",
                "a\\tb\\n1,5\\t2\\n~tab",
                "a|b\\n1|2\\n~|",
                "Title of the list\\na;b\\n1;2\\n3;4\\n~;",
                "sep=|\\na;b|c;d\\n~|",
                // A remark with a semicolon in each row, with headings and without, quoted and not.
                "No,Green,Note\\n1,5,sweet; clean\\n2,6,flat; dull\\n3,5,good; ok\\n~,",
                "1,5,sweet; clean\\n2,6,flat; dull\\n3,5,good; ok\\n~,",
                "No,Green,Note\\n1,5,\"sweet; clean\"\\n2,6,\"flat; dull\"\\n3,5,\"good; ok\"\\n~,",
                "\"1\",\"5\",\"sweet; clean\"\\n\"2\",\"6\",\"flat; dull\"\\n\"3\",\"5\",\"good; ok\"\\n~,",
                "1,5,1:30,sweet; a bit, well\\n2,6,1:40,flat; dull\\n3,5,1:20,good; ok, so\\n~,",
                // And commas in semicolon files.
                "1;5,2;sweet, clean\\n2;6,1;flat, dull\\n3;5,5;good, ok\\n~;",
                "1;5;sweet, clean\\n2;6;flat, dull\\n3;5;good, ok\\n~;",
                "1,5;2,5\\n3,5;4,5\\n5,5;6,5\\n~;"
            })
    void findsTheSignBetweenTheColumns(String text, String sign) throws IOException {
        Sheet sheet = only(read(text.replace("\\n", "\n").replace("\\t", "\t")));
        assertEquals(sign.equals("tab") ? '\t' : sign.charAt(0), sheet.delimiter());
        assertEquals(sign.equals(",") ? Numbers.Decimal.POINT : Numbers.Decimal.EITHER, sheet.decimal());
    }

    @Test
    void theStatedSignIsNoRow() throws IOException {
        Sheet sheet = only(read("sep=;\r\na;b\r\n1;2\r\n"));
        assertEquals(List.of(List.of("a", "b"), List.of("1", "2")), sheet.rows());
        assertEquals(List.of(2, 3), sheet.lines());
    }

    @Test
    void countsLinesThroughCellsOfSeveralLines() throws IOException {
        Sheet sheet = only(read("a,b\n\n\"x\r\ny\",\"say \"\"so\"\"\"\n5\" screen,6\n"));
        assertEquals(
                List.of(List.of("a", "b"), List.of(), List.of("x\r\ny", "say \"so\""), List.of("5\" screen", "6")),
                sheet.rows());
        assertEquals(List.of(1, 2, 3, 5), sheet.lines());
        assertEquals(5, sheet.line(3));
    }

    @Test
    void anOpenMarkSwallowsNothing() throws IOException {
        StringBuilder text = new StringBuilder("a,b\n\"open,1\n");
        for (int i = 0; i < SheetBounds.MOST_LINES_IN_A_CELL + 1; i++) {
            text.append("x,").append(i).append('\n');
        }
        Workbook workbook = read(text.toString());
        assertEquals(List.of("\"open", "1"), only(workbook).rows().get(1));
        assertEquals(SheetBounds.MOST_LINES_IN_A_CELL + 3, only(workbook).rows().size());
        assertEquals(
                List.of("Quotation marks that are never closed, read as letters: 1, the first at line 2."),
                workbook.told());
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "1, 202"})
    void aCellHoldsAsManyLinesAsTheBoundAndNoMore(int more, int rows) throws IOException {
        String text = "\"" + "x\n".repeat(SheetBounds.MOST_LINES_IN_A_CELL + more) + "\",b\n";
        assertEquals(rows, only(read(text)).rows().size());
    }

    @Test
    void manyOpenMarksTakeNoSecondLookEach() throws IOException {
        long start = System.nanoTime();
        read("\"x,1\n".repeat(200_000));
        assertTrue(System.nanoTime() - start < 2_000_000_000L);
    }

    @Test
    void keepsPaddedCommasBlankLinesAndEveryLineEnd() throws IOException {
        for (String end : List.of("\n", "\r\n", "\r")) {
            assertEquals(
                    List.of(List.of("Batch 101", "", ""), List.of(), List.of("a", "b", "c")),
                    only(read(String.join(end, "Batch 101,,", "", "a,b,c", ""))).rows());
        }
    }

    @ParameterizedTest
    @CsvSource({"0, false", "1, true"})
    void cutsACellBeyondTheBoundAndTellsIt(int more, boolean told) throws IOException {
        Workbook workbook = read("a," + "x".repeat(SheetBounds.LONGEST_CELL + more) + "\n1,2\n");
        assertEquals(SheetBounds.LONGEST_CELL, only(workbook).cell(0, 1).length());
        assertEquals(told, !workbook.told().isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"0, false", "1, true"})
    void leavesOutColumnsAndRowsBeyondTheBound(int more, boolean told) throws IOException {
        Workbook wide = read("x,".repeat(SheetBounds.MOST_COLUMNS - 1 + more) + "x\n1,2\n");
        assertEquals(SheetBounds.MOST_COLUMNS, only(wide).rows().get(0).size());
        assertEquals(told, !wide.told().isEmpty());
        Workbook tall = read("1,2\n".repeat(SheetBounds.MOST_ROWS + more));
        assertEquals(SheetBounds.MOST_ROWS, only(tall).rows().size());
        assertEquals(told, !tall.told().isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"%PDF-1.7, PDF", "<html><table>, HTML", "{\\rtf1, RTF", "' ', empty"})
    void saysWhatIsNoTable(String start, String word) {
        NoTableException e = assertThrows(NoTableException.class, () -> read(start));
        assertTrue(e.getMessage().contains(word), e.getMessage());
    }

    @Test
    void refusesALinkOutAndAFolder() throws IOException {
        Path inside = Files.createDirectory(folder.resolve("inside"));
        Path outside = Files.writeString(folder.resolve("outside.csv"), "a,b\n1,2\n");
        Path link = Files.createSymbolicLink(inside.resolve("link.csv"), outside);
        assertThrows(ReadableFile.Refused.class, () -> Workbook.read(link));
        assertThrows(ReadableFile.Refused.class, () -> Workbook.read(inside));
        assertEquals(2, Workbook.read(link, folder).sheets().get(0).rows().size());
    }
}
