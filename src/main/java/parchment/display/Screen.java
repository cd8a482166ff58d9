package parchment.display;

/**
 * The place where values appear while a cell runs: the page of a notebook, or plain text where there is no page.
 *
 * <p>A notebook puts its own screen in place for the time a cell runs, with {@link Display#on}.
 */
public interface Screen {

    /** Shows one value; a {@link Showable} in its richest form, anything else as text. */
    void show(Object value);

    /** Takes away what the cell has shown and printed so far, when the next thing is shown. Does nothing where that cannot be. */
    default void clear() {}
}
