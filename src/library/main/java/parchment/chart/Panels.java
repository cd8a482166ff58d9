package parchment.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.display.Showable;
import parchment.display.answer.ShownAs;

/**
 * Stacks plots over one shared axis across, such as temperatures over the controls.
 *
 * <pre>{@code
 * var time = Axis.clock("time since charge");
 * var gas = Line.of("gas", new double[] {0, 300, 600}, new double[] {70, 50, 30});
 * Panels.stacked("Controls", List.of(Plot.of("Gas", time, Axis.number("gas", "%")).with(gas)))
 * }</pre>
 *
 * <p>The axis across is that of the first plot, and reaches over the numbers of all. The first plot's boundaries and spans run
 * through the panels below it without their words.
 */
public final class Panels implements ShownAs {
    private final String title;
    private final List<Plot> plots;
    private final List<String> notes;

    private Panels(String title, List<Plot> plots, List<String> notes) {
        this.title = title;
        this.plots = List.copyOf(plots);
        this.notes = List.copyOf(notes);
    }

    /**
     * Makes a picture of plots under each other.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static Panels stacked(String title, List<Plot> plots) {
        if (plots.isEmpty()) {
            throw new IllegalArgumentException(
                    "The picture '" + title + "' needs at least one plot; it was given none.");
        }
        return new Panels(title, plots, List.of());
    }

    /** Returns the panels with one more sentence under them. */
    public Panels withNote(String sentence) {
        List<String> longer = new ArrayList<>(notes);
        longer.add(sentence);
        return new Panels(title, plots, longer);
    }

    /** Returns the words over the picture. */
    public String title() {
        return title;
    }

    /** Returns the plots from the top to the bottom. */
    public List<Plot> plots() {
        return plots;
    }

    /** Returns the sentences under the picture: those of the plots, then its own. */
    public List<String> notes() {
        List<String> all = new ArrayList<>();
        plots.forEach(plot -> all.addAll(plot.notes()));
        all.addAll(notes);
        return List.copyOf(all);
    }

    /** Returns the picture. */
    public Chart chart() {
        return new Chart(this);
    }

    @Override
    public Showable shownAs() {
        return chart();
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s: a picture of %d panels", title, plots.size());
    }
}
