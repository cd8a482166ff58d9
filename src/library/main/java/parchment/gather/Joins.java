package parchment.gather;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
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

    /** Says which pairs are looked at: the others have nothing but another day between them, so that both give the same joins. */
    enum Looking {
        AT_CANDIDATES,
        AT_ALL
    }

    private final List<JoinEvidence.Curve> curves;
    private final List<JoinRow> roasts;
    private final List<Map<Integer, List<Clue>>> clues = new ArrayList<>();
    private final Map<Integer, List<Integer>> curvesOf = new HashMap<>();
    private final int[] rowOf;
    private final int[] curveOf;

    private Joins(List<GatheredBatch> batches, List<ListedRoast> roasts, Looking looking) {
        FolderNames folders = FolderNames.of(batches);
        this.curves = batches.stream()
                .map(batch -> JoinEvidence.Curve.of(batch, folders))
                .toList();
        this.roasts = roasts.stream().map(JoinRow::of).toList();
        this.rowOf = new int[curves.size()];
        this.curveOf = new int[roasts.size()];
        Arrays.fill(rowOf, -1);
        Arrays.fill(curveOf, -1);
        JoinCandidates candidates = new JoinCandidates(this.roasts);
        List<Integer> everyRow = IntStream.range(0, roasts.size()).boxed().toList();
        for (JoinEvidence.Curve curve : curves) {
            Map<Integer, List<Clue>> row = new LinkedHashMap<>();
            for (int r : looking == Looking.AT_ALL ? everyRow : candidates.of(curve)) {
                List<Clue> found = JoinEvidence.of(curve, this.roasts.get(r));
                if (!found.isEmpty()) {
                    row.put(r, found);
                }
            }
            clues.add(row);
        }
        new WordClues(curves, roasts).addTo(clues);
        new DayOrder(curves, this.roasts).addTo(clues);
        for (int c = 0; c < curves.size(); c++) {
            for (int r : clues.get(c).keySet()) {
                curvesOf.computeIfAbsent(r, row -> new ArrayList<>()).add(c);
            }
        }
    }

    /** Returns the joins, doubtful ones first, each kind in the order of the recordings. */
    static List<Join> of(List<GatheredBatch> curves, List<ListedRoast> roasts) {
        return of(curves, roasts, Looking.AT_CANDIDATES);
    }

    /** Returns the same joins, by one way of looking or the other. */
    static List<Join> of(List<GatheredBatch> curves, List<ListedRoast> roasts, Looking looking) {
        Joins joins = new Joins(curves, roasts, looking);
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

    /** Returns what counts for how sure a join is: the place in the day alone does not. */
    private int sure(int curve, int row) {
        int sum = clues.get(curve).getOrDefault(row, List.of()).stream()
                .filter(clue -> clue.kind() != Clue.Kind.ORDER)
                .mapToInt(Clue::points)
                .sum();
        return Math.max(sum, 0);
    }

    private int points(int curve, int row) {
        int sum = clues.get(curve).getOrDefault(row, List.of()).stream()
                .mapToInt(Clue::points)
                .sum();
        return Math.max(sum, 0);
    }

    private void assign() {
        boolean[] seen = new boolean[curves.size()];
        for (int c = 0; c < curves.size(); c++) {
            if (!seen[c]) {
                together(c, seen);
            }
        }
    }

    /** Assigns a recording and all those that compete with it for rows. */
    private void together(int first, boolean[] seen) {
        List<Integer> members = new ArrayList<>();
        Set<Integer> rows = new LinkedHashSet<>();
        Deque<Integer> waiting = new ArrayDeque<>(List.of(first));
        seen[first] = true;
        while (!waiting.isEmpty()) {
            int c = waiting.remove();
            members.add(c);
            for (int r : clues.get(c).keySet()) {
                if (points(c, r) > 0 && rows.add(r)) {
                    for (int other : curvesOf.getOrDefault(r, List.of())) {
                        if (!seen[other] && points(other, r) > 0) {
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
        int points = sure(curve, row);
        int margin = points;
        String otherwise = "";
        for (int r : clues.get(curve).keySet()) {
            if (r != row && sure(curve, r) > 0) {
                int swap = curveOf[r] < 0 ? 0 : sure(curveOf[r], r) - sure(curveOf[r], row);
                int less = points - sure(curve, r) + swap;
                if (less < margin) {
                    margin = less;
                    otherwise = other("it could be " + shown(roasts.get(r)), curve, r);
                }
            }
        }
        for (int c : curvesOf.getOrDefault(row, List.of())) {
            if (c != curve && rowOf[c] < 0 && sure(c, row) > 0 && points - sure(c, row) < margin) {
                margin = points - sure(c, row);
                otherwise = "so could be " + Words.quote(curves.get(c).batch().name());
            }
        }
        int other = nameElsewhere(curve, row, found);
        if (other >= 0) {
            margin = 0;
            otherwise = other("its name says " + shown(roasts.get(other)), curve, other);
        }
        int timed = timeElsewhere(curve, row, found);
        if (timed >= 0) {
            margin = 0;
            otherwise = other("its time says " + shown(roasts.get(timed)), curve, timed);
        }
        int nearer = nearer(curve, row, found);
        if (nearer >= 0) {
            margin = 0;
            otherwise = other("nearer in time is " + shown(roasts.get(nearer)), curve, nearer);
        }
        double drops = JoinEvidence.dropsApart(curves.get(curve), roasts.get(row));
        if (drops > JoinEvidence.SAME_LENGTH_SECONDS && nearOnly(found)) {
            margin = 0;
            otherwise = "the drops are " + Math.round(drops) + " s apart";
        }
        if (nearOnly(found)) {
            Optional<String> otherClock = DayClock.against(aheadOfDay(curve), ahead(curve, row));
            if (otherClock.isPresent()) {
                margin = 0;
                otherwise = otherClock.get();
            }
        }
        boolean against = found.stream().anyMatch(Clue::against);
        boolean identified = found.stream().anyMatch(clue -> clue.kind().identifies() && !clue.against());
        Join.Sure sure = against || margin < MARGIN
                ? Join.Sure.DOUBTFUL
                : identified && points >= CERTAIN
                        ? Join.Sure.CERTAIN
                        : points >= LIKELY ? Join.Sure.LIKELY : Join.Sure.DOUBTFUL;
        return new Join(
                curves.get(curve).batch(), roasts.get(row).roast(), sure, found, margin < MARGIN ? otherwise : "");
    }

    /** Returns the row that the recording's name says, where a time says this one; -1 if there is none. */
    private int nameElsewhere(int curve, int row, List<Clue> found) {
        if (found.stream().anyMatch(Joins::names)) {
            return -1;
        }
        for (Map.Entry<Integer, List<Clue>> entry : clues.get(curve).entrySet()) {
            int r = entry.getKey();
            if (r != row && entry.getValue().stream().anyMatch(Joins::names)) {
                return r;
            }
        }
        return -1;
    }

    /** Returns the row that the recording's time says, where a name says this one and no time does; -1 if there is none. */
    private int timeElsewhere(int curve, int row, List<Clue> found) {
        if (found.stream().anyMatch(Joins::times)) {
            return -1;
        }
        for (Map.Entry<Integer, List<Clue>> entry : clues.get(curve).entrySet()) {
            boolean says = entry.getValue().stream().anyMatch(clue -> clue.kind() == Clue.Kind.TIME && !clue.against());
            if (entry.getKey() != row && says) {
                return entry.getKey();
            }
        }
        return -1;
    }

    /** Returns the row that was charged nearer to the recording, where only a time tells; -1 if there is none. */
    private int nearer(int curve, int row, List<Clue> found) {
        if (found.stream().anyMatch(Joins::names) || found.stream().noneMatch(Joins::times)) {
            return -1;
        }
        LocalDateTime at = curves.get(curve).batch().roastedAt().orElseThrow();
        long apart = apart(at, roasts.get(row));
        for (int r : clues.get(curve).keySet()) {
            if (r != row && apart(at, roasts.get(r)) < apart) {
                return r;
            }
        }
        return -1;
    }

    /** Returns by how many seconds each other recording of the day is later than its row, where both have a time and the drops fit. */
    private List<Long> aheadOfDay(int curve) {
        Optional<LocalDate> day = curves.get(curve).day();
        return IntStream.range(0, curves.size())
                .filter(c -> c != curve && rowOf[c] >= 0 && curves.get(c).day().equals(day))
                .filter(c ->
                        clues.get(c).getOrDefault(rowOf[c], List.of()).stream().anyMatch(Joins::times))
                .filter(c -> JoinEvidence.dropsApart(curves.get(c), roasts.get(rowOf[c]))
                        <= JoinEvidence.SAME_LENGTH_SECONDS)
                .mapToObj(c -> ahead(c, rowOf[c]))
                .toList();
    }

    private long ahead(int curve, int row) {
        return Duration.between(
                        roasts.get(row).roastedAt().orElseThrow(),
                        curves.get(curve).batch().roastedAt().orElseThrow())
                .toSeconds();
    }

    private static long apart(LocalDateTime at, JoinRow row) {
        return row.roastedAt()
                .map(other -> Duration.between(at, other).abs().toSeconds())
                .orElse(Long.MAX_VALUE);
    }

    private static boolean nearOnly(List<Clue> found) {
        return found.stream().noneMatch(clue -> clue.kind().identifies() && !clue.against())
                && found.stream().anyMatch(clue -> clue.kind() == Clue.Kind.NEAR_TIME);
    }

    private static boolean times(Clue clue) {
        return !clue.against() && (clue.kind() == Clue.Kind.TIME || clue.kind() == Clue.Kind.NEAR_TIME);
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

    private static String shown(JoinRow row) {
        return row.name().isEmpty() ? row.roast().shown() : "row " + Words.quote(row.name());
    }
}
