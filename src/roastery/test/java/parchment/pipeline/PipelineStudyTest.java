package parchment.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Holds the counting of the study, whose tables others quote. */
class PipelineStudyTest {
    @TempDir
    private Path folder;

    @Test
    void aStudyThatWasStoppedGoesOnWithTheSeedsThatAreMissing() throws IOException {
        Path file = folder.resolve("lines.csv");
        List<Long> asked = new ArrayList<>();
        Cell cell = new Cell("halo", "", List.of(), (seed, logbook) -> {
            assertFalse(Files.exists(logbook), "each logbook gets a folder of its own");
            asked.add(seed);
            return Map.of("held", seed % 2.0);
        });
        PipelineStudy.run(cell, "other", 2, 3, file);
        PipelineStudy.run(cell, "other", 1, 4, file);
        PipelineStudy.run(cell, "virtual", 2, 2, file);
        assertEquals(List.of(2L, 3L, 1L, 4L, 2L), asked);
        List<String> lines = Files.readAllLines(file);
        assertEquals(5, lines.size());
        assertTrue(lines.get(1).matches("halo,other,3,[0-9.]+,held=1\\.0000"), lines.get(1));
    }

    @Test
    void sharesAndMeansAreReportedWithTheirMonteCarloErrors() {
        String table = PipelineStudy.report(List.of(
                "halo,other,1,2.0,held=1.0000,told=1.0000,width=0.1",
                "halo,other,2,2.0,held=0.0000,told=1.0000,width=0.3",
                "halo,other,3,2.0,held=1.0000,told=1.0000,width=0.2",
                "halo,other,4,4.0,held=NaN,told=0.0000,width=NaN",
                "halo,other,4,4.0,held=1.0000,told=1.0000,width=9"));
        // Two of three: 66.7 %, error sqrt(2/9 / 3) = 27.2 %; three of four: 75, 21.7; mean of 0.1, 0.3, 0.2: 0.1 /
        // sqrt 3.
        // What is not asked is not counted, and a seed counts once.
        assertTrue(table.contains("| interval holds zero | 87-93 | 66.7 ± 27.2 % | 3 |"), table);
        assertTrue(table.contains("| an interval is given |  | 75.0 ± 21.7 % | 4 |"), table);
        assertTrue(table.contains("| mean width |  | 0.20 ± 0.06 | 3 |"), table);
        assertTrue(table.contains("Processor time: 2.5 s a logbook."), table);
    }

    @Test
    void everyCellHasItsOwnNameAndTheVirtualRoasterysAreAmongThem() {
        Set<String> names = new HashSet<>();
        for (Cell cell : PipelineStudy.cells("other")) {
            assertTrue(names.add(cell.name()), cell.name());
        }
        assertTrue(PipelineStudy.cells("virtual").stream().allMatch(cell -> names.contains(cell.name())));
        assertThrows(IllegalArgumentException.class, () -> PipelineStudy.cells("another"));
    }

    @ParameterizedTest
    @CsvSource({"other, halo", "virtual, no-effect"})
    void aCellAsksWhatItCounts(String roastery, String name) throws IOException {
        Cell cell = PipelineStudy.cells(roastery).stream()
                .filter(found -> found.name().equals(name))
                .findFirst()
                .orElseThrow();
        Map<String, Double> values = PipelineStudy.ask(cell, 1);
        for (Cell.Count count : cell.counts()) {
            assertTrue(values.containsKey(count.name()), count.name());
        }
    }

    @Test
    void theSameSeedGivesTheSameAnswers() throws IOException {
        Cell halo = PipelineStudy.cells("other").get(6);
        assertEquals("halo", halo.name());
        assertEquals(PipelineStudy.ask(halo, 1), PipelineStudy.ask(halo, 1));
    }
}
