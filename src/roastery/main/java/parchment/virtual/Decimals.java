package parchment.virtual;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Writes numbers with a fixed count of decimals, from the exact binary value: the same on every Java. */
final class Decimals {
    private Decimals() {}

    /** Returns the exact value rounded half to even; blank for a missing number. */
    static String of(double value, int decimals) {
        return Double.isNaN(value) ? "" : exact(value, decimals).toPlainString();
    }

    static BigDecimal exact(double value, int decimals) {
        return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN);
    }

    /** Returns minutes and whole seconds, as in 9:19; blank for a missing time. */
    static String minutes(double seconds) {
        if (Double.isNaN(seconds)) {
            return "";
        }
        long rounded = (long) StrictMath.rint(StrictMath.abs(seconds));
        String digits = rounded / 60 + ":" + (rounded % 60 < 10 ? "0" : "") + rounded % 60;
        return seconds < 0 && rounded > 0 ? "-" + digits : digits;
    }
}
