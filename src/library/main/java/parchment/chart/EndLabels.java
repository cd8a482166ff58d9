package parchment.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Places the names of lines at their right ends, pushed apart so that none covers another. */
final class EndLabels {
    static final double SIZE = 14;
    static final double GAP = 17;
    /** Room for the swatch that repeats the line's colour and dash before its name. */
    static final double SWATCH = 34;

    record Placed(Line line, double endX, double endY, double labelY) {}

    private EndLabels() {}

    /** Returns how wide the names of a plot's lines are, with their swatches. */
    static double width(Plot plot, Layout layout) {
        double widest = 0;
        if (!layout.namesEnds()) {
            return widest;
        }
        for (Line line : labelled(plot)) {
            widest = Math.max(widest, Math.min(layout.widestEnd(), TextWidth.of(line.label(), SIZE)) + SWATCH);
        }
        return widest;
    }

    static List<Line> labelled(Plot plot) {
        return plot.layers(Line.class).stream().filter(EndLabels::isNamed).toList();
    }

    /** Tells whether a line has a name of its own to be told by. */
    static boolean isNamed(Line line) {
        return line.weight() != Weight.FAINT && !line.label().isBlank() && last(line, null) >= 0;
    }

    private static int last(Line line, @org.jspecify.annotations.Nullable Scale x) {
        for (int i = line.size() - 1; i >= 0; i--) {
            if (Double.isFinite(line.y(i)) && Double.isFinite(line.x(i)) && (x == null || x.contains(line.x(i)))) {
                return i;
            }
        }
        return -1;
    }

    /** Returns the names that fit, from the top to the bottom; strong lines first where not all of them do. */
    static List<Placed> place(Plot plot, Scale x, Scale y) {
        double top = Math.min(y.start(), y.end());
        double bottom = Math.max(y.start(), y.end());
        List<Placed> wanted = new ArrayList<>();
        for (Line line : labelled(plot)) {
            int last = last(line, x);
            if (last >= 0) {
                double endY = y.placeInside(line.y(last));
                // A step holds to the right edge of the picture's numbers only if its last setting is drawn there.
                wanted.add(new Placed(line, x.placeInside(line.x(last)), endY, endY));
            }
        }
        int room = (int) Math.floor((bottom - top) / GAP) + 1;
        List<Placed> chosen = new ArrayList<>(wanted.stream()
                .sorted(Comparator.comparing((Placed p) -> p.line().weight() == Weight.STRONG ? 0 : 1))
                .limit(room)
                .toList());
        chosen.sort(Comparator.comparingDouble(Placed::endY));
        double[] places = spread(chosen.stream().mapToDouble(Placed::endY).toArray(), GAP, top, bottom);
        List<Placed> placed = new ArrayList<>();
        for (int i = 0; i < chosen.size(); i++) {
            Placed p = chosen.get(i);
            placed.add(new Placed(p.line(), p.endX(), p.endY(), places[i]));
        }
        return placed;
    }

    /** Returns how many names have no room in a plot. */
    static int withoutRoom(Plot plot) {
        return Math.max(0, labelled(plot).size() - ((int) Math.floor(plot.height() / GAP) + 1));
    }

    /**
     * Moves sorted places as little as needed (by least squares) so that neighbours are a gap apart, within bounds.
     *
     * <p>Taking the gaps out turns it into a monotone regression, solved by pooling neighbours that are out of order.
     */
    static double[] spread(double[] sorted, double gap, double lowest, double highest) {
        int n = sorted.length;
        double[] sum = new double[n];
        int[] count = new int[n];
        int blocks = 0;
        for (int i = 0; i < n; i++) {
            sum[blocks] = sorted[i] - i * gap;
            count[blocks] = 1;
            blocks++;
            while (blocks > 1 && sum[blocks - 2] / count[blocks - 2] >= sum[blocks - 1] / count[blocks - 1]) {
                sum[blocks - 2] += sum[blocks - 1];
                count[blocks - 2] += count[blocks - 1];
                blocks--;
            }
        }
        double[] places = new double[n];
        int i = 0;
        for (int b = 0; b < blocks; b++) {
            // Without the gaps every place has the same bounds, so clamping keeps the order.
            double free = Math.max(lowest, Math.min(highest - (n - 1) * gap, sum[b] / count[b]));
            for (int k = 0; k < count[b]; k++, i++) {
                places[i] = free + i * gap;
            }
        }
        return places;
    }
}
