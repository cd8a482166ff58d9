package parchment.evidence.finding;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import parchment.stats.mixed.RandomTerm;

/**
 * Chooses the random terms that a logbook can tell apart, and says in words which ones it cannot.
 *
 * <p>A grouping with one group says nothing; one with a group for every score is the spread from cup to cup; two that cut the scores
 * in the same way are one, under the first one's name.
 */
public final class RandomChoice {
    private final int rows;
    private final List<RandomTerm> terms = new ArrayList<>();
    private final Map<String, List<Integer>> cuts = new HashMap<>();
    private final List<String> words = new ArrayList<>();

    /**
     * Starts without a term.
     *
     * @param rows number of scores
     */
    public RandomChoice(int rows) {
        this.rows = rows;
    }

    /** Adds a grouping if it can be told from those before. */
    public void offer(String name, List<String> groups) {
        List<Integer> cut = cut(groups);
        int count = cut.stream().mapToInt(group -> group + 1).max().orElse(0);
        if (count < 2) {
            words.add("Only one " + name + ": differences between them cannot be seen and are not in the answer.");
            return;
        }
        if (count == rows) {
            words.add("Each " + name
                    + " has one score only, so its own spread cannot be told from the spread from cup to cup.");
            return;
        }
        for (Map.Entry<String, List<Integer>> other : cuts.entrySet()) {
            if (other.getValue().equals(cut)) {
                words.add("The " + name + " and the " + other.getKey()
                        + " always changed together, so they are one term in the model.");
                return;
            }
        }
        cuts.put(name, cut);
        terms.add(RandomTerm.intercept(name, groups));
    }

    /** Returns the terms that can be told apart, in the order offered. */
    public List<RandomTerm> terms() {
        return List.copyOf(terms);
    }

    /** Says which cannot, a sentence each. */
    public List<String> words() {
        return List.copyOf(words);
    }

    private static List<Integer> cut(List<String> groups) {
        Map<String, Integer> numbers = new HashMap<>();
        List<Integer> cut = new ArrayList<>();
        for (String group : groups) {
            cut.add(numbers.computeIfAbsent(group, key -> numbers.size()));
        }
        return cut;
    }
}
