package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.kernel.cell.PercentLines.Piece;
import parchment.kernel.help.Completions;

/** Which lines are no Java, and what stands in their place. */
class PercentLinesTest {
    private static final String RUN = "parchment.jars.PercentLine.run";

    private static String java(String code) throws PercentLines.Unknown {
        List<Piece> pieces = PercentLines.pieces(code);
        assertEquals(1, pieces.size());
        return pieces.get(0).java();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "%maven a.b:c:1.0|RUN(\"maven\", \"a.b:c:1.0\");",
                "%maven a.b:c:1.0 // the newer one|RUN(\"maven\", \"a.b:c:1.0\");",
                "%maven a.b:c:1.0 //the newer one|RUN(\"maven\", \"a.b:c:1.0\");",
                "%jars \"//server/tools/a.jar\"|RUN(\"jars\", \"//server/tools/a.jar\");",
                "%maven a.b:c:1.0;|RUN(\"maven\", \"a.b:c:1.0\");",
                "  %jars lib/*.jar more.jar|  RUN(\"jars\", \"lib/*.jar\", \"more.jar\");",
                "%jars \"my tools/a.jar\"|RUN(\"jars\", \"my tools/a.jar\");",
                "%jars C:\\tools\\a.jar|RUN(\"jars\", \"C:\\\\tools\\\\a.jar\");",
                "%classpath|RUN(\"classpath\");",
                "%classpath add mvn a b 1|RUN(\"classpath\", \"add\", \"mvn\", \"a\", \"b\", \"1\");",
                "List<String> added = %jars a.jar|List<String> added = RUN(\"jars\", \"a.jar\").paths();",
                "int a = 1;\\n%jars a.jar\\na|int a = 1;\\nRUN(\"jars\", \"a.jar\");\\na",
                "int a = 1 // one\\n%jars a.jar|int a = 1 // one\\nRUN(\"jars\", \"a.jar\");",
                "// first\\n%jars a.jar|// first\\nRUN(\"jars\", \"a.jar\");",
            })
    void becomeOneLineOfJavaInTheSamePlace(String code, String java) throws PercentLines.Unknown {
        assertEquals(java.replace("RUN", RUN).replace("\\n", "\n"), java(code.replace("\\n", "\n")));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "int r = 7 % 2",
                "int r = total\n    % count;",
                "int r = total\n    %count;",
                "int r = (total\n%jars a.jar);",
                "int q6 = 11\n%load + 1;",
                "int q6 = 11\n%load / 2;",
                "int q6 = 11\n%jars == 1 ? 2 : 3;",
                "String s = \"\"\"\n    %maven a:b:1\n    \"\"\";",
                "/*\n%maven a:b:1\n*/",
                "void f() {\n%maven a:b:1\n}",
                "r %= 2;",
                "String.format(\"%s\", 1)",
                "// %maven a:b:1",
            })
    void calculationsAndTextsStayJava(String code) throws PercentLines.Unknown {
        assertEquals(code, java(code));
        assertEquals(code, PercentLines.blanked(code));
    }

    @Test
    void aFileToLoadIsCutOutAndThePlacesStay() throws PercentLines.Unknown {
        String code = "int a = 1;\n%load tools.jsh\na + b";
        assertEquals(
                List.of(
                        new Piece("int a = 1;\n", code, Optional.empty()),
                        new Piece("", code, Optional.of("tools.jsh")),
                        new Piece("          \n               \na + b", code, Optional.empty())),
                PercentLines.pieces(code));
    }

    @Test
    void aSignOverTheCellTakesTheLinesBelow() throws PercentLines.Unknown {
        assertEquals(
                "parchment.jars.PercentLine.cell(\"loadFromPOM\", \"<dependency>\\n  \\\"x\\\"\", \"compile\");",
                java("%%loadFromPOM compile\n<dependency>\n  \"x\""));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "%mavn a:b:1|%mavn is no Java, and no percent line that is known here; leave it out. Did you mean `%maven`?",
                "%matplotlib inline|%matplotlib is no Java, and no percent line that is known here; leave it out. Known:",
                "%%loadFromPom|%%loadFromPom is no Java, and no percent line that is known here; leave it out. Did you mean"
                        + " `%%loadFromPOM`?",
                "%%time|Known: %%classpath, %%loadFromPOM.",
                "%load|%load is followed by the path of a file of Java or of a notebook.",
            })
    void whatIsNotKnownIsToldWithTheNearestThatIs(String code, String words) {
        PercentLines.Unknown told = assertThrows(PercentLines.Unknown.class, () -> PercentLines.pieces(code));
        assertEquals(0, told.offset());
        assertEquals(true, String.valueOf(told.getMessage()).contains(words), told.getMessage());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "%ma|[maven, mavenRepo]|1",
                "int a = 1;\\n  %j|[jars]|14",
                "%%|[classpath, loadFromPOM]|2",
                "%x|[]|1",
            })
    void namesAreCompleted(String code, String names, int start) {
        String cell = code.replace("\\n", "\n");
        Completions found = PercentLines.namesAt(cell, cell.length()).orElseThrow();
        assertEquals(names, found.matches().toString());
        assertEquals(start, found.start());
        assertEquals(cell.length(), found.end());
    }

    @Test
    void whatIsNoSuchLineIsCompletedAsJava() {
        assertEquals(Optional.empty(), PercentLines.namesAt("a % b", 5));
        assertEquals(Optional.empty(), PercentLines.namesAt("%maven a", 8));
        assertEquals(Optional.empty(), PercentLines.namesAt("", 0));
    }

    @Test
    void whatOnlyReadsJavaSeesBlanks() {
        assertEquals("           \nint a = 1;", PercentLines.blanked("%jars a.jar\nint a = 1;"));
        assertEquals("             \n     ", PercentLines.blanked("%%loadFromPOM\n<a/> "));
    }
}
