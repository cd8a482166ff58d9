package parchment.display;

import java.util.Objects;

/**
 * Shows several values from one cell, where the cell's last line alone would show one.
 *
 * <pre>{@code
 * for (var batch : logbook.batches()) {
 *     Display.show(BatchChart.of(batch));
 * }
 * }</pre>
 *
 * Outside a notebook the text of the value goes to standard output.
 */
public final class Display {
    private static final Screen TERMINAL =
            value -> System.out.println(value instanceof Showable showable ? showable.text() : value);

    /**
     * The screen is the one thing here that changes: {@code show} is called from a cell with no object at hand that could know
     * the page, and only the notebook puts another screen in place, for as long as a cell runs.
     */
    private static volatile Screen screen = TERMINAL;

    private Display() {}

    /**
     * Shows the value now, above whatever the cell shows later.
     *
     * @param value anything; null is shown as the word null
     */
    public static void show(Object value) {
        screen.show(value);
    }

    /** Takes away what the cell has shown so far as soon as it shows something else, for a count or a picture that moves on. */
    public static void clear() {
        screen.clear();
    }

    /** Shows values on the given screen until the result is closed; for notebooks, not for cells. */
    public static synchronized Shown on(Screen other) {
        Screen before = screen;
        screen = Objects.requireNonNull(other);
        return () -> screen = before;
    }

    /** Ends the use of a screen when closed. */
    @FunctionalInterface
    public interface Shown extends AutoCloseable {
        @Override
        void close();
    }
}
