package parchment.kernel.page;

import java.time.Duration;
import java.util.Map;
import parchment.display.live.Live;

/** Where the output of a running cell goes: a Jupyter client, or the notebook file of a headless run. */
public interface CellPage {

    /** The two ways out of a program for text. */
    enum Stream {
        STDOUT,
        STDERR
    }

    /** Adds text that the cell printed; may be called often and with parts of a line. */
    void print(Stream stream, String text);

    /** Adds something shown while the cell runs. */
    void show(Shown shown);

    /** Shows something in a place of its own, where the next thing with the same id takes its place; nothing where a page is still. */
    default void show(String id, Shown shown) {}

    /** Shows something under a name; what {@link #update} is given for that name later takes its place, from whichever cell. */
    default void showNamed(String name, Shown shown) {
        show(shown);
    }

    /** Shows something in every place of that name; where a page cannot change, after what the cell has shown so far. */
    default void update(String name, Shown shown) {
        show(shown);
    }

    /** Takes away the cell's output so far, when the next comes. */
    default void clear() {}

    /** Adds the value of the cell's last line. */
    void result(Shown shown);

    /** Brings something to life; returns the forms in which this page shows it, none where it is still. */
    default Map<String, String> live(Live value) {
        return Map.of();
    }

    /** Adds a line under everything that the cell showed, about the cell and not part of its value. */
    default void foot(Shown shown) {
        show(shown);
    }

    /** Is told how long the cell ran, when it has ended; a page that is to come out the same each time says nothing of it. */
    default void ran(Duration time) {}

    /**
     * Adds a sentence that holds for the whole page under what the cell showed. Where cells are run again one at a time it stands under
     * each cell that gave rise to it; a page whose cells all stay shows it once.
     */
    default void pageNote(Shown shown) {
        foot(shown);
    }

    /**
     * Reads a line of input from the person at the page.
     *
     * @throws java.io.IOException if there is nobody to ask
     */
    default String readLine() throws java.io.IOException {
        throw new java.io.IOException("Nobody can answer here: input works in an open notebook only.");
    }
}
