package parchment.gather;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import parchment.sheet.DateOrder;
import parchment.sheet.Words;

/**
 * Looks for the batch that a cup is of: by its name or number, by the key of its code, by its day of roast or its lot. Where a number can be a batch's and
 * a blind code, the key decides if it has all that the sheet names, else the days before the cupping; else it is asked.
 */
final class CupSearch {
    /** Share of a sheet's names that must be of one kind before they are taken for that kind; common practice, no source. */
    static final double ALL = 0.9;

    private final List<NamedBatch> batches;
    private final BatchNames names;
    private final RoastedBefore roasted;
    private final CodeSearch codes;
    private final Map<FoundTable, Set<String>> written = new IdentityHashMap<>();

    CupSearch(List<BlindKey> keys, List<NamedBatch> batches, Collection<TastedCup> cups) {
        this.batches = List.copyOf(batches);
        this.names = BatchNames.of(batches);
        this.roasted = new RoastedBefore(batches);
        this.codes = new CodeSearch(keys, names, roasted);
        cups.forEach(cup -> written.computeIfAbsent(cup.table(), t -> new HashSet<>())
                .add(cup.batch().isEmpty() ? cup.code() : cup.batch()));
    }

    /** Returns where a cup stands, as in "scores.csv line 5". */
    static String place(TastedCup cup) {
        return cup.table().sheet().name() + " line " + cup.line();
    }

    FoundBatch find(TastedCup cup) {
        if (!cup.batch().isEmpty()) {
            Optional<LocalDate> day = names.isName(cup.batch()) ? Optional.empty() : isoDay(cup.batch());
            FoundBatch found = day.isPresent() ? roasted.on(day.get(), cup) : named(cup, cup.batch());
            String code = cup.code().isEmpty() ? cup.batch() : cup.code();
            // What no batch is called by can be a code, whatever its heading says.
            return codes.isCode(code)
                    ? weighed(cup, found, codes.find(cup, code), code)
                    : found.isNone() && !cup.code().isEmpty() ? orElse(codeWithoutKey(cup, code), found) : found;
        }
        if (!cup.code().isEmpty()) {
            return codes.isCode(cup.code()) ? codes.find(cup, cup.code()) : codeWithoutKey(cup, cup.code());
        }
        if (cup.lot().isEmpty()) {
            return FoundBatch.none(place(cup) + " names no batch, no code and no lot.", Optional.empty());
        }
        FoundBatch found =
                roasted.ofLot(cup, cup.lot(), place(cup) + " names the lot " + Words.quote(cup.lot()) + " alone");
        return found.isNone() && namesBatch(cup.lot()) ? named(cup, cup.lot()) : found;
    }

    /** Returns the cup as it was served: what stands for its batch is a blind code where the key, and no name, says which batch it is. */
    TastedCup served(TastedCup cup, String batch) {
        boolean code = cup.code().isEmpty()
                && codes.isCode(cup.batch())
                && !names.meant(cup.batch()).contains(batch);
        return code ? cup.coded() : cup;
    }

    /** Returns whether a batch is called like a code. */
    boolean isAlsoABatch(String code) {
        return !names.meant(code).isEmpty();
    }

    private static FoundBatch orElse(FoundBatch first, FoundBatch second) {
        return first.isNone() ? second : first;
    }

    /** Decides between the batch that is called so and the one that the key has for it. */
    private FoundBatch weighed(TastedCup cup, FoundBatch named, FoundBatch byKey, String code) {
        if (named.isNone() || byKey.isNone()) {
            return named.isNone() ? orElse(byKey, named) : named;
        }
        List<String> both = named.with(byKey);
        if (both.size() == 1
                || named.isCertain() && byKey.batches().contains(named.batches().get(0))) {
            return named;
        }
        boolean own = cup.code().isEmpty();
        if (own && byKey.isCertain() && share(cup, codes::isCode) >= ALL) {
            return byKey;
        }
        List<String> before =
                both.stream().filter(batch -> roasted.isShortly(batch, cup)).toList();
        String why = place(cup) + ": a batch is called " + Words.quote(cup.batch()) + ", and the key has the code "
                + Words.quote(code) + " for " + Words.all(byKey.batches());
        return before.size() == 1
                ? FoundBatch.one(
                        before.get(0),
                        why + "; " + before.get(0) + " alone was roasted in the " + RoastedBefore.DAYS
                                + " days before.")
                : FoundBatch.several(both, why + ".");
    }

    /** Takes a code that no key has for a batch's name, if the sheet's codes are such names and the day fits; else it can be chance. */
    private FoundBatch codeWithoutKey(TastedCup cup, String code) {
        FoundBatch found = named(cup, code);
        if (found.isNone()) {
            return FoundBatch.none(
                    place(cup) + ": no key has the " + CodeSearch.shown(cup, code) + ", and no batch is called so"
                            + found.nearest().map(n -> "; nearest is " + n).orElse("") + codes.nearest(code) + ".",
                    found.nearest());
        }
        boolean words = !code.matches("\\d{1,3}|\\p{L}{1,2}[-. ]?\\d{1,3}|\\d{1,3}[-. ]?\\p{L}{1,2}");
        boolean all = share(cup, text -> !names.meant(text).isEmpty()) >= ALL;
        boolean fits = found.isCertain() && roasted.isShortly(found.batches().get(0), cup);
        return !found.isCertain() || words || all && fits && !codes.hasKey()
                ? found
                : all
                        ? found.doubted(chance(cup, code))
                        // The other codes of the sheet are no batches, so this one is a batch's by chance.
                        : found.guessed(chance(cup, code));
    }

    private static String chance(TastedCup cup, String code) {
        return place(cup) + ": no key has the " + CodeSearch.shown(cup, code)
                + "; a batch is called so, which can be chance.";
    }

    private double share(TastedCup cup, Predicate<String> asked) {
        Set<String> all = written.getOrDefault(cup.table(), Set.of());
        return all.isEmpty() ? 0 : all.stream().filter(asked).count() / (double) all.size();
    }

    // "Batch 101 Wren" and "101 - Wren" under "coffee": a batch, where it says so or its lot stands beside.
    private boolean namesBatch(String text) {
        String plain = CupJoin.plain(text);
        return BatchNames.isMarked(text)
                || names.numbered(text).stream()
                        .anyMatch(name -> batches.stream()
                                .anyMatch(batch -> batch.name().equals(name)
                                        && !batch.lot().isEmpty()
                                        && plain.endsWith(CupJoin.plain(batch.lot()))));
    }

    private FoundBatch named(TastedCup cup, String written) {
        String place = place(cup);
        Set<String> meant = names.meant(written);
        if (meant.size() == 1) {
            String only = meant.iterator().next();
            FoundBatch found = FoundBatch.one(
                    only, place + " is batch " + only + ": the name " + Words.quote(written) + " stands there.");
            return roasted.after(only, cup)
                    .map(day -> found.doubted(
                            place + ": batch " + only + " was roasted on " + day + ", after it is said to be tasted."))
                    .orElse(found);
        }
        if (meant.size() > 1) {
            return roasted.several(cup, meant, place + ": several batches are called " + Words.quote(written), written);
        }
        if (roasted.isLot(written)) {
            return roasted.ofLot(cup, written, place + ": " + Words.quote(written) + " is a lot");
        }
        Optional<String> nearest = names.nearest(written);
        return FoundBatch.none(
                place + ": no batch is called " + Words.quote(written)
                        + nearest.map(n -> "; nearest is " + n).orElse("") + ".",
                nearest);
    }

    /** Returns the day that stands in place of a batch. */
    static Optional<LocalDate> isoDay(String text) {
        return text.matches("\\d{4}-\\d{2}-\\d{2}.*")
                ? WrittenDay.find(text).flatMap(day -> day.on(DateOrder.ISO_ONLY))
                : Optional.empty();
    }
}
