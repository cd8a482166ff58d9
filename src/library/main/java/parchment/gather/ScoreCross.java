package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Takes headings of two parts apart where no sign stands between the parts: "Ana Acidity", "Ana Body", "Teo Acidity", "Teo Body". They are of two parts if
 * each part comes back with others beside it.
 */
final class ScoreCross {
    private static final Pattern GAP = Pattern.compile("[\\s_.()\\[\\],-]+");

    private record Split(String before, String after) {
        Split {
            before = before.replaceAll("^[\\s_.(\\[,-]+|[\\s_.(\\[,-]+$", "");
            after = after.replaceAll("^[\\s_.(\\[,-]+|[\\s_.)\\],-]+$", "");
        }

        boolean isAttributeAlone() {
            return names(before) != names(after) && !before.isEmpty() && !after.isEmpty();
        }

        /** What stands beside the attribute. */
        String other() {
            return names(after) ? before : after;
        }

        String attribute() {
            return names(after) ? after : before;
        }

        ScoreHead of(ScoreHead head) {
            return new ScoreHead(head.written(), List.of(before, after), head.scale());
        }

        private static boolean names(String text) {
            return ScoreWords.isAttribute(text) || ScoreWords.isTotal(text);
        }
    }

    private ScoreCross() {}

    /** Returns the headings, those taken apart that are of two parts. */
    static List<ScoreHead> apart(List<ScoreHead> heads) {
        List<List<Split>> all = heads.stream().map(ScoreCross::splits).toList();
        List<Split> every = all.stream().flatMap(List::stream).toList();
        List<ScoreHead> apart = new ArrayList<>();
        for (int i = 0; i < heads.size(); i++) {
            ScoreHead head = heads.get(i);
            Optional<Split> best = all.get(i).stream()
                    .filter(split -> comesBack(split, every))
                    .max(java.util.Comparator.comparingLong(split -> count(split, every)));
            apart.add(best.map(split -> split.of(head)).orElse(head));
        }
        return best(all) ? apart : grid(apart);
    }

    private static boolean best(List<List<Split>> all) {
        return all.stream().anyMatch(splits -> !splits.isEmpty());
    }

    /** Takes headings apart without a word that is known, where each first word stands before each second one: two words of each kind at least. */
    private static List<ScoreHead> grid(List<ScoreHead> heads) {
        List<Split> splits = new ArrayList<>();
        for (ScoreHead head : heads) {
            String[] words = head.parts().size() == 1 ? head.parts().get(0).split("\\s+") : new String[0];
            splits.add(words.length == 2 ? new Split(words[0], words[1]) : new Split("", ""));
        }
        List<Split> there =
                splits.stream().filter(split -> !split.before().isEmpty()).toList();
        long firsts = there.stream().map(Split::before).distinct().count();
        long seconds = there.stream().map(Split::after).distinct().count();
        if (firsts < 2 || seconds < 2 || there.stream().distinct().count() != firsts * seconds) {
            return heads;
        }
        List<ScoreHead> apart = new ArrayList<>();
        for (int i = 0; i < heads.size(); i++) {
            apart.add(
                    splits.get(i).before().isEmpty()
                            ? heads.get(i)
                            : splits.get(i).of(heads.get(i)));
        }
        return apart;
    }

    private static List<Split> splits(ScoreHead head) {
        if (head.parts().size() != 1) {
            return List.of();
        }
        String text = head.parts().get(0);
        List<Split> splits = new ArrayList<>();
        Matcher gap = GAP.matcher(text);
        while (gap.find()) {
            Split split = new Split(text.substring(0, gap.start()), text.substring(gap.end()));
            if (split.isAttributeAlone()) {
                splits.add(split);
            }
        }
        return splits;
    }

    // The same name beside two attributes, or beside one that stands beside two names.
    private static boolean comesBack(Split split, List<Split> all) {
        Set<String> attributes = all.stream()
                .filter(other -> other.other().equals(split.other()))
                .map(Split::attribute)
                .collect(Collectors.toSet());
        Set<String> others = all.stream()
                .filter(other -> other.attribute().equals(split.attribute()))
                .map(Split::other)
                .collect(Collectors.toSet());
        boolean names = others.stream().allMatch(ScoreWords::isName);
        long single = all.stream().map(Split::attribute).distinct().count();
        return others.size() >= 2 && (attributes.size() >= 2 || names && single == 1);
    }

    private static long count(Split split, List<Split> all) {
        return all.stream()
                .filter(other ->
                        other.other().equals(split.other()) || other.attribute().equals(split.attribute()))
                .count();
    }
}
