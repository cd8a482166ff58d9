package parchment.gather;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToLongFunction;
import parchment.gather.BlindKey.Entry;
import parchment.sheet.DateOrder;
import parchment.sheet.Words;

/** Looks for the batch that a cup is of. */
final class CupSearch {
    /** Days before a cupping in which what is tasted was roasted; common practice, no source. */
    static final int DAYS_BEFORE = 21;

    /** Holds what was found: batches, the likeliest first. */
    record Found(List<String> batches, boolean certain, String reason, Optional<String> nearest) {
        static Found one(String batch, String reason) {
            return new Found(List.of(batch), true, reason, Optional.empty());
        }

        static Found none(String reason, Optional<String> nearest) {
            return new Found(List.of(), false, reason, nearest);
        }
    }

    private final List<Entry> key = new ArrayList<>();
    private final List<NamedBatch> batches;
    private final BatchNames names;

    CupSearch(List<BlindKey> keys, List<NamedBatch> batches) {
        keys.forEach(k -> key.addAll(k.entries()));
        this.batches = List.copyOf(batches);
        this.names = BatchNames.of(batches);
    }

    /** Returns where a cup stands, as in "scores.csv line 5". */
    static String place(TastedCup cup) {
        return cup.table().sheet().name() + " line " + cup.line();
    }

    Found find(TastedCup cup) {
        String place = place(cup);
        if (!cup.batch().isEmpty()) {
            Optional<LocalDate> roasted = isoDay(cup.batch());
            Found found = roasted.isPresent() ? byRoastDay(cup, roasted.get(), place) : named(cup, cup.batch(), place);
            if (!found.batches().isEmpty()) {
                return found;
            }
            // What no batch is called by can be a code, whatever its heading says.
            String code = cup.code().isEmpty() ? cup.batch() : cup.code();
            boolean known = !cup.code().isEmpty() || isCode(code);
            Found byCode = known ? byCode(cup, code, place) : found;
            return byCode.batches().isEmpty() ? found : byCode;
        }
        if (!cup.code().isEmpty()) {
            return byCode(cup, cup.code(), place);
        }
        if (cup.lot().isEmpty()) {
            return Found.none(place + " names no batch, no code and no lot.", Optional.empty());
        }
        Found found = byLot(cup, cup.lot(), place + " names the lot " + Words.quote(cup.lot()) + " alone");
        return found.batches().isEmpty() && namesBatch(cup.lot()) ? named(cup, cup.lot(), place) : found;
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

    private Found named(TastedCup cup, String written, String place) {
        Set<String> meant = names.meant(written);
        if (meant.size() == 1) {
            String only = meant.iterator().next();
            return Found.one(
                    only, place + " is batch " + only + ": the name " + Words.quote(written) + " stands there.");
        }
        if (meant.size() > 1) {
            return several(cup, meant, place + ": several batches are called " + Words.quote(written), written);
        }
        boolean lot = batches.stream()
                .anyMatch(b -> CupJoin.plain(b.lot()).equals(CupJoin.plain(written))
                        && !b.lot().isEmpty());
        if (lot) {
            return byLot(cup, written, place + ": " + Words.quote(written) + " is a lot");
        }
        Optional<String> nearest = names.nearest(written);
        return Found.none(
                place + ": no batch is called " + Words.quote(written)
                        + nearest.map(n -> "; nearest is " + n).orElse("") + ".",
                nearest);
    }

    // The same number begins again every year, or every day: what was roasted last before the cupping is likeliest.
    private Found several(TastedCup cup, Set<String> called, String why, String written) {
        List<NamedBatch> all =
                batches.stream().filter(b -> called.contains(b.name())).toList();
        List<NamedBatch> before =
                all.stream().filter(b -> isShortlyBefore(b, cup)).toList();
        if (before.size() == 1) {
            NamedBatch only = before.get(0);
            return Found.one(
                    only.name(),
                    place(cup) + " is batch " + only.name() + ": of those called " + Words.quote(written)
                            + " it alone was roasted in the " + DAYS_BEFORE + " days before.");
        }
        return new Found(nearestFirst(before.isEmpty() ? all : before, cup), false, why + ".", Optional.empty());
    }

    private boolean isCode(String text) {
        String plain = CupJoin.plain(text);
        return key.stream().anyMatch(entry -> CupJoin.plain(entry.code()).equals(plain));
    }

    private Found byCode(TastedCup cup, String written, String place) {
        String plain = CupJoin.plain(written);
        List<Entry> entries =
                key.stream().filter(e -> CupJoin.plain(e.code()).equals(plain)).toList();
        List<Entry> ofDay = entries.stream()
                .filter(e -> e.day().isPresent() && e.day().equals(cup.tastedOn()))
                .toList();
        if (ofDay.isEmpty()) {
            ofDay = entries.stream()
                    .filter(e -> e.day().isEmpty() || cup.tastedOn().isEmpty())
                    .toList();
        }
        String code = "code " + Words.quote(written)
                + cup.tastedOn().map(day -> " of " + day).orElse("");
        if (entries.isEmpty()) {
            Found found = named(cup, written, place);
            // Three figures can be a code whose key is lost, and a batch by chance.
            boolean chance = found.certain() && written.matches("\\d{3}") && !key.isEmpty();
            return found.batches().isEmpty()
                    ? Found.none(
                            place + ": no key has the " + code + ", and no batch is called so" + nearestCode(written)
                                    + ".",
                            found.nearest())
                    : new Found(found.batches(), found.certain() && !chance, found.reason(), Optional.empty());
        }
        if (ofDay.isEmpty()) {
            List<String> days = entries.stream()
                    .map(e -> e.day().map(LocalDate::toString).orElse(""))
                    .distinct()
                    .toList();
            return new Found(
                    entries.stream()
                            .map(this::batchOf)
                            .flatMap(List::stream)
                            .distinct()
                            .toList(),
                    false,
                    place + ": the key has the " + code + " for another day (" + String.join(", ", days) + ").",
                    Optional.empty());
        }
        Set<String> found = new LinkedHashSet<>();
        ofDay.forEach(entry -> found.addAll(batchOf(entry)));
        Entry entry = ofDay.get(0);
        String where =
                "the key's line " + entry.line() + " (" + entry.table().sheet().name() + ")";
        if (found.isEmpty()) {
            String meant = entry.batch().isEmpty() ? entry.lot() : entry.batch();
            Optional<String> nearest = names.nearest(meant);
            return entry.batch().isEmpty()
                    ? byLot(
                            cup,
                            entry.lot(),
                            place + ": the " + code + " is lot " + Words.quote(entry.lot()) + " by " + where)
                    : Found.none(
                            place + ": the " + code + " is " + Words.quote(meant) + " by " + where
                                    + ", and no batch is called so"
                                    + nearest.map(n -> "; nearest is " + n).orElse("") + ".",
                            nearest);
        }
        List<String> list = List.copyOf(found);
        return list.size() == 1
                ? Found.one(list.get(0), place + ": " + code + " is batch " + list.get(0) + ", by " + where + ".")
                : ofDay.size() == 1
                        ? several(cup, found, place + ": " + code + " is several batches by " + where, entry.batch())
                        : new Found(
                                list,
                                false,
                                place + ": the key has the " + code + " for several batches.",
                                Optional.empty());
    }

    private List<String> batchOf(Entry entry) {
        return List.copyOf(names.meant(entry.batch()));
    }

    private Found byRoastDay(TastedCup cup, LocalDate day, String place) {
        List<NamedBatch> roasted = batches.stream()
                .filter(b -> b.day().equals(Optional.of(day)))
                .filter(b -> cup.lot().isEmpty() || CupJoin.plain(b.lot()).equals(CupJoin.plain(cup.lot())))
                .toList();
        String what =
                (cup.lot().isEmpty() ? "roasted" : "of lot " + Words.quote(cup.lot()) + " roasted") + " on " + day;
        if (roasted.size() == 1) {
            return Found.one(
                    roasted.get(0).name(),
                    place + " is batch " + roasted.get(0).name() + ": the only one " + what + ".");
        }
        return roasted.isEmpty()
                ? Found.none(place + ": no batch is known that was " + what + ".", Optional.empty())
                : new Found(
                        roasted.stream().map(NamedBatch::name).toList(),
                        false,
                        place + ": " + roasted.size() + " batches were " + what + ".",
                        Optional.empty());
    }

    private Found byLot(TastedCup cup, String lot, String why) {
        List<NamedBatch> ofLot = batches.stream()
                .filter(b -> CupJoin.plain(b.lot()).equals(CupJoin.plain(lot))
                        && !b.lot().isEmpty())
                .toList();
        List<NamedBatch> before =
                ofLot.stream().filter(b -> isShortlyBefore(b, cup)).toList();
        if (before.size() == 1 && cup.tastedOn().isPresent()) {
            return Found.one(
                    before.get(0).name(),
                    why + "; batch " + before.get(0).name() + " alone of it was roasted in the " + DAYS_BEFORE
                            + " days before.");
        }
        if (ofLot.isEmpty()) {
            return Found.none(why + ", and no batch of it is known.", nearestLot(lot));
        }
        return new Found(
                nearestFirst(before.isEmpty() ? ofLot : before, cup),
                false,
                why + "; "
                        + (before.isEmpty()
                                ? "none of its batches is known to be roasted in the " + DAYS_BEFORE + " days before."
                                : Words.count(before.size(), "batch", "batches") + " of it can be meant."),
                Optional.empty());
    }

    private static boolean isShortlyBefore(NamedBatch batch, TastedCup cup) {
        if (batch.day().isEmpty() || cup.tastedOn().isEmpty()) {
            return false;
        }
        long days = ChronoUnit.DAYS.between(batch.day().get(), cup.tastedOn().get());
        return days >= 0 && days <= DAYS_BEFORE;
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

    private String nearestCode(String code) {
        return Words.closest(code, key.stream().map(Entry::code).distinct().toList())
                .map(near -> "; the nearest code is " + Words.quote(near))
                .orElse("");
    }

    private static Optional<LocalDate> isoDay(String text) {
        return text.matches("\\d{4}-\\d{2}-\\d{2}.*")
                ? WrittenDay.find(text).flatMap(day -> day.on(DateOrder.ISO_ONLY))
                : Optional.empty();
    }
}
