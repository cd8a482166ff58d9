package parchment.gather;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Joins recordings to rows where no question of dates stands in the way: a name and a list that write 3/5/2031 are of one day, be it in
 * March or in May. Where nobody has said which it is, such a pair is one batch without a day, and not two batches that never were.
 *
 * @param rows where the row stands, by where the recording does
 */
record AgreedJoins(Map<String, String> rows) {
    static final AgreedJoins NONE = new AgreedJoins(Map.of());

    /** What stands for such a join: that the two agree does not depend on the answer. */
    static final Clue CLUE = new Clue(
            Clue.Kind.TIME,
            JoinEvidence.WITHIN_MINUTES + JoinEvidence.SAME_DAY,
            "they go together whichever way the dates are read");

    AgreedJoins {
        rows = Map.copyOf(rows);
    }

    /**
     * Returns the joins that two gatherings have alike, each sure of it.
     *
     * @param one the gathering with the dates read one way
     * @param other the gathering with the dates read the other way
     * @param without the gathering without the dates: what it joins needs no more
     */
    static AgreedJoins of(Gathering one, Gathering other, Gathering without) {
        Map<String, String> agreed = new HashMap<>(sure(one));
        agreed.entrySet().retainAll(sure(other).entrySet());
        Set<String> known = new HashSet<>(sure(without).keySet());
        agreed.keySet().removeAll(known);
        return new AgreedJoins(agreed);
    }

    private static Map<String, String> sure(Gathering gathering) {
        Map<String, String> sure = new HashMap<>();
        gathering.joins().stream()
                .filter(join -> join.sure() != Join.Sure.DOUBTFUL)
                .forEach(join -> sure.put(join.curve().origin(), place(join.roast())));
        return sure;
    }

    private static String place(ListedRoast roast) {
        ListedBatch first = roast.rows().get(0);
        return TablePlace.of(first.table()) + " line " + first.line();
    }

    /** Returns the join of a recording with one of the rows. */
    Optional<Join> of(GatheredBatch curve, List<ListedRoast> among) {
        String place = rows.get(curve.origin());
        return place == null
                ? Optional.empty()
                : among.stream()
                        .filter(roast -> place(roast).equals(place))
                        .findFirst()
                        .map(roast -> new Join(curve, roast, Join.Sure.LIKELY, List.of(CLUE), ""));
    }
}
