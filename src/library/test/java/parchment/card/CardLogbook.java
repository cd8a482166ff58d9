package parchment.card;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;

/**
 * A logbook built row by row: batches B1, B2 ... of lot "one" a day apart at noon, 2 kg each, charged at 180 to 182 °C, without a curve; cuppings "blind"
 * and "open", each cup scored twice by one cupper.
 */
record CardLogbook(List<Batch> batches, List<CupScores> cups) {
    static CardLogbook of(int batches) {
        return new CardLogbook(List.of(), List.of()).with("B", "one", batches, true);
    }

    CardLogbook withOtherLot(int more) {
        return with("C", "other", more, true);
    }

    /** The same with batches of a lot more, with or without a written drop. */
    CardLogbook with(String prefix, String lot, int count, boolean dropped) {
        List<Batch> longer = new ArrayList<>(batches);
        for (int i = 1; i <= count; i++) {
            Batch.Builder batch = Batch.named(prefix + i)
                    .roastedAt(at(LocalDate.of(2025, 1, 1).plusDays(longer.size()), 12, 0))
                    .lot(lot)
                    .conditions(conditions(2, 180 + i % 3));
            if (dropped) {
                batch.writtenMark(MarkKind.DROP, Elapsed.seconds(660 + 10 * (i % 5)));
            }
            longer.add(batch.build());
        }
        return new CardLogbook(longer, cups);
    }

    static OffsetDateTime at(LocalDate day, int hour, int minute) {
        return day.atTime(hour, minute).atOffset(ZoneOffset.UTC);
    }

    static BatchConditions conditions(double kilograms, double charge) {
        return new BatchConditions(
                Optional.of(Mass.kilograms(kilograms)),
                Optional.empty(),
                Optional.of(Temperature.celsius(charge)),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    /** The same with one batch changed. */
    CardLogbook change(String name, UnaryOperator<Batch.Builder> change) {
        return new CardLogbook(
                batches.stream()
                        .map(b -> b.name().equals(name)
                                ? change.apply(b.toBuilder()).build()
                                : b)
                        .toList(),
                cups);
    }

    /** The same with two scores of a batch, a quarter of a point below and above. */
    CardLogbook cup(String cupping, String batch, String attribute, double score) {
        return cupBy("Ida", cupping, batch, attribute, score - 0.25)
                .cupBy("Ida", cupping, batch, attribute, score + 0.25);
    }

    CardLogbook cupBy(String cupper, String cupping, String batch, String attribute, double score) {
        List<CupScores> more = new ArrayList<>(cups);
        more.add(new CupScores(
                cupping,
                LocalDate.of(2025, 6, 1),
                cupper,
                batch,
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Map.of(attribute, score),
                Optional.empty()));
        return new CardLogbook(batches, more);
    }

    LogbookContents contents() {
        return LogbookContents.ofBatches("built", batches).toBuilder()
                .cups(cups)
                .cuppings(List.of(
                        new Cupping("blind", Cupping.Said.YES, Cupping.Said.YES, Map.of()),
                        new Cupping("open", Cupping.Said.NOT_WRITTEN, Cupping.Said.NOT_WRITTEN, Map.of())))
                .build();
    }

    Logbook logbook() {
        return Logbook.of(contents());
    }
}
