package parchment.kernel.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.cell.RecordingPage;
import parchment.kernel.page.Outcome;

/** A slip in the name or the kind of a table's column is told in words, with the columns there are. */
class TablesawWordsTest {
    private static final String NONE = "The table 'Cups' has no column '%s'.%s Columns: sweetness [points], cupper.";

    private static Evaluator evaluator;

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
        Outcome made = evaluator.run(
                "import tech.tablesaw.api.*;\n"
                        + "var cups = Table.create(\"Cups\", DoubleColumn.create(\"sweetness [points]\", 6, 7),\n"
                        + "        StringColumn.create(\"cupper\", \"Ana\", \"Ben\"));\n"
                        + "var other = Table.create(\"Lots\", StringColumn.create(\"lot\", \"kela\"));",
                new RecordingPage());
        assertEquals("", made.error().map(CellError::text).orElse(""));
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    private static CellError errorOf(String code) {
        Outcome outcome = evaluator.run(code, new RecordingPage());
        assertFalse(outcome.fine(), "the cell should fail");
        return outcome.error().orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({
        "cups.column(`sweetnes [points]`)",
        "cups.doubleColumn(`sweetnes [points]`)",
        "cups.sortDescendingOn(`sweetnes [points]`)",
        "cups.where(cups.numberColumn(`sweetnes [points]`).isGreaterThan(6))",
        "cups.row(0).getDouble(`sweetnes [points]`)"
    })
    void aMisspeltColumnIsNamedWithTheNearestOne(String code) {
        assertEquals(
                String.format(NONE, "sweetnes [points]", " Did you mean 'sweetness [points]'?"),
                errorOf(code.replace('`', '"')).message());
    }

    @Test
    void theCellsLineStandsAboveTheWords() {
        CellError error = errorOf("int a = 1;\ncups.column(\"zzz\")");
        assertEquals("Line 2:  cups.column(\"zzz\")\n" + String.format(NONE, "zzz", ""), error.text());
    }

    @Test
    void aTableThatNoVariableHoldsIsNamedWithoutItsColumns() {
        assertEquals(
                "The table 'Mine' has no column 'x'. Its `columnNames()` lists those it has.",
                errorOf("Table.create(\"Mine\").column(\"x\")").message());
        assertEquals(
                "The table has no column 'x' to sort by. Its `columnNames()` lists those it has.",
                errorOf("cups.sortOn(\"x\")").message());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "cups.doubleColumn(`cupper`) | `doubleColumn` was asked of a column that holds text. Take it with `stringColumn`.",
                "cups.stringColumn(`sweetness [points]`) | `stringColumn` was asked of a column that holds decimal numbers. Take it with"
                        + " `doubleColumn`.",
                "cups.row(0).getDouble(`cupper`) | The column 'cupper' holds text. Ask the row with `getString(\"cupper\")`.",
                "cups.row(0).getInt(`sweetness [points]`) | The column 'sweetness [points]' holds decimal numbers. Ask the row with"
                        + " `getDouble(\"sweetness [points]\")`."
            })
    void aColumnOfAnotherKindIsToldByWhatItHolds(String code, String words) {
        assertEquals(words, errorOf(code.replace('`', '"')).message());
    }

    @Test
    void whatOthersThrowStaysAsItIs() {
        IllegalStateException ours = new IllegalStateException("Column x does not exist in table Cups");
        assertSame(ours, TablesawWords.inOurs(ours, Stream.of()));
        IllegalStateException tables = new IllegalStateException("Something else");
        tables.setStackTrace(new StackTraceElement[] {new StackTraceElement("tech.tablesaw.api.Table", "x", null, 1)});
        assertSame(tables, TablesawWords.inOurs(tables, Stream.of()));
    }
}
