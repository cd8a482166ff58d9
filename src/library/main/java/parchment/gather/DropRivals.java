package parchment.gather;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Takes claims back that another column or the clock rules out: what rises through each day is no time since the charge, and a column that is called
 * the drop keeps it against one that is only called a time.
 */
final class DropRivals {
    private static final double LIKELY = 0.6;

    private DropRivals() {}

    /**
     * Returns the claims that are left.
     *
     * @param claims all claims
     * @param values the columns
     * @param clocks the columns whose times rise through each day
     */
    static List<ColumnClaim> without(List<ColumnClaim> claims, List<ColumnValues> values, Set<Integer> clocks) {
        Set<Integer> called = claims.stream()
                .filter(claim -> claim.meaning() == ListMeaning.DROP && claim.score() >= LIKELY)
                .map(ColumnClaim::place)
                .filter(place -> isCalledDrop(values.get(place)) && !clocks.contains(place))
                .collect(Collectors.toCollection(HashSet::new));
        return claims.stream()
                .filter(claim ->
                        claim.meaning().kind() != ListMeaning.Kind.SINCE_CHARGE || !clocks.contains(claim.place()))
                .filter(claim -> claim.meaning() != ListMeaning.DROP
                        || called.isEmpty()
                        || !isOnlyATime(values.get(claim.place())))
                .toList();
    }

    private static boolean isCalledDrop(ColumnValues column) {
        Set<ListMeaning> names = column.named().whole();
        return names.contains(ListMeaning.DROP)
                && !names.contains(ListMeaning.TIME_OF_DAY)
                && (names.size() == 1 || column.mostly(CellForm.CLOCK));
    }

    private static boolean isOnlyATime(ColumnValues column) {
        return !column.named().isKnown() || column.named().whole().contains(ListMeaning.TIME_OF_DAY);
    }
}
