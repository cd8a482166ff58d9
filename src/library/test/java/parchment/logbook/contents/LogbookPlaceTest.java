package parchment.logbook.contents;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LogbookPlaceTest {
    @TempDir
    private Path temporary;

    private Path real() throws IOException {
        return temporary.toRealPath();
    }

    @ParameterizedTest
    @ValueSource(strings = {"batches.csv", "logbook.properties", "curves/1.csv", "curves/1.CSV"})
    void aFolderWithOneOfTheseIsALogbookAndSoIsEverythingInIt(String file) throws IOException {
        Path logbook = Files.createDirectory(real().resolve("lb"));
        Path written = logbook.resolve(file);
        Files.createDirectories(written.getParent());
        Files.writeString(written, "x");
        for (String inside : new String[] {"", "batches.csv", "page.html", "curves", ".", "out/../page.html"}) {
            assertEquals(Optional.of(logbook), LogbookPlace.around(logbook.resolve(inside)), inside);
        }
        assertEquals(Optional.empty(), LogbookPlace.around(real().resolve("lb2")));
        assertEquals(Optional.empty(), LogbookPlace.around(logbook.resolve("../page.html")));
        assertTrue(LogbookPlace.isIn(logbook.resolve("a/b"), logbook));
        assertFalse(LogbookPlace.isIn(real().resolve("lb2"), logbook));
    }

    @Test
    void anAncestorMayBeFarAndNeitherPlaceNorFoldersNeedBeThere() throws IOException {
        Path logbook = Files.createDirectory(real().resolve("lb"));
        Files.writeString(logbook.resolve("batches.csv"), "x");
        assertEquals(Optional.of(logbook), LogbookPlace.around(logbook.resolve("none/of/these/is there")));
    }

    @Test
    void aTableLeftAmongDownloadsMakesNoLogbookOfAllThatIsUnpackedThere() throws IOException {
        Path downloads = Files.createDirectory(real().resolve("downloads"));
        Files.writeString(downloads.resolve("batches.csv"), "x");
        Path program = Files.createDirectory(downloads.resolve("program"));
        assertEquals(Optional.empty(), LogbookPlace.around(program.resolve("out/tour.html")));
        assertEquals(Optional.empty(), LogbookPlace.around(program.resolve("week.html")));
        assertEquals(Optional.of(downloads), LogbookPlace.around(downloads.resolve("out/tour.html")));
        assertEquals(Optional.of(downloads), LogbookPlace.around(downloads.resolve("week.html")));
        Files.writeString(Files.createDirectory(downloads.resolve("curves")).resolve("1.csv"), "x");
        assertEquals(
                Optional.of(downloads), LogbookPlace.around(program.resolve("out/tour.html")), "a table and curves");
    }

    @ParameterizedTest
    @ValueSource(strings = {"batches.csv", "logbook.properties", "curves/1.csv"})
    void theStrictFormCountsEachOfTheseHoweverDeepThePlace(String file) throws IOException {
        Path logbook = Files.createDirectory(real().resolve("lb"));
        Path written = logbook.resolve(file);
        Files.createDirectories(written.getParent());
        Files.writeString(written, "x");
        Path deep = Files.createDirectories(logbook.resolve("notes/deep/deeper"));
        assertEquals(Optional.of(logbook), LogbookPlace.anyAround(deep.resolve("s.jsh")));
        assertEquals(Optional.of(logbook), LogbookPlace.anyAround(logbook.resolve("s.jsh")));
        assertEquals(Optional.empty(), LogbookPlace.anyAround(real().resolve("lb2/s.jsh")));
        try {
            Path outside = Files.writeString(real().resolve("outside"), "x");
            Path inward = Files.createSymbolicLink(real().resolve("inward"), deep);
            Path outward = Files.createSymbolicLink(deep.resolve("outward"), outside);
            assertEquals(Optional.of(logbook), LogbookPlace.anyAround(inward.resolve("s.jsh")), "a link into it");
            assertEquals(Optional.of(logbook), LogbookPlace.anyAround(outward), "a link that lies in it");
        } catch (UnsupportedOperationException e) {
            assumeTrue(false, "this system makes no links");
        }
    }

    @Test
    void aFolderOfCurvesCountsNearByOnly() throws IOException {
        Path curves = Files.createDirectories(real().resolve("lb/curves"));
        Files.writeString(curves.resolve("1.csv"), "x");
        assertEquals(Optional.of(real().resolve("lb")), LogbookPlace.around(curves));
        assertEquals(Optional.empty(), LogbookPlace.around(real().resolve("lb/other/deep")));
    }

    @Test
    void aLinkLeadsIntoTheLogbookToo() throws IOException {
        Path logbook = Files.createDirectory(real().resolve("lb"));
        Path table = Files.writeString(logbook.resolve("batches.csv"), "x");
        Path toFolder = real().resolve("to folder");
        Path toFile = real().resolve("to file");
        try {
            Files.createSymbolicLink(toFolder, logbook);
            Files.createSymbolicLink(toFile, table);
        } catch (IOException | UnsupportedOperationException e) {
            assumeTrue(false, "this system makes no links");
        }
        assertEquals(Optional.of(logbook), LogbookPlace.around(toFolder.resolve("out")));
        assertEquals(Optional.of(logbook), LogbookPlace.around(toFile));
    }
}
