package parchment.gather;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import parchment.sheet.Words;

/**
 * Decides what each lot is called: short names become the names that a list has beside them, and names that differ in upper and lower case are asked
 * about. Nothing is put together that is not told.
 */
final class LotNames {
    private static final String APART = "apart";

    private final Map<String, Integer> counts;
    private final GatherQuestions questions;
    private final Set<String> keys = new HashSet<>();
    private final Map<String, String> names = new LinkedHashMap<>();

    private LotNames(Map<String, Integer> counts, GatherQuestions questions) {
        this.counts = counts;
        this.questions = questions;
    }

    /**
     * Returns the name of each lot that has another one than was written.
     *
     * @param counts how many batches name each lot, as written
     * @param listed the lots of lists
     */
    static Map<String, String> of(Map<String, Integer> counts, List<ListedLot> listed, GatherQuestions questions) {
        LotNames names = new LotNames(counts, questions);
        names.shortNames(listed);
        names.cases(listed);
        return names.names;
    }

    private String key(String name) {
        String key = "lot." + GatherQuestions.key(name);
        String free = key;
        for (int number = 2; !keys.add(free); number++) {
            free = key + "-" + number;
        }
        return free;
    }

    private void shortNames(List<ListedLot> listed) {
        Map<String, Set<String>> lots = new HashMap<>();
        Map<String, Set<String>> shorts = new HashMap<>();
        Set<String> full = new HashSet<>();
        for (ListedLot lot : listed) {
            full.add(lot.name());
            for (String name : lot.shortNames()) {
                lots.computeIfAbsent(LotName.anyCase(name), n -> new LinkedHashSet<>())
                        .add(lot.name());
                shorts.computeIfAbsent(lot.name(), n -> new LinkedHashSet<>()).add(LotName.anyCase(name));
            }
        }
        counts.forEach((written, batches) -> {
            Set<String> meant = lots.getOrDefault(LotName.anyCase(written), Set.of());
            if (meant.isEmpty() || full.contains(written)) {
                return;
            }
            String lot = meant.iterator().next();
            Set<String> others = new LinkedHashSet<>(shorts.getOrDefault(lot, Set.of()));
            others.remove(LotName.anyCase(written));
            others.removeIf(other -> counts.keySet().stream()
                    .noneMatch(name -> LotName.anyCase(name).equals(other)));
            String answer;
            if (meant.size() == 1 && others.isEmpty()) {
                answer = questions.tell(
                        key(written),
                        Words.quote(written) + ", the lot of " + Words.count(batches, "batch", "batches")
                                + ", is short for " + Words.quote(lot) + ", because a list has them beside each other",
                        lot,
                        text -> !text.isBlank(),
                        "the name of the lot");
            } else {
                answer = questions.ask(
                        key(written),
                        "Which lot is " + Words.quote(written) + "? "
                                + (meant.size() > 1
                                        ? "The lists have it beside " + Words.some(meant) + "."
                                        : "The lists have it beside " + Words.quote(lot) + ", and " + Words.some(others)
                                                + " too.")
                                + " Enter keeps the short name.",
                        written,
                        text -> !text.isBlank(),
                        "the name of the lot",
                        batches);
            }
            names.put(written, LotName.plain(answer));
        });
    }

    private void cases(List<ListedLot> listed) {
        Map<String, Map<String, Integer>> groups = new LinkedHashMap<>();
        counts.forEach((written, batches) -> add(groups, names.getOrDefault(written, written), batches));
        listed.forEach(lot -> add(groups, lot.name(), 0));
        groups.values().stream().filter(group -> group.size() > 1).forEach(group -> {
            List<String> written = new ArrayList<>();
            group.forEach((name, batches) ->
                    written.add(Words.quote(name) + " (" + Words.count(batches, "batch", "batches") + ")"));
            int most = group.values().stream().mapToInt(Integer::intValue).max().orElse(0);
            int all = group.values().stream().mapToInt(Integer::intValue).sum();
            String choices = APART + ", " + String.join(", ", group.keySet());
            String answer = questions.ask(
                    key(group.keySet().iterator().next()),
                    "The lots " + String.join(" and ", written)
                            + " differ in upper and lower case only. If they are one, answer with its name; else they stay apart.",
                    APART,
                    text -> text.equals(APART) || group.containsKey(text),
                    choices,
                    all - most);
            if (!answer.equals(APART)) {
                names.replaceAll((from, to) -> group.containsKey(to) ? answer : to);
                group.keySet().forEach(name -> names.putIfAbsent(name, answer));
            }
        });
    }

    private static void add(Map<String, Map<String, Integer>> groups, String name, int batches) {
        groups.computeIfAbsent(LotName.anyCase(name), n -> new LinkedHashMap<>())
                .merge(name, batches, Integer::sum);
    }
}
