package parchment.learning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.Prediction;
import parchment.stats.mixed.RandomTerm;

/**
 * Foretells a score by a line and a bend in each feature at once, lots free to differ: all lines are shrunk together and all bends are, by as
 * much as the scores themselves suggest (ridge regression as a mixed model, Ruppert, Wand and Carroll 2003, section 4).
 */
final class SmoothCourses {
    private final MixedDesign design;

    private SmoothCourses(MixedDesign design) {
        this.design = design;
    }

    /** Prepares the courses of all rows; lots empty where not known. */
    static SmoothCourses of(List<double[]> rows, double[] response, List<String> lots) {
        List<double[]> lines = new ArrayList<>();
        List<double[]> bends = new ArrayList<>();
        for (int k = 0; k < rows.get(0).length; k++) {
            int column = k;
            double[] line = rows.stream().mapToDouble(row -> row[column]).toArray();
            double[] squares = Arrays.stream(line).map(v -> v * v).toArray();
            double mean = Arrays.stream(squares).average().orElse(0);
            lines.add(line);
            bends.add(Arrays.stream(squares).map(v -> v - mean).toArray());
        }
        MixedDesign design = MixedDesign.of("score", response)
                .withRandom(RandomTerm.smooth("lines", lines))
                .withRandom(RandomTerm.smooth("bends", bends));
        List<String> named =
                lots.stream().map(lot -> lot.isEmpty() ? "no lot" : lot).toList();
        if (named.stream().distinct().count() > 1) {
            design = design.withRandom(RandomTerm.intercept("lot", named));
        }
        return new SmoothCourses(design);
    }

    /** Fits some rows and foretells all. */
    double[] foretell(int[] learnt) {
        return design.withRows(learnt).fit().predict(design, Prediction.WITH_GROUPS);
    }
}
