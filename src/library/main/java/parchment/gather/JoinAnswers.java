package parchment.gather;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import parchment.sheet.Words;

/**
 * Puts recordings and rows together as they were answered, and as far as nobody has answered, as the evidence says.
 *
 * @param all every join, doubtful ones first
 * @param joined those put together
 * @param apart those not put together
 */
record JoinAnswers(List<Join> all, List<Join> joined, List<Join> apart) {
    static final String APART = "apart";

    /**
     * Puts them together.
     *
     * @param earlier the names of an earlier gathering, by where a recording stands: what was joined then stays so
     * @param agreed the joins that hold whichever way dates are read, where nobody has said which
     */
    static JoinAnswers of(
            List<GatheredBatch> curves,
            List<ListedRoast> roasts,
            Map<String, String> earlier,
            AgreedJoins agreed,
            GatherQuestions questions) {
        JoinKeys keys = JoinKeys.of(curves, earlier, questions);
        Map<String, ListedRoast> byName = new HashMap<>();
        roasts.forEach(roast -> byName.putIfAbsent(roast.shown(), roast));
        List<Join> told = new ArrayList<>();
        List<Join> doubted = new ArrayList<>();
        List<GatheredBatch> free = new ArrayList<>();
        List<ListedRoast> left = new ArrayList<>(roasts);
        Map<GatheredBatch, Join> evident = new IdentityHashMap<>();
        for (GatheredBatch curve : curves) {
            String key = keys.of(curve);
            if (!questions.has(key)) {
                free.add(curve);
                continue;
            }
            String answer = questions.tell(
                    key,
                    "The recording " + Words.quote(curve.name()) + " is put together with",
                    APART,
                    text -> !text.isBlank(),
                    APART + ", or the name of a row that no other recording has");
            String row = row(answer, byName.keySet());
            if (!isApart(answer) && row.isEmpty()) {
                questions.leaveOut(
                        "No row of a list is called " + Words.quote(answer) + ", or another recording has it: "
                                + Words.quote(curve.name()) + " stays without a row (" + key + ")."
                                + Words.didYouMean(answer, byName.keySet()));
            }
            Optional.ofNullable(isApart(answer) ? null : byName.remove(row)).ifPresent(roast -> {
                left.removeIf(other -> other == roast);
                told.add(new Join(
                        curve,
                        roast,
                        Join.Sure.CERTAIN,
                        List.of(new Clue(Clue.Kind.NAME, JoinEvidence.SAME_WRITING, "you said so")),
                        ""));
            });
        }
        // What was joined before is weighed among all that nobody has answered, as it was then: so the same files say
        // the same again.
        Joins.of(free, left).forEach(join -> evident.put(join.curve(), join));
        List<GatheredBatch> known = free.stream()
                .filter(curve -> earlier.containsKey(curve.origin()))
                .toList();
        Map<GatheredBatch, Join> doubtedBefore = new IdentityHashMap<>();
        (known.isEmpty() || known.size() == free.size() ? List.copyOf(evident.values()) : Joins.of(known, left))
                .stream()
                        .filter(join -> join.sure() == Join.Sure.DOUBTFUL)
                        .forEach(join -> doubtedBefore.put(join.curve(), join));
        for (GatheredBatch curve : List.copyOf(free)) {
            ListedRoast row = byName.get(earlier.getOrDefault(curve.origin(), ""));
            Optional<Join> before = before(curve, row, evident.get(curve));
            before.or(() -> agreed.of(curve, left)).ifPresent(join -> {
                byName.remove(join.roast().shown());
                left.removeIf(other -> other == join.roast());
                free.removeIf(other -> other == join.curve());
                // What was in doubt and nobody has answered stays open; what only a new recording makes doubtful stays
                // as it was.
                boolean stillOpen = before.isPresent()
                        && isSame(join, evident.get(curve))
                        && isSame(join, doubtedBefore.get(curve));
                (stillOpen ? doubted : told).add(join);
            });
        }
        told.replaceAll(join -> join.under(keys.of(join.curve())));
        doubted.addAll(rest(free, left, evident));
        List<Join> found = doubted.stream()
                .map(join -> join.under(keys.of(join.curve())))
                .sorted(Comparator.comparing(Join::sure).thenComparing(join -> curves.indexOf(join.curve())))
                .toList();
        List<Join> all = new ArrayList<>(found);
        all.addAll(told);
        all.sort(Comparator.comparing(Join::sure));
        List<Join> joined = new ArrayList<>(told);
        List<Join> apart = new ArrayList<>();
        List<Join> doubtful =
                found.stream().filter(join -> join.sure() == Join.Sure.DOUBTFUL).toList();
        Set<Join> put = Collections.newSetFromMap(new IdentityHashMap<>());
        put.addAll(DoubtfulJoins.putTogether(doubtful, questions));
        for (Join join : found) {
            (join.sure() != Join.Sure.DOUBTFUL || put.contains(join) ? joined : apart).add(join);
        }
        return new JoinAnswers(all, joined, apart);
    }

    /**
     * Returns the joins of what was not joined before: as they are among all, and anew only for those whose row is another's.
     *
     * @param evident the joins among all, by recording
     */
    private static List<Join> rest(List<GatheredBatch> free, List<ListedRoast> left, Map<GatheredBatch, Join> evident) {
        Set<ListedRoast> rows = Collections.newSetFromMap(new IdentityHashMap<>());
        rows.addAll(left);
        List<Join> same = new ArrayList<>();
        List<GatheredBatch> others = new ArrayList<>();
        boolean taken = false;
        for (GatheredBatch curve : free) {
            Join join = evident.get(curve);
            if (join != null && rows.remove(join.roast())) {
                same.add(join);
            } else {
                others.add(curve);
                taken |= join != null;
            }
        }
        if (taken) {
            same.addAll(Joins.of(others, left.stream().filter(rows::contains).toList()));
        }
        return same;
    }

    /** Returns the join of an earlier gathering, if nothing speaks against it now; it is as sure as the evidence makes it. */
    private static Optional<Join> before(GatheredBatch curve, @Nullable ListedRoast roast, @Nullable Join evident) {
        if (roast == null) {
            return Optional.empty();
        }
        Optional<Join> same = Optional.ofNullable(evident).filter(join -> join.roast() == roast);
        List<Clue> clues = new ArrayList<>(same.map(Join::clues)
                .orElseGet(() -> JoinEvidence.of(JoinEvidence.Curve.of(curve), JoinRow.of(roast))));
        // Nothing need connect the two now: a recording may have got another file name since.
        if (clues.stream().anyMatch(Clue::against)) {
            return Optional.empty();
        }
        clues.add(new Clue(Clue.Kind.BEFORE, 0, "as before"));
        Join.Sure sure = same.map(Join::sure).orElse(Join.Sure.DOUBTFUL);
        return Optional.of(
                new Join(curve, roast, sure, clues, same.map(Join::otherwise).orElse("")));
    }

    private static boolean isSame(Join join, @Nullable Join other) {
        return other != null && other.roast() == join.roast();
    }

    private static boolean isApart(String answer) {
        return answer.strip().equalsIgnoreCase(APART);
    }

    /** Returns the row that an answer names, in other capitals or with other blanks too if only one is such; "" if there is none. */
    private static String row(String answer, Set<String> rows) {
        if (rows.contains(answer)) {
            return answer;
        }
        List<String> alike = rows.stream()
                .filter(row -> row.strip().equalsIgnoreCase(answer.strip()))
                .toList();
        return alike.size() == 1 ? alike.get(0) : "";
    }
}
