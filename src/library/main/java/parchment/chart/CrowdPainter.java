package parchment.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Paints a crowd of thin lines so that it stays readable: few as lines, many as shading that is the darker, the more of them run there.
 *
 * <p>Above {@value #MOST_LINES} lines, each is drawn by itself only where few run; where they lie close, steps of one grey say how close. The
 * steps are even on a scale of ratios and end at a grey in which the lines above it can still be seen.
 */
final class CrowdPainter {
    /** Most lines that are all drawn as lines; found by looking. */
    static final int MOST_LINES = 40;
    /** Most thin lines over which another line is seen without a rim in the colour of the ground; found by looking. */
    private static final int MOST_WITHOUT_RIM = 10;
    /** Lines for each ten units of the picture from which they are drawn as shading; found by looking. */
    private static final double CLOSE = 6;

    static final int MOST_STEPS = 6;
    private static final double STEP_RATIO = 1.4;
    private static final double LIGHTEST = 0.16;
    private static final double DARKEST = 0.5;
    /** A line by itself goes on a little into the shading, so that no gap shows between the two. */
    private static final double OVERLAP = 1.15;

    private static final double PIECE = 4;
    /** A shorter piece of a line that leaves the shading is not told from it. */
    private static final double SHORTEST = 20;

    private final Svg svg;
    private final Scale x;
    private final Scale y;
    private final Style style;

    CrowdPainter(Svg svg, Scale x, Scale y, Style style) {
        this.svg = svg;
        this.x = x;
        this.y = y;
        this.style = style;
    }

    /** Returns the thin lines of a plot. */
    static List<Line> crowd(Plot plot) {
        return plot.layers(Line.class).stream()
                .filter(line -> line.weight() == Weight.FAINT)
                .toList();
    }

    /** Tells whether a plot has so many thin lines that they are shaded where they lie close. */
    static boolean shades(Plot plot) {
        return crowd(plot).size() > MOST_LINES;
    }

    /** Tells whether so many thin lines lie under the others that those need a rim to be seen. */
    static boolean crowds(Plot plot) {
        return crowd(plot).size() > MOST_WITHOUT_RIM;
    }

    /** Returns the opacity of each step of shading, from where few run to where most do. */
    static List<Double> steps(int count) {
        List<Double> steps = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            steps.add(LIGHTEST + (DARKEST - LIGHTEST) * i / (MOST_STEPS - 1));
        }
        return steps;
    }

    void paint(Plot plot) {
        List<Line> lines = crowd(plot);
        if (!shades(plot)) {
            for (Line line : lines) {
                Polyline path = new Polyline(style.crowdTolerance());
                run(line, path::to, path::lift);
                svg.path(path.data(), style.stroke(line));
            }
            return;
        }
        Density density = new Density(x.start(), y.end(), x.end(), y.start());
        for (Line line : lines) {
            Pen pen = new Pen(density::add);
            run(line, pen::to, pen::lift);
        }
        Density.Field field = density.field();
        shading(density, field);
        Polyline path = new Polyline(style.crowdTolerance());
        for (Line line : lines) {
            Alone alone = new Alone(path, density, field);
            Pen pen = new Pen(alone::piece);
            run(line, pen::to, () -> {
                pen.lift();
                alone.lift();
            });
            alone.lift();
        }
        svg.path(path.data(), "stroke=\"currentColor\" stroke-opacity=\".4\"");
    }

    private void shading(Density density, Density.Field field) {
        double most = field.quantileAbove(CLOSE, 0.98);
        int count = (int) Math.max(1, Math.min(MOST_STEPS, Math.round(Math.log(most / CLOSE) / Math.log(STEP_RATIO))));
        double drawn = 0;
        for (int i = 0; i < count; i++) {
            Polyline path = new Polyline(0.4);
            for (List<Contours.Place> ring : Contours.of(field, CLOSE * Math.pow(most / CLOSE, (double) i / count))) {
                ring.forEach(place -> path.to(density.x(place.column()), density.y(place.row())));
                path.close();
            }
            // The steps lie over each other, so each adds only what is missing of its own grey.
            double wanted = steps(count).get(i);
            double added = 1 - (1 - wanted) / (1 - drawn);
            svg.path(
                    path.data(),
                    String.format(
                            Locale.ROOT,
                            "fill=\"currentColor\" fill-rule=\"evenodd\" stroke=\"none\" fill-opacity=\"%.3f\"",
                            added));
            drawn = wanted;
        }
    }

    private interface Places {
        void to(double x, double y);
    }

    private interface Pieces {
        void piece(double fromX, double fromY, double toX, double toY);
    }

    private void run(Line line, Places places, Runnable lift) {
        double before = Double.NaN;
        for (int i = 0; i < line.size(); i++) {
            if (!Double.isFinite(line.x(i)) || !Double.isFinite(line.y(i))) {
                lift.run();
                before = Double.NaN;
                continue;
            }
            double placeX = x.place(line.x(i));
            double placeY = y.place(line.y(i));
            if (line.isSteps() && !Double.isNaN(before)) {
                places.to(placeX, before);
            }
            places.to(placeX, placeY);
            before = placeY;
        }
        lift.run();
    }

    /** Turns places into the straight pieces between them. */
    private static final class Pen {
        private final Pieces pieces;
        private double atX = Double.NaN;
        private double atY = Double.NaN;

        Pen(Pieces pieces) {
            this.pieces = pieces;
        }

        void to(double x, double y) {
            if (!Double.isNaN(atX)) {
                pieces.piece(atX, atY, x, y);
            }
            atX = x;
            atY = y;
        }

        void lift() {
            atX = Double.NaN;
            atY = Double.NaN;
        }
    }

    /** Draws a line only where few others run. */
    private static final class Alone {
        private final Polyline path;
        private final Density density;
        private final Density.Field field;
        private final List<double[]> places = new ArrayList<>();
        private double drawn;

        Alone(Polyline path, Density density, Density.Field field) {
            this.path = path;
            this.density = density;
            this.field = field;
        }

        void piece(double fromX, double fromY, double toX, double toY) {
            int parts = (int) Math.max(1, Math.ceil(Math.min(1e4, Math.hypot(toX - fromX, toY - fromY) / PIECE)));
            for (int i = 0; i < parts; i++) {
                double x0 = fromX + (toX - fromX) * i / parts;
                double y0 = fromY + (toY - fromY) * i / parts;
                double x1 = fromX + (toX - fromX) * (i + 1) / parts;
                double y1 = fromY + (toY - fromY) * (i + 1) / parts;
                if (density.at(field, (x0 + x1) / 2, (y0 + y1) / 2) >= CLOSE * OVERLAP) {
                    lift();
                    continue;
                }
                if (places.isEmpty()) {
                    places.add(new double[] {x0, y0});
                }
                places.add(new double[] {x1, y1});
                drawn += Math.hypot(x1 - x0, y1 - y0);
            }
        }

        void lift() {
            if (drawn >= SHORTEST) {
                places.forEach(place -> path.to(place[0], place[1]));
            }
            path.lift();
            places.clear();
            drawn = 0;
        }
    }
}
