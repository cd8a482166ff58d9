package parchment.gather;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import parchment.sheet.Words;

/** Tells times since the charge apart by the order in which they happen, and the development time by what it is the difference of. */
final class TimeOrder {
    private static final double SAME_SECONDS = 2.5;
    private static final double ROWS_AGREE = 0.85;
    private static final int FEWEST_ROWS = 3;

    /** Columns of times of a list that are compared three by three. */
    private static final int MOST_COMPARED = 30;

    private TimeOrder() {}

    /** Holds a column of times with its seconds row by row. */
    private record Times(ColumnValues column, String form, double[] seconds) {
        String name() {
            return Words.quote(column.heading());
        }
    }

    /** Returns what the differences between a table's times say. */
    static List<ColumnClaim> of(List<ColumnValues> columns) {
        List<Times> times = new ArrayList<>();
        for (ColumnValues column : columns) {
            ColumnFit form = ColumnTimeFit.form(column);
            if (times.size() < MOST_COMPARED && form.score() > 0 && mayBeTime(column)) {
                times.add(new Times(column, form.unit(), column.seconds(form.unit())));
            }
        }
        times.sort(Comparator.comparingDouble(each -> -ColumnValues.quantile(each.seconds(), 0.5)));
        List<ColumnClaim> claims = new ArrayList<>();
        for (int i = 0; i < times.size(); i++) {
            for (int j = i + 1; j < times.size(); j++) {
                difference(times.get(i), times.get(j), times).ifPresent(claims::addAll);
            }
        }
        ratio(columns, times).ifPresent(claims::add);
        return claims;
    }

    private static boolean mayBeTime(ColumnValues column) {
        boolean other = column.mostly(CellForm.NUMBER)
                && !column.named().whole().isEmpty()
                && column.named().whole().stream().noneMatch(m -> m.kind() == ListMeaning.Kind.SINCE_CHARGE);
        boolean counted = column.mostly(CellForm.NUMBER)
                && column.named().part().stream().allMatch(m -> m.kind() != ListMeaning.Kind.SINCE_CHARGE)
                && column.named().whole().isEmpty();
        return !other && !counted;
    }

    /** Finds the one column that is the first less the second: drop less first crack. */
    private static Optional<List<ColumnClaim>> difference(Times drop, Times crack, List<Times> times) {
        double crackMedian = ColumnValues.quantile(crack.seconds(), 0.5);
        for (Times difference : times) {
            if (difference == drop
                    || difference == crack
                    || ColumnValues.quantile(difference.seconds(), 0.5) >= crackMedian) {
                continue;
            }
            int rows = 0;
            int same = 0;
            for (int i = 0; i < drop.seconds().length; i++) {
                double off = drop.seconds()[i] - crack.seconds()[i] - difference.seconds()[i];
                rows += Double.isNaN(off) ? 0 : 1;
                same += Math.abs(off) <= SAME_SECONDS ? 1 : 0;
            }
            if (rows >= FEWEST_ROWS && same >= ROWS_AGREE * rows) {
                String sum = "is " + drop.name() + " less " + crack.name() + " row by row";
                return Optional.of(List.of(
                        ColumnClaim.of(difference.column(), ListMeaning.DEVELOPMENT_TIME, difference.form(), 0.96, sum),
                        ColumnClaim.of(
                                crack.column(),
                                ListMeaning.FIRST_CRACK_START,
                                crack.form(),
                                0.93,
                                "is where the development time " + difference.name() + " begins"),
                        ColumnClaim.of(
                                drop.column(),
                                ListMeaning.DROP,
                                drop.form(),
                                0.94,
                                "is where the development time " + difference.name() + " ends")));
            }
        }
        return Optional.empty();
    }

    /** Finds a column that is the development time's share of the drop time. */
    private static Optional<ColumnClaim> ratio(List<ColumnValues> columns, List<Times> times) {
        for (ColumnValues column : columns) {
            for (Times drop : times) {
                for (Times crack : times) {
                    if (drop != crack && column.mostly(CellForm.NUMBER) && isRatio(column, drop, crack)) {
                        return Optional.of(ColumnClaim.of(
                                column,
                                ListMeaning.DEVELOPMENT_RATIO,
                                "%",
                                0.95,
                                "is the share of " + drop.name() + " that is left after " + crack.name()));
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static boolean isRatio(ColumnValues column, Times drop, Times crack) {
        int rows = 0;
        int same = 0;
        for (int i = 0; i < drop.seconds().length; i++) {
            double written = column.number(i) < 1 ? 100 * column.number(i) : column.number(i);
            double share = 100 * (1 - crack.seconds()[i] / drop.seconds()[i]);
            rows += Double.isNaN(written - share) ? 0 : 1;
            same += share > 2 && share < 50 && Math.abs(written - share) <= 0.6 ? 1 : 0;
        }
        return rows >= FEWEST_ROWS && same >= ROWS_AGREE * rows;
    }
}
