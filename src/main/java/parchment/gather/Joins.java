package parchment.gather;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import parchment.sheet.Words;

/**
 * Finds which recording is which row of the lists: each recording at most one row, each row at most one recording, so that what speaks for all pairs
 * together weighs most.
 *
 * <p>A pair is certain if a name or a time tells it, nothing speaks against it, and every other way to pair the same weighs at least {@link #MARGIN} points less.
 */
final class Joins {
    static final int CERTAIN = 5;
    static final int LIKELY = 3;
    static final int MARGIN = 3;

    private final List<JoinEvidence.Curve> curves;
    private final List<ListedRoast> roasts;
    private final List<Map<Integer, List<Clue>>> clues = new ArrayList<>();
    private final int[] rowOf;
    private final int[] curveOf;

    private Joins(List<GatheredBatch> batches, List<ListedRoast> roasts) {
        this.curves = batches.stream().map(JoinEvidence.Curve::of).toList();
        this.roasts = roasts;
        this.rowOf = new int[curves.size()];
        this.curveOf = new int[roasts.size()];
        Arrays.fill(rowOf, -1);
        Arrays.fill(curveOf, -1);
        for (JoinEvidence.Curve curve : curves) {
            Map<Integer, List<Clue>> row = new LinkedHashMap<>();
            for (int r = 0; r < roasts.size(); r++) {
                List<Clue> found = JoinEvidence.of(curve, roasts.get(r));
                if (!found.isEmpty()) {
                    row.put(r, found);
                }
            }
            clues.add(row);
        }
        new DayOrder(curves, roasts).addTo(clues);
    }

    /** Returns the joins, doubtful ones first, each kind in the order of the recordings. */
    static List<Join> of(List<GatheredBatch> curves, List<ListedRoast> roasts) {
        Joins joins = new Joins(curves, roasts);
        joins.assign();
        List<Join> all = new ArrayList<>();
        for (int c = 0; c < curves.size(); c++) {
            if (joins.rowOf[c] >= 0) {
                all.add(joins.join(c, joins.rowOf[c]));
            }
        }
        all.sort(Comparator.comparing(Join::sure));
        return all;
    }

    private int points(int curve, int row) {
        int sum = clues.get(curve).getOrDefault(row, List.of()).stream()
                .mapToInt(Clue::points)
                .sum();
        return Math.max(sum, 0);
    }

    private void assign() {
        Map<Integer, Set<Integer>> byRow = new LinkedHashMap<>();
        for (int c = 0; c < curves.size(); c++) {
            for (int r : clues.get(c).keySet()) {
                if (points(c, r) > 0) {
                    byRow.computeIfAbsent(r, row -> new LinkedHashSet<>()).add(c);
                }
            }
        }
        boolean[] seen = new boolean[curves.size()];
        for (int c = 0; c < curves.size(); c++) {
            if (!seen[c]) {
                together(c, seen, byRow);
            }
        }
    }

    /** Assigns a recording and all those that compete with it for rows. */
    private void together(int first, boolean[] seen, Map<Integer, Set<Integer>> byRow) {
        List<Integer> members = new ArrayList<>();
        Set<Integer> rows = new LinkedHashSet<>();
        Deque<Integer> waiting = new ArrayDeque<>(List.of(first));
        seen[first] = true;
        while (!waiting.isEmpty()) {
            int c = waiting.remove();
            members.add(c);
            for (int r : clues.get(c).keySet()) {
                if (points(c, r) > 0 && rows.add(r)) {
                    for (int other : byRow.getOrDefault(r, Set.of())) {
                        if (!seen[other]) {
                            seen[other] = true;
                            waiting.add(other);
                        }
                    }
                }
            }
        }
        List<Integer> columns = new ArrayList<>(rows);
        double[][] gains = new double[members.size()][columns.size()];
        for (int i = 0; i < members.size(); i++) {
            for (int k = 0; k < columns.size(); k++) {
                gains[i][k] = points(members.get(i), columns.get(k));
            }
        }
        int[] chosen = Assignment.of(gains);
        for (int i = 0; i < chosen.length; i++) {
            if (chosen[i] >= 0 && gains[i][chosen[i]] > 0) {
                rowOf[members.get(i)] = columns.get(chosen[i]);
                curveOf[columns.get(chosen[i])] = members.get(i);
            }
        }
    }

    private Join join(int curve, int row) {
        List<Clue> found = clues.get(curve).getOrDefault(row, List.of());
        int points = points(curve, row);
        int margin = points;
        String otherwise = "";
        for (int r : clues.get(curve).keySet()) {
            if (r != row && points(curve, r) > 0) {
                int swap = curveOf[r] < 0 ? 0 : points(curveOf[r], r) - points(curveOf[r], row);
                int less = points - points(curve, r) + swap;
                if (less < margin) {
                    margin = less;
                    otherwise = other("it could be " + shown(roasts.get(r)), curve, r);
                }
            }
        }
        for (int c = 0; c < curves.size(); c++) {
            if (c != curve && rowOf[c] < 0 && points(c, row) > 0 && points - points(c, row) < margin) {
                margin = points - points(c, row);
                otherwise = "so could be " + Words.quote(curves.get(c).batch().name());
            }
        }
        int other = nameElsewhere(curve, row, found);
        if (other >= 0) {
            margin = 0;
            otherwise = other("its name says " + shown(roasts.get(other)), curve, other);
        }
        boolean against = found.stream().anyMatch(Clue::against);
        boolean identified = found.stream().anyMatch(clue -> clue.kind().identifies() && !clue.against());
        Join.Sure sure = against || margin < MARGIN
                ? Join.Sure.DOUBTFUL
                : identified && points >= CERTAIN
                        ? Join.Sure.CERTAIN
                        : points >= LIKELY ? Join.Sure.LIKELY : Join.Sure.DOUBTFUL;
        return new Join(curves.get(curve).batch(), roasts.get(row), sure, found, margin < MARGIN ? otherwise : "");
    }

    /** Returns the row that the recording's name says, where a time says this one; -1 if there is none, or it is another recording's by name. */
    private int nameElsewhere(int curve, int row, List<Clue> found) {
        if (found.stream().anyMatch(Joins::names)) {
            return -1;
        }
        for (Map.Entry<Integer, List<Clue>> entry : clues.get(curve).entrySet()) {
            int r = entry.getKey();
            boolean taken = curveOf[r] >= 0
                    && clues.get(curveOf[r]).getOrDefault(r, List.of()).stream().anyMatch(Joins::names);
            if (r != row && !taken && entry.getValue().stream().anyMatch(Joins::names)) {
                return r;
            }
        }
        return -1;
    }

    private static boolean names(Clue clue) {
        return clue.kind() == Clue.Kind.NAME && clue.points() >= JoinEvidence.ONLY_NUMBER;
    }

    private String other(String words, int curve, int row) {
        return clues.get(curve).getOrDefault(row, List.of()).stream()
                .filter(clue -> !clue.against())
                .findFirst()
                .map(clue -> words + " (" + clue.words() + ")")
                .orElse(words);
    }

    private static String shown(ListedRoast roast) {
        return roast.name().isEmpty() ? roast.shown() : "row " + Words.quote(roast.name());
    }
}
