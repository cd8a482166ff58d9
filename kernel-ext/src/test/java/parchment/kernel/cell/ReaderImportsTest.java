package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.kernel.imports.ReaderImports;
import parchment.kernel.imports.Rooms;
import parchment.kernel.page.Outcome;
import parchment.kernel.source.CellText;
import parchment.kernel.words.CellError;

/** A library of the reader's, made here, has a class of every name that ours has. */
class ReaderImportsTest {
    @TempDir
    static Path folder;

    private static List<String> names;

    private final Session session = new Session();
    private int cells;

    @BeforeAll
    static void makeTheReadersLibrary() throws IOException, ClassNotFoundException {
        names = new ArrayList<>(publicNames());
        List<String> arguments = new ArrayList<>(List.of("-proc:none", "-nowarn", "-d", folder.toString()));
        Path source = Files.createDirectories(folder.resolve("source"));
        String body = "public static String whose() { return \"the reader's\"; }";
        for (String name : names) {
            arguments.add(Files.writeString(
                            source.resolve(name + ".java"), "package made; public class " + name + " { " + body + " }")
                    .toString());
        }
        arguments.add(Files.writeString(
                        source.resolve("Holder.java"),
                        "package made.deep; public class Holder {"
                                + " public static class Table { " + body + " }"
                                + " public static String dropTemperature() { return \"the reader's\"; }"
                                + " public static String weightLoss() { return \"the reader's\"; } }")
                .toString());
        assertEquals(0, ToolProvider.getSystemJavaCompiler().run(null, null, null, arguments.toArray(String[]::new)));
    }

    private static TreeSet<String> publicNames() throws ClassNotFoundException {
        TreeSet<String> names = new TreeSet<>();
        for (var room : Rooms.types().entrySet()) {
            for (String name : room.getValue()) {
                Class<?> type =
                        Class.forName("parchment." + room.getKey() + "." + name, false, Rooms.class.getClassLoader());
                if (Modifier.isPublic(type.getModifiers())) {
                    names.add(name);
                }
            }
        }
        return names;
    }

    @BeforeEach
    void addTheReadersLibrary() {
        session.shell().addToClasspath(folder.toString());
    }

    @AfterEach
    void close() {
        session.close();
    }

    private String shownBy(String code) {
        RecordingPage page = new RecordingPage();
        Outcome outcome = new CellRun(session, new CellText(++cells, code), page).run();
        assertEquals(Optional.empty(), outcome.error().map(CellError::text), code);
        assertEquals("", page.err(), code);
        return page.result();
    }

    @Test
    void everyNameOfOursMeansTheReadersAfterAWholePackageWasImported() {
        assertTrue(names.size() > 100 && names.contains("Table") && names.contains("Clock"), names.toString());
        List<String> readers = names.stream().map(name -> "made." + name).toList();
        String ask = "import made.*;\nString[] all = new String[] {"
                + names.stream().map(name -> name + ".class.getName()").collect(Collectors.joining(", "))
                + "};\nString.join(\",\", all)";
        assertEquals(String.join(",", readers), shownBy(ask));
        assertEquals("the reader's", shownBy("Table.whose()"));
        Outcome both = new CellRun(
                        session,
                        new CellText(9, "import parchment.display.*;\nTable.class.getName()"),
                        new RecordingPage())
                .run();
        assertTrue(
                both.error()
                        .orElseThrow()
                        .text()
                        .contains(
                                "`Table` is in two of the packages that are imported. Say which one is meant by an import of its own: `import"),
                "a room of ours that the reader imports too is the equal of theirs: " + both.error());
    }

    @Test
    void aNameThatWasUsedAsOursBeforeMeansTheReadersFromThenOn() {
        shownBy("var ours = Table.titled(\"ours\");\nClock.SINCE_CHARGE");
        assertEquals("the reader's", shownBy("import made.*; // the reader's own\nTable.whose()"));
        assertEquals("the reader's", shownBy("Clock.whose()"));
        assertEquals("ours: 0 rows, 0 columns", shownBy("ours.toString()"));
        assertEquals("again", shownBy("parchment.display.Table.titled(\"again\").title()"));
        session.imports().makeRest();
        assertEquals("the reader'sthe reader's", shownBy("Table.whose() + Clock.whose()"));
    }

    @Test
    void theOtherNamesOfARoomStayOursAndVariablesKeepWhatTheyHold() {
        shownBy(
                "Table ours = Table.titled(\"ours\");\nList<Table> two = List.of(ours, ours);\nvar length = two.size();");
        assertEquals("the reader's", shownBy("import made.deep.Holder.*;\nTable.whose()"));
        assertEquals("ours: 0 rows, 0 columns", shownBy("ours.toString()"));
        assertEquals("ours", shownBy("two.get(1).title()"));
        assertEquals("2", shownBy("length"));
        assertEquals("parchment.display.Display", shownBy("Display.class.getName()"));
        assertEquals("parchment.display.Column", shownBy("Column.class.getName()"));
        assertEquals("ours", shownBy("ours.title()"), "later cells do not lose it either");
    }

    @Test
    void aValueWhoseClassMeansSomethingElseNowIsLostAndToldSo() {
        shownBy("record Held(Table table) { }\nvar held = new Held(Table.titled(\"ours\"));");
        RecordingPage page = new RecordingPage();
        String code = "import made.deep.Holder.*;\nTable.whose()";
        assertTrue(new CellRun(session, new CellText(9, code), page).run().fine());
        assertEquals(
                "`held` is empty now, because what it was made from has changed: run its cell again.\n", page.err());
    }

    @Test
    void aNameImportedByItselfMeansTheReadersUnlessThereIsNoSuchClass() {
        shownBy("Clock.SINCE_CHARGE");
        assertFalse(new CellRun(session, new CellText(9, "import nowhere.Clock;"), new RecordingPage())
                .run()
                .fine());
        assertEquals("parchment.align.Clock", shownBy("Clock.class.getName()"));
        assertEquals("the reader's", shownBy("import made.Clock;\nClock.whose()"));
        session.imports().makeRest();
        assertEquals("the reader's", shownBy("Clock.whose()"));
        assertEquals("parchment.display.Table", shownBy("Table.class.getName()"));
        assertEquals("made.Table", shownBy("import made.Table;\nimport parchment.display.*;\nTable.class.getName()"));
        assertEquals("made.Table", shownBy("Table.class.getName()"));
    }

    @Test
    void classesWithinAClassAndItsMethodsAreTheReadersToo() {
        assertEquals("drop temperature", shownBy("dropTemperature().name()"));
        assertEquals("made.deep.Holder$Table", shownBy("import made.deep.Holder.*;\nTable.class.getName()"));
        assertEquals("the reader's", shownBy("import static made.deep.Holder.*;\ndropTemperature()"));
        assertEquals("the reader's", shownBy("dropTemperature()"));
        assertEquals("the reader's", shownBy("import static made.deep.Holder.weightLoss;\nweightLoss()"));
        assertEquals("the reader's", shownBy("weightLoss()"));
    }

    @Test
    void aClassOfACellGoesBeforeWhatWasImported() {
        shownBy("import made.*;\nTable.whose()");
        assertEquals("Table[cups=3]", shownBy("record Table(int cups) { }\nnew Table(3)"));
        assertEquals("Table[cups=4]", shownBy("new Table(4)"));
    }

    /** Java's names are imported for the reader as in every session of JShell, and its rules for two whole packages hold. */
    @Test
    void namesOfJavaThatTheReaderImportsByThemselvesMeanTheirs() {
        assertEquals("[1]", shownBy("List.of(1)"));
        assertEquals("java.awt.List", shownBy("import java.awt.List;\nList.class.getName()"));
        assertEquals("java.util.List", shownBy("import java.util.List;\nList.class.getName()"));
        assertEquals("java.time.Clock", shownBy("import java.time.*;\nClock.class.getName()"));
    }

    @Test
    void aTutorialOfTheTableLibraryRunsAsItStands() {
        assertEquals("Roasts, 2 rows\nlot\na\nb", shownBy("""
                import tech.tablesaw.api.*;
                Table t = Table.create("Roasts", StringColumn.create("lot", "a", "b"));
                t"""));
        assertEquals("2", shownBy("Table copy = t.copy();\ncopy.rowCount()"));
    }

    @Test
    void readsWhatADeclarationImports() {
        assertEquals(Optional.of(new ReaderImports.Declared(false, "a.b", "*")), ReaderImports.in("import a.b.*;"));
        assertEquals(
                Optional.of(new ReaderImports.Declared(false, "a.b", "C")), ReaderImports.in(" import a.b.C ; // why"));
        assertEquals(
                Optional.of(new ReaderImports.Declared(true, "a.B", "c")),
                ReaderImports.in("/* why */ import static a.B.c;"));
        assertEquals(Optional.empty(), ReaderImports.in("var importing = 1;"));
    }
}
