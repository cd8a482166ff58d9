package parchment.drift;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import parchment.logbook.Batch;
import parchment.logbook.Cupping;
import parchment.logbook.Logbook;

/** Says how the batches of a week came out in the cup, where they were cupped. */
final class WeekCups {
    private WeekCups() {}

    /** Returns the batches whose cups lie clearly below their lot's others, in sentences. */
    static List<String> low(List<Usual> batches, Logbook logbook) {
        return batches.stream()
                .map(Usual::batch)
                .flatMap(batch -> low(batch, CupsBeside.of(batch, logbook)))
                .toList();
    }

    private static Stream<String> low(Batch batch, CupsBeside cups) {
        return cups.isClear() && cups.mean() < 0
                ? Stream.of("The cups of batch " + name(batch) + " were low: "
                        + cups.words().orElseThrow() + ".")
                : Stream.empty();
    }

    /** Says of the unlike batches that were cupped already what the cup said. */
    static List<String> ofOdd(List<Usual> odd, Logbook logbook) {
        return odd.stream()
                .map(Usual::batch)
                .filter(batch ->
                        logbook.cups().stream().anyMatch(cup -> cup.batch().equals(batch.name())))
                .map(batch -> "Batch " + name(batch) + " was unlike the others and was cupped: "
                        + CupsBeside.of(batch, logbook)
                                .words()
                                .orElse("too few scores of its lot's others by the same cuppers to hold it against")
                        + ".")
                .toList();
    }

    private static String name(Batch batch) {
        return batch.name() + batch.lot().map(lot -> " of lot " + lot).orElse("");
    }

    /** Returns the mean of a batch's blind scores; NaN if it has none. */
    static double blindMean(Batch batch, String attribute, Logbook logbook) {
        return logbook.cups().stream()
                .filter(cup -> cup.batch().equals(batch.name()))
                .filter(cup -> Optional.of(cup.cupping())
                        .flatMap(logbook::cupping)
                        .filter(how -> how.blind() == Cupping.Said.YES)
                        .isPresent())
                .mapToDouble(cup -> cup.score(attribute))
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
    }
}
