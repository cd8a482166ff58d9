package parchment.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.answer.ShownAs;

/**
 * Describes one picture before it is drawn: an axis across, an axis upwards, and the layers drawn over them.
 *
 * <pre>{@code
 * Plot.of("A made-up roast", Axis.clock("time since charge"), Axis.number("temperature", "°C"))
 *         .with(Line.of("bean temperature", new double[] {0, 90, 600}, new double[] {180, 90, 205}))
 * }</pre>
 *
 * <p>Numbers are as the library keeps them; the axes show them in the reader's unit. A plot is a value: every {@code with...} returns
 * a copy. Defaults: 300 units high, no notes, and a general sentence where there is nothing to draw.
 *
 * <p>Lines and points that carry no number at all are drawn as nothing; if no layer carries one, the picture shows the sentence of
 * {@link #withEmptySentence}.
 */
public final class Plot implements ShownAs {
    private static final int HEIGHT = 300;

    private final String title;
    private final Axis x;
    private final Axis y;
    private final List<Layer> layers;
    private final List<String> notes;
    private final String emptySentence;
    private final Optional<Span> triedRange;
    private final int height;

    private Plot(
            String title,
            Axis x,
            Axis y,
            List<Layer> layers,
            List<String> notes,
            String emptySentence,
            Optional<Span> triedRange,
            int height) {
        this.title = title;
        this.x = x;
        this.y = y;
        this.layers = List.copyOf(layers);
        this.notes = List.copyOf(notes);
        this.emptySentence = emptySentence;
        this.triedRange = triedRange;
        this.height = height;
    }

    /** Makes a plot without layers. The title may be empty where the plot is one of several panels. */
    public static Plot of(String title, Axis x, Axis y) {
        return new Plot(
                title,
                x,
                y,
                List.of(),
                List.of(),
                "There is nothing to draw: every value is missing.",
                Optional.empty(),
                HEIGHT);
    }

    /** Returns the plot with one more layer on top. */
    public Plot with(Layer layer) {
        return with(List.of(layer));
    }

    /** Returns the plot with more layers on top, in their order. */
    public Plot with(List<? extends Layer> more) {
        List<Layer> longer = new ArrayList<>(layers);
        longer.addAll(more);
        return new Plot(title, x, y, longer, notes, emptySentence, triedRange, height);
    }

    /** Returns the plot with one more sentence under it, such as how many batches were used and left out. */
    public Plot withNote(String sentence) {
        List<String> longer = new ArrayList<>(notes);
        longer.add(sentence);
        return new Plot(title, x, y, layers, longer, emptySentence, triedRange, height);
    }

    /** Returns the plot with the sentence that stands in its place if there is nothing to draw. */
    public Plot withEmptySentence(String sentence) {
        return new Plot(title, x, y, layers, notes, sentence, triedRange, height);
    }

    /**
     * Returns the plot with the range along x that was tried marked at its foot; what lies outside is greyed.
     *
     * @throws IllegalArgumentException if an end is missing or infinite, or the range ends before it starts
     */
    public Plot withTriedRange(double from, double to) {
        Span range = Span.of("tried", from, to);
        return new Plot(title, x, y, layers, notes, emptySentence, Optional.of(range), height);
    }

    /**
     * Returns the plot with another height of its drawing area; the picture is 800 units wide.
     *
     * @throws IllegalArgumentException if the height is not from 40 to 2000
     */
    public Plot withHeight(int units) {
        if (units < 40 || units > 2000) {
            throw new IllegalArgumentException("A plot is from 40 to 2000 units high; it was given " + units + ".");
        }
        return new Plot(title, x, y, layers, notes, emptySentence, triedRange, units);
    }

    /** Returns the words over the plot. */
    public String title() {
        return title;
    }

    /** Returns the axis across. */
    public Axis x() {
        return x;
    }

    /** Returns the axis upwards. */
    public Axis y() {
        return y;
    }

    /** Returns what is drawn, from the bottom to the top. */
    public List<Layer> layers() {
        return layers;
    }

    /** Returns the layers of one kind, in their order. */
    <L extends Layer> List<L> layers(Class<L> kind) {
        return layers.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    /** Returns the sentences under the plot. */
    public List<String> notes() {
        return notes;
    }

    /** Returns the sentence that stands in the place of an empty plot. */
    public String emptySentence() {
        return emptySentence;
    }

    Optional<Span> triedRange() {
        return triedRange;
    }

    int height() {
        return height;
    }

    /** Tells whether no line, band or point carries a number. */
    public boolean isEmpty() {
        Layer.Reach reach = new Layer.Reach();
        for (Layer layer : layers) {
            if (layer instanceof Line || layer instanceof Band || layer instanceof Points) {
                layer.reach(reach);
            }
        }
        return reach.isEmpty();
    }

    /** Returns the picture. */
    public Chart chart() {
        return Panels.stacked(title, List.of(this)).chart();
    }

    @Override
    public Showable shownAs() {
        return chart();
    }

    @Override
    public String toString() {
        return chart().toString();
    }
}
