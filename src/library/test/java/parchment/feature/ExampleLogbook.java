package parchment.feature;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.CupScores;
import parchment.phase.ExampleRoast;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Logbooks whose every feature can be worked out by hand; the roast is {@link ExampleRoast}. */
final class ExampleLogbook {
    private ExampleLogbook() {}

    static Logbook of(TemperatureUnit reader, List<Batch> batches) {
        Lot lot = new Lot(
                "harbour",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(LocalDate.of(2025, 1, 1)),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Map.of());
        CupScores cup = new CupScores(
                "cupping 1",
                LocalDate.of(2025, 3, 8),
                "Ida",
                "112",
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Map.of("sweetness", 7.0),
                Optional.empty());
        return Logbook.of(LogbookContents.ofBatches(
                        "example",
                        batches.stream()
                                .map(batch ->
                                        batch.toBuilder().readerUnit(reader).build())
                                .toList())
                .toBuilder()
                .readerUnit(reader)
                .lots(List.of(lot))
                .cups(List.of(cup))
                .build());
    }

    static Logbook of(Batch... batches) {
        return of(TemperatureUnit.CELSIUS, List.of(batches));
    }

    /** Gas at 100 until 370 s, at 70 until 560 s, then at 60; airflow at 3 until 580 s, then at 6; air at 230 °C throughout. */
    static Batch.Builder full() {
        Curve gas = ExampleRoast.curve("gas", Unit.labelled("%"), t -> t < 370 ? 100 : t < 560 ? 70 : 60, -40, 740, 2);
        Curve airflow = ExampleRoast.curve("airflow", Unit.labelled("step"), t -> t < 580 ? 3 : 6, -40, 740, 2);
        Curve air = ExampleRoast.curve("air temperature", Unit.TEMPERATURE, t -> 230, -40, 740, 2);
        return ExampleRoast.written()
                .lot("harbour")
                .machine("drum")
                .roastedAt(OffsetDateTime.of(2025, 3, 4, 9, 0, 0, 0, ZoneOffset.UTC))
                .curve(Quantity.GAS, gas)
                .curve(Quantity.AIRFLOW, airflow)
                .curve(Quantity.AIR_TEMPERATURE, air)
                .conditions(new BatchConditions(
                        Optional.of(Mass.kilograms(2)),
                        Optional.of(Mass.kilograms(1.7)),
                        Optional.empty(),
                        Optional.of(Temperature.celsius(18)),
                        Optional.of(Temperature.celsius(20)),
                        OptionalDouble.of(0.55),
                        OptionalDouble.of(1013),
                        Optional.empty()))
                .extra("tasting fee", "12.5")
                .extra("mood", "good")
                .extra("barcode", "12345678901234567");
    }
}
