package parchment.stats.series;

import parchment.display.Showable;
import parchment.stats.linear.Checks;

/**
 * Marks a value at which a control chart left its limits.
 *
 * @param position which value, counted from 1 as on the chart
 * @param charted the number on the chart there: the value itself, the weighted mean, or the sum
 * @param side whether it is above or below what was usual
 */
public record Signal(int position, double charted, Side side) implements Showable {
    /** The side on which a limit was crossed. */
    public enum Side {
        ABOVE,
        BELOW
    }

    @Override
    public String toString() {
        return "value " + position + ", " + (side == Side.ABOVE ? "above" : "below") + " the usual ("
                + trimmed(Checks.number(charted)) + " on the chart)";
    }

    /** Without zeros at the end: what is on a chart is read, not reckoned with. */
    private static String trimmed(String number) {
        return number.contains(".") && !number.contains("e") ? number.replaceAll("\\.?0+$", "") : number;
    }
}
