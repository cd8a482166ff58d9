package parchment.stats.ordinal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Orders the random effects of an ordinal model so that those which share rows stand close together, and says how far left each row of
 * their matrix reaches: its envelope.
 *
 * <p>Neighbours are visited in breadth (Cuthill and McKee 1969), so days, batches and sessions that follow one another make a narrow band;
 * effects of terms with few groups touch everything and come last.
 */
final class OrdinalPattern {
    /** A term with no more groups than these, as cuppers and lots are, is taken to touch everything. */
    private static final int FEW_GROUPS = 16;

    /** The place of each effect in the order. */
    final int[] place;
    /** The first place in each row of the lower triangle, by place. */
    final int[] first;
    /** The rows below each place whose envelope holds it. */
    final int[][] below;

    private OrdinalPattern(int[] place, int[] first) {
        this.place = place;
        this.first = first;
        int[] counts = new int[place.length];
        for (int i = 0; i < first.length; i++) {
            for (int j = first[i]; j < i; j++) {
                counts[j]++;
            }
        }
        this.below = new int[place.length][];
        Arrays.setAll(below, j -> new int[counts[j]]);
        Arrays.fill(counts, 0);
        for (int i = 0; i < first.length; i++) {
            for (int j = first[i]; j < i; j++) {
                below[j][counts[j]++] = i;
            }
        }
    }

    static OrdinalPattern of(OrdinalRows data, int[] firstEffect) {
        int effects = firstEffect[data.blocks.size()];
        int[] place = new int[effects];
        Arrays.fill(place, -1);
        List<List<Integer>> neighbours = neighbours(data, firstEffect);
        int next = 0;
        for (int e = 0; e < effects; e++) {
            if (place[e] < 0 && !neighbours.get(e).isEmpty()) {
                // From one end of what hangs together, so that the band stays narrow.
                List<Integer> there = visited(e, neighbours);
                for (int effect : visited(there.get(there.size() - 1), neighbours)) {
                    place[effect] = next++;
                }
            }
        }
        for (int e = 0; e < effects; e++) {
            if (place[e] < 0) {
                place[e] = next++;
            }
        }
        return new OrdinalPattern(place, envelope(data, firstEffect, place));
    }

    private static List<List<Integer>> neighbours(OrdinalRows data, int[] firstEffect) {
        List<List<Integer>> neighbours = new ArrayList<>();
        for (int e = 0; e < firstEffect[data.blocks.size()]; e++) {
            neighbours.add(new ArrayList<>());
        }
        for (int i = 0; i < data.rows.length; i++) {
            for (int t = 0; t < data.blocks.size(); t++) {
                for (int s = 0; s < data.blocks.size(); s++) {
                    if (data.blocks.get(t).nodes() > FEW_GROUPS
                            && data.blocks.get(s).nodes() > FEW_GROUPS) {
                        neighbours
                                .get(firstEffect[t] + data.blocks.get(t).group[i])
                                .add(firstEffect[s] + data.blocks.get(s).group[i]);
                    }
                }
            }
        }
        return neighbours;
    }

    private static List<Integer> visited(int start, List<List<Integer>> neighbours) {
        boolean[] seen = new boolean[neighbours.size()];
        List<Integer> visited = new ArrayList<>();
        ArrayDeque<Integer> waiting = new ArrayDeque<>(Collections.singleton(start));
        seen[start] = true;
        while (!waiting.isEmpty()) {
            int effect = waiting.remove();
            visited.add(effect);
            for (int other : neighbours.get(effect)) {
                if (!seen[other]) {
                    seen[other] = true;
                    waiting.add(other);
                }
            }
        }
        return visited;
    }

    private static int[] envelope(OrdinalRows data, int[] firstEffect, int[] place) {
        int[] first = new int[place.length];
        Arrays.setAll(first, i -> i);
        for (int i = 0; i < data.rows.length; i++) {
            int least = Integer.MAX_VALUE;
            for (int t = 0; t < data.blocks.size(); t++) {
                least = Math.min(least, place[firstEffect[t] + data.blocks.get(t).group[i]]);
            }
            for (int t = 0; t < data.blocks.size(); t++) {
                int own = place[firstEffect[t] + data.blocks.get(t).group[i]];
                first[own] = Math.min(first[own], least);
            }
        }
        return first;
    }
}
