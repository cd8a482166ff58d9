package parchment.gather;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.sheet.Words;

/**
 * Gives each recording the key under which its join is answered: {@code join.} and its name, or as much of its place in the folder as tells it from others of
 * that name.
 */
final class JoinKeys {
    private final Map<GatheredBatch, String> keys = new IdentityHashMap<>();
    private final Set<String> used = new HashSet<>();

    private JoinKeys() {}

    /**
     * Gives them. Where a recording had a name to itself in an earlier gathering, what was answered then goes on to count for it.
     *
     * @param earlier the names of an earlier gathering, by where a recording stands
     */
    static JoinKeys of(List<GatheredBatch> curves, Map<String, String> earlier, GatherQuestions questions) {
        JoinKeys keys = new JoinKeys();
        Map<String, List<GatheredBatch>> alike = new LinkedHashMap<>();
        curves.forEach(
                curve -> alike.computeIfAbsent("join." + GatherQuestions.key(curve.name()), key -> new ArrayList<>())
                        .add(curve));
        alike.forEach((key, ofKey) -> {
            if (ofKey.size() == 1) {
                keys.put(ofKey.get(0), key);
            }
        });
        alike.forEach((key, ofKey) -> {
            if (ofKey.size() == 1) {
                return;
            }
            keys.apart(ofKey);
            if (!questions.has(key)
                    || ofKey.stream().anyMatch(curve -> keys.of(curve).equals(key))) {
                return;
            }
            List<GatheredBatch> before = ofKey.stream()
                    .filter(curve -> earlier.containsKey(curve.origin()))
                    .toList();
            if (before.size() == 1) {
                questions.rename(key, keys.of(before.get(0)));
            } else {
                questions.raw(key);
                questions.leaveOut("The answer to " + key + " was not taken: "
                        + Words.count(ofKey.size(), "recording is", "recordings are") + " called so. Answer "
                        + ofKey.stream().map(keys::of).collect(Collectors.joining(" or ")) + ".");
            }
        });
        return keys;
    }

    private void apart(List<GatheredBatch> alike) {
        int deepest = alike.stream().mapToInt(curve -> path(curve).length).max().orElse(1);
        for (int depth = 1; depth <= deepest; depth++) {
            int parts = depth;
            List<String> tried = alike.stream()
                    .map(curve -> "join." + GatherQuestions.key(last(curve, parts)))
                    .toList();
            // The place of one, a/101, may read like the name of another, a-101.
            if (new HashSet<>(tried).size() == alike.size() && tried.stream().noneMatch(used::contains)) {
                for (int i = 0; i < tried.size(); i++) {
                    put(alike.get(i), tried.get(i));
                }
                return;
            }
        }
        // Their places differ by signs that no key has.
        List<GatheredBatch> inOrder = new ArrayList<>(alike);
        inOrder.sort(Comparator.comparing(GatheredBatch::origin));
        for (GatheredBatch curve : inOrder) {
            String begin = "join." + GatherQuestions.key(curve.name());
            String key = begin;
            for (int number = 2; used.contains(key); number++) {
                key = begin + "-" + number;
            }
            put(curve, key);
        }
    }

    private void put(GatheredBatch curve, String key) {
        keys.put(curve, key);
        used.add(key);
    }

    private static String[] path(GatheredBatch curve) {
        return curve.origin().split("/");
    }

    /** Returns the last folders of a recording's place with its name. */
    private static String last(GatheredBatch curve, int folders) {
        String[] path = path(curve);
        StringBuilder name = new StringBuilder();
        for (int i = Math.max(0, path.length - 1 - folders); i < path.length - 1; i++) {
            name.append(path[i]).append('/');
        }
        return name.append(curve.name()).toString();
    }

    /** Returns the key of a recording. */
    String of(GatheredBatch curve) {
        String key = keys.get(curve);
        if (key == null) {
            throw new IllegalArgumentException("There is no key for '" + curve.name() + "': it was not given.");
        }
        return key;
    }
}
