package parchment.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * Decides how far the axes of a picture reach, and says what does not fit between them.
 *
 * <p>They reach over every number, with one exception: where one or two of many thin lines run far beyond all others, the axis ends a little
 * past the bulk of them, so that one odd line does not press the rest together. Which ones run past the edge is always said.
 */
final class Frame {
    private final Scale across;
    private final List<Scale> upwards = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    private Frame(Panels panels) {
        Layer.Reach all = new Layer.Reach();
        List<Line> crowd = new ArrayList<>();
        boolean points = false;
        boolean shading = false;
        List<CrowdEnds> ends = new ArrayList<>();
        for (Plot plot : panels.plots()) {
            Layer.Reach own = new Layer.Reach();
            List<Line> thin = CrowdPainter.crowd(plot);
            for (Layer layer : plot.layers()) {
                if (!(layer instanceof Line line) || line.weight() != Weight.FAINT) {
                    layer.reach(all);
                    layer.reach(own);
                }
                points |= layer instanceof Points;
            }
            crowd.addAll(thin);
            CrowdEnds upright = CrowdEnds.upwards(thin);
            upright.reachUpwards(own);
            ends.add(upright);
            upwards.add(Scale.around(plot.y(), own.lowY(), own.highY(), Scale.Room.ROUND));
            shading |= CrowdPainter.shades(plot);
        }
        CrowdEnds level = CrowdEnds.across(crowd);
        level.reachAcross(all);
        Scale.Room room = points ? Scale.Room.LITTLE : Scale.Room.NONE;
        across = Scale.around(panels.plots().get(0).x(), all.lowX(), all.highX(), room);
        if (shading) {
            notes.add("Grey shading is many thin lines close together: the stronger the grey, the more of them.");
        }
        notes.addAll(level.beyond(across, "before", "past"));
        for (int i = 0; i < ends.size(); i++) {
            notes.addAll(ends.get(i).beyond(upwards.get(i), "below", "above"));
        }
    }

    static Frame of(Panels panels) {
        return new Frame(panels);
    }

    /** Returns the axis across, not yet laid out. */
    Scale across() {
        return across;
    }

    /** Returns the upright axis of each plot, not yet laid out. */
    List<Scale> upwards() {
        return List.copyOf(upwards);
    }

    /** Returns what a reader has to know of how the lines are drawn: that many are shaded, and which run past the edge. */
    List<String> notes() {
        return List.copyOf(notes);
    }
}
