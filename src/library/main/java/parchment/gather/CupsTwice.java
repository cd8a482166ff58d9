package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import parchment.sheet.Words;

/**
 * Finds cups that two sheets of scores hold, as where a sheet was saved twice: one cupper scores a cup of a batch once on a day. What is the same is one
 * cup; what differs stays two, and is told.
 */
record CupsTwice(List<TastedCup> cups, List<String> told) {
    CupsTwice {
        cups = List.copyOf(cups);
        told = List.copyOf(told);
    }

    private record Key(List<String> parts) {
        static Key of(TastedCup cup) {
            return new Key(List.of(
                    cup.tastedOn().map(Object::toString).orElse(""),
                    cup.cupping(),
                    cup.cupper(),
                    cup.batch(),
                    cup.code(),
                    cup.lot(),
                    String.valueOf(cup.cup())));
        }
    }

    private record Pair(FoundTable first, FoundTable second) {}

    static CupsTwice of(List<TastedCup> read) {
        Map<Key, List<TastedCup>> known = new LinkedHashMap<>();
        List<TastedCup> left = new ArrayList<>();
        Map<Pair, List<TastedCup>> same = new LinkedHashMap<>();
        Set<String> other = new LinkedHashSet<>();
        for (TastedCup cup : read) {
            List<TastedCup> before = known.computeIfAbsent(Key.of(cup), key -> new ArrayList<>());
            // Without a day or a cupper two cups may be of two tastings or two people.
            boolean mayBeTwice = cup.tastedOn().isPresent()
                    && !cup.cupper().isEmpty()
                    && !cup.scores().isEmpty();
            boolean twice = false;
            for (TastedCup earlier : mayBeTwice ? before : List.<TastedCup>of()) {
                if (earlier.table() == cup.table()) {
                    continue;
                }
                if (earlier.scores().equals(cup.scores())) {
                    same.computeIfAbsent(new Pair(earlier.table(), cup.table()), pair -> new ArrayList<>())
                            .add(cup);
                    twice = true;
                    break;
                }
                if (differ(earlier, cup)) {
                    other.add(CupSearch.place(earlier) + " and " + CupSearch.place(cup) + " give two scores of "
                            + Words.quote(cup.cupper()) + " for " + name(cup) + " on "
                            + cup.tastedOn().orElseThrow()
                            + ": both are written as cups; take one out of the files if it was put right later.");
                }
            }
            if (!twice) {
                before.add(cup);
                left.add(cup);
            }
        }
        List<String> told = new ArrayList<>();
        same.forEach((pair, cups) -> told.add(TablePlace.of(pair.second()).shown() + ": "
                + Words.count(cups.size(), "cup stands", "cups stand") + " in "
                + TablePlace.of(pair.first()).shown()
                + " too, of the same day, cupper and batch and with the same scores; counted once."));
        told.addAll(other);
        return new CupsTwice(left, told);
    }

    private static boolean differ(TastedCup one, TastedCup other) {
        return one.scores().entrySet().stream()
                .anyMatch(score -> !other.scores()
                        .getOrDefault(score.getKey(), score.getValue())
                        .equals(score.getValue()));
    }

    private static String name(TastedCup cup) {
        return Words.quote(!cup.batch().isEmpty() ? cup.batch() : !cup.code().isEmpty() ? cup.code() : cup.lot());
    }
}
