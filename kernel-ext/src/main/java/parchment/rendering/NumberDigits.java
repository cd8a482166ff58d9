package parchment.rendering;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Locale;

/**
 * How the numbers of one column are written: whole numbers whole, others with as many decimals as all of them need, but no more than the six digits, or
 * four of a summary, that are worth showing; what spans too many powers of ten, with powers of ten.
 */
final class NumberDigits {
    static final int SHOWN = 6;

    /** What is worked out of other numbers, such as a mean, is worth no more. */
    static final int SHOWN_OF_SUMMARIES = 4;

    /** More decimals than this nobody counts. */
    private static final int MOST_DECIMALS = 9;

    private static final double LARGEST_WRITTEN_OUT = 1e12;

    private enum Form {
        WHOLE,
        DECIMALS,
        POWERS_OF_TEN
    }

    private final Form form;
    private final int decimals;
    private final boolean rounds;

    private NumberDigits(Form form, int decimals, boolean rounds) {
        this.form = form;
        this.decimals = decimals;
        this.rounds = rounds;
    }

    static boolean isNumber(Object value) {
        return value instanceof Integer
                || value instanceof Long
                || value instanceof Short
                || value instanceof Byte
                || value instanceof Double
                || value instanceof Float
                || value instanceof BigInteger
                || value instanceof BigDecimal;
    }

    /**
     * @param numbers all of them {@link #isNumber}
     * @param shown so many digits are worth showing
     */
    static NumberDigits of(List<Object> numbers, int shown) {
        if (numbers.stream().noneMatch(NumberDigits::hasPoint)) {
            return new NumberDigits(Form.WHOLE, 0, false);
        }
        int needed = 0;
        double largest = 0;
        double smallest = Double.MAX_VALUE;
        for (Object each : numbers) {
            double size = Math.abs(((Number) each).doubleValue());
            if (size == 0 || !Double.isFinite(size)) {
                continue;
            }
            largest = Math.max(largest, size);
            smallest = Math.min(smallest, size);
            needed = Math.max(needed, exact((Number) each).stripTrailingZeros().scale());
        }
        int worth = Math.max(shown - digitsBeforePoint(largest), 2 - digitsBeforePoint(smallest));
        if (largest > 0 && (Math.min(needed, worth) > MOST_DECIMALS || largest >= LARGEST_WRITTEN_OUT)) {
            return new NumberDigits(Form.POWERS_OF_TEN, shown - 1, true);
        }
        int decimals = Math.max(0, Math.min(needed, Math.max(worth, 1)));
        return new NumberDigits(Form.DECIMALS, decimals, needed > decimals);
    }

    private static boolean hasPoint(Object number) {
        return number instanceof Double || number instanceof Float || number instanceof BigDecimal;
    }

    private static BigDecimal exact(Number number) {
        return number instanceof BigDecimal || number instanceof Float
                ? new BigDecimal(number.toString())
                : BigDecimal.valueOf(number.doubleValue());
    }

    /** Returns 3 for 203, 0 for 0.5, -1 for 0.05. */
    private static int digitsBeforePoint(double size) {
        return size <= 0 || size == Double.MAX_VALUE ? 1 : (int) Math.floor(Math.log10(size)) + 1;
    }

    /** Tells whether a number may have lost digits. */
    boolean rounds() {
        return rounds;
    }

    String print(Number number) {
        double value = number.doubleValue();
        if (Double.isInfinite(value)) {
            return value > 0 ? "infinite" : "-infinite";
        }
        if (form == Form.WHOLE) {
            return number.toString();
        }
        String text = String.format(
                Locale.ROOT,
                "%." + decimals + (form == Form.POWERS_OF_TEN ? "e" : "f"),
                form == Form.DECIMALS ? exact(number) : value);
        return text.matches("-0(\\.0*)?(e\\+00)?") ? text.substring(1) : text;
    }
}
