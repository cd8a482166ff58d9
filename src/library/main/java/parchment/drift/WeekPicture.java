package parchment.drift;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.chart.Axis;
import parchment.chart.Colour;
import parchment.chart.Marker;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.chart.Span;

/**
 * Draws the week: a row for each batch in order of time, each of its numbers a stroke where it lies against what is usual for its lot, with the
 * range that holds 95 of 100 batches from -1 to 1. Numbers outside of it have a shape and a name in the key; those that are a little unlike are rings. In a week of many batches a row is a lot's day.
 */
final class WeekPicture {
    private static final int MOST_ROWS = 24;
    private static final int ROW = 24;
    private static final int LEAST_HEIGHT = 70;
    private static final int MOST_HEIGHT = 1_200;

    /** What lies farther off is drawn here. */
    private static final double FARTHEST = 3;

    /** How far the picture reaches where nothing lies outside of the usual. */
    private static final double NEAREST = 1.6;

    /** So many numbers have a shape of their own in the key. */
    private static final int NAMED = 4;

    private static final List<Colour> COLOURS =
            List.of(Colour.VERMILLION, Colour.PURPLE, Colour.GREEN, Colour.ORANGE, Colour.INK);
    private static final List<Marker> MARKERS =
            List.of(Marker.CIRCLE, Marker.SQUARE, Marker.TRIANGLE, Marker.DIAMOND, Marker.CROSS);

    private WeekPicture() {}

    /** Positions of points with what each says. */
    private static final class Spots {
        private final List<Double> x = new ArrayList<>();
        private final List<Double> y = new ArrayList<>();
        private final List<String> names = new ArrayList<>();

        void add(Usual usual, Usual.Compared one, int row) {
            x.add(Math.max(-FARTHEST, Math.min(FARTHEST, place(one))));
            y.add((double) row);
            names.add("batch " + usual.batch().name() + ", "
                    + WeekOddBatch.words(one, usual.batch().readerUnit()));
        }

        Points points(String label) {
            return Points.of(
                            label,
                            x.stream().mapToDouble(v -> v).toArray(),
                            y.stream().mapToDouble(v -> v).toArray())
                    .withNames(names);
        }
    }

    static Plot of(Week week) {
        Map<String, Integer> rows = rows(week.batches());
        Spots usual = new Spots();
        Spots little = new Spots();
        Map<String, Spots> unlike = new LinkedHashMap<>();
        for (Usual batch : week.batches()) {
            int row = rows.getOrDefault(rowOf(batch, week.batches()), 0);
            for (Usual.Compared one : batch.compared()) {
                if (!Double.isFinite(place(one))) {
                    continue;
                }
                if (one.unlike()) {
                    String name = one.feature().name();
                    boolean own = unlike.containsKey(name) || unlike.size() < NAMED;
                    unlike.computeIfAbsent(own ? name : "another number", key -> new Spots())
                            .add(batch, one, row);
                } else {
                    (one.verdict() == Usual.Verdict.A_LITTLE_UNLIKE_THE_OTHERS ? little : usual).add(batch, one, row);
                }
            }
        }
        double reach = unlike.isEmpty() ? NEAREST : FARTHEST + 0.2;
        Plot plot = Plot.of(
                        "Each batch against what is usual for its lot",
                        Axis.number("below or above what is usual; 95 of 100 batches lie between -1 and 1", "")
                                .withLimits(-reach, reach),
                        Axis.rows("", List.copyOf(names(rows, week.batches()))))
                .withHeight(Math.min(MOST_HEIGHT, Math.max(LEAST_HEIGHT, ROW * rows.size())))
                .withEmptySentence("No batch can be held against others of its lot yet.")
                .with(Span.of("usual for its lot", -1, 1));
        if (!usual.x.isEmpty()) {
            plot = plot.with(
                    usual.points("a number as usual").withMarker(Marker.TICK).withColour(Colour.BLUE));
        }
        if (!little.x.isEmpty()) {
            plot = plot.with(little.points("a number a little unlike")
                    .withMarker(Marker.RING)
                    .withColour(Colour.BLUE));
        }
        int kind = 0;
        for (Map.Entry<String, Spots> one : unlike.entrySet()) {
            plot = plot.with(one.getValue()
                    .points(one.getKey() + " unlike")
                    .withMarker(MARKERS.get(kind))
                    .withColour(COLOURS.get(kind)));
            kind++;
        }
        return plot.withNote(note(week));
    }

    private static String note(Week week) {
        int all = week.batches().size();
        int none = all - week.held();
        return all - none + " of " + all + (all == 1 ? " batch" : " batches") + " drawn"
                + (none == 0
                        ? "; none left out."
                        : "; " + none + " cannot be held against eight others of " + (none == 1 ? "its" : "their")
                                + " lot.");
    }

    /** Where a number lies, in parts of the way from the usual to the edge of the usual range. */
    static double place(Usual.Compared one) {
        double off = one.value() - one.usual();
        double edge = off >= 0
                ? one.range().upper() - one.usual()
                : one.usual() - one.range().lower();
        return off / edge;
    }

    private static Map<String, Integer> rows(List<Usual> batches) {
        Map<String, Integer> rows = new LinkedHashMap<>();
        for (Usual usual : batches) {
            rows.putIfAbsent(rowOf(usual, batches), rows.size());
        }
        return rows;
    }

    private static String rowOf(Usual usual, List<Usual> batches) {
        return batches.size() <= MOST_ROWS
                ? usual.batch().name()
                : usual.batch().roastDay().orElseThrow() + " "
                        + usual.batch().lot().orElse("no lot");
    }

    /** The first row of a day begins with the day. */
    private static List<String> names(Map<String, Integer> rows, List<Usual> batches) {
        if (batches.size() > MOST_ROWS) {
            return List.copyOf(rows.keySet());
        }
        List<String> names = new ArrayList<>();
        String before = "";
        for (Usual usual : batches) {
            String day = usual.batch().roastDay().orElseThrow().toString();
            names.add((day.equals(before) ? "" : day + "   ")
                    + usual.batch().name()
                    + usual.batch().lot().map(lot -> ", " + lot).orElse(""));
            before = day;
        }
        return names;
    }
}
