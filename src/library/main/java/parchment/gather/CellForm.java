package parchment.gather;

import java.util.regex.Pattern;
import parchment.sheet.Numbers;

/** Sorts cells by their looks, before anybody knows what their column means. */
enum CellForm {
    BLANK,
    NUMBER,
    CLOCK,
    DATE,
    DATE_AND_TIME,
    WORDS;

    private static final Pattern CLOCKS = Pattern.compile(
            "(?i)[+-]?\\d{1,3}:\\d{2}(:\\d{2})?([.,]\\d+)?(\\s?[ap]\\.?m\\.?)?(\\s?(uhr|min|h))?|\\d{1,2}h\\d{2}|\\d{1,3}\\s?(min|m|['\\u2019\\u2032])\\s?\\d{1,2}\\s?(s|sec|sek|seg|\"|''|\\u2033|\\u201D)?|\\d{1,2}([:.]\\d{2})?\\s?[ap]\\.?m\\.?");
    private static final Pattern NOTHING = Pattern.compile("[-–—/.?_*]{1,3}|(?i:n/?a|n\\.a\\.|none|nan|null)");
    private static final int LONGEST = 45;

    /** Returns the form of a cell. */
    static CellForm of(String cell) {
        int length = cell.length();
        if (length == 0) {
            return BLANK;
        }
        if (!Double.isNaN(Numbers.parse(cell, Numbers.Decimal.EITHER))) {
            return NUMBER;
        }
        boolean digit = false;
        for (int i = 0; i < length && !digit; i++) {
            digit = cell.charAt(i) >= '0' && cell.charAt(i) <= '9';
        }
        if (!digit) {
            return cell.isBlank() || length < 5 && NOTHING.matcher(cell.strip()).matches() ? BLANK : WORDS;
        }
        String text = cell.strip();
        if (length > LONGEST) {
            return WORDS;
        }
        if (CLOCKS.matcher(text).matches()) {
            return CLOCK;
        }
        if (CellNumber.of(text, Numbers.Decimal.EITHER).isPresent()) {
            return NUMBER;
        }
        return WrittenDay.ofCell(text)
                .map(day -> day.clock().isPresent() ? DATE_AND_TIME : DATE)
                .orElse(WORDS);
    }

    /** Returns whether it is a number, a time or a date: what stands under a heading, and seldom is one. */
    boolean isValue() {
        return this != BLANK && this != WORDS;
    }
}
