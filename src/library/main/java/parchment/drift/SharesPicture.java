package parchment.drift;

import java.util.List;
import parchment.chart.Axis;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.chart.Points;

/** Draws where differences come from: each source a row, its share a point, its interval a line. */
final class SharesPicture {
    private static final int ROW = 30;
    private static final int LOWEST = 60;

    private SharesPicture() {}

    static Plot of(String name, List<VarianceShares.Share> shares) {
        List<String> rows =
                shares.stream().map(s -> s.source() + " (" + s.groups() + ")").toList();
        double[] x = shares.stream().mapToDouble(s -> 100 * s.share()).toArray();
        double[] y = new double[x.length];
        double[] ends = new double[3 * x.length];
        double[] rowsOfEnds = new double[3 * x.length];
        for (int i = 0; i < x.length; i++) {
            y[i] = i;
            ends[3 * i] = 100 * shares.get(i).interval().lower();
            ends[3 * i + 1] = 100 * shares.get(i).interval().upper();
            ends[3 * i + 2] = ends[3 * i + 1];
            rowsOfEnds[3 * i] = i;
            rowsOfEnds[3 * i + 1] = i;
            rowsOfEnds[3 * i + 2] = Double.NaN; // Lifts the pen between two intervals.
        }
        Plot plot = Plot.of(
                        "Share of each source in " + name,
                        Axis.number("share of what makes it differ", "%").withLimits(0, 100),
                        Axis.rows("", rows))
                .withHeight(Math.max(LOWEST, ROW * rows.size()))
                .withEmptySentence("The shares cannot be told.")
                .with(Line.of("", ends, rowsOfEnds).withColour(Colour.BLUE));
        return shares.isEmpty()
                ? plot
                : plot.with(
                        Points.of("share; the bar holds it 9 times in 10", x, y).withColour(Colour.BLUE));
    }
}
