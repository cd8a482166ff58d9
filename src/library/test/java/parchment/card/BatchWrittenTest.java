package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Problems;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchLooks;
import parchment.logbook.written.BatchPlan;
import parchment.logbook.written.Problem;
import parchment.logbook.written.Upkeep;
import parchment.period.BuiltProbe;
import parchment.phase.ExampleRoast;
import parchment.phase.Phases;
import parchment.quantity.Elapsed;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;

class BatchWrittenTest {
    private static List<String> sentences(Logbook logbook) {
        return BatchWritten.sentences(logbook.batch("B1"), logbook);
    }

    @Test
    void whatWasWrittenStandsInSentences() {
        CardLogbook built = CardLogbook.of(1)
                .change(
                        "B1",
                        b -> b.label(Batch.Label.NOTE, "smoke at the end")
                                .label(Batch.Label.PURPOSE, "sample")
                                .looks(new BatchLooks(
                                        OptionalDouble.empty(),
                                        OptionalDouble.empty(),
                                        "",
                                        OptionalDouble.of(3),
                                        Optional.of("some"),
                                        Optional.of("none.")))
                                .extra("chaff [g]", "24"));
        assertEquals(
                List.of(
                        "Note: smoke at the end.",
                        "Purpose: sample.",
                        "Tipping: some.",
                        "Scorching: none.",
                        "Quakers in 100 g: 3.",
                        "chaff [g]: 24."),
                sentences(built.logbook()));
        assertEquals(
                List.of("Nothing beyond its row was written about it, and no upkeep within 14 days of it."),
                sentences(CardLogbook.of(1).logbook()));
    }

    @Test
    void aSentenceThatEndsAsOneIsNotStoppedTwice() {
        CardLogbook built = CardLogbook.of(1)
                .change("B1", b -> b.label(Batch.Label.NOTE, "smoke!").label(Batch.Label.PURPOSE, "why?"));
        assertEquals(List.of("Note: smoke!", "Purpose: why?"), sentences(built.logbook()));
        CardLogbook undated =
                new CardLogbook(List.of(Batch.named("B1").lot("one").build()), List.of());
        assertEquals(List.of("Nothing beyond its row was written about it."), sentences(undated.logbook()));
    }

    @Test
    void whatIsToBeCheckedOfItsMarksIsAsked() {
        Logbook logbook = CardLogbook.of(1)
                .change(
                        "B1",
                        b -> b.curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                                .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(650))
                                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(600))
                                .writtenMark(MarkKind.DROP, Elapsed.seconds(740)))
                .logbook();
        List<String> questions = Phases.of(logbook).get(0).questions();
        assertFalse(questions.isEmpty());
        assertEquals(questions, sentences(logbook));
    }

    /** Three problems are told, of more the number. */
    @ParameterizedTest
    @CsvSource({
        "1,",
        "3,",
        "4,1 more problem in reading it is in logbook.problems().",
        "5,2 more problems in reading it are in logbook.problems()."
    })
    void threeProblemsInReadingItAreToldAndTheOthersCounted(int problems, String more) {
        List<Problem> list = new ArrayList<>();
        List<String> told = new ArrayList<>();
        for (int i = 1; i <= problems; i++) {
            Problem problem =
                    new Problem("batches.csv", i + 1, "drop", "'x'", "a time", "value treated as missing", "B1");
            list.add(problem);
            if (i <= 3) {
                told.add(problem.toString());
            }
        }
        list.add(new Problem("batches.csv", 9, "drop", "'x'", "a time", "value treated as missing", "B2"));
        if (more != null) {
            told.add(more);
        }
        Logbook logbook = Logbook.of(CardLogbook.of(2).contents().toBuilder()
                .problems(new Problems(list))
                .build());
        assertEquals(told, sentences(logbook));
    }

    /** The probe was moved by 3 °C since B1; of the third logbook nobody knows by how much. */
    @Test
    void aDropThatWasReadByTheProbeAsItWasIsAlsoToldOnTodays() {
        BuiltProbe probe = new BuiltProbe(14).step(7, -3);
        probe.noise = 0.001;
        assertEquals(
                "The drop was planned at 200.0 °C and came at 197.4 °C, as read then; today's probe would show 194.4 °C.",
                planned(probe.logbook(), "B1"));
        assertEquals("The drop was planned at 200.0 °C and came at 194.4 °C.", planned(probe.logbook(), "B22"));
        CardLogbook two = CardLogbook.of(2);
        for (String name : List.of("B1", "B2")) {
            two = two.change(
                    name,
                    b -> b.machine("drum")
                            .curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                            .writtenMark(MarkKind.DROP, Elapsed.seconds(740)));
        }
        Logbook unknown = Logbook.of(two.contents().toBuilder()
                .upkeep(List.of(new Upkeep("drum", LocalDate.of(2025, 1, 2), "bean probe moved", Optional.empty())))
                .build());
        assertEquals("The drop was planned at 200.0 °C and came at 228.0 °C, as read then.", planned(unknown, "B1"));
        assertEquals(
                "The drop was planned at 200.0 °C.", planned(CardLogbook.of(1).logbook(), "B1"));
    }

    /** The first sentence of a batch for which a drop at 200 °C was planned. */
    private static String planned(Logbook logbook, String name) {
        Logbook with = Logbook.of(LogbookContents.ofBatches(
                        "built",
                        logbook.batches().stream()
                                .map(b -> b.name().equals(name)
                                        ? b.toBuilder()
                                                .plan(new BatchPlan(
                                                        Optional.of(Temperature.celsius(200)),
                                                        BatchPlan.PlannedBy.CHOICE))
                                                .build()
                                        : b)
                                .toList())
                .toBuilder()
                .upkeep(logbook.upkeep())
                .build());
        return BatchWritten.sentences(with.batch(name), with).get(0);
    }

    @ParameterizedTest
    @CsvSource({
        "CELSIUS,The drop was planned at 220.0 °C and came at 228.0 °C.",
        "FAHRENHEIT,The drop was planned at 428.0 °F and came at 442.4 °F."
    })
    void thePlannedDropStandsBesideTheOneThatCame(TemperatureUnit reader, String sentence) {
        CardLogbook built = CardLogbook.of(1)
                .change(
                        "B1",
                        b -> b.curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                                .writtenMark(MarkKind.DROP, Elapsed.seconds(740))
                                .plan(new BatchPlan(
                                        Optional.of(Temperature.celsius(220)), BatchPlan.PlannedBy.CHOICE)));
        assertEquals(sentence, sentences(built.logbook().in(reader)).get(0));
    }

    /** B1 was roasted on the first of January. */
    @ParameterizedTest
    @CsvSource({
        "drum,2024-12-18,'Upkeep 14 days before, 2024-12-18: fan cleaned, new belt.'",
        "drum,2024-12-17,",
        "drum,2025-01-01,'Upkeep on the day, 2025-01-01: fan cleaned, new belt.'",
        "drum,2025-01-02,'Upkeep 1 day after, 2025-01-02: fan cleaned, new belt.'",
        "drum,2025-01-15,'Upkeep 14 days after, 2025-01-15: fan cleaned, new belt.'",
        "drum,2025-01-16,",
        "other,2025-01-01,"
    })
    void workOnItsMachineWithinFourteenDaysIsNamed(String machine, LocalDate day, String sentence) {
        CardLogbook built = CardLogbook.of(1).change("B1", b -> b.machine("drum"));
        Logbook logbook = Logbook.of(built.contents().toBuilder()
                .upkeep(List.of(new Upkeep(machine, day, "fan cleaned", Optional.of("new belt"))))
                .build());
        assertEquals(
                sentence == null
                        ? List.of("Nothing beyond its row was written about it, and no upkeep within 14 days of it.")
                        : List.of(sentence),
                sentences(logbook));
    }
}
