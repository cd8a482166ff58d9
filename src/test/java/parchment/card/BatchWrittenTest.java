package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.BatchLooks;
import parchment.logbook.BatchPlan;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.Upkeep;
import parchment.phase.ExampleRoast;
import parchment.quantity.Elapsed;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;

class BatchWrittenTest {
    private static List<String> sentences(Logbook logbook) {
        return BatchWritten.sentences(logbook.batch("B1"), logbook);
    }

    @Test
    void whatWasWrittenStandsInSentences() {
        CardLogbook built = CardLogbook.of(1).change("B1", b -> b.label(Batch.Label.NOTE, "smoke at the end")
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

    @ParameterizedTest
    @CsvSource({
        "CELSIUS,The drop was planned at 220.0 °C and came at 228.0 °C.",
        "FAHRENHEIT,The drop was planned at 428.0 °F and came at 442.4 °F."
    })
    void thePlannedDropStandsBesideTheOneThatCame(TemperatureUnit reader, String sentence) {
        CardLogbook built = CardLogbook.of(1).change("B1", b -> b.curve(
                        Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(740))
                .plan(new BatchPlan(Optional.of(Temperature.celsius(220)), BatchPlan.PlannedBy.CHOICE)));
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
