package parchment.learning;

/**
 * Foretells by lines and bends that are added one feature at a time, a tenth of what each would take away: boosting with a line and a bend in one
 * feature in place of a tree (Bühlmann and Yu 2003, J. Am. Stat. Assoc. 98:324).
 *
 * <p>It serves where few of many features matter, as trees do, and knows no steps and no pairs: what trees have over it is neither a line nor a
 * bend.
 */
final class BoostedCourses {
    private static final int STEPS = 100;
    private static final double SHRINKAGE = 0.1;

    private final double[] line;
    private final double[] bend;
    private final double level;

    private BoostedCourses(double[] line, double[] bend, double level) {
        this.line = line;
        this.bend = bend;
        this.level = level;
    }

    static BoostedCourses fit(double[][] rows, double[] response) {
        int features = rows[0].length;
        double[] left = response.clone();
        double[] line = new double[features];
        double[] bend = new double[features];
        double level = 0;
        for (int step = 0; step < STEPS; step++) {
            Course best = Course.of(rows, left, 0);
            for (int k = 1; k < features; k++) {
                Course other = Course.of(rows, left, k);
                best = other.taken > best.taken ? other : best;
            }
            level += SHRINKAGE * best.level;
            line[best.feature] += SHRINKAGE * best.line;
            bend[best.feature] += SHRINKAGE * best.bend;
            for (int i = 0; i < left.length; i++) {
                left[i] -= SHRINKAGE * best.at(rows[i][best.feature]);
            }
        }
        return new BoostedCourses(line, bend, level);
    }

    double[] predict(double[][] rows) {
        double[] out = new double[rows.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = level;
            for (int k = 0; k < line.length; k++) {
                out[i] += rows[i][k] * (line[k] + rows[i][k] * bend[k]);
            }
        }
        return out;
    }

    /** The parabola in one feature that takes away most of the squares, and how much that is. */
    private record Course(int feature, double level, double line, double bend, double taken) {
        double at(double x) {
            return level + x * (line + x * bend);
        }

        static Course of(double[][] rows, double[] left, int k) {
            int n = left.length;
            double x = 0;
            double square = 0;
            double y = 0;
            for (int i = 0; i < n; i++) {
                x += rows[i][k] / n;
                square += rows[i][k] * rows[i][k] / n;
                y += left[i] / n;
            }
            double xx = 0;
            double xs = 0;
            double ss = 0;
            double xy = 0;
            double sy = 0;
            for (int i = 0; i < n; i++) {
                double u = rows[i][k] - x;
                double v = rows[i][k] * rows[i][k] - square;
                double w = left[i] - y;
                xx += u * u;
                xs += u * v;
                ss += v * v;
                xy += u * w;
                sy += v * w;
            }
            double area = xx * ss - xs * xs;
            // Two values only: a bend is no other than the line.
            double bend = area > 1e-9 * xx * ss ? (xx * sy - xs * xy) / area : 0;
            double line = xx > 0 ? (xy - bend * xs) / xx : 0;
            return new Course(k, y - line * x - bend * square, line, bend, line * xy + bend * sy + n * y * y);
        }
    }
}
