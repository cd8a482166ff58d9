package parchment.gather;

import java.util.List;
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
    /** Words for a sum or a mean that are names of people, farms or roasts too. */
    private static final Pattern ALSO_NAMES =
            Pattern.compile("media|medias|medie|mediana|soma|somas|mittel|schnitt|mean|moy");

    private static final String MEAN_SIGN = "Ø";
    private static final int LONGEST_WORD = 40;
    private static final int FEWEST_ROWS = 3;
    private static final double RELATIVE = 0.0006;

    private TableTotals() {}

    /** Names what a row can be of the others, as its first words say it. */
    enum Statistic {
        SUM_OR_MEAN,
        LEAST,
        MOST,
        COUNT,
        SPREAD
    }

    /** Returns whether a row's first words say that it is worked out of the others; a name may sound so. */
    static boolean isNamed(List<String> row) {
        String first = word(row);
        if (first.isEmpty() || CellForm.of(first).isValue() || first.length() > LONGEST_WORD) {
            return first.equals(MEAN_SIGN);
        }
        String plain = TradeWords.plain(first);
        return WORD.matcher(plain).matches()
                || ALONE.matcher(plain).matches()
                || first.startsWith(MEAN_SIGN)
                || first.startsWith("Σ");
    }

    /** Returns whether the words are no name of anything: "Total" and "Average", but not "Max" or "Media Luna". */
    static boolean isSure(List<String> row) {
        String first = word(row);
        String plain = TradeWords.plain(first);
        return first.startsWith(MEAN_SIGN)
                || first.startsWith("Σ")
                || WORD.matcher(plain).matches()
                        && plain.indexOf(' ') < 0
                        && !ALSO_NAMES.matcher(plain).matches();
    }

    static Statistic statistic(List<String> row) {
        String plain = TradeWords.plain(word(row));
        return plain.startsWith("min")
                ? Statistic.LEAST
                : plain.startsWith("max") || plain.startsWith("mass")
                        ? Statistic.MOST
                        : plain.matches("n|count|anzahl")
                                ? Statistic.COUNT
                                : plain.matches("std|sd") ? Statistic.SPREAD : Statistic.SUM_OR_MEAN;
    }

    /** Returns the first cell of a row that is not blank. */
    static String word(List<String> row) {
        return row.stream()
                .filter(cell -> CellForm.of(cell) != CellForm.BLANK)
                .findFirst()
                .orElse("");
    }

    /** Returns whether a row's numbers are the sums or the means of the rows before it. */
    static boolean isWorkedOut(List<List<String>> before, List<String> row, Numbers.Decimal decimal) {
        // A row with a number or a day of its own is none, and neither is one that is called like an attribute: it
        // holds scores,
        // however near they are to the others.
        boolean named = !row.get(0).isEmpty() && CellForm.of(row.get(0)).isValue();
        if (before.size() < FEWEST_ROWS || named || row.stream().anyMatch(ScoreWords::isAttribute)) {
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
        // One number may hit a mean by chance; two cannot easily, and a sum of many hardly ever.
        return others == 0 && (sums + means >= 2 || sums >= 1 && filled <= 2 || means == 1 && filled == 1);
    }

    static boolean near(double value, double expected, String written) {
        int sign = Math.max(written.lastIndexOf('.'), written.lastIndexOf(','));
        int decimals = sign < 0 ? 0 : written.length() - sign - 1;
        double step = CellForm.of(written) == CellForm.CLOCK ? 0.6 : 0.51 * Math.pow(10, -decimals);
        return Math.abs(value - expected) <= Math.max(step, RELATIVE * Math.abs(expected));
    }

    static double value(String cell, Numbers.Decimal decimal) {
        CellForm form = CellForm.of(cell);
        return form == CellForm.NUMBER
                ? CellNumber.of(cell, decimal).map(CellNumber::value).orElse(Double.NaN)
                : form == CellForm.CLOCK
                        ? ColumnTimes.seconds(cell, ColumnTimes.MINUTES_AND_SECONDS, decimal)
                        : Double.NaN;
    }
}
