package parchment.contract;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import parchment.logbook.Logbook;
import parchment.table.Tables;

/** The library on a class path without what its pom calls optional: somebody who builds on it need not carry a table or a chart library along. */
class LibraryAloneTest {
    /** The optional libraries and what only they bring. */
    private static final List<String> LEFT_OUT = List.of(
            "tablesaw",
            "xchart",
            "guava",
            "icu4j",
            "fastutil",
            "RoaringBitmap",
            "univocity",
            "classgraph",
            "commons-math3");

    private static final Path HILLSIDE = Path.of("..", "datasets", "hillside");

    private static ClassLoader alone;

    @BeforeAll
    static void leaveOut() {
        URL[] kept = Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry ->
                        LEFT_OUT.stream().noneMatch(Path.of(entry).getFileName().toString()::contains))
                .map(LibraryAloneTest::address)
                .toArray(URL[]::new);
        alone = new URLClassLoader(kept, ClassLoader.getPlatformClassLoader());
    }

    private static URL address(String entry) {
        try {
            return Path.of(entry).toUri().toURL();
        } catch (MalformedURLException e) {
            throw new AssertionError(entry, e);
        }
    }

    private static Object call(Object target, String type, String method, Class<?>[] parameters, Object... arguments)
            throws ReflectiveOperationException {
        return Objects.requireNonNull(
                alone.loadClass(type).getMethod(method, parameters).invoke(target, arguments));
    }

    private static Object logbook() throws ReflectiveOperationException {
        return call(null, "parchment.logbook.Logbook", "open", new Class<?>[] {Path.class}, HILLSIDE);
    }

    @Test
    void doesNotFindTheOptionalLibraries() {
        assertThrows(ClassNotFoundException.class, () -> alone.loadClass("tech.tablesaw.api.Table"));
        assertThrows(ClassNotFoundException.class, () -> alone.loadClass("org.knowm.xchart.XYChart"));
    }

    @Test
    void opensALogbookAndAnswersWithoutThem() throws ReflectiveOperationException {
        Object logbook = logbook();
        Class<?>[] taken = {alone.loadClass("parchment.logbook.Logbook")};
        for (String answer :
                List.of("parchment.phase.PhaseTable", "parchment.drift.Week", "parchment.align.PaceChart")) {
            Class<?> type = alone.loadClass(answer);
            Object made = Objects.requireNonNull(type.getMethod("of", taken).invoke(null, logbook));
            Object text =
                    Objects.requireNonNull(made.getClass().getMethod("text").invoke(made));
            assertFalse(text.toString().isBlank(), answer);
        }
    }

    @Test
    void saysWhatToAddWhereATableOfTablesawIsAskedFor() throws ReflectiveOperationException {
        Object logbook = logbook();
        @SuppressWarnings("unchecked")
        var asked = (Consumer<Object>)
                alone.loadClass(Asked.class.getName()).getConstructor().newInstance();
        var thrown = assertThrows(UnsupportedOperationException.class, () -> asked.accept(logbook));
        assertTrue(thrown.getMessage().contains("tech.tablesaw:tablesaw-core"), thrown::getMessage);
    }

    /** Asks as a program would that was compiled with Tablesaw and runs without; to find the method by reflection would need Tablesaw already. */
    public static final class Asked implements Consumer<Object> {
        @Override
        public void accept(Object logbook) {
            Tables.problems((Logbook) logbook);
        }
    }
}
