package parchment.stats.warp;

import java.util.Arrays;

/** The angle between two warps of one interval (their phase distance), by Gauss-Legendre quadrature between their corners. */
final class WarpAngle {
    /** Nodes and weights of the five-point rule on -1..1 (Abramowitz and Stegun 1964, table 25.4). */
    private static final double[] NODES = {
        -0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664
    };

    private static final double[] WEIGHTS = {
        0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189
    };

    private static final int PARTS = 16;

    private WarpAngle() {}

    static double angle(Warp first, Warp second) {
        double[] corners = Arrays.stream(concat(first.knots(), second.knots()))
                .sorted()
                .distinct()
                .toArray();
        double firstRun = first.imageTo() - first.imageFrom();
        double secondRun = second.imageTo() - second.imageFrom();
        boolean straight = first.isStraight() && second.isStraight();
        double chord = 0;
        for (int i = 1; i < corners.length; i++) {
            double width = corners[i] - corners[i - 1];
            if (straight) {
                double t = corners[i - 1] + 0.5 * width;
                double apart = Math.sqrt(first.slope(t) / firstRun) - Math.sqrt(second.slope(t) / secondRun);
                chord += width * apart * apart;
                continue;
            }
            for (int part = 0; part < PARTS; part++) {
                for (int k = 0; k < NODES.length; k++) {
                    // Points crowd towards both corners, where the slope of a warp may come close to 0 or grow without
                    // bound.
                    double u = (part + 0.5 + 0.5 * NODES[k]) / PARTS;
                    double share = u * u * u * (10 + u * (6 * u - 15));
                    double crowding = 30 * u * u * (1 - u) * (1 - u);
                    double t = corners[i - 1] + width * share;
                    double apart = Math.sqrt(first.slope(t) / firstRun) - Math.sqrt(second.slope(t) / secondRun);
                    chord += width * crowding * 0.5 / PARTS * WEIGHTS[k] * apart * apart;
                }
            }
        }
        return ofChord(Math.sqrt(chord));
    }

    /** The angle between two unit vectors from the length of the chord between them, which keeps small angles exact. */
    static double ofChord(double chord) {
        return 2 * Math.asin(Math.min(1, chord / 2));
    }

    private static double[] concat(double[] a, double[] b) {
        double[] all = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, all, a.length, b.length);
        return all;
    }
}
