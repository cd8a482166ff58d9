package parchment.trial.sealed;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Holds what chance drew for one place of a trial, as it is sealed.
 *
 * <p>Its text is {@code parchment-draw-1|trial|day|lot|set|place|batch|target|salt}. Day, lot and batch are blank where they were not known
 * when it was drawn; the trial's record binds them before the line is opened (docs/decisions/0026).
 *
 * @param trial the trial's name
 * @param day the roast day as an ISO 8601 date, or blank
 * @param lot the lot, or blank
 * @param set the number of the set, from 1
 * @param place the place in the set, from 1
 * @param batch the batch's name, or blank
 * @param target the target with one decimal, temperatures in degrees Celsius
 * @param salt 128 bits of chance as 32 digits, without which a seal of few targets could be guessed
 */
public record DrawnLine(
        String trial, String day, String lot, int set, int place, String batch, String target, String salt) {
    static final String HEADER = "parchment-draw-1";

    /** Nine parts; what a roaster names can hold no bar and no end of line. */
    private static final Pattern FORM = Pattern.compile(Pattern.quote(HEADER)
            + "\\|([^|\\n\\r]+)\\|([^|\\n\\r]*)\\|([^|\\n\\r]*)\\|([1-9]\\d{0,4})\\|([1-9]\\d{0,4})\\|([^|\\n\\r]*)"
            + "\\|(-?\\d+\\.\\d)\\|([0-9a-f]{32})");

    /** Returns a target as it is sealed: with one decimal. */
    public static String target(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    /**
     * Reads a line's text.
     *
     * @throws IllegalArgumentException if it is not such a line
     */
    public static DrawnLine read(String text) {
        var parts = FORM.matcher(text);
        if (!parts.matches()) {
            throw new IllegalArgumentException("it is no line of a draw");
        }
        return new DrawnLine(
                parts.group(1),
                parts.group(2),
                parts.group(3),
                Integer.parseInt(parts.group(4)),
                Integer.parseInt(parts.group(5)),
                parts.group(6),
                parts.group(7),
                parts.group(8));
    }

    /** Returns the text that is sealed. */
    public String text() {
        return String.join(
                "|",
                List.of(HEADER, trial, day, lot, Integer.toString(set), Integer.toString(place), batch, target, salt));
    }

    /** Returns the target as a number. */
    public double value() {
        return Double.parseDouble(target);
    }
}
