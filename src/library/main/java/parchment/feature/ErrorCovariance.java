package parchment.feature;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.MarkKind;

/** Puts the covariance of features' errors together: what each mark's error does to all of them, and each one's own error. */
final class ErrorCovariance {
    private ErrorCovariance() {}

    static double[][] of(BatchPath path, List<Feature> features) {
        int n = features.size();
        double[][] covariance = new double[n][n];
        Measured[] own = new Measured[n];
        Set<MarkKind> marks = EnumSet.noneOf(MarkKind.class);
        for (int i = 0; i < n; i++) {
            own[i] = features.get(i).measureWithMarksExact(path);
            covariance[i][i] = own[i].standardError() * own[i].standardError();
            marks.addAll(features.get(i).marksUsed());
        }
        for (MarkKind kind : marks) {
            MarkShift shift = MarkShift.of(path, kind);
            double[] moved = new double[n];
            for (int i = 0; i < n; i++) {
                boolean reads = features.get(i).marksUsed().contains(kind);
                moved[i] = own[i].isMissing() || !reads ? 0 : shift.effectOn(features.get(i), own[i].value());
            }
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    covariance[i][j] += moved[i] * moved[j];
                }
            }
        }
        for (int i = 0; i < n; i++) {
            if (own[i].isMissing()) {
                Arrays.fill(covariance[i], Double.NaN);
                for (double[] row : covariance) {
                    row[i] = Double.NaN;
                }
            }
        }
        return covariance;
    }
}
