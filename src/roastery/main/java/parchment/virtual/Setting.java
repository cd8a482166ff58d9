package parchment.virtual;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.answer.Spelling;

/**
 * Describes one line that a section of a scenario may have.
 *
 * @param key the words before the equals sign
 * @param unit its unit, blank if it has none
 * @param type what is expected after the equals sign
 * @param low least number
 * @param high greatest number
 * @param choices the words to choose from, for a choice
 * @param fallback what holds if the line is left out; words in round brackets where that is no fixed value
 * @param meaning what it does
 */
record Setting(
        String key,
        String unit,
        Type type,
        double low,
        double high,
        List<String> choices,
        String fallback,
        String meaning) {
    /** What stands in place of a fallback for a line that must be there. */
    static final String NEEDED = "(must be given)";

    /** What is expected after the equals sign. */
    enum Type {
        TEXT,
        NUMBER,
        WHOLE,
        DATE,
        CHOICE,
        POINTS
    }

    static Setting text(String key, String fallback, String meaning) {
        return new Setting(key, "", Type.TEXT, 0, 0, List.of(), fallback, meaning);
    }

    static Setting number(String key, String unit, double low, double high, String fallback, String meaning) {
        return new Setting(key, unit, Type.NUMBER, low, high, List.of(), fallback, meaning);
    }

    static Setting percent(String key, String fallback, String meaning) {
        return number(key, "%", 0, 100, fallback, meaning);
    }

    static Setting whole(String key, double low, double high, String fallback, String meaning) {
        return new Setting(key, "", Type.WHOLE, low, high, List.of(), fallback, meaning);
    }

    static Setting date(String key, String fallback, String meaning) {
        return new Setting(key, "", Type.DATE, 0, 0, List.of(), fallback, meaning);
    }

    static Setting choice(String key, List<String> choices, String fallback, String meaning) {
        return new Setting(key, "", Type.CHOICE, 0, 0, choices, fallback, meaning);
    }

    static Setting points(String key, String fallback, String meaning) {
        return new Setting(key, "", Type.POINTS, 0, 0, List.of(), fallback, meaning);
    }

    /** Returns the key with its unit, as it is written. */
    String written() {
        return unit.isEmpty() ? key : key + " [" + unit + "]";
    }

    /** Returns what is expected, in words. */
    String expected() {
        return switch (type) {
            case TEXT -> "words";
            case NUMBER -> "a number from " + plain(low) + " to " + plain(high);
            case WHOLE -> "a whole number from " + plain(low) + " to " + plain(high);
            case DATE -> "a day such as 2024-03-18";
            case CHOICE -> String.join(" or ", choices);
            case POINTS -> "attributes with points, such as acidity 0.5, body -0.2";
        };
    }

    /** Returns what is wrong with a value, if anything is. */
    Optional<String> wrong(String value) {
        boolean right = switch (type) {
            case TEXT, POINTS -> !value.isBlank();
            case NUMBER -> isNumber(value, low, high);
            case WHOLE -> value.matches("-?[0-9]{1,9}") && isNumber(value, low, high);
            case DATE -> isDate(value);
            case CHOICE -> choices.contains(value.toLowerCase(Locale.ROOT));
        };
        if (right) {
            return Optional.empty();
        }
        String meant = type == Type.CHOICE ? Spelling.question(value, choices) : "";
        return Optional.of("'" + written() + "' expects " + expected() + ", but was given '" + value + "'." + meant);
    }

    private static boolean isNumber(String value, double low, double high) {
        try {
            double number = new BigDecimal(value).doubleValue();
            return number >= low && number <= high;
        } catch (NumberFormatException e) {
            return false;
        }
    }

    private static boolean isDate(String value) {
        try {
            LocalDate.parse(value);
            return true;
        } catch (DateTimeParseException e) {
            return false;
        }
    }

    private static String plain(double bound) {
        return BigDecimal.valueOf(bound).stripTrailingZeros().toPlainString();
    }
}
