package parchment.sheet;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.quantity.MassUnit;
import parchment.quantity.TemperatureUnit;

/**
 * Takes one heading of a table apart: what the column is, and its unit from the brackets.
 *
 * @param written the heading as it stands, blanks collapsed
 * @param name the part before the brackets, in lower case
 * @param unit the part in the brackets, as it stands; empty if there is none
 * @param brackets which brackets the unit stood in
 */
public record Header(String written, String name, String unit, Brackets brackets) {
    private static final Pattern SQUARE = Pattern.compile("(.*)\\[([^\\[\\]]*)]");
    private static final Pattern ROUND = Pattern.compile("(.*)\\(([^()]*)\\)");

    public enum Brackets {
        SQUARE,
        ROUND,
        NONE
    }

    public static Header parse(String heading) {
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

    public static String name(String written) {
        return written.strip().toLowerCase(Locale.ROOT);
    }

    /** Returns the unit in lower case without blanks and without what stands for the sign of a degree. */
    public String plainUnit() {
        // U+FFFD is what is left of the sign where a spreadsheet saved it in an old encoding.
        return unit.toLowerCase(Locale.ROOT).replaceAll("[\\s°º˚\uFFFD]", "");
    }

    /** Returns the scale that the brackets name, if they do. */
    public Optional<TemperatureUnit> temperatureUnit() {
        return temperatureUnit(plainUnit());
    }

    /** Returns the scale of a unit in its plain form. */
    public static Optional<TemperatureUnit> temperatureUnit(String plainUnit) {
        return switch (plainUnit) {
            case "c" -> Optional.of(TemperatureUnit.CELSIUS);
            case "f" -> Optional.of(TemperatureUnit.FAHRENHEIT);
            case "k" -> Optional.of(TemperatureUnit.KELVIN);
            default -> Optional.empty();
        };
    }

    /** Returns a heading as it is compared: hyphens and low lines are blanks, and both spellings of colour are one. */
    public static String plain(String name) {
        return name.toLowerCase(Locale.ROOT)
                .replaceAll("[\\s_-]+", " ")
                .replace("color", "colour")
                .strip();
    }

    /** Returns the unit of mass that the brackets name, if they do. */
    public Optional<MassUnit> massUnit() {
        return massUnit(plainUnit());
    }

    /** Returns the unit of mass of a unit in its plain form. */
    public static Optional<MassUnit> massUnit(String plainUnit) {
        for (MassUnit unit : MassUnit.values()) {
            if (unit.symbol().equals(plainUnit)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }
}
