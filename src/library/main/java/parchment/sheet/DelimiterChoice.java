package parchment.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Finds out which sign stands between the columns of a text: the one that cuts most rows into equally many cells. Many rows decide, not the first,
 * which may be a title. Where a remark in each row has another sign in it, the one that leaves whole numbers, dates and times between its marks is right.
 */
final class DelimiterChoice {
    /** Commas come last: where another sign does as well, they are decimals or part of words. */
    private static final char[] SIGNS = {'\t', ';', '|', ','};

    private static final int ROWS_LOOKED_AT = 300;

    /** Letters looked at; more than 300 rows of a logger. */
    private static final int LETTERS_LOOKED_AT = 1 << 18;

    /** A sign that cuts half as many rows alike as another may be the right one; what is between the signs decides then. */
    private static final double COMPARABLE = 0.5;

    private static final double CLEARLY = 0.25;
    private static final Pattern VALUE = Pattern.compile("[+-]?[\\d.:/ T-]+(,\\d+)?\\s?[\\p{L}%°]{0,4}");
    private static final Pattern DIGIT = Pattern.compile("\\d");

    /**
     * Holds how a sign cuts a text.
     *
     * @param alike how many rows have the width that most of those with several cells have
     * @param whole the share of these rows' cells with digits that are a number, a date or a time and nothing else
     */
    private record Cut(char sign, int alike, double whole) {
        boolean isComma() {
            return sign == ',';
        }
    }

    private DelimiterChoice() {}

    /** Returns the sign; a comma where no sign cuts two rows alike. */
    static char of(String text) {
        String start = text.substring(0, Math.min(text.length(), LETTERS_LOOKED_AT));
        Cut best = new Cut(',', 1, 0);
        for (char sign : SIGNS) {
            Cut cut = cut(start, sign);
            boolean comparable = cut.alike() > 1
                    && cut.alike() >= COMPARABLE * best.alike()
                    && best.alike() >= COMPARABLE * cut.alike();
            double cleaner = cut.whole() - best.whole();
            boolean better =
                    comparable && best.alike() > 1 && Math.abs(cleaner) > CLEARLY ? cleaner > 0 : isMore(cut, best);
            best = better ? cut : best;
        }
        return best.sign();
    }

    /** A comma has to cut clearly more rows: a decimal comma stands in rows of numbers, and may stand in a title or two. */
    private static boolean isMore(Cut cut, Cut best) {
        boolean other = cut.isComma() && !best.isComma();
        return cut.alike() > (other ? best.alike() + best.alike() / 10 : best.alike());
    }

    private static Cut cut(String text, char sign) {
        DelimitedRows rows = new DelimitedRows(text, sign, new Told(), ROWS_LOOKED_AT);
        rows.read(0, 1);
        Map<Integer, List<List<String>>> byWidth = new HashMap<>();
        for (List<String> row : rows.rows()) {
            if (row.size() > 1) {
                byWidth.computeIfAbsent(row.size(), width -> new ArrayList<>()).add(row);
            }
        }
        List<List<String>> most = List.of();
        for (List<List<String>> alike : byWidth.values()) {
            most = alike.size() > most.size() ? alike : most;
        }
        int digits = 0;
        int values = 0;
        for (List<String> row : most) {
            for (String cell : row) {
                digits += DIGIT.matcher(cell).find() ? 1 : 0;
                values += DIGIT.matcher(cell).find()
                                && VALUE.matcher(cell.strip()).matches()
                        ? 1
                        : 0;
            }
        }
        return new Cut(sign, most.size(), digits == 0 ? 1 : values / (double) digits);
    }
}
