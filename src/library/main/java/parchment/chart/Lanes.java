package parchment.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Places the names of upright boundaries above a plot, each to the right of its own line and in a lane where it covers neither
 * another name nor another line.
 */
final class Lanes {
    static final double SIZE = 13;
    static final double LANE = 17;
    private static final double OFFSET = 4;
    private static final double GAP = 8;

    /** One name: where its line stands, where its words begin, the words, and its lane counted from the plot upwards. */
    record Placed(Boundary boundary, double x, double left, String words, int lane) {
        /** Tells whether the words begin before their line, since there was no room behind it. */
        boolean isMoved() {
            return left < x + OFFSET - 0.5;
        }

        boolean covers(double place) {
            return place > left - 2 && place < left + TextWidth.of(words, SIZE) + 2;
        }
    }

    private Lanes() {}

    static String words(Boundary boundary, Axis x, Layout layout) {
        if (boundary.label().isBlank()) {
            return "";
        }
        // The number stands last; where the room ends it is the name that is cut.
        String position = " " + ChartWords.position(boundary, x);
        return TextWidth.fit(boundary.label(), SIZE, layout.widestBoundary() - TextWidth.of(position, SIZE)) + position;
    }

    static double width(String words) {
        return TextWidth.of(words, SIZE) + OFFSET;
    }

    /** Returns the boundaries inside the plot from right to left. */
    static List<Placed> place(List<Boundary> boundaries, Scale x, Layout layout) {
        List<Boundary> inside = boundaries.stream()
                .filter(b -> x.contains(b.x()))
                .sorted(Comparator.comparingDouble(Boundary::x).reversed())
                .toList();
        List<Placed> placed = new ArrayList<>();
        for (Boundary boundary : inside) {
            String words = words(boundary, x.axis(), layout);
            double place = x.place(boundary.x());
            // On a narrow page a name that would run off it is moved inwards, over the line it belongs to.
            double left = Math.min(place + OFFSET, layout.width() - 2 - TextWidth.of(words, SIZE));
            int lane = words.isEmpty() ? -1 : 0;
            for (Placed other : placed) {
                // The lines to the right end at their own names, so a name above those is free.
                boolean meets = other.x() < left + width(words) + GAP || other.left() < left + width(words) + GAP;
                if (!words.isEmpty() && meets) {
                    lane = Math.max(lane, other.lane() + 1);
                }
            }
            placed.add(new Placed(boundary, place, left, words, lane));
        }
        return placed;
    }

    static int count(List<Placed> placed) {
        return placed.stream().mapToInt(p -> p.lane() + 1).max().orElse(0);
    }
}
