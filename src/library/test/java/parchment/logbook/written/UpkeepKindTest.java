package parchment.logbook.written;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Logbook;
import parchment.logbook.WrittenFolder;

class UpkeepKindTest {
    @TempDir
    Path temporary;

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            probe moved                             | bean probe moved
            Bean probe moved one hand lower         | bean probe moved
            new bean probe                          | bean probe replaced
            thermocouple replaced                   | bean probe replaced
            probe moved and replaced                | bean probe moved
            ducts cleaned and bean probe moved      | bean probe moved
            bean probe moved, ducts cleaned         | bean probe moved
            probe cleaned                           | other
            probe                                   | other
            probe checked                           | other
            probe not moved                         | other
            new probe ordered                       | other
            ducts cleaned, probe not moved          | ducts
            air probe replaced                      | air probe moved or replaced
            environment probe replaced              | air probe moved or replaced
            exhaust thermocouple moved              | air probe moved or replaced
            burner cleaned                          | burner
            gas regulator changed                   | burner
            fan bearing greased                     | fan
            ducts cleaned                           | ducts
            chaff collector emptied                 | ducts
            drum bearings replaced                  | drum
            bean probe (K type) replaced            | bean probe replaced
            thermocouple (bean) replaced            | bean probe replaced
            probe: moved 1 cm                       | bean probe moved
            bean probe, replaced                    | bean probe replaced
            probe no. 2 replaced                    | bean probe replaced
            probe replaced before the first roast   | bean probe replaced
            bean temperature probe relocated        | bean probe moved
            took the probe out and put it back      | bean probe moved
            probe taken out for cleaning            | bean probe moved
            replaced bean and air probes            | bean probe replaced
            PT100 replaced                          | bean probe replaced
            moved bean probe away from the air inlet | bean probe moved
            new gasket for the probe                | other
            bean sensor cable replaced              | other
            probe, ducts cleaned                    | other
            probe calibrated and drum replaced      | drum
            probe never touched                     | other
            probenheimer's visit                    | other
            repainted                               | other
            """)
    void isProposedFromTheWholeOfTheWordsAndNeverFromOne(String what, String kind) {
        assertEquals(kind, UpkeepKind.proposed(what).words());
    }

    @Test
    void onlyTheBeanProbeMovedOrReplacedMakesReadingsIncomparable() {
        for (UpkeepKind kind : UpkeepKind.values()) {
            assertEquals(
                    kind == UpkeepKind.BEAN_PROBE_MOVED || kind == UpkeepKind.BEAN_PROBE_REPLACED,
                    kind.changesTheBeanProbe(),
                    kind.words());
        }
    }

    @Test
    void aWrittenKindStandsWhateverTheWordsSay() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with("batches.csv", "batch,roasted at", "a,2031-03-04T09:00")
                .with(
                        "upkeep.csv",
                        "machine,done on,what,kind",
                        "drum,2031-03-01,probe moved,other",
                        "drum,2031-03-02,yearly service,Bean Probe Replaced",
                        "drum,2031-03-03,second probe,air probe moved",
                        "drum,2031-03-04,ducts swept,")
                .open();
        List<Upkeep> work = logbook.upkeep();
        assertEquals(
                List.of(UpkeepKind.OTHER, UpkeepKind.BEAN_PROBE_REPLACED, UpkeepKind.AIR_PROBE, UpkeepKind.DUCTS),
                work.stream().map(Upkeep::kind).toList());
        assertEquals(Upkeep.KnownBy.WRITTEN, work.get(0).knownBy());
        assertEquals(Upkeep.KnownBy.PROPOSED, work.get(3).knownBy());
        assertEquals("yearly service (bean probe replaced)", work.get(1).words());
        assertEquals("ducts swept", work.get(3).words());
        assertTrue(work.get(0).toSettle().isEmpty());
    }

    @Test
    void anUnknownKindIsAProblemAndIsProposedFromTheWords() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with("batches.csv", "batch,roasted at", "a,2031-03-04T09:00")
                .with(
                        "upkeep.csv",
                        "machine,done on,what,kind",
                        "drum,2031-03-01,probe moved,bean probe movd",
                        "drum,2031-03-02,the bean probe,")
                .open();
        List<String> problems = new ArrayList<>();
        for (Problem problem : logbook.problems()) {
            if (problem.file().equals("upkeep.csv")) {
                problems.add(problem.toString());
            }
        }
        assertEquals(2, problems.size(), problems.toString());
        assertTrue(problems.get(0).contains("Did you mean 'bean probe moved'?"), problems.get(0));
        assertTrue(problems.get(0).contains("proposed from the words: bean probe moved"), problems.get(0));
        assertTrue(problems.get(1).contains("taken as no change of the bean probe"), problems.get(1));
        assertEquals(UpkeepKind.BEAN_PROBE_MOVED, logbook.upkeep().get(0).kind());
        assertEquals(UpkeepKind.OTHER, logbook.upkeep().get(1).kind());
    }

    @Test
    void aProposedKindSaysHowToSettleIt() {
        Upkeep work = new Upkeep("drum", LocalDate.of(2031, 3, 1), "new thermocouple", Optional.empty());
        assertEquals("new thermocouple (taken as: bean probe replaced)", work.words());
        assertEquals(
                "The kind of this work was not written; from the words \"new thermocouple\" it is taken as bean probe replaced. Write"
                        + " the kind in upkeep.csv to settle it.",
                work.toSettle().orElseThrow());
        assertFalse(new Upkeep("drum", work.doneOn(), "x", UpkeepKind.OTHER, Optional.empty())
                .toSettle()
                .isPresent());
    }
}
