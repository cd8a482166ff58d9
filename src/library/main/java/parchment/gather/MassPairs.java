package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.quantity.MassUnit;
import parchment.sheet.Header;

/**
 * Finds green and roasted masses by what they do: the roasted coffee of a row is 8 to 25 % lighter than the green (common practice, no source).
 */
final class MassPairs {
    private static final double LIGHTEST = 0.715;
    private static final double HEAVIEST = 0.945;
    private static final double ROWS_AGREE = 0.9;
    private static final int FEWEST_ROWS = 3;
    private static final double COLDER_THAN_ANY_ROAST = 70;
    /** Columns of a list that are compared with one another; a list has a few, and a matrix of a thousand is none. */
    private static final int MOST_COMPARED = 60;

    private static final double LOSS_STEP = 0.6;

    private MassPairs() {}

    /** Returns what the pairs of a table's columns say. */
    static List<ColumnClaim> of(List<ColumnValues> columns, ListScale scale) {
        List<ColumnClaim> claims = new ArrayList<>();
        List<ColumnValues> masses = columns.stream()
                .filter(MassPairs::canBeMass)
                .limit(MOST_COMPARED)
                .toList();
        for (ColumnValues green : masses) {
            for (ColumnValues roasted : masses) {
                if (green != roasted) {
                    pair(green, roasted, columns, scale, claims);
                }
            }
        }
        return claims;
    }

    private static boolean canBeMass(ColumnValues column) {
        boolean unit = column.unit().isEmpty() || column.unit().matches("kg|g|lb|oz");
        // A batch or a temperature is written in no unit of mass: "Roast oz" is what was weighed after the roast.
        boolean other = column.unit().isEmpty()
                && !column.named().whole().isEmpty()
                && column.named().whole().stream()
                        .noneMatch(m -> m.kind() == ListMeaning.Kind.MASS || m == ListMeaning.LOT);
        return column.mostly(CellForm.NUMBER) && unit && !other && column.quantile(0) > 0;
    }

    private static int massName(ColumnValues column) {
        return Math.max(
                column.named().strength(ListMeaning.GREEN_MASS), column.named().strength(ListMeaning.ROASTED_MASS));
    }

    private static void pair(
            ColumnValues green,
            ColumnValues roasted,
            List<ColumnValues> columns,
            ListScale scale,
            List<ColumnClaim> claims) {
        double factor = factor(green.unit(), roasted.unit());
        double[] ratios = new double[green.cells().size()];
        int both = 0;
        int inside = 0;
        for (int i = 0; i < ratios.length; i++) {
            ratios[i] = factor * roasted.number(i) / green.number(i);
            both += Double.isNaN(ratios[i]) ? 0 : 1;
            inside += ratios[i] >= LIGHTEST && ratios[i] <= HEAVIEST ? 1 : 0;
        }
        if (both < FEWEST_ROWS || inside < ROWS_AGREE * both) {
            return;
        }
        double spread = ColumnValues.quantile(ratios, 0.9) - ColumnValues.quantile(ratios, 0.1);
        Optional<ColumnValues> loss = loss(ratios, columns);
        boolean units = !green.unit().isEmpty() || !roasted.unit().isEmpty();
        boolean named = massName(green) > 0 || massName(roasted) > 0;
        // Two columns of temperatures can stand in such a ratio too: without a loss, a unit or a name nothing is
        // claimed.
        boolean cold = green.quantile(0.95) < COLDER_THAN_ANY_ROAST;
        if (loss.isEmpty() && !units && !named && !cold || spread > 0.12 && !named) {
            return;
        }
        boolean agree = green.named().strength(ListMeaning.GREEN_MASS) > 0
                && roasted.named().strength(ListMeaning.ROASTED_MASS) > 0;
        double score = loss.isPresent() ? 0.995 : agree ? 0.99 : units && named ? 0.93 : units || named ? 0.85 : 0.58;
        double median = 100 * (1 - ColumnValues.quantile(ratios, 0.5));
        String percent = String.format(Locale.ROOT, "%.0f %%", median);
        String why = loss.map(column -> ", which is what " + quoted(column) + " says")
                .orElse("");
        ColumnFit greenFit = ColumnFit.of(green, ListMeaning.GREEN_MASS, scale);
        ColumnFit roastedFit = ColumnFit.of(roasted, ListMeaning.ROASTED_MASS, scale);
        String unit = unit(green, roasted, greenFit);
        String other = roasted.unit().isEmpty() ? unit : roasted.unit();
        claims.add(new ColumnClaim(
                green.place(),
                ListMeaning.GREEN_MASS,
                unit,
                score,
                units ? ColumnClaim.UnitDoubt.KNOWN : greenFit.doubt(),
                "less " + percent + " is " + quoted(roasted) + ", row by row" + why + "; it " + greenFit.reason()));
        claims.add(new ColumnClaim(
                roasted.place(),
                ListMeaning.ROASTED_MASS,
                other,
                score,
                // Its unit is the green mass's: asked once.
                ColumnClaim.UnitDoubt.KNOWN,
                "is " + percent + " lighter than " + quoted(green) + " row by row" + why + "; it "
                        + roastedFit.reason()));
        loss.ifPresent(column -> claims.add(ColumnClaim.of(
                column,
                ListMeaning.MASS_LOSS,
                "%",
                0.99,
                "is what " + quoted(roasted) + " lost against " + quoted(green))));
    }

    private static String quoted(ColumnValues column) {
        return parchment.sheet.Words.quote(column.heading());
    }

    private static String unit(ColumnValues column, ColumnValues other, ColumnFit fit) {
        return !column.unit().isEmpty() ? column.unit() : !other.unit().isEmpty() ? other.unit() : fit.unit();
    }

    private static double factor(String green, String roasted) {
        Optional<MassUnit> from = Header.massUnit(roasted);
        Optional<MassUnit> to = Header.massUnit(green);
        return from.isEmpty() || to.isEmpty()
                ? 1
                : to.get().fromKilograms(from.get().toKilograms(1));
    }

    private static Optional<ColumnValues> loss(double[] ratios, List<ColumnValues> columns) {
        for (ColumnValues column : columns) {
            int rows = 0;
            int same = 0;
            for (int i = 0; i < ratios.length; i++) {
                double written = Math.abs(column.number(i));
                double percent = written < 1 ? 100 * written : written;
                rows += Double.isNaN(ratios[i] + written) ? 0 : 1;
                same += Math.abs(percent - 100 * (1 - ratios[i])) <= LOSS_STEP ? 1 : 0;
            }
            if (rows >= FEWEST_ROWS && same >= ROWS_AGREE * rows) {
                return Optional.of(column);
            }
        }
        return Optional.empty();
    }
}
