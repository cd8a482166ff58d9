package parchment.gather;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.sheet.Words;

/**
 * Finds masses that cannot all be in one unit: bare numbers in two groups, or one that is far from all others.
 *
 * <p>What one roastery roasts lies within a factor of 50 (common practice, no source).
 */
final class MassGroups {
    /** A mass that is more times the median is a slip or in another unit. */
    static final double FARTHEST = 50;

    private static final double OUNCES_TO_A_POUND = 16;
    private static final double POUNDS_TO_A_KILOGRAM = 2.2046;
    private static final double NEAR = 0.015;
    private static final int FEWEST = 2;

    private MassGroups() {}

    /** Returns what two groups the bare numbers of a column fall into, as the rest of a sentence; empty if they are one. */
    static Optional<String> of(ColumnValues column) {
        List<Double> bare = new ArrayList<>();
        for (int i = 0; i < column.cells().size(); i++) {
            if (column.number(i) > 0 && !column.hasUnit(i)) {
                bare.add(column.number(i));
            }
        }
        bare.sort(Comparator.naturalOrder());
        int border = 0;
        for (int i = FEWEST; i <= bare.size() - FEWEST; i++) {
            boolean wider = border == 0 || bare.get(i) / bare.get(i - 1) > bare.get(border) / bare.get(border - 1);
            border = wider ? i : border;
        }
        if (border == 0) {
            return Optional.empty();
        }
        List<Double> light = bare.subList(0, border);
        List<Double> heavy = bare.subList(border, bare.size());
        if (heavy.get(0) / light.get(light.size() - 1) > FARTHEST) {
            return Optional.of(words(light, heavy, "kg and g"));
        }
        if (isSame(light, heavy, OUNCES_TO_A_POUND)) {
            return Optional.of(words(light, heavy, "lb and oz"));
        }
        return isSame(light, heavy, POUNDS_TO_A_KILOGRAM)
                ? Optional.of(words(light, heavy, "kg and lb"))
                : Optional.empty();
    }

    /** Two machines may differ by such a factor; that each mass of the one group is one of the other in another unit is no chance. */
    private static boolean isSame(List<Double> light, List<Double> heavy, double factor) {
        long partners = light.stream()
                .distinct()
                .filter(mass -> heavy.stream().anyMatch(other -> isTimes(other, mass, factor)))
                .count();
        return partners >= FEWEST
                && heavy.stream().allMatch(other -> light.stream().anyMatch(mass -> isTimes(other, mass, factor)));
    }

    private static boolean isTimes(double heavy, double light, double factor) {
        return Math.abs(heavy / light / factor - 1) <= NEAR;
    }

    private static String words(List<Double> light, List<Double> heavy, String units) {
        return "holds numbers in two groups, " + range(light) + " and " + range(heavy) + ": " + units;
    }

    private static String range(List<Double> sorted) {
        String first = ColumnFit.written(sorted.get(0));
        String last = ColumnFit.written(sorted.get(sorted.size() - 1));
        return first.equals(last) ? first : first + " to " + last;
    }

    /** Returns what is said of a mass too far from its column's others to be written; empty if it is near enough. */
    static Optional<String> far(double mass, ColumnValues column, ListColumn meant) {
        double median = column.quantile(0.5);
        boolean split = of(column).isPresent();
        boolean far = mass > FARTHEST * median || split && median > FARTHEST * mass;
        if (!(median > 0) || !far) {
            return Optional.empty();
        }
        double times = Math.max(mass / median, median / mass);
        return Optional.of(String.format(
                Locale.ROOT,
                " under %s is %s the others' median of %s by a factor of %.0f: it is in another unit or a slip, and is not written as %s.",
                Words.quote(meant.heading()),
                mass > median ? "above" : "below",
                ColumnFit.written(median),
                times,
                meant.meaning().words()));
    }
}
