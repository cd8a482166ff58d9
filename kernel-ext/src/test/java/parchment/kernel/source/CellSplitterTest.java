package parchment.kernel.source;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import jdk.jshell.JShell;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class CellSplitterTest {
    private static final JShell SHELL =
            JShell.builder().executionEngine("local").build();

    @AfterAll
    static void close() {
        SHELL.close();
    }

    private static List<CellSplitter.Part> split(String cell) {
        return new CellSplitter(SHELL.sourceCodeAnalysis()).split(cell);
    }

    @Test
    void knowsWhereEachPartBegins() {
        String cell = "int a = 1; int b = 2\n\n// note\n  int c = a\n    + b\nc";
        for (CellSplitter.Part part : split(cell)) {
            String begin =
                    part.source().replaceFirst(";$", "").lines().findFirst().orElseThrow();
            assertEquals(begin, cell.substring(part.offset(), part.offset() + begin.length()));
        }
        assertEquals(4, split(cell).size());
    }

    @Test
    void leavesWholeWhatGoesOnOverLines() {
        assertEquals(1, split("if (true) {\n    f();\n}\nelse {\n    g();\n}").size());
        assertEquals(1, split("logbook.batches()\n    .stream()\n    .toList()").size());
        assertEquals(1, split("String s = \"a\"\n    + \"b\";").size());
        assertEquals(
                1,
                split("try {\n    f();\n} // done\ncatch (Exception e) { }\nfinally { }")
                        .size());
        assertEquals(
                1, split("@FunctionalInterface\ninterface F {\n    int f();\n}").size());
        assertEquals(1, split("var t = \"\"\"\n  a\n  b;\n  \"\"\";").size());
        assertEquals(1, split("for (int i = 0; i < 3; i++)\n    f(i)").size());
    }
}
