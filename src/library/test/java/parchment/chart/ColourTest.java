package parchment.chart;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Holds the colours of series against eyes without red or green cones.
 *
 * <p>Sources: the matrices are those of G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, A Physiologically-based Model for Simulation of
 * Color Vision Deficiency, IEEE Transactions on Visualization and Computer Graphics 15(6), 2009, severity 1.0, for linear RGB; sRGB and
 * its primaries are those of IEC 61966-2-1; distances are CIE 1976 L*a*b*. All numbers are from memory.
 */
class ColourTest {
    /** Several times what is just noticed between two patches side by side (about 2.3, from memory): lines are thin and apart. */
    private static final double APART = 10;

    private enum Eye {
        USUAL(new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}),
        PROTANOPIA(new double[][] {
            {0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}
        }),
        DEUTERANOPIA(new double[][] {
            {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}
        });

        private final double[][] matrix;

        Eye(double[][] matrix) {
            this.matrix = matrix;
        }
    }

    @ParameterizedTest
    @EnumSource
    void coloursOfSeriesStayApartForEveryEye(Eye eye) {
        List<Colour> colours = Arrays.stream(Colour.values())
                .filter(each -> each != Colour.INK)
                .toList();
        for (Colour one : colours) {
            for (Colour other : colours) {
                double distance = distance(one.svg(), other.svg(), eye);
                assertTrue(
                        one == other || distance > APART, () -> one + " and " + other + " are " + distance + " apart");
            }
        }
    }

    @ParameterizedTest
    @EnumSource(names = "USUAL", mode = EnumSource.Mode.EXCLUDE)
    void aRedAndAnOliveThatTheUsualEyeTellsApartRunTogether(Eye eye) {
        String olive = eye == Eye.PROTANOPIA ? "#705000" : "#907000";
        assertTrue(distance("#c03000", olive, Eye.USUAL) > 4 * APART);
        assertTrue(distance("#c03000", olive, eye) < APART);
    }

    private static double distance(String one, String other, Eye eye) {
        double[] first = lab(one, eye);
        double[] second = lab(other, eye);
        return Math.hypot(Math.hypot(first[0] - second[0], first[1] - second[1]), first[2] - second[2]);
    }

    private static double[] lab(String colour, Eye eye) {
        double[] linear = new double[3];
        for (int i = 0; i < 3; i++) {
            double level = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            linear[i] = level <= 0.04045 ? level / 12.92 : Math.pow((level + 0.055) / 1.055, 2.4);
        }
        double[] seen = times(eye.matrix, linear);
        for (int i = 0; i < 3; i++) {
            seen[i] = Math.min(1, Math.max(0, seen[i]));
        }
        double[] xyz = times(
                new double[][] {{0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}}, seen);
        double x = root(xyz[0] / 0.95047);
        double y = root(xyz[1]);
        double z = root(xyz[2] / 1.08883);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double root(double share) {
        return share > 0.008856 ? Math.cbrt(share) : 7.787 * share + 16.0 / 116;
    }

    private static double[] times(double[][] matrix, double[] vector) {
        return Arrays.stream(matrix)
                .mapToDouble(row -> row[0] * vector[0] + row[1] * vector[1] + row[2] * vector[2])
                .toArray();
    }
}
