package parchment.gather;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.sheet.Numbers;

/**
 * What a cell says of a score, so that all layouts of sheets read cells alike: the number, its scale where it says it, and the words beside.
 *
 * @param kind what it is
 * @param score the score; NaN where none stands
 * @param top the upper end of the scale where the cell says it, as in 7/10; NaN
 * @param words what stands beside the number
 */
record ScoreCell(Kind kind, double score, double top, String words) {
    /** Says what a cell is. */
    enum Kind {
        /** A score, perhaps with a word. */
        SCORE,
        /** Nothing, or a sign for nothing. */
        MISSING,
        /** Something else. */
        WORDS
    }

    private static final Pattern NOTHING = Pattern.compile(
            "(?iu)|[-–—−.?/x]+|n\\s*/?\\s*[ad]\\.?|n\\.\\s*a\\.?|nan|k\\.?\\s*a\\.?|none|null|missing|fehlt|s/d|n/?c|nd|n\\.d\\.");
    private static final Map<String, Double> PARTS = Map.of("¼", 0.25, "½", 0.5, "¾", 0.75);
    private static final Pattern FRACTION = Pattern.compile("(\\d{1,3})\\s+([13])\\s*/\\s*([24])(?!\\d)(.*)");
    private static final Pattern SIGN = Pattern.compile("(\\d{0,3})\\s*([¼½¾])(.*)");
    private static final Pattern NUMBER = Pattern.compile("([+-]?\\d+(?:[.,]\\d+)?)(?:\\s*/\\s*(\\d+))?(.*)");

    private static final Pattern MARK = Pattern.compile("[*!?†‡#^+]+|\\d?[*]|[(\\[][?!][)\\]]|[-–—.,;]");
    private static final Pattern NOTE =
            Pattern.compile("[(\\[].*[)\\]]|[-–,;:(]?\\s+\\p{L}{3}.*|(pts?|points|punkte|puntos|pontos|punti)\\.?");
    private static final Pattern UNIT = Pattern.compile("[-–]?\\s*(kg|min|sec|°).*");

    /** Reads a cell; a comma is a decimal comma, for a score has no thousands. */
    static ScoreCell of(String cell) {
        String text = cell.replace('\u00A0', ' ').strip();
        if (NOTHING.matcher(text).matches()) {
            return new ScoreCell(Kind.MISSING, Double.NaN, Double.NaN, "");
        }
        Matcher fraction = FRACTION.matcher(text);
        if (fraction.matches()) {
            double value = number(fraction.group(1)) + number(fraction.group(2)) / number(fraction.group(3));
            return beside(value, Double.NaN, fraction.group(4), text);
        }
        Matcher sign = SIGN.matcher(text);
        if (sign.matches()) {
            double whole = sign.group(1).isEmpty() ? 0 : number(sign.group(1));
            return beside(whole + PARTS.getOrDefault(sign.group(2), Double.NaN), Double.NaN, sign.group(3), text);
        }
        Matcher number = NUMBER.matcher(text);
        if (number.matches()) {
            double top = number.group(2) == null ? Double.NaN : number(number.group(2));
            return beside(number(number.group(1)), top, number.group(3), text);
        }
        return new ScoreCell(Kind.WORDS, Double.NaN, Double.NaN, text);
    }

    private static double number(String text) {
        return Numbers.parse(text, Numbers.Decimal.EITHER);
    }

    // "7:30", "7.5.2031", "7-8", "204 °C" and "12 kg" begin with a number too, and are no scores.
    private static ScoreCell beside(double value, double top, String rest, String text) {
        String words = rest.strip();
        boolean says = words.isEmpty()
                || MARK.matcher(words).matches()
                || NOTE.matcher(words).matches() && !UNIT.matcher(words).matches();
        return says
                ? new ScoreCell(Kind.SCORE, value, top, words)
                : new ScoreCell(Kind.WORDS, Double.NaN, Double.NaN, text);
    }

    boolean isScore() {
        return kind == Kind.SCORE;
    }
}
