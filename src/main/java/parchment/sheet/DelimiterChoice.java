package parchment.sheet;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Finds out which sign stands between the columns of a text: the one that cuts most rows into equally many cells. Many rows decide, not the first,
 * which may be a title.
 */
final class DelimiterChoice {
    /** Commas come last: where another sign does as well, they are decimals or part of words. */
    private static final char[] SIGNS = {'\t', ';', '|', ','};

    private static final int ROWS_LOOKED_AT = 300;

    /** Letters looked at; more than 300 rows of a logger. */
    private static final int LETTERS_LOOKED_AT = 1 << 18;

    private DelimiterChoice() {}

    /** Returns the sign; a comma where no sign cuts two rows alike. */
    static char of(String text) {
        String start = text.substring(0, Math.min(text.length(), LETTERS_LOOKED_AT));
        char best = ',';
        int most = 1;
        for (char sign : SIGNS) {
            int alike = alike(start, sign);
            // A comma has to cut clearly more rows: a decimal comma stands in rows of numbers, and may stand in a title
            // or two.
            if (alike > (sign == ',' && best != ',' ? most + most / 10 : most)) {
                most = alike;
                best = sign;
            }
        }
        return best;
    }

    /** Returns how many rows have the width that most of those with several cells have. */
    private static int alike(String text, char sign) {
        DelimitedRows rows = new DelimitedRows(text, sign, new Told(), ROWS_LOOKED_AT);
        rows.read(0, 1);
        Map<Integer, Integer> counts = new HashMap<>();
        for (List<String> row : rows.rows()) {
            if (row.size() > 1) {
                counts.merge(row.size(), 1, Integer::sum);
            }
        }
        OptionalInt most = counts.values().stream().mapToInt(Integer::intValue).max();
        return most.orElse(0);
    }
}
