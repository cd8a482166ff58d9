package parchment.control;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import parchment.display.Display;
import parchment.display.live.Wire;

/**
 * A part of the page that Java fills, whatever the kind of what is shown; for callbacks of several controls that share one picture.
 *
 * <pre>{@code
 * var area = OutputArea.empty();
 * var lot = Choice.of("lot", "Cinder Ridge", "Low Orchard").onChange(name -> area.show(PaceChart.of(logbook.ofLot(name))));
 * ControlBox.column(lot, area)
 * }</pre>
 */
public final class OutputArea implements Control {
    private static final int MOST = 100;

    private final Wire<List<Object>> wire = new Wire<>(List.of());

    private OutputArea() {}

    /** Returns an area with nothing in it. */
    public static OutputArea empty() {
        return new OutputArea();
    }

    /** Shows one value in place of all that is there; the page follows. */
    public void show(Object value) {
        wire.set(List.of(value));
    }

    /** Shows one value more below what is there; the page follows. Of more than 100 values the first go. */
    public void add(Object value) {
        List<Object> more = new ArrayList<>(wire.value());
        more.add(value);
        wire.set(List.copyOf(more.subList(Math.max(0, more.size() - MOST), more.size())));
    }

    /** Takes everything away. */
    public void clear() {
        wire.set(List.of());
    }

    /** Returns what is shown, from the top. */
    public List<Object> shown() {
        return wire.value();
    }

    @Override
    public String label() {
        return "";
    }

    @Override
    public Wire<List<Object>> wire() {
        return wire;
    }

    @Override
    public Optional<String> html() {
        StringBuilder html = new StringBuilder("<div class=\"parchment-control\">");
        for (Object value : shown()) {
            html.append(Still.html(Display.showable(value)));
        }
        return Optional.of(html.append("</div>").toString());
    }

    @Override
    public String text() {
        return shown().isEmpty()
                ? toString()
                : String.join(
                        "\n",
                        shown().stream()
                                .map(value -> Display.showable(value).text())
                                .toList());
    }

    @Override
    public String toString() {
        int count = shown().size();
        return "An area with " + (count == 0 ? "nothing" : count == 1 ? "one thing" : count + " things")
                + " shown in it.";
    }
}
