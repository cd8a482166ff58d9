package parchment.sheet;

import java.util.Locale;

/** Reads decimal numbers quickly and exactly. */
public final class Numbers {
    private static final double[] TENS = new double[23];
    private static final long EXACT = 1L << 53;

    /** Letters after which no number of 64 bits goes on: the largest has 309 digits. */
    private static final int LONGEST = 400;

    static {
        double ten = 1;
        for (int i = 0; i < TENS.length; i++) {
            TENS[i] = ten;
            ten *= 10;
        }
    }

    /** Says which sign may stand before the decimals. */
    public enum Decimal {
        POINT,
        COMMA,
        /** Either, where a comma cannot be the border between two columns. */
        EITHER
    }

    private Numbers() {}

    public static double parse(String text, Decimal decimal) {
        return parse(text.toCharArray(), 0, text.length(), decimal);
    }

    /**
     * Returns the number that fills the given stretch, blanks around it aside, or NaN if it is not one.
     *
     * <p>A mantissa below 2^53 divided by a power of ten up to 10^22 is one correctly rounded operation on exact operands (Clinger
     * 1990, "How to read floating point numbers accurately"); anything else goes the long way.
     */
    public static double parse(char[] text, int from, int to, Decimal decimal) {
        int start = from;
        int end = to;
        while (start < end && text[start] <= ' ') {
            start++;
        }
        while (end > start && text[end - 1] <= ' ') {
            end--;
        }
        int i = start;
        boolean negative = i < end && text[i] == '-';
        if (i < end && (text[i] == '-' || text[i] == '+')) {
            i++;
        }
        long mantissa = 0;
        int digits = 0;
        int decimals = 0;
        boolean afterSign = false;
        for (; i < end; i++) {
            char c = text[i];
            if (c >= '0' && c <= '9') {
                if (mantissa >= EXACT / 10) {
                    return slowly(text, start, end, decimal);
                }
                mantissa = mantissa * 10 + (c - '0');
                digits++;
                decimals += afterSign ? 1 : 0;
            } else if (!afterSign && isDecimal(c, decimal)) {
                afterSign = true;
            } else if ((c == 'e' || c == 'E') && digits > 0) {
                return slowly(text, start, end, decimal);
            } else {
                return Double.NaN;
            }
        }
        if (digits == 0 || decimals >= TENS.length) {
            return digits == 0 ? Double.NaN : slowly(text, start, end, decimal);
        }
        double value = mantissa / TENS[decimals];
        return negative ? -value : value;
    }

    private static boolean isDecimal(char c, Decimal decimal) {
        return c == '.' && decimal != Decimal.COMMA || c == ',' && decimal != Decimal.POINT;
    }

    private static double slowly(char[] text, int from, int to, Decimal decimal) {
        if (to - from > LONGEST) {
            return Double.NaN;
        }
        String number = new String(text, from, to - from);
        if (decimal != Decimal.POINT) {
            number = number.replace(',', '.');
        }
        if (!number.matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?")) {
            return Double.NaN;
        }
        double value = Double.parseDouble(number);
        return Double.isInfinite(value) ? Double.NaN : value;
    }

    /** Returns a number as it is written in a file: whole numbers without a decimal point. */
    public static String written(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e9
                ? String.format(Locale.ROOT, "%.0f", value)
                : Double.toString(value);
    }
}
