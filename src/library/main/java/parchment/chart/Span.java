package parchment.chart;

import java.util.Locale;

/**
 * Draws a neutral grey band over a stretch of the x axis, named at the top of the plot, such as a phase or a period.
 *
 * @param label the words at the top
 * @param from where it starts along the x axis
 * @param to where it ends
 */
public record Span(String label, double from, double to) implements Layer {

    /** @throws IllegalArgumentException if an end is missing or infinite, or it ends before it starts */
    public Span {
        ChartChecks.finite("The span '" + label + "'", from);
        ChartChecks.finite("The span '" + label + "'", to);
        if (to < from) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT, "The span '%s' has to end after it starts; it was given %s to %s.", label, from, to));
        }
    }

    /** Makes a span. */
    public static Span of(String label, double from, double to) {
        return new Span(label, from, to);
    }

    @Override
    public void reach(Reach reach) {
        reach.x(from);
        reach.x(to);
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "span '%s' from %s to %s", label, from, to);
    }
}
