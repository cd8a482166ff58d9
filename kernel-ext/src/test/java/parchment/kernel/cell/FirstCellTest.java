package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.StreamSupport;
import javax.tools.StandardJavaFileManager;
import javax.tools.StandardLocation;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import parchment.kernel.imports.CompilePath;

/** What a first cell does not wait for. */
@Timeout(60)
class FirstCellTest {
    @Test
    void aCellThatWaitsGoesBeforeTheRestOfWhatWarmsUp() throws InterruptedException {
        try (Evaluator evaluator = Evaluator.open()) {
            Thread warming = new Thread(evaluator::warmUp, "warming");
            warming.start();
            Thread.sleep(20); // So that it has its turn first.
            RecordingPage page = new RecordingPage();
            assertTrue(evaluator.run("40 + 2", page).fine());
            assertEquals("42", page.result());
            assertTrue(warming.isAlive(), "the cell waited until everything else was done");
            warming.join();
            assertTrue(evaluator.run("List.of(1)", page).fine());
        }
    }

    @Test
    void theCompilerBeginsWithTheJarsThatCellsNameAndIsGivenTheRestWhenACellNeedsIt() throws Exception {
        try (StandardJavaFileManager files =
                        ToolProvider.getSystemJavaCompiler().getStandardFileManager(null, Locale.ROOT, null);
                CompilePath path = new CompilePath()) {
            path.govern(files);
            List<? extends Path> places = StreamSupport.stream(
                            files.getLocationAsPaths(StandardLocation.CLASS_PATH)
                                    .spliterator(),
                            false)
                    .toList();
            assertEquals(4, places.size(), places.toString());
            assertTrue(
                    places.stream().noneMatch(place -> place.toString().endsWith(".jar")),
                    "none is gone through whole");
        }
        try (Evaluator evaluator = Evaluator.open()) {
            RecordingPage page = new RecordingPage();
            assertTrue(evaluator
                    .run("parchment.display.answer.Report.titled(\"Batch 112\")", page)
                    .fine());
            assertTrue(evaluator
                    .run("tech.tablesaw.api.Table.create(\"lots\").rowCount()", page)
                    .fine());
            assertEquals("0", page.result());
            assertTrue(evaluator.run("Jars.all()", page).fine());
            assertTrue(evaluator
                    .run("org.roaringbitmap.RoaringBitmap.bitmapOf(1, 2).getCardinality()", page)
                    .fine());
            assertEquals("2", page.result());
            assertFalse(evaluator.run("harbour.none.Bean.of()", page).fine());
        }
    }

    /** A filter's type has supertypes in a jar that the compiler does not begin with, which is told of as if a name were still to come. */
    @Test
    void theLastLineOfAFirstCellMayFilterATable() {
        try (Evaluator evaluator = Evaluator.open()) {
            RecordingPage page = new RecordingPage();
            assertTrue(evaluator
                    .run(
                            "var lots = tech.tablesaw.api.Table.create(tech.tablesaw.api.DoubleColumn.create(\"drop\", 203.5, 198));",
                            page)
                    .fine());
            assertTrue(evaluator
                    .run("lots.where(lots.doubleColumn(\"drop\").isGreaterThan(200)).rowCount()", page)
                    .fine());
            assertEquals("1", page.result());
            assertTrue(evaluator
                    .run("lots.where(lots.doubleColumn(\"drop\").isGreaterThan(200))", page)
                    .fine());
        }
    }
}
