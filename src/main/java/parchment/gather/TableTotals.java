package parchment.gather;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import parchment.sheet.Numbers;

/** Recognises the rows of a table that are worked out of the others: sums, means, largest and smallest values. */
final class TableTotals {
    private static final Pattern WORD = Pattern.compile(
            "(sub ?|grand |zwischen|gesamt)?(total|totals|totale|totales|totali|totais|totaux|sum|sums|summe|summen|suma|sumas|soma|somas|somme|sommes|somma|gesamt"
                    + "|insgesamt|average|averages|avg|mean|durchschnitt|mittel|mittelwert|schnitt|promedio|media|medie|medias|moyenne|moyennes|moy"
                    + "|median|mediana|mediane)( .*)?");
    private static final Pattern ALONE =
            Pattern.compile("min|max|minimum|maximum|minimo|maximo|massimo|anzahl|count|ø|std|sd|n");
    private static final int FEWEST_ROWS = 3;
    private static final double RELATIVE = 0.0006;

    private TableTotals() {}

    /** Returns whether a row's first words say that it is worked out of the others. */
    static boolean isNamed(List<String> row) {
        Optional<String> first =
                row.stream().filter(cell -> CellForm.of(cell) != CellForm.BLANK).findFirst();
        if (first.isEmpty() || CellForm.of(first.get()).isValue() || first.get().length() > 40) {
            return first.filter(cell -> cell.equals("Ø")).isPresent();
        }
        String plain = TradeWords.plain(first.get());
        return WORD.matcher(plain).matches()
                || ALONE.matcher(plain).matches()
                || first.get().startsWith("Ø")
                || first.get().startsWith("Σ");
    }

    /** Returns whether a row's numbers are the sums or the means of the rows before it. */
    static boolean isWorkedOut(List<List<String>> before, List<String> row, Numbers.Decimal decimal) {
        if (before.size() < FEWEST_ROWS) {
            return false;
        }
        int sums = 0;
        int means = 0;
        int others = 0;
        int filled = 0;
        for (int c = 0; c < row.size(); c++) {
            filled += row.get(c).isEmpty() ? 0 : 1;
            double value = value(row.get(c), decimal);
            if (Double.isNaN(value)) {
                others += CellForm.of(row.get(c)).isValue() ? 1 : 0;
                continue;
            }
            double sum = 0;
            int count = 0;
            double lowest = Double.POSITIVE_INFINITY;
            double highest = Double.NEGATIVE_INFINITY;
            for (List<String> each : before) {
                double one = value(each.get(c), decimal);
                if (!Double.isNaN(one)) {
                    sum += one;
                    count++;
                    lowest = Math.min(lowest, one);
                    highest = Math.max(highest, one);
                }
            }
            if (count < FEWEST_ROWS || lowest == highest && near(value, lowest, row.get(c))) {
                continue;
            }
            sums += near(value, sum, row.get(c)) ? 1 : 0;
            means += near(value, sum / count, row.get(c)) ? 1 : 0;
            others += near(value, sum, row.get(c)) || near(value, sum / count, row.get(c)) ? 0 : 1;
        }
        boolean named = !row.get(0).isEmpty() && CellForm.of(row.get(0)).isValue();
        // One number may hit a mean by chance; two cannot easily, and a sum of many hardly ever.
        return others == 0 && !named && (sums + means >= 2 || sums >= 1 && filled <= 2 || means == 1 && filled == 1);
    }

    private static boolean near(double value, double expected, String written) {
        int sign = Math.max(written.lastIndexOf('.'), written.lastIndexOf(','));
        int decimals = sign < 0 ? 0 : written.length() - sign - 1;
        double step = CellForm.of(written) == CellForm.CLOCK ? 0.6 : 0.51 * Math.pow(10, -decimals);
        return Math.abs(value - expected) <= Math.max(step, RELATIVE * Math.abs(expected));
    }

    private static double value(String cell, Numbers.Decimal decimal) {
        CellForm form = CellForm.of(cell);
        return form == CellForm.NUMBER
                ? CellNumber.of(cell, decimal).map(CellNumber::value).orElse(Double.NaN)
                : form == CellForm.CLOCK
                        ? ColumnTimes.seconds(cell, ColumnTimes.MINUTES_AND_SECONDS, decimal)
                        : Double.NaN;
    }
}
