package parchment.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.BatchPlan;
import parchment.logbook.written.Problem;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.trial.sealed.AnsweredTrial;
import parchment.trial.sealed.DrawnLine;
import parchment.trial.sealed.SealCheck;

/** What a roaster typed into batches.csv, held against the sealed draw: a row on each side of each border. */
class AssignedCellsTest {
    @TempDir
    Path temporary;

    private static final List<DrawnLine> OPENED = SealedTrial.lines().subList(0, 3);

    private static Batch.Builder typed(int place) {
        return Batch.named("B10" + place)
                .lot("Stone Bridge")
                .roastedAt(SealedTrial.DAY.atTime(9 + place, 0).atOffset(ZoneOffset.UTC))
                .conditions(green(2.5))
                .plan(plan(OPENED.get(place - 1).value(), BatchPlan.PlannedBy.CHANCE, "flip-1", "1"));
    }

    private static BatchPlan plan(double target, BatchPlan.PlannedBy by, String trial, String set) {
        return new BatchPlan(
                Optional.of(Temperature.celsius(target)),
                by,
                Map.of(),
                Optional.of(trial).filter(text -> !text.isEmpty()),
                Optional.of(set).filter(text -> !text.isEmpty()));
    }

    private static BatchConditions green(double kilograms) {
        return new BatchConditions(
                Optional.of(Mass.kilograms(kilograms)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    private static Logbook logbook(Batch... first) {
        List<Batch> batches = new ArrayList<>(List.of(first));
        for (int place = 1; place <= 3; place++) {
            String name = "B10" + place;
            if (batches.stream().noneMatch(batch -> batch.name().equals(name))) {
                batches.add(typed(place).build());
            }
        }
        return Logbook.of(LogbookContents.ofBatches("built", batches));
    }

    private static AssignedCells cells(Logbook logbook) {
        return AssignedCells.of(SealedTrial.plan(), OPENED, Map.of(1, SealedTrial.set(1)), logbook);
    }

    private static List<String> problems(Logbook logbook) {
        return cells(logbook).problems().list().stream().map(Problem::toString).toList();
    }

    @Test
    void cellsAsTheyWereDrawnAreNoProblemAndGiveThePlaces() {
        AssignedCells cells = cells(logbook());
        assertEquals(List.of(), cells.problems().list());
        for (int i = 0; i < 3; i++) {
            AssignedBatch batch = cells.batches().get(i);
            assertEquals("1", batch.set());
            assertEquals(i + 1, batch.place());
            assertEquals("B10" + (i + 1), batch.batch());
            assertEquals("Stone Bridge", batch.lot());
            assertEquals(SealedTrial.DAY, batch.day());
            assertEquals(OPENED.get(i).value(), batch.target());
            assertEquals(AssignedBatch.State.NOT_CUPPED, batch.state());
            assertEquals(Set.of("Ada"), batch.sawTargets());
        }
    }

    @Test
    void whoRoastedABatchSawItsTarget() {
        Batch batch = typed(1).label(Batch.Label.OPERATOR, "Ben").build();
        assertEquals(
                Set.of("Ada", "Ben"), cells(logbook(batch)).batches().get(0).sawTargets());
        assertEquals(Set.of("Ada"), cells(logbook(batch)).batches().get(1).sawTargets());
    }

    @ParameterizedTest
    @CsvSource({"0.05, true", "-0.05, true", "0.07, false", "-0.07, false", "3, false"})
    void theSealedDrawRulesOverWhatWasTyped(double off, boolean same) {
        double drawn = OPENED.get(0).value();
        Batch batch = typed(1).plan(plan(drawn + off, BatchPlan.PlannedBy.CHANCE, "flip-1", "1"))
                .build();
        assertEquals(
                same
                        ? List.of()
                        : List.of("batches.csv, column 'planned drop temperature [°C]': found "
                                + Temperature.celsius(drawn + off) + " for batch 'B101'; expected "
                                + Temperature.celsius(drawn) + ", as was drawn; the sealed draw rules."),
                problems(logbook(batch)));
        assertEquals(drawn, cells(logbook(batch)).batches().get(0).target());
    }

    @Test
    void namesEveryOtherCellThatDiffers() {
        double drawn = OPENED.get(0).value();
        assertEquals(
                List.of(
                        "batches.csv, column 'planned drop temperature [°C]': found nothing for batch 'B101'; expected "
                                + Temperature.celsius(drawn) + ", as was drawn; the sealed draw rules.",
                        "batches.csv, column 'planned by': found nothing for batch 'B101'; expected 'chance'; the sealed draw rules.",
                        "batches.csv, column 'trial': found nothing for batch 'B101'; expected 'flip-1', as was listed; the sealed draw rules.",
                        "batches.csv, column 'set': found nothing for batch 'B101'; expected '1', as was listed; the sealed draw rules."),
                problems(logbook(typed(1).plan(BatchPlan.NOT_WRITTEN).build())));
        assertEquals(
                List.of(
                        "batches.csv, column 'planned by': found 'choice' for batch 'B101'; expected 'chance'; the sealed draw rules.",
                        "batches.csv, column 'trial': found 'flip-2' for batch 'B101'; expected 'flip-1', as was listed; the sealed draw rules.",
                        "batches.csv, column 'set': found '2' for batch 'B101'; expected '1', as was listed; the sealed draw rules.",
                        "batches.csv, column 'lot': found 'Cinder Ridge' for batch 'B101'; expected 'Stone Bridge', as was listed; the sealed draw rules.",
                        "batches.csv, column 'roasted at': found '2026-12-02' for batch 'B101'; expected '2026-12-01', as was listed; the sealed draw rules."),
                problems(logbook(typed(1).lot("Cinder Ridge")
                        .roastedAt(SealedTrial.DAY.plusDays(1).atTime(9, 0).atOffset(ZoneOffset.UTC))
                        .plan(plan(drawn, BatchPlan.PlannedBy.CHOICE, "flip-2", "2"))
                        .build())));
    }

    @ParameterizedTest
    @CsvSource({"2.505, true", "2.495, true", "2.506, false", "2.4, false"})
    void aMassThatWasWeighedAnewAfterwardsIsNamed(double kilograms, boolean same) {
        assertEquals(
                same
                        ? List.of()
                        : List.of(
                                "batches.csv, column 'green mass': found " + Mass.kilograms(kilograms)
                                        + " for batch 'B101'; expected 2.500 kg, as was weighed before the draw; the batch stays where it was listed."),
                problems(logbook(typed(1).conditions(green(kilograms)).build())));
    }

    @Test
    void aBatchWithoutARowIsLostAndALateBatchJoinsNothing() {
        Logbook logbook = Logbook.of(LogbookContents.ofBatches(
                "built",
                List.of(
                        typed(1).build(),
                        typed(3).build(),
                        Batch.named("late")
                                .plan(plan(203, BatchPlan.PlannedBy.CHANCE, "flip-1", "1"))
                                .build())));
        assertEquals(
                List.of(
                        "batches.csv, column 'batch': found no row of batch 'B102'; expected one, since its line of set 1 was opened; counted as lost.",
                        "batches.csv, column 'trial': found 'flip-1' for batch 'late'; expected a batch whose line was opened; nothing joins a trial afterwards; left out of the trial."),
                problems(logbook));
        assertEquals(
                List.of(AssignedBatch.State.NOT_CUPPED, AssignedBatch.State.LOST, AssignedBatch.State.NOT_CUPPED),
                cells(logbook).batches().stream().map(AssignedBatch::state).toList());
    }

    @Test
    void aLookIsWrittenDownOnceForEqualScoresAndBeforeItIsShown() throws Exception {
        TrialFolder trial = SealedTrial.in(temporary.resolve("flip-1"));
        assertEquals(
                "No line of the trial '" + temporary.resolve("flip-1")
                        + "' is open yet, so there is nothing to look at.",
                assertThrows(IllegalStateException.class, () -> trial.answer(logbook()))
                        .getMessage());
        trial.next(SealedTrial.set(1));
        trial.next();
        trial.next();
        AnsweredTrial first = trial.answer(logbook());
        assertEquals(1, first.look());
        assertEquals(1, trial.answer(logbook()).look());
        AnsweredTrial second = trial.answer(Logbook.of(LogbookContents.ofBatches("built", List.of(typed(1).build()))));
        assertEquals(2, second.look());
        assertTrue(
                second.text().contains("This is look 2 of 1 planned: one more than was stated beforehand."),
                second.text());
        assertTrue(second.text()
                .contains("2 cells of the logbook differ from what was drawn or listed. The sealed draw rules."));
        assertTrue(first.text().contains("Every cell of the logbook is as was drawn and listed."));
        String record = Files.readString(temporary.resolve("flip-1").resolve("record.txt"));
        assertEquals(2, record.split(" looked ", -1).length - 1);
        assertEquals(SealCheck.Outcome.WHOLE, trial.verify(trial.seal()).outcome());
    }
}
