package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.gather.Gather;
import parchment.sheet.CsvText;

class CsvTextTest {
    /** Signs of formulas and of cells' ends, guards, digits, a letter, blanks of several kinds, a sign of two halves. */
    private static final String[] SIGNS = {
        "=",
        "+",
        "-",
        "@",
        "\uFF1D",
        "\uFF0B",
        "\uFF0D",
        "\uFF20",
        "\t",
        "\r",
        "\n",
        ";",
        ",",
        "|",
        "\"",
        "'",
        "''",
        " ",
        "\u00A0",
        "\u2003",
        "\uFEFF",
        "\u001C",
        "1",
        "-2",
        ".",
        "5",
        "e",
        "x",
        "é",
        "cmd",
        "\uD83D\uDE00",
        "%"
    };

    private static String text(Random random) {
        StringBuilder text = new StringBuilder();
        for (int i = random.nextInt(9); i >= 0; i--) {
            text.append(SIGNS[random.nextInt(SIGNS.length)]);
        }
        return text.toString();
    }

    private static List<CSVRecord> split(String file, char sign) {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(sign)
                .setTrailingData(true)
                .setLenientEof(true)
                .get();
        try (CSVParser parser = CSVParser.parse(file, format)) {
            return parser.getRecords();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** What a spreadsheet works out: blanks aside, a sign of a formula; a negative number is its own value. */
    private static boolean isWorkedOut(String cell) {
        String shown = cell.replaceAll("^[\\s\\p{Z}\\p{C}]+", "").replaceAll("[\\s\\p{Z}\\p{C}]+$", "");
        return !shown.isEmpty()
                && "=+-@\uFF1D\uFF0B\uFF0D\uFF20".indexOf(shown.charAt(0)) >= 0
                && !shown.matches("-(\\d+[.,]?\\d*|[.,]\\d+)([eE][+-]?\\d+)?");
    }

    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '~',
            value = {
                "=cmd|1, '=cmd|1",
                "+1, '+1",
                "@SUM, '@SUM",
                "-1, -1",
                "-1.5e-3, -1.5e-3",
                "-1-1, '-1-1",
                "-0:12 gas up, '-0:12 gas up",
                "'=1, ''=1",
                "it's, it's",
                "'tis =1, 'tis =1",
                "x;=1, x;'=1",
                "x; -3; y, x; '-3; y",
                "x; '-up, x; ''-up",
                "203.5, 203.5"
            })
    void putsAnApostropheBeforeWhatWouldBeWorkedOut(String cell, String written) {
        assertEquals(written + "\n", CsvText.of(List.of(List.of(cell))));
        assertEquals(cell, CsvText.cell(written));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\tx", "\rx", "\nx", "\t=1", "x\t=1", "x\n\"=1", "\uFEFF=1"})
    void guardsTabsAndEndsOfLinesToo(String cell) {
        String written = CsvText.of(List.of(List.of(cell)));
        assertTrue(split(written, ',').get(0).get(0).contains("'"), written);
        assertEquals(cell, CsvText.cell(split(written, ',').get(0).get(0)));
    }

    @Test
    void anyTextComesBackUnchanged() {
        Random random = new Random(14);
        for (int round = 0; round < 5_000; round++) {
            List<String> row = List.of(text(random), text(random));
            String file = CsvText.of(List.of(row));
            CSVRecord read = split(file, ',').get(0);
            for (int i = 0; i < 2; i++) {
                assertEquals(row.get(i), CsvText.cell(read.get(i)), file);
            }
        }
    }

    @Test
    void noCellIsWorkedOutWhicheverSignASpreadsheetExpectsBetweenColumns() {
        Random random = new Random(15);
        for (int round = 0; round < 5_000; round++) {
            String file = CsvText.of(List.of(List.of("batch", text(random), text(random))));
            for (char sign : new char[] {',', ';', '\t'}) {
                for (CSVRecord row : split(file, sign)) {
                    for (int i = 0; i < row.size(); i++) {
                        // Where the sign is another, a quotation mark may be a mark or a part of the text.
                        String cell = sign == ',' ? row.get(i) : row.get(i).replaceAll("^[\\s\\p{Z}\\p{C}\"]+", "");
                        assertFalse(isWorkedOut(cell), row.get(i) + " in " + file + " by " + (int) sign);
                    }
                }
            }
        }
    }

    /** Lists of batches with any names, lots and notes, gathered into a logbook, opened, and looked at as a spreadsheet would. */
    @Test
    void aGatheredLogbookHoldsEveryNameAndWorksNothingOut(@TempDir Path folder) throws IOException {
        Random random = new Random(16);
        Path old = Files.createDirectories(folder.resolve("old"));
        List<List<String>> rows = new ArrayList<>();
        List<String> lots = new ArrayList<>();
        StringBuilder sheet = new StringBuilder("batch,lot,note,strange,green mass [kg]\n");
        for (int i = 0; i < 300; i++) {
            // The list is read line by line, and a blank is no lot.
            String lot = text(random).replaceAll("[\\r\\n]", "=").strip();
            lots.add(lot);
            rows.add(List.of("B" + i, lot, "@" + lot, "+" + lot, "5"));
        }
        for (List<String> row : rows) {
            sheet.append(String.join(
                            ",",
                            row.stream()
                                    .map(cell -> '"' + cell.replace("\"", "\"\"") + '"')
                                    .toList()))
                    .append('\n');
        }
        Files.writeString(old.resolve("list.csv"), sheet);
        Path made = folder.resolve("made");
        String out = gathered(old, made, "sheet.a.is.list=yes\nsheet.a.column.4=extra\n", folder);
        Logbook logbook = Logbook.open(made);
        assertEquals(300, logbook.batches().size(), out);
        for (int i = 0; i < 300; i++) {
            Batch batch = logbook.batch("B" + i);
            // An apostrophe that the list has before a sign of a formula is a guard of its own.
            String lot = CsvText.cell(lots.get(i)).strip();
            // A dash alone, or another sign of nothing, is how many a list says that nothing is known.
            if (lot.matches("[-–—/.?_*]{1,3}")) {
                continue;
            }
            // Blanks of any kind in the name of a lot are one blank, and an accented letter is one sign; it is told.
            String plain = Normalizer.normalize(lot, Normalizer.Form.NFC)
                    .replaceAll("[\\s\\p{Z}]+", " ")
                    .strip();
            assertEquals(plain, batch.lot().orElse(""), out);
            assertEquals(
                    CsvText.cell("@" + lots.get(i)).strip(),
                    batch.label(Batch.Label.NOTE).orElse(""));
            // A number may lose its plus, and nothing else.
            String strange = CsvText.cell("+" + lots.get(i)).strip();
            assertEquals(
                    strange.matches("\\+\\d+") ? strange.substring(1) : strange,
                    batch.extras().get("strange"));
        }
        for (CSVRecord row : split(Files.readString(made.resolve("batches.csv"), StandardCharsets.UTF_8), ',')) {
            row.forEach(cell -> assertFalse(isWorkedOut(cell), cell));
        }
    }

    private static String gathered(Path old, Path made, String answers, Path folder) throws IOException {
        StringBuilder out = new StringBuilder();
        Path file = Files.writeString(folder.resolve("answers.properties"), answers);
        assertEquals(0, Gather.run(old, made, Optional.of(file), Gather.NOBODY, out), out.toString());
        return out.toString();
    }

    @Test
    void aNumberWithAPlusIsReadAsANumber(@TempDir Path folder) throws IOException {
        Path curves = Files.createDirectories(folder.resolve("curves"));
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i < 40; i++) {
            text.append(CsvText.of(List.of(List.of(Integer.toString(2 * i), "+" + (150 + i)))));
        }
        assertTrue(text.toString().contains("0,'+150\n"), text.toString());
        Files.writeString(curves.resolve("1.csv"), text);
        Logbook logbook = Logbook.open(folder);
        assertEquals(150, logbook.batch("1").beanTemperature().orElseThrow().valueAt(0));
        assertEquals(0, logbook.problems().size(), logbook.problems().toString());
    }

    /** One class owns the rule: nothing else of the program makes a file for spreadsheets. */
    @Test
    void everyTableIsWrittenHere() throws IOException {
        for (String module : List.of("src/library/main/java", "src/roastery/main/java", "kernel-ext/src/main/java")) {
            try (Stream<Path> files = Files.walk(Path.of("..").resolve(module))) {
                for (Path file : files.filter(f -> f.toString().endsWith(".java"))
                        .filter(f -> !f.endsWith("CsvText.java"))
                        .toList()) {
                    String code = Files.readString(file, StandardCharsets.UTF_8);
                    assertFalse(code.contains("CSVPrinter") || code.contains("printRecord"), file::toString);
                }
            }
        }
    }
}
