package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.written.Problem;

/** Names that lead nowhere, a folder for each: one on each side of what is known. */
class CrossChecksTest {
    @TempDir
    Path temporary;

    private WrittenFolder folder = new WrittenFolder(Path.of("."));

    @BeforeEach
    void twoBatches() throws IOException {
        folder = new WrittenFolder(temporary)
                .with(
                        "batches.csv",
                        "batch,roasted at,lot,machine",
                        "1,2025-03-04T09:15,kela,drum",
                        "2,2025-03-04T10:00,kela,drum",
                        "3,2025-03-05T10:00,,");
    }

    private List<String> problems(String part) {
        return folder.open().problems().list().stream()
                .map(Problem::toString)
                .filter(line -> line.contains(part))
                .toList();
    }

    @Test
    void withoutATableOfLotsOrMachinesEveryNameIsGood() {
        assertEquals(List.of(), problems("the lot '"));
        assertEquals(List.of(), problems("the machine '"));
    }

    @Test
    void aLotThatIsInNoRowOfTheLotsIsSaidOnceWithItsRows() throws IOException {
        folder.with("lots.csv", "lot", "kella");
        assertEquals(
                List.of(
                        "batches.csv, column 'lot': found the lot 'kela' in 2 rows; expected a row for it in lots.csv. Did you mean 'kella'?;"
                                + " kept as written."),
                problems("the lot '"));
        folder.with("lots.csv", "lot", "kela");
        assertEquals(List.of(), problems("the lot '"));
    }

    @Test
    void aBlendIsACoffeeToo() throws IOException {
        folder.with("lots.csv", "lot", "hills").with("blends.csv", "blend,lot,share [%]", "kela,hills,100");
        assertEquals(List.of(), problems("the lot '"));
    }

    @Test
    void aMachineThatIsInNoRowOfTheMachinesIsSaid() throws IOException {
        folder.with("machines.csv", "machine", "barrel");
        assertEquals(
                List.of(
                        "batches.csv, column 'machine': found the machine 'drum' in 2 rows; expected a row for it in machines.csv; kept as"
                                + " written."),
                problems("the machine '"));
        folder.with("machines.csv", "machine", "drum");
        assertEquals(List.of(), problems("the machine '"));
    }

    @Test
    void checksAndBlendsOfAnUnknownLotAreSaid() throws IOException {
        folder.with("lots.csv", "lot", "kela")
                .with("lot-checks.csv", "lot,measured on,moisture [%]", "kela,2025-06-01,10.9", "other,2025-06-01,10.9")
                .with("blends.csv", "blend,lot,share [%]", "house,kela,50", "house,third,50");
        assertEquals(
                List.of(
                        "lot-checks.csv, column 'lot': found the lot 'other' in 1 row; expected a row for it in lots.csv; kept as written.",
                        "blends.csv, column 'lot': found the lot 'third' in 1 row; expected a row for it in lots.csv; kept as written."),
                problems("the lot '"));
    }

    /** Where no lot is written at all there is nothing to hold checks against. */
    @Test
    void withoutATableOfLotsChecksAreTakenAsTheyStand() throws IOException {
        folder.with("lot-checks.csv", "lot,measured on,moisture [%]", "other,2025-06-01,10.9");
        assertEquals(List.of(), problems("the lot '"));
    }

    @Test
    void upkeepIsHeldAgainstTheMachinesOrElseAgainstThoseThatRoasted() throws IOException {
        folder.with(
                "upkeep.csv",
                "machine,done on,what",
                "drum,2025-03-01,burner cleaned",
                "drun,2025-03-01,burner cleaned",
                "drun,2025-03-02,burner cleaned");
        assertEquals(
                List.of(
                        "upkeep.csv, column 'machine': found the machine 'drun' in 2 rows; expected a row for it in batches.csv. Did you mean"
                                + " 'drum'?; kept as written."),
                problems("the machine '"));
        folder.with("machines.csv", "machine", "drum");
        assertEquals(
                List.of(
                        "upkeep.csv, column 'machine': found the machine 'drun' in 2 rows; expected a row for it in machines.csv. Did you mean"
                                + " 'drum'?; kept as written."),
                problems("the machine '"));
        folder.with("batches.csv", "batch,roasted at", "1,2025-03-04T09:15");
        folder.with("machines.csv", "machine,capacity");
        assertEquals(List.of(), problems("the machine 'drun'"), "no machine is known by name");
    }

    @Test
    void cupsOfAnUnknownBatchAreKeptAndJoinedToNone() throws IOException {
        folder.with(
                "cuppings.csv",
                "cupping,tasted on,cupper,batch,body",
                "c,2025-03-06,Ana,1,3",
                "c,2025-03-06,Ana,12,3",
                "c,2025-03-06,Ana,house,3");
        assertEquals(
                List.of(
                        "cuppings.csv, line 3, column 'batch': found the batch '12'; expected a batch of this logbook; scores kept, joined"
                                + " to no batch.",
                        "cuppings.csv, line 4, column 'batch': found the batch 'house'; expected a batch of this logbook; scores kept,"
                                + " joined to no batch."),
                problems("joined to no batch"));
    }

    /** Another number is another batch, so none is proposed; a word may be misspelled. */
    @Test
    void aBatchIsProposedForAWordAndNotForANumber() throws IOException {
        folder.with("batches.csv", "batch,roasted at", "harbour,2025-03-04T09:15", "batch 101,2025-03-04T10:00")
                .with(
                        "cuppings.csv",
                        "cupping,tasted on,cupper,batch,body",
                        "c,2025-03-06,Ana,harbor,3",
                        "c,2025-03-06,Ana,batch 102,3");
        assertEquals(
                1,
                problems("the batch 'harbor'; expected a batch of this logbook. Did you mean 'harbour'?")
                        .size());
        assertEquals(
                1,
                problems("the batch 'batch 102'; expected a batch of this logbook; scores")
                        .size());
    }

    @Test
    void aCuppingIsOnTheRoastDayAtTheEarliest() throws IOException {
        folder.with(
                "cuppings.csv",
                "cupping,tasted on,cupper,batch,body",
                "c,2025-03-03,Ana,1,3",
                "c,2025-03-04,Ana,2,3",
                "c,2025-03-05,Ana,2,3");
        assertEquals(
                List.of(
                        "cuppings.csv, line 2, column 'tasted on': found a cupping on 2025-03-03 of a batch roasted later, '1'; expected a"
                                + " cupping after the roast; kept as written."),
                problems("tasted on"));
    }

    @Test
    void aSessionWithoutScoresIsSaid() throws IOException {
        folder.with("cuppings.csv", "cupping,tasted on,cupper,batch,body", "spring,2025-03-06,Ana,1,3")
                .with("sessions.csv", "cupping,blind", "spring,yes", "sprnig,yes");
        assertEquals(
                List.of(
                        "sessions.csv, column 'cupping': found the cupping 'sprnig'; expected scores of it in cuppings.csv. Did you mean"
                                + " 'spring'?; kept as written."),
                problems("the cupping '"));
    }
}
