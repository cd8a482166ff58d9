package parchment.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.evidence.Evidence;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.trial.AssignedBatch.State;
import parchment.trial.sealed.TrialControl;
import parchment.trial.sealed.TrialTerms;

class TrialScoresTest {
    @TempDir
    Path folder;

    private static AssignedBatch place(int place, String batch, double target) {
        return AssignedBatch.drawn("set 1", place, "Cinder Ridge", LocalDate.of(2026, 3, 2), batch, target);
    }

    private Logbook logbook() throws IOException {
        Files.writeString(folder.resolve("batches.csv"), """
                batch,roasted at,lot,green mass [kg],charge temperature [°C],drop [s]
                Q1,2026-03-02T09:00,Cinder Ridge,6,186,600
                Q2,2026-03-02T09:30,Cinder Ridge,6,190,610
                Q3,2026-03-02T10:00,Cinder Ridge,6,,620
                """);
        Files.writeString(folder.resolve("sessions.csv"), """
                cupping,blind,scored before discussion
                C1,yes,yes
                C2,no,yes
                """);
        Files.writeString(folder.resolve("cuppings.csv"), """
                cupping,tasted on,cupper,batch,cup,sweetness
                C1,2026-03-03,Ana,Q1,1,6
                C1,2026-03-03,Ana,Q1,2,7
                C1,2026-03-03,Bo,Q1,1,8
                C2,2026-03-04,Bo,Q1,1,2
                C2,2026-03-04,Ana,Q2,1,5
                C1,2026-03-03,Ana,Q4,1,5
                """);
        return Logbook.open(folder);
    }

    @Test
    @Tag("says")
    void takesBlindScoresAndReadingsFromTheLogbookAndSaysWhatCameOfEachPlace() throws IOException {
        Logbook logbook = logbook();
        TrialTerms terms = new TrialTerms(
                "quay",
                "sweetness",
                TrialControl.CHARGE_TEMPERATURE,
                List.of(185.0, 190.0),
                0.5,
                1,
                1,
                List.of("Ana", "Bo"),
                2,
                TemperatureUnit.CELSIUS);
        List<AssignedBatch> found = TrialScores.of(
                terms,
                List.of(
                        place(1, "Q1", 185),
                        place(2, "Q2", 190),
                        place(3, "Q3", 185).with(State.LOST),
                        place(4, "Q9", 190),
                        place(5, "Q8", 190).with(State.LOST)),
                logbook.only(batch -> false));
        assertEquals(
                List.of(State.CUPPED, State.NOT_CUPPED, State.LOST, State.NOT_ROASTED, State.LOST),
                found.stream().map(AssignedBatch::state).toList());
        // Ana's two cups first, then Bo's one; the cupping that was not blind is not taken.
        assertEquals(7.25, found.get(0).mean(), 1e-12);
        assertEquals(3, found.get(0).scores().size());
        assertEquals(186, found.get(0).achieved().orElseThrow(), 1e-9);
        assertEquals(190, found.get(1).achieved().orElseThrow(), 1e-9);
        assertTrue(found.get(3).achieved().isEmpty());
    }

    @Test
    @Tag("says")
    void readsTheDropAndTheFirstGasWhereTheyWereLogged() throws IOException {
        logbook();
        StringBuilder curve = new StringBuilder("time [s],bean temperature [°C],gas [%]\n");
        for (int s = 0; s <= 610; s += 2) {
            curve.append(s)
                    .append(',')
                    .append(90 + 0.185 * s)
                    .append(',')
                    .append(s < 300 ? 80 : 60)
                    .append('\n');
        }
        Files.createDirectories(folder.resolve("curves"));
        Files.writeString(folder.resolve("curves").resolve("Q2.csv"), curve.toString());
        Logbook logbook = Logbook.open(folder);
        List<AssignedBatch> drawn = List.of(place(2, "Q2", 80));
        double gas = TrialScores.of(terms(TrialControl.FIRST_GAS), drawn, logbook)
                .get(0)
                .achieved()
                .orElseThrow();
        assertEquals(80, gas, 1e-9);
        double drop = TrialScores.of(terms(TrialControl.DROP_TEMPERATURE), drawn, logbook)
                .get(0)
                .achieved()
                .orElseThrow();
        assertEquals(90 + 0.185 * 610, drop, 1.5);
    }

    private static TrialTerms terms(TrialControl control) {
        return new TrialTerms(
                "quay",
                "sweetness",
                control,
                List.of(70.0, 80.0),
                0.5,
                1,
                1,
                List.of("Ana"),
                1,
                TemperatureUnit.CELSIUS);
    }

    @Test
    @Tag("says")
    void aFinishedTrialStandsApartOnThePageOfItsQuestion() {
        Logbook logbook = DrawnHarbour.of(3, 40);
        Evidence evidence = Evidence.of("sweetness", Features.dropTemperature(), logbook);
        TrialAnswer answer =
                TrialAnswer.of(TrialTables.terms(0.5, 1), TrialTables.sets(8, 0.25, 0.1), TrialTables.SEAL);
        Evidence beside = evidence.withTrial(answer.finished());
        assertEquals(evidence.verdict(), beside.verdict());
        String page = beside.page().text();
        assertTrue(
                page.contains("What was drawn by chance: trial quay\n\n"
                        + answer.inShort().text()),
                page);
        assertTrue(page.contains("Verdict of the trial: did."), page);
        assertTrue(page.contains("Seal: " + TrialTables.SEAL + "."), page);
        assertTrue(
                page.contains("What all batches tell\n\n" + evidence.inShort().text()), page);
        assertTrue(!evidence.page().text().contains("What was drawn by chance: trial"));
        assertEquals(
                "Trial quay asked what the drop temperature does to sweetness; this answer is about the charge temperature and"
                        + " sweetness. Show it beside an answer to its own question.",
                org.junit.jupiter.api.Assertions.assertThrows(
                                IllegalArgumentException.class,
                                () -> Evidence.of("sweetness", Features.chargeTemperature(), logbook)
                                        .withTrial(answer.finished()))
                        .getMessage());
    }
}
