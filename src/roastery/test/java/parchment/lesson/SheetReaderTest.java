package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import org.junit.jupiter.params.provider.ValueSource;
import parchment.lesson.sheet.GivenAnswer;
import parchment.lesson.sheet.StatedClaim;

/** What a sheet may hold, on each side of each bound, and what spreadsheets do to it. */
class SheetReaderTest {
    private static final String HEADINGS =
            "lesson,student,seed,code,degrees,question,tries,right,answer,lower,upper,cannot tell\n";

    private static List<GivenAnswer> read(String rows) throws IOException {
        return AnswerSheet.parse(HEADINGS + rows, "a.csv").answers();
    }

    private static String refusal(String rows) {
        String message = assertThrows(IOException.class, () -> read(rows), rows).getMessage();
        assertFalse(message.contains("Exception") || message.contains("For input"), message);
        return message;
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1|9|10000|",
                "0|9|1|'lesson' is expected to be a whole number from 1 to LAST, but is '0'.",
                "AFTER|9|1|'lesson' is expected to be a whole number from 1 to LAST, but is 'AFTER'.",
                "LAST|9|1|",
                "9|9|0|'tries' is expected to be a whole number from 1 to 10,000, but is '0'.",
                "9|9|10001|'tries' is expected to be a whole number from 1 to 10,000, but is '10001'.",
                "9|9|-2147483648|'tries' is expected to be a whole number from 1 to 10,000, but is '-2147483648'.",
                "9|9|99999999999999999999|'tries' is expected to be a whole number from 1 to 10,000, but is '99999999999999999999'.",
                "9|9.5|1|'seed' is expected to be a whole number, but is '9.5'.",
            })
    void countsStayWithinTheirBounds(String lesson, String seed, String tries, String refused) throws IOException {
        String last = Integer.toString(Course.size());
        String after = Integer.toString(Course.size() + 1);
        String row = lesson.replace("LAST", last).replace("AFTER", after) + ",ann," + seed + ",,celsius,q," + tries
                + ",no,x,,,\n";
        if (refused == null) {
            assertEquals(Integer.parseInt(tries), read(row).get(0).tries());
        } else {
            assertEquals(
                    "a.csv, line 2, cannot be read: "
                            + refused.replace("LAST", last).replace("AFTER", after),
                    refusal(row));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "-1.5,4,no|-1.5|4",
                "\"-1,5\",\"4,25 %\",no|-1.5|4.25",
                "\"-1,5 s\",4 points,NO|-1.5|4",
                "\u22121.5,1.0E-5,no|-1.5|0.00001",
                "-1e308,1e308,no|-1e308|1e308",
            })
    void anEndOfAClaimIsReadAsInANotebook(String cells, double lower, double upper) throws IOException {
        StatedClaim claim = read("2,ann,,,celsius,lateness,1,,," + cells + "\n")
                .get(0)
                .claim()
                .orElseThrow();
        assertEquals(lower, claim.lower());
        assertEquals(upper, claim.upper());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "5,,no|the upper end of the claim is expected to be a number, but is blank.",
                ",5,no|the lower end of the claim is expected to be a number, but is blank.",
                "low,5,no|the lower end of the claim is expected to be a number, but is 'low'.",
                "NaN,5,no|the lower end of the claim is expected to be a number, but is 'NaN'.",
                "1,1e999,no|the upper end of the claim is expected to be a number, but is '1e999'.",
                "5,4,no|A claim is stated from its lower to its upper end; the ends given are 5.0 and 4.0.",
                "4,5,|an interval is stated, but 'cannot tell' is blank; expected 'no' there.",
                ",,maybe|'cannot tell' is expected to be yes or no, but is 'maybe'.",
            })
    void halfAClaimIsToldInWords(String cells, String refused) {
        assertEquals(
                "a.csv, line 2, cannot be read: " + refused, refusal("2,ann,,,celsius,lateness,1,,," + cells + "\n"));
    }

    @Test
    void aBlankStudentAndAScaleThatIsNoneAreTold() {
        assertEquals(
                "a.csv, line 2, cannot be read: 'student' is blank; expected a number or a name.",
                refusal("2, ,,,celsius,q,1,no,x,,,\n"));
        assertEquals(
                "a.csv, line 2, cannot be read: 'degrees' is expected to be celsius or fahrenheit, but is 'warm'.",
                refusal("2,ann,,,warm,q,1,no,x,,,\n"));
        assertEquals(
                "a.csv, line 2, cannot be read: 'degrees' is expected to be celsius or fahrenheit, but is 'kelvin'.",
                refusal("2,ann,,,kelvin,q,1,no,x,,,\n"));
        assertEquals(
                "a.csv, line 2, cannot be read: 'right' is expected to be yes or no, but is 'wahr'.",
                refusal("2,ann,,,celsius,q,1,wahr,x,,,\n"));
    }

    @Test
    void rowsAndCellsStayWithinTheirBounds() throws IOException {
        String row = "2,ann,,,celsius,q,1,no,%s,,,\n";
        assertEquals(50, read(row.formatted("x").repeat(50)).size());
        assertEquals(
                "a.csv has more than 50 answers, which no lesson asks for: ask for it again.",
                refusal(row.formatted("x").repeat(51)));
        assertEquals(1, read(row.formatted("x".repeat(500))).size());
        assertEquals(
                "a.csv, line 2, cannot be read: a cell has 501 letters; at most 500 are expected.",
                refusal(row.formatted("x".repeat(501))));
    }

    @Test
    void aSheetIsOneMegabyteAtMost(@TempDir Path folder) throws IOException {
        String sheet = HEADINGS + "2,ann,,,celsius,q,1,no,x,,,\n";
        Path file = folder.resolve("lesson-2-ann.csv");
        Files.writeString(file, sheet + "\n".repeat(SheetText.LARGEST_BYTES - sheet.length()));
        assertEquals(1, AnswerSheet.read(file).answers().size());
        Files.writeString(file, sheet + "\n".repeat(SheetText.LARGEST_BYTES - sheet.length() + 1));
        assertEquals(
                file + " is larger than 1 MB, which no sheet of answers and no plan is: ask for it again.",
                assertThrows(IOException.class, () -> AnswerSheet.read(file)).getMessage());
    }

    @Test
    void readsWhatASpreadsheetSavedWithTabsCapitalsBareRowsOrInTheEncodingOfWindows(@TempDir Path folder)
            throws IOException {
        String sheet = HEADINGS + "2,Ana Núñez,,,celsius,q,1,no,\"4,5\",,,\n";
        List<GivenAnswer> meant = AnswerSheet.parse(sheet, "a.csv").answers();
        Path file = Files.write(folder.resolve("a.csv"), sheet.getBytes(Charset.forName("windows-1252")));
        assertEquals(meant, AnswerSheet.read(file).answers());
        assertEquals(
                meant,
                AnswerSheet.parse(
                                sheet.replace("\"4,5\"", "4.5")
                                        .replace(',', '\t')
                                        .replace("4.5", "4,5"),
                                "a.csv")
                        .answers());
        assertEquals(
                meant,
                AnswerSheet.parse(
                                sheet.replace(HEADINGS, HEADINGS.toUpperCase(java.util.Locale.ROOT)) + ",,,,,,,,,,,\n",
                                "a.csv")
                        .answers());
        assertEquals(
                meant,
                AnswerSheet.parse(sheet.replace("ú", "u\u0301").replace("ñ", "n\u0303"), "a.csv")
                        .answers());
    }

    @Test
    void aSheetFromBeforeThereWereCodesIsReadAsOneWithoutACode() throws IOException {
        String before = "lesson,student,seed,degrees,question,tries,right,answer,lower,upper,cannot tell\n"
                + "2,ann,7,celsius,q,1,no,x,,,\n";
        assertEquals("", AnswerSheet.parse(before, "a.csv").answers().get(0).code());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a.csv|lesson,student,question,tries|true",
                "a.csv|\"Tries\";\"Question\";\"Student\";\"Lesson\"|true",
                "a.csv|lesson,student,question|false",
                "lesson-2-ann.csv|milk,eggs|true",
                "Lesson-12-ann.CSV||true",
                "lesson-x-ann.csv|milk|false",
                "batches.csv|batch,lot|false",
            })
    void aSheetIsKnownByItsHeadingOrItsName(String name, String heading, boolean meant, @TempDir Path folder)
            throws IOException {
        Path file = Files.writeString(folder.resolve(name), heading == null ? "" : heading + "\n");
        assertEquals(meant, SheetText.isMeantAsSheet(file));
    }

    @Test
    void twoColumnsOfOneHeadingAreTold() {
        assertEquals(
                "a.csv is not a sheet of answers: two of its columns have one heading.",
                assertThrows(IOException.class, () -> AnswerSheet.parse("lesson,lesson\n1,2\n", "a.csv"))
                        .getMessage());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "HEADING,\nROW,\n",
                "HEADING,,,\nROW,,,\n",
                "HEADING,\nROW\n",
                "sep=,\nHEADING\nROW\n",
                "\"sep=,\"\r\nHEADING\r\nROW\r\n",
                "\uFEFFSEP=,\nHEADING\nROW\n",
                "\nHEADING\nROW\n",
                " \t\r\n\r\nHEADING\r\nROW\r\n",
                ",,,,,,,,,,,\nHEADING\nROW\n",
                "\nsep=,\n\nHEADING,\nROW,\n"
            })
    void aSheetIsReadWithWhatASpreadsheetPutsBeforeAndBehindItsColumns(String written, @TempDir Path folder)
            throws IOException {
        String row = "2,ann,,abc,celsius,q,1,no,x,,,";
        String text = written.replace("HEADING", HEADINGS.strip()).replace("ROW", row);
        assertEquals(read(row + "\n"), AnswerSheet.parse(text, "a.csv").answers());
        assertTrue(SheetText.isMeantAsSheet(Files.writeString(folder.resolve("a.csv"), text)));
        String semicolons = text.replace(',', ';');
        assertEquals(read(row + "\n"), AnswerSheet.parse(semicolons, "a.csv").answers());
    }

    @Test
    void aLineIsCountedAsItStandsInTheFile() {
        String message = assertThrows(
                        IOException.class,
                        () -> AnswerSheet.parse("sep=,\n\n" + HEADINGS + "2,,,,celsius,q,1,no,x,,,\n", "a.csv"))
                .getMessage();
        assertTrue(message.startsWith("a.csv, line 4, cannot be read: 'student' is blank"), message);
    }

    @ParameterizedTest
    @ValueSource(strings = {"lesson,\"student,seed\n2,ann,1\n", "\"lesson", "\"lesson\"x,student\n"})
    void aQuotationMarkTooFewInTheHeadingIsToldInWords(String written) {
        assertEquals(
                "a.csv breaks off or has a quotation mark too few: ask for it again.",
                assertThrows(IOException.class, () -> AnswerSheet.parse(written, "a.csv"))
                        .getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n\n", "sep=;\n"})
    void aFileWithNothingInItIsToldToBeEmpty(String written) {
        assertEquals(
                "a.csv is empty: ask for it again.",
                assertThrows(IOException.class, () -> AnswerSheet.parse(written, "a.csv"))
                        .getMessage());
    }
}
