package parchment.drift;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import parchment.display.answer.FirstFew;
import parchment.drift.found.CupsBeside;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.Cupping;

/** Tells how the batches of a week came out in the cup, where they were cupped. */
final class WeekCups {
    private WeekCups() {}

    /** Returns the batches whose cups lie clearly below their lot's others, in sentences. */
    static List<String> low(List<Usual> batches, Logbook logbook) {
        return batches.stream()
                .map(Usual::batch)
                .flatMap(batch -> low(batch, CupsBeside.of(batch, logbook)))
                .toList();
    }

    /** Returns the names of the batches of a week whose cups lie clearly below their lot's others. */
    static List<String> namesOfLow(Week week) {
        return week.batches().stream()
                .map(Usual::batch)
                .filter(batch -> isLow(CupsBeside.of(batch, week.logbook())))
                .map(Batch::name)
                .toList();
    }

    /** Says which batches are worth a second cupping: those whose cups were low. */
    static List<String> again(Week week) {
        return namesOfLow(week).stream()
                .map(name -> "Batch " + name + " again, beside a usual one: its cups were low.")
                .toList();
    }

    private static boolean isLow(CupsBeside cups) {
        return cups.isClear() && cups.mean() < 0;
    }

    private static Stream<String> low(Batch batch, CupsBeside cups) {
        return isLow(cups)
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
                        + said(CupsBeside.of(batch, logbook)) + ".")
                .toList();
    }

    /** Says the difference and whether it is one. */
    private static String said(CupsBeside cups) {
        return cups.words()
                .map(words -> words
                        + (cups.isClear()
                                ? ": more than cups differ by as a rule"
                                : ": no more than cups differ by anyhow"))
                .orElse("too few scores of its lot's others by the same cuppers to hold it against");
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

    /** Says why nothing is worth cupping: all was cupped, nothing was odd, or what was not cupped can be held against nothing. */
    static String nothing(Week week) {
        if (week.batches().isEmpty()) {
            return "Nothing: there is no week with batches in it.";
        }
        List<Usual> left = week.notCupped();
        if (left.isEmpty()) {
            return "Every batch of the week was cupped.";
        }
        List<String> names = left.stream().map(usual -> usual.batch().name()).toList();
        boolean known = left.stream().anyMatch(usual -> usual.verdict() != Usual.Verdict.CANNOT_TELL);
        if (known) {
            return !week.odd().isEmpty()
                    ? "Nothing calls for it: what was unlike is told above."
                    : "Nothing calls for it: no batch was unlike the others of its lot"
                            + (week.aLittle().isEmpty() ? "." : " by more than a little.");
        }
        return left.size() == 1
                ? "Batch " + names.get(0)
                        + " of the week was not cupped, and it cannot be held against others of its lot."
                : left.size() + " batches of the week were not cupped (" + FirstFew.of(names)
                        + "), and none of them can be held against others of its lot.";
    }
}
