package parchment.logbook;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Holds one heading of a table: what the column is, and its unit from the brackets.
 *
 * @param written the heading as it stands, blanks collapsed
 * @param name the part before the brackets, in lower case
 * @param unit the part in the brackets, as it stands; empty if there is none
 * @param brackets which brackets the unit stood in
 */
record Header(String written, String name, String unit, Brackets brackets) {
    private static final Pattern SQUARE = Pattern.compile("(.*)\\[([^\\[\\]]*)]");
    private static final Pattern ROUND = Pattern.compile("(.*)\\(([^()]*)\\)");

    enum Brackets {
        SQUARE,
        ROUND,
        NONE
    }

    static Header parse(String heading) {
        String written = heading.replace("\uFEFF", "")
                .replaceAll("[\\s\\u00A0\\u2007\\u202F]+", " ")
                .strip();
        Matcher square = SQUARE.matcher(written);
        if (square.matches()) {
            return new Header(written, name(square.group(1)), square.group(2).strip(), Brackets.SQUARE);
        }
        Matcher round = ROUND.matcher(written);
        if (round.matches()) {
            return new Header(written, name(round.group(1)), round.group(2).strip(), Brackets.ROUND);
        }
        return new Header(written, name(written), "", Brackets.NONE);
    }

    static String name(String written) {
        return written.strip().toLowerCase(Locale.ROOT);
    }

    /** Returns the unit in lower case without blanks and without what stands for the sign of a degree. */
    String plainUnit() {
        // U+FFFD is what is left of the sign where a spreadsheet saved it in an old encoding.
        return unit.toLowerCase(Locale.ROOT).replaceAll("[\\s°º˚\uFFFD]", "");
    }
}
