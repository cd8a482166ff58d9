package parchment.evidence.finding;

import java.util.List;
import java.util.Locale;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Interval;

/** Puts counts, signed numbers and lists into plain English, in one way for the whole answer. */
public final class Wording {
    private Wording() {}

    public static String count(long number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    /** Prints points with two decimals; a difference that rounds to 0 loses its sign. */
    public static String points(double value) {
        return plain(value, 2);
    }

    /** Prints points with their sign, as in "+0.12". */
    public static String signed(double value) {
        String text = plain(value, 2);
        return text.startsWith("-") || Double.isNaN(value) || text.equals("0.00") ? text : "+" + text;
    }

    /** Prints points with their sign and as many decimals as their interval asks for. */
    public static String signed(double value, Interval interval) {
        int decimals = Unit.POINTS
                .withDigitsFor(interval.width() / 2, TemperatureUnit.CELSIUS)
                .digits();
        String text = plain(value, decimals);
        return value > 0 && !text.matches("0(\\.0*)?") ? "+" + text : text;
    }

    /** Prints the ends of an interval of points, as in "+0.12 to +0.31". */
    public static String signed(Interval interval) {
        return signed(interval.lower(), interval) + " to " + signed(interval.upper(), interval);
    }

    public static String plain(double value, int decimals) {
        if (Double.isNaN(value)) {
            return "missing";
        }
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return text.matches("-0(\\.0*)?") ? text.substring(1) : text;
    }

    /** Prints a variance inflation; beyond a thousand the number says no more than that the two moved as one. */
    public static String inflation(double value) {
        return value > 1000 ? "over 1000" : plain(value, 1);
    }

    public static String percent(double share) {
        return Double.isNaN(share) ? "missing" : plain(100 * share, 0) + " %";
    }

    /** Joins words as in "a, b and c". */
    public static String list(List<String> words) {
        if (words.size() < 2) {
            return String.join("", words);
        }
        return String.join(", ", words.subList(0, words.size() - 1)) + " and " + words.get(words.size() - 1);
    }

    /** Names a feature as it is spoken: "gas in drying" is the gas that was set during drying. */
    public static String spoken(String feature) {
        return feature.replaceFirst("^(gas|airflow) in (drying|browning|development)$", "the $1 during $2");
    }

    /** Starts a sentence with a capital letter. */
    public static String sentence(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
