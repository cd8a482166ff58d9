package parchment.gather;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToLongFunction;
import parchment.sheet.Words;

/** Knows when batches were roasted: which of several was tasted is told by the days before the cupping. */
final class RoastedBefore {
    /** Days before a cupping in which what is tasted was roasted; common practice, no source. */
    static final int DAYS = 21;

    private final List<NamedBatch> batches;

    RoastedBefore(List<NamedBatch> batches) {
        this.batches = List.copyOf(batches);
    }

    /** Returns whether a batch was roasted in the days before a cup was tasted; false where a day is not known. */
    boolean isShortly(String batch, TastedCup cup) {
        return batches.stream().anyMatch(b -> b.name().equals(batch) && isShortly(b, cup));
    }

    /** Returns the day of a batch that was roasted after a cup is said to be tasted. */
    Optional<LocalDate> after(String batch, TastedCup cup) {
        return batches.stream()
                .filter(b -> b.name().equals(batch))
                .flatMap(b -> b.day().stream())
                .filter(day -> cup.tastedOn().filter(day::isAfter).isPresent())
                .findFirst();
    }

    /** Finds one of several batches that a name can mean: the same number begins again every year, or every day. */
    FoundBatch several(TastedCup cup, Collection<String> called, String why, String written) {
        List<NamedBatch> all =
                batches.stream().filter(b -> called.contains(b.name())).toList();
        List<NamedBatch> before = all.stream().filter(b -> isShortly(b, cup)).toList();
        if (before.size() == 1) {
            NamedBatch only = before.get(0);
            return FoundBatch.one(
                    only.name(),
                    CupSearch.place(cup) + " is batch " + only.name() + ": of those called " + Words.quote(written)
                            + " it alone was roasted in the " + DAYS + " days before.");
        }
        return FoundBatch.several(nearestFirst(before.isEmpty() ? all : before, cup), why + ".");
    }

    /** Finds the batch of a day of roast, and of a lot if the cup names one. */
    FoundBatch on(LocalDate day, TastedCup cup) {
        String place = CupSearch.place(cup);
        List<NamedBatch> roasted = batches.stream()
                .filter(b -> b.day().equals(Optional.of(day)))
                .filter(b -> cup.lot().isEmpty() || CupJoin.plain(b.lot()).equals(CupJoin.plain(cup.lot())))
                .toList();
        String what =
                (cup.lot().isEmpty() ? "roasted" : "of lot " + Words.quote(cup.lot()) + " roasted") + " on " + day;
        if (roasted.size() == 1) {
            return FoundBatch.one(
                    roasted.get(0).name(),
                    place + " is batch " + roasted.get(0).name() + ": the only one " + what + ".");
        }
        return roasted.isEmpty()
                ? FoundBatch.none(place + ": no batch is known that was " + what + ".", Optional.empty())
                : FoundBatch.several(
                        roasted.stream().map(NamedBatch::name).toList(),
                        place + ": " + roasted.size() + " batches were " + what + ".");
    }

    boolean isLot(String written) {
        return !written.isEmpty()
                && batches.stream().anyMatch(b -> CupJoin.plain(b.lot()).equals(CupJoin.plain(written)));
    }

    /** Finds the batch of a lot. */
    FoundBatch ofLot(TastedCup cup, String lot, String why) {
        List<NamedBatch> ofLot = batches.stream()
                .filter(b -> CupJoin.plain(b.lot()).equals(CupJoin.plain(lot))
                        && !b.lot().isEmpty())
                .toList();
        List<NamedBatch> before = ofLot.stream().filter(b -> isShortly(b, cup)).toList();
        if (before.size() == 1 && cup.tastedOn().isPresent()) {
            return FoundBatch.one(
                    before.get(0).name(),
                    why + "; batch " + before.get(0).name() + " alone of it was roasted in the " + DAYS
                            + " days before.");
        }
        if (ofLot.isEmpty()) {
            return FoundBatch.none(why + ", and no batch of it is known.", nearestLot(lot));
        }
        return FoundBatch.several(
                nearestFirst(before.isEmpty() ? ofLot : before, cup),
                why + "; "
                        + (before.isEmpty()
                                ? "none of its batches is known to be roasted in the " + DAYS + " days before."
                                : Words.count(before.size(), "batch", "batches") + " of it can be meant."));
    }

    private static boolean isShortly(NamedBatch batch, TastedCup cup) {
        if (batch.day().isEmpty() || cup.tastedOn().isEmpty()) {
            return false;
        }
        long days = ChronoUnit.DAYS.between(batch.day().get(), cup.tastedOn().get());
        return days >= 0 && days <= DAYS;
    }

    private static List<String> nearestFirst(List<NamedBatch> some, TastedCup cup) {
        ToLongFunction<NamedBatch> away =
                batch -> batch.day().isEmpty() || cup.tastedOn().isEmpty()
                        ? Long.MAX_VALUE
                        : Math.abs(ChronoUnit.DAYS.between(
                                batch.day().get(), cup.tastedOn().get()));
        return some.stream()
                .sorted(Comparator.comparingLong(away))
                .map(NamedBatch::name)
                .toList();
    }

    private Optional<String> nearestLot(String lot) {
        return Words.closest(
                lot,
                batches.stream()
                        .map(NamedBatch::lot)
                        .filter(l -> !l.isEmpty())
                        .distinct()
                        .toList());
    }
}
