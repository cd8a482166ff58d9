package parchment.gather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import parchment.gather.BlindKey.Entry;
import parchment.sheet.Words;

/** Knows the keys of blind codes: which batch was served under a code, on the day of the cupping. */
final class CodeSearch {
    private final List<Entry> key = new ArrayList<>();
    private final BatchNames names;
    private final RoastedBefore roasted;

    CodeSearch(List<BlindKey> keys, BatchNames names, RoastedBefore roasted) {
        keys.forEach(k -> key.addAll(k.entries()));
        this.names = names;
        this.roasted = roasted;
    }

    boolean hasKey() {
        return !key.isEmpty();
    }

    boolean isCode(String text) {
        return key.stream().anyMatch(entry -> isOf(entry, text));
    }

    private static boolean isOf(Entry entry, String text) {
        return CupJoin.plain(entry.code()).equals(CupJoin.plain(text));
    }

    /** Returns the code with the day on which it was served, as it stands in a sentence. */
    static String shown(TastedCup cup, String written) {
        return "code " + Words.quote(written)
                + cup.tastedOn().map(day -> " of " + day).orElse("");
    }

    /** Finds the batch of a code that a key has. */
    FoundBatch find(TastedCup cup, String written) {
        String place = CupSearch.place(cup);
        String code = shown(cup, written);
        List<Entry> entries = key.stream().filter(e -> isOf(e, written)).toList();
        List<Entry> ofDay = ofDay(entries, cup);
        if (ofDay.isEmpty()) {
            return otherDay(entries, place, code);
        }
        Set<String> found = new LinkedHashSet<>();
        ofDay.forEach(entry -> found.addAll(names.meant(entry.batch())));
        Entry entry = ofDay.get(0);
        String where =
                "the key's line " + entry.line() + " (" + entry.table().sheet().name() + ")";
        if (found.isEmpty()) {
            return unknown(cup, entry, place + ": the " + code, where);
        }
        List<String> list = List.copyOf(found);
        if (list.size() == 1) {
            return FoundBatch.one(
                    list.get(0), place + ": " + code + " is batch " + list.get(0) + ", by " + where + ".");
        }
        return ofDay.size() == 1
                ? roasted.several(cup, found, place + ": " + code + " is several batches by " + where, entry.batch())
                : FoundBatch.several(list, place + ": the key has the " + code + " for several batches.");
    }

    private static List<Entry> ofDay(List<Entry> entries, TastedCup cup) {
        List<Entry> ofDay = entries.stream()
                .filter(e -> e.day().isPresent() && e.day().equals(cup.tastedOn()))
                .toList();
        return ofDay.isEmpty()
                ? entries.stream()
                        .filter(e -> e.day().isEmpty() || cup.tastedOn().isEmpty())
                        .toList()
                : ofDay;
    }

    private FoundBatch otherDay(List<Entry> entries, String place, String code) {
        List<String> days = entries.stream()
                .map(e -> e.day().map(LocalDate::toString).orElse(""))
                .distinct()
                .toList();
        return FoundBatch.several(
                entries.stream()
                        .flatMap(entry -> names.meant(entry.batch()).stream())
                        .distinct()
                        .toList(),
                place + ": the key has the " + code + " for another day (" + String.join(", ", days) + ").");
    }

    private FoundBatch unknown(TastedCup cup, Entry entry, String code, String where) {
        if (entry.batch().isEmpty()) {
            return roasted.ofLot(cup, entry.lot(), code + " is lot " + Words.quote(entry.lot()) + " by " + where);
        }
        Optional<String> nearest = names.nearest(entry.batch());
        return FoundBatch.none(
                code + " is " + Words.quote(entry.batch()) + " by " + where + ", and no batch is called so"
                        + nearest.map(n -> "; nearest is " + n).orElse("") + ".",
                nearest);
    }

    /** Returns the code of a key that is a slip away, as it stands in a sentence; "" if none is. */
    String nearest(String code) {
        return Words.closest(code, key.stream().map(Entry::code).distinct().toList())
                .map(near -> "; the nearest code is " + Words.quote(near))
                .orElse("");
    }
}
