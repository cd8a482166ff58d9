package parchment.chart;

import java.util.Locale;

/** Writes the shapes of points. */
final class Markers {
    private Markers() {}

    /** Returns the attributes shared by all points of one group. */
    static String group(Marker marker, Colour colour) {
        return String.format(
                Locale.ROOT,
                switch (marker) {
                    case CIRCLE ->
                        "fill=\"none\" stroke=\"%s\" stroke-width=\"7\" stroke-linecap=\"round\" stroke-opacity=\".7\"";
                    case RING, CROSS -> "fill=\"none\" stroke=\"%s\" stroke-width=\"1.5\"";
                    case TICK -> "fill=\"none\" stroke=\"%s\" stroke-width=\"2\" stroke-opacity=\".75\"";
                    default -> "fill=\"%s\" fill-opacity=\".7\"";
                },
                colour.svg());
    }

    /** Returns the path of one point. */
    static String at(Marker marker, double x, double y) {
        return switch (marker) {
            case CIRCLE -> start(x, y) + "h0";
            case SQUARE -> start(x - 3.2, y - 3.2) + "h6.4v6.4h-6.4z";
            case TRIANGLE -> start(x, y - 4.2) + "l4 7h-8z";
            case DIAMOND -> start(x, y - 4.4) + "l4.4 4.4-4.4 4.4-4.4-4.4z";
            case RING -> start(x - 3.3, y) + "a3.3 3.3 0 1 0 6.6 0a3.3 3.3 0 1 0-6.6 0";
            case CROSS -> start(x - 3.2, y - 3.2) + "l6.4 6.4m0-6.4l-6.4 6.4";
            case TICK -> start(x, y - 7) + "v14";
        };
    }

    private static String start(double x, double y) {
        return "M" + Svg.number(x) + " " + Svg.number(y);
    }
}
