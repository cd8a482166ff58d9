package parchment.lesson;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.quantity.TemperatureUnit;

/** Reads what a student put between the quotation marks: a number with or without its unit, a time as 9:35, or a word. */
final class AnswerText {
    private static final Pattern TIME = Pattern.compile("([0-9]{1,3}):([0-5][0-9])(?:[.,][0-9]+)?(?: ?min)?");
    /** Somebody who writes the hours of a roast, which has none, writes 0:09:35 or 0:09:00. */
    private static final Pattern HOURS_TOO = Pattern.compile("0{1,2}:([0-5]?[0-9]):([0-5][0-9])");
    /** A spreadsheet takes 9:35 for hours and minutes, and saves 09:35:00; only where the hours are not 0 can that be meant. */
    private static final Pattern SAVED_TIME = Pattern.compile("([0-9]{1,3}):([0-5][0-9]):00");

    private static final Pattern NUMBER =
            Pattern.compile("([+\\-\u2212]?)[ ]*([0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)[ ]*(?:[^0-9]*)");

    private AnswerText() {}

    /** Tells whether nothing was filled in: empty, or the question mark that stands there at first. */
    static boolean isBlank(String text) {
        return text.replace("?", "").isBlank();
    }

    /** Returns the number, a time as 9:35 in seconds, also as a spreadsheet saves it; empty if there is none. A decimal comma is read as a point. */
    static OptionalDouble number(String text) {
        String stripped = text.strip();
        for (Pattern form : List.of(TIME, HOURS_TOO, SAVED_TIME)) {
            Matcher time = form.matcher(stripped);
            if (time.matches()) {
                return OptionalDouble.of(60.0 * Integer.parseInt(time.group(1)) + Integer.parseInt(time.group(2)));
            }
        }
        Matcher number = NUMBER.matcher(stripped);
        if (!number.matches()) {
            return OptionalDouble.empty();
        }
        double value = Double.parseDouble(number.group(2).replace(',', '.'));
        return OptionalDouble.of(number.group(1).isEmpty() || number.group(1).equals("+") ? value : -value);
    }

    /** Returns the number as a temperature on the reader's scale: one that names the other scale, as in "397 °F", is converted. */
    static OptionalDouble temperature(String text, TemperatureUnit reader) {
        OptionalDouble number = number(text);
        String end = text.strip().toUpperCase(Locale.ROOT);
        if (number.isEmpty() || !(end.endsWith("F") || end.endsWith("C"))) {
            return number;
        }
        TemperatureUnit written = end.endsWith("F") ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
        return written == reader
                ? number
                : OptionalDouble.of(reader.fromCelsius(written.toCelsius(number.getAsDouble())));
    }

    /** Returns the word as it is compared: small letters, single blanks, without quotation marks and a full stop. */
    static String word(String text) {
        return text.strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("[\"'.\u201c\u201d]", "")
                .replaceAll("\\s+", " ");
    }
}
