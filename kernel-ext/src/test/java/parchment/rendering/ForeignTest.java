package parchment.rendering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import parchment.display.Showable;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.cell.LoadedBySession;

/** Values of other libraries, of whichever jar they come. */
class ForeignTest {
    private final Renderers renderers = Renderers.explainingErrors(error -> List.of(String.valueOf(error)));

    /** Smile's own frame, which is no library of ours: nothing here names it but by text, as the product does. */
    @Test
    void showsAFrameOfSmileAsATable() throws ReflectiveOperationException {
        Class<?> frame = Class.forName("smile.data.DataFrame");
        Method of = frame.getMethod("of", double[][].class, String[].class);
        Object made =
                of.invoke(null, new double[][] {{203.5, 84}, {Double.NaN, 85.25}}, new String[] {"drop", "score"});
        assertEquals("""
                A table of 2 rows
                   drop  score
                  203.5  84.00
                missing  85.25""", renderers.of(made).text());
        assertTrue(renderers.of(made).html().orElseThrow().contains("parchment-table"));
    }

    /** A later version of Smile counts its rows by another name, and is a class where it was an interface. */
    @Test
    void showsAFrameOfAVersionThatCountsRowsByAnotherName(@TempDir Path folder) throws Exception {
        Object frame = made(folder, "smile.data.DataFrame", """
                package smile.data;
                public class DataFrame {
                    public String[] names() { return new String[] {"lot", "cups"}; }
                    public int size() { return 2; }
                    public Object get(int row, int column) { return column == 0 ? "lot " + row : row == 0 ? (Object) 3 : null; }
                }""");
        assertEquals("""
                A table of 2 rows
                lot       cups
                lot 0        3
                lot 1  missing""", renderers.of(frame).text());
    }

    @Test
    void saysWhatAnUnknownVersionLacks(@TempDir Path folder) throws Exception {
        Object table = made(folder, "tech.tablesaw.table.Relation", """
                package tech.tablesaw.table;
                public class Relation {
                    @Override public String toString() { return "3 rows"; }
                }""");
        IllegalStateException refused =
                org.junit.jupiter.api.Assertions.assertThrows(IllegalStateException.class, () -> renderers.of(table));
        assertEquals(
                "A Relation of this version has no rowCount(), by which it could be shown. Its text is: 3 rows",
                refused.getMessage());
    }

    private static Object made(Path folder, String name, String source) throws Exception {
        Path file = Files.writeString(folder.resolve(name.substring(name.lastIndexOf('.') + 1) + ".java"), source);
        assertEquals(
                0,
                javax.tools.ToolProvider.getSystemJavaCompiler()
                        .run(null, null, null, "-proc:none", "-d", folder.toString(), file.toString()));
        return apart(folder.toUri().toURL()).loadClass(name).getConstructor().newInstance();
    }

    /** Returns a loader that knows none of our libraries. */
    private static ClassLoader apart(URL... places) {
        return new URLClassLoader(places, ClassLoader.getPlatformClassLoader());
    }

    @Test
    void showsAChartThatAJarOfTheReadersOwnMade() throws Exception {
        URL jar = XYChart.class.getProtectionDomain().getCodeSource().getLocation();
        Class<?> builder = apart(jar).loadClass(XYChartBuilder.class.getName());
        assertNotEquals(XYChartBuilder.class, builder);
        Object started = builder.getMethod("title", String.class)
                .invoke(builder.getConstructor().newInstance(), "Theirs");
        Showable shown = renderers.of(started.getClass().getMethod("build").invoke(started));
        assertEquals("Picture: Theirs, 0 series", shown.text());
        assertTrue(shown.otherForms().containsKey("image/png"));
    }

    @Test
    void knowsAClassByAllThatItExtendsAndImplements() {
        assertTrue(ClassNames.has(ArrayList.class, "java.util.AbstractList"));
        assertTrue(ClassNames.has(ArrayList.class, "java.lang.Iterable"), "what is implemented extends it");
        assertTrue(ClassNames.has(Map.Entry.class, "java.util.Map.Entry"));
        assertFalse(ClassNames.has(ArrayList.class, "java.util.LinkedList"));
        assertFalse(ClassNames.has(ArrayList.class, "ArrayList"), "only classes of a cell go by their own name");
    }

    /** The session must not wait for libraries that the cell has nothing to do with. */
    @Test
    void loadsNoLibraryBeforeAValueOfItIsThere(@TempDir Path folder) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xlog:class+load:file=loaded.txt",
                "-Djava.awt.headless=true",
                "-cp",
                Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                        .map(place -> Path.of(place).toAbsolutePath().toString())
                        .reduce((a, b) -> a + File.pathSeparator + b)
                        .orElseThrow(),
                LoadedBySession.class.getName()));
        Process session = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .start();
        String said = new String(session.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, session.waitFor(), said);
        assertEquals("shown: 9\n", said.replace("\r", ""));
        String loaded = Files.readString(folder.resolve("loaded.txt"));
        assertTrue(loaded.contains(" " + Evaluator.class.getName() + " "), "the list of classes is there");
        assertEquals(
                List.of(),
                Pattern.compile(
                                " (?:tech\\.tablesaw|smile|org\\.knowm|java\\.awt|javax\\.imageio|javax\\.swing|sun\\.font)\\.\\S+ source:")
                        .matcher(loaded)
                        .results()
                        .map(found -> found.group().strip())
                        .filter(found -> !found.matches(
                                "tech\\.tablesaw\\.(api\\.Table|table\\.Relation) .*")) // For their jar's place.
                        .toList());
    }
}
