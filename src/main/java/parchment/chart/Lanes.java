package parchment.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Places the names of upright boundaries above a plot, each to the right of its own line and in a lane where it covers neither
 * another name nor another line.
 */
final class Lanes {
    static final double SIZE = 12;
    static final double LANE = 16;
    private static final double OFFSET = 4;
    private static final double GAP = 8;
    /** Room for a name of several words with its date and its uncertainty. */
    private static final double WIDEST = 320;

    /** One name: where its line stands, its words, and its lane counted from the plot upwards. */
    record Placed(Boundary boundary, double x, String words, int lane) {}

    private Lanes() {}

    static String words(Boundary boundary, Axis x) {
        if (boundary.label().isBlank()) {
            return "";
        }
        // The number stands last; where the room ends it is the name that is cut.
        String position = " " + ChartWords.position(boundary, x);
        return TextWidth.fit(boundary.label(), SIZE, WIDEST - TextWidth.of(position, SIZE)) + position;
    }

    static double width(String words) {
        return TextWidth.of(words, SIZE) + OFFSET;
    }

    /** Returns the boundaries inside the plot from right to left. */
    static List<Placed> place(List<Boundary> boundaries, Scale x) {
        List<Boundary> inside = boundaries.stream()
                .filter(b -> x.contains(b.x()))
                .sorted(Comparator.comparingDouble(Boundary::x).reversed())
                .toList();
        List<Placed> placed = new ArrayList<>();
        for (Boundary boundary : inside) {
            String words = words(boundary, x.axis());
            double place = x.place(boundary.x());
            int lane = words.isEmpty() ? -1 : 0;
            for (Placed other : placed) {
                // The lines to the right end at their own names, so a name above those is free.
                if (!words.isEmpty() && other.x() < place + width(words) + GAP) {
                    lane = Math.max(lane, other.lane() + 1);
                }
            }
            placed.add(new Placed(boundary, place, words, lane));
        }
        return placed;
    }

    static int count(List<Placed> placed) {
        return placed.stream().mapToInt(p -> p.lane() + 1).max().orElse(0);
    }
}
