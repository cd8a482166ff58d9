package parchment.control;

import java.util.Locale;
import java.util.Optional;
import parchment.display.Html;
import parchment.display.Showable;
import parchment.display.answer.Sentence;
import parchment.display.live.Wire;

/** What stands in place of a control where a page is still: a sentence, and what the control would show of its value. */
final class Still {
    private static final String STILL = " It cannot be changed on this page.";

    private Still() {}

    static String text(String sentence, Wire<?> wire) {
        return Sentence.of(sentence)
                + wire.shown().map(shown -> "\n" + shown.text()).orElse("");
    }

    static Optional<String> html(String sentence, Wire<?> wire) {
        return Optional.of("<div class=\"parchment-control\"><p>" + Html.escape(Sentence.of(sentence) + STILL) + "</p>"
                + wire.shownAgain().map(Still::html).orElse("") + "</div>");
    }

    /** Returns what is shown as HTML, whatever its richest form is. */
    static String html(Showable shown) {
        return shown.html().or(shown::svg).or(() -> picture(shown)).orElseGet(() -> plain(shown.text()));
    }

    private static Optional<String> picture(Showable shown) {
        String png = shown.otherForms().get("image/png");
        return png == null
                ? Optional.empty()
                : Optional.of("<img src=\"data:image/png;base64," + Html.escape(png) + "\" alt=\""
                        + Html.escape(shown.text()) + "\">");
    }

    private static String plain(String text) {
        return "<pre>" + Html.escape(text) + "</pre>";
    }

    /** Returns a label with the unit of its value. */
    static String label(String label, String unit) {
        return unit.isEmpty() ? label : label + ", " + unit;
    }

    /** Returns a number with as many digits as its step has, and its unit. */
    static String number(double value, double step, String unit) {
        String written = String.format(Locale.ROOT, "%." + digits(step) + "f", value + 0.0);
        return unit.isEmpty() ? written : written + " " + unit;
    }

    /** Returns how many decimals it takes to tell one step from the next; at most 6. */
    static int digits(double step) {
        int digits = 0;
        double rest = step;
        while (digits < 6 && Math.abs(rest - Math.rint(rest)) > 1e-6 * Math.max(1, rest)) {
            rest *= 10;
            digits++;
        }
        return digits;
    }

    /** Returns a step of 1, 2 or 5 times a power of ten that goes at least fifty times, and at most a hundred and twenty-five times, into a range. */
    static double step(double low, double high) {
        double rough = (high - low) / 125;
        double power = Math.pow(10, Math.floor(Math.log10(rough)));
        for (double of : new double[] {1, 2, 5}) {
            if (of * power >= rough * (1 - 1e-9)) {
                return of * power;
            }
        }
        return 10 * power;
    }

    static void checkRange(String label, double low, double high) {
        if (!Double.isFinite(low) || !Double.isFinite(high) || low >= high) {
            throw new IllegalArgumentException("'" + label + "' needs a lower end below its upper end; it was given "
                    + low + " and " + high + ".");
        }
    }

    static double checkWithin(String label, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(
                    "'" + label + "' goes from " + low + " to " + high + "; it was given " + value + ".");
        }
        return value;
    }

    static void checkStep(String label, double step) {
        if (!Double.isFinite(step) || step <= 0) {
            throw new IllegalArgumentException(
                    "The step of '" + label + "' has to be above 0; it was given " + step + ".");
        }
    }
}
