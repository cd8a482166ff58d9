package parchment.trial.sealed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.quantity.TemperatureUnit;

class TrialPlanTest {
    private static final Path REFERENCE = Path.of("library", "test", "resources", "reference", "seal", "plan.txt");

    /** What the reference plan says stands word for word in a plan of ours, in its order; ours says looks, scale, chance and checks besides. */
    @Test
    void saysWhatTheReferencePlanSaysInItsWords() throws IOException {
        List<String> reference = Files.readAllLines(REFERENCE);
        TrialPlan plan = TrialPlan.read(Files.readString(REFERENCE));
        List<String> ours = plan.text().lines().toList();
        assertEquals(reference, ours.stream().filter(reference::contains).toList());
        assertEquals(
                List.of("looks: 1", "shown in: C", "drawn by: chance of this computer, kept nowhere"),
                ours.stream().filter(line -> !reference.contains(line)).toList());
        assertEquals("T1", plan.terms().trial());
        assertEquals("sweetness", plan.terms().score());
        assertEquals(TrialControl.DROP_TEMPERATURE, plan.terms().control());
        assertEquals(List.of(201.5, 203.0, 204.5), plan.terms().targets());
        assertEquals(0.5, plan.terms().smallestDifference());
        assertEquals(1.0, plan.terms().lostBatch());
        assertEquals(List.of("Ada", "Ben", "Cleo"), plan.terms().cuppers());
        assertEquals(2, plan.terms().cups());
        assertEquals(12, plan.sets());
        assertEquals(3, plan.size());
    }

    private static TrialPlan plan(
            TrialControl control, String unit, int size, SetDraw.Targets which, String... cuppers) {
        return new TrialPlan(
                new TrialTerms(
                        "my flip",
                        "body, after cooling",
                        control,
                        which == SetDraw.Targets.ENDS ? List.of(60.0, 70.0) : List.of(60.0, 65.0, 70.0),
                        0.25,
                        2,
                        1.5,
                        List.of(cuppers),
                        3,
                        TemperatureUnit.FAHRENHEIT),
                8,
                size,
                which,
                unit,
                "seed 7, for an invented machine",
                List.of("tried: 10 batches", "air: watched: it"),
                "2026-11-29T10:00:00Z");
    }

    @ParameterizedTest
    @CsvSource({
        "FIRST_GAS, %, 2, ENDS, Ada Moor",
        "FIRST_GAS, '', 3, ENDS_AND_MIDDLE, Ada",
        "CHARGE_TEMPERATURE, °C, 4, ENDS, Ada Moor;Ben",
        "CHARGE_TEMPERATURE, °C, 4, ENDS_AND_MIDDLE, Ada;Ben",
    })
    void isReadAsItWasWritten(TrialControl control, String unit, int size, SetDraw.Targets which, String cuppers) {
        TrialPlan plan = plan(control, unit, size, which, cuppers.split(";"));
        assertEquals(plan, TrialPlan.read(plan.text()));
    }

    @Test
    void twoLooksAreStatedWithTheirChance() {
        String text = plan(TrialControl.FIRST_GAS, "%", 2, SetDraw.Targets.ENDS, "Ada")
                .text();
        assertTrue(
                text.contains(
                        "\nprimary: slope as assigned, batch means within set, two-sided, 2.94 in 100 at each of 2 looks\n"),
                text);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "parchment-plan-1;parchment-plan-2;line 1 is not 'parchment-plan-1'",
                "trial: T1;trial T1;the line 'trial T1' has no colon",
                "sets: 12;rounds: 12;it says nothing of 'sets'",
                "sets: 12;sets: dozen;'sets' is 'dozen', and not a number",
                "drop temperature;luck;the question 'sweetness, luck' names no control",
            })
    void saysWhatIsNoPlan(String from, String to, String says) throws IOException {
        String text = Files.readString(REFERENCE).replace(from, to);
        assertEquals(
                says,
                assertThrows(IllegalArgumentException.class, () -> TrialPlan.read(text))
                        .getMessage());
    }
}
