package parchment.virtual.classroom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.virtual.VirtualClass;

class ClassListTest {
    private static String message(String... names) {
        return assertThrows(IllegalArgumentException.class, () -> new ClassList(List.of(names)))
                .getMessage();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Ana Núñez",
                "O'Neil",
                "O\u2019Neil",
                "student-01",
                "7",
                "J. R. Brook",
                "Łucja Żak",
                "李小龙",
                "नीलम",
                "Con Reed",
                "Jean-Luc",
                "x"
            })
    void takesNamesAsPeopleBearThem(String name) {
        assertEquals(List.of(name), new ClassList(List.of(name)).names());
        assertTrue(ClassList.isName(name));
        assertEquals(Path.of("students"), Path.of("students").resolve(name).getParent());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../x",
                "..",
                ".",
                "/etc",
                "a/b",
                "a\\b",
                "C:",
                "a:b",
                "-x",
                "x-",
                "x.",
                ".x",
                "'x'",
                "a=b",
                "a,b",
                "#x",
                "a\nb",
                "a\u0000b",
                "a\"b",
                "a;b",
                "a|b",
                "a*b",
                "",
                " "
            })
    void refusesWhatIsNoNameOfAFolderEverywhere(String name) {
        assertTrue(
                message("Ada", name)
                        .startsWith(
                                "A student's name has letters, digits, blanks, dashes, apostrophes and full stops, and"
                                        + " begins and ends with a letter or digit, because a folder is named after it; number 2 is '"),
                () -> message("Ada", name));
        assertFalse(ClassList.isName(name));
    }

    @Test
    void aNameThatOnlyEndsWrongIsRefusedWithTheNameToWriteInstead() {
        String rule =
                "A student's name has letters, digits, blanks, dashes, apostrophes and full stops, and begins and ends with a"
                        + " letter or digit, because a folder is named after it; number 2 is '";
        assertEquals(rule + "Ana P.'. Write 'Ana P' instead.", message("Ada", "Ana P."));
        assertEquals(rule + "'t Hart-'. Write 't Hart' instead.", message("Ada", "'t Hart-"));
        assertEquals(rule + "a/b.'.", message("Ada", "a/b."));
        assertEquals(rule + "..'.", message("Ada", ".."));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Con", "NUL", "com1", "lpt9", "aux.txt"})
    void refusesWordsThatWindowsKeepsForItself(String name) {
        assertTrue(message(name).startsWith("No folder can be named '" + name + "' on Windows"), message(name));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "007",
                "00",
                "1-2",
                "2024-05-06",
                "1.50",
                "12345678901",
                "1e5",
                "12E-3",
                "9 a",
                "9 PM",
                "True",
                "Jan 2",
                "jan-02",
                "2-May",
                "2 Mai 24",
                "Sept. 3",
                "3 août"
            })
    void aNameThatASpreadsheetWouldSaveAsAnotherIsRefusedWhereThereAreSheets(String name) {
        ClassList list = new ClassList(List.of("Ada", name));
        assertEquals(
                "A spreadsheet would take the name '" + name
                        + "' for a number, a date or a time, and save something else on the sheets of answers; number 2 needs a letter"
                        + " more, such as 'student " + name + "'.",
                assertThrows(IllegalArgumentException.class, list::keptBySpreadsheets)
                        .getMessage());
        assertEquals(
                List.of("student " + name),
                new ClassList(List.of("student " + name)).keptBySpreadsheets().names());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0",
                "7",
                "1234567890",
                "student-01",
                "Jan",
                "Mai",
                "Jan B",
                "Jan Berg 2",
                "e5",
                "April",
                "7th",
                "3 Ana",
                "Ana 3"
            })
    void aNameThatStaysAsItIsIsKept(String name) {
        assertEquals(
                List.of(name), new ClassList(List.of(name)).keptBySpreadsheets().names());
    }

    @Test
    void anAccentIsPartOfItsLetterHoweverItWasTyped() {
        ClassList list = new ClassList(List.of("Ana Nu\u0301n\u0303ez "));
        assertEquals(List.of("Ana N\u00fa\u00f1ez"), list.names());
        assertEquals(Optional.of("Ana N\u00fa\u00f1ez"), list.find("Ana Nu\u0301n\u0303ez"));
        assertEquals("Two students are named 'N\u00fa'; give each their own name.", message("N\u00fa", "Nu\u0301"));
    }

    @Test
    void findsAStudentByTheNameOfAFileToo() {
        ClassList list = new ClassList(List.of("Ana Núñez", "O'Neil", "student-01"));
        assertEquals(Optional.of("Ana Núñez"), list.find("Ana-Núñez"));
        assertEquals(Optional.of("O'Neil"), list.find("O-Neil"));
        assertEquals(Optional.of("O'Neil"), list.find("o-neil"));
        assertEquals(Optional.of("student-01"), list.find("student-01"));
        assertEquals(Optional.empty(), list.find("student-02"));
        assertEquals(Optional.empty(), list.find("../O'Neil/x"));
    }

    @Test
    void twoNamesNeverShareAFile() {
        assertEquals(
                "The names 'O'Neil' and 'O Neil' would both make the file name 'O-Neil'; tell one of them apart by more than that.",
                message("O'Neil", "O Neil"));
        assertEquals("Two students are named 'ADA'; give each their own name.", message("Ada", "ADA"));
    }

    @Test
    void countsLettersAndStudentsUpToTheirBounds() {
        String longest = "é".repeat(ClassList.MOST_LETTERS);
        assertEquals(List.of(longest), new ClassList(List.of(longest)).names());
        assertEquals(
                "A student's name has at most 40 letters, because a folder is named after it; number 1 has 41: '"
                        + longest + "é'.",
                message(longest + "é"));
        // A letter outside the basic plane is one letter and four bytes; with what is put behind it the file's name
        // fits.
        String bytes = "\ud840\udc00".repeat(40) + "-lesson-9-truth.json";
        assertTrue(bytes.getBytes(StandardCharsets.UTF_8).length < 255);
        assertEquals(List.of("\ud840\udc00".repeat(40)), new ClassList(List.of("\ud840\udc00".repeat(40))).names());
        assertEquals(1000, VirtualClass.numbered(1000).size());
        assertEquals(
                "A class has at most 1000 students; this list has 1001.",
                assertThrows(IllegalArgumentException.class, () -> VirtualClass.numbered(Integer.MAX_VALUE))
                        .getMessage());
        assertEquals("A class needs at least one student.", message());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "../../x|x",
                "/etc/passwd|etc-passwd",
                "Zoë, third row|Zoë-third-row",
                "C:\\\\x|C-x",
                "???|unnamed",
                "NUL|unnamed-NUL",
                ". .|unnamed",
                "a|a"
            })
    void anyTextStandsInAFileNameAsItsLettersOnly(String text, String expected) {
        assertEquals(expected, ClassList.inFileName(text));
    }

    @Test
    void aLongTextIsCutInAFileName() {
        assertEquals("x".repeat(40), ClassList.inFileName("x".repeat(40)));
        assertEquals("x".repeat(40), ClassList.inFileName("x".repeat(41)));
        assertEquals("\ud840\udc00".repeat(40), ClassList.inFileName("\ud840\udc00".repeat(10_000)));
    }
}
