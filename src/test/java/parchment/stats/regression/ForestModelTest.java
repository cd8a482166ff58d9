package parchment.stats.regression;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.stats.ReferenceData;
import parchment.stats.ReferenceFits;
import parchment.stats.resample.GroupedFolds;

class ForestModelTest {
    private static final List<String> NAMES = List.of("solar", "wind", "temperature");

    private static List<double[]> air() {
        ReferenceData data = ReferenceData.table("r-datasets/airquality.csv");
        return List.of(data.numbers("Solar.R"), data.numbers("Wind"), data.numbers("Temp"));
    }

    /** scikit-learn 1.2.1, 2,000 trees on left-out months (src/test/python/forest.py); two forests differ by their draws, here by some 3 %. */
    @Test
    @Tag("agrees-with")
    void errsOnLeftOutMonthsAsAnotherForestDoes() {
        ReferenceData data = ReferenceData.table("r-datasets/airquality.csv");
        ReferenceFits theirs = ReferenceFits.of("forest");
        HeldOutErrors errors = ForestModel.heldOut(
                NAMES, air(), data.numbers("Ozone"), 400, GroupedFolds.leaveOneOut(data.words("Month")), 1);
        double forest = theirs.value("air quality", "error of forest on left-out months");
        assertEquals(111, errors.rows());
        assertEquals(forest, errors.error(1), 0.08 * forest);
        assertTrue(errors.error(1) < 0.8 * errors.error(0));
    }

    @Test
    void sameSeedGivesTheSameForestAndMissingStaysMissing() {
        double[] ozone = ReferenceData.table("r-datasets/airquality.csv").numbers("Ozone");
        ForestModel one = ForestModel.fit(NAMES, air(), ozone, 50, 7);
        double[] predicted = one.predict(air());
        assertArrayEquals(predicted, ForestModel.fit(NAMES, air(), ozone, 50, 7).predict(air()));
        assertTrue(Double.isNaN(predicted[4]), "solar radiation is missing in row 5");
        assertEquals(153, one.used() + one.leftOut());
        assertEquals(1, one.importance().stream().mapToDouble(v -> v).sum(), 1e-12);
        assertTrue(one.importance().get(0) < one.importance().get(2));
    }

    @Test
    void seesWhatNoSlopeSees() {
        SplittableRandom random = new SplittableRandom(5);
        double[] x = random.doubles(300).toArray();
        double[] z = random.doubles(300).toArray();
        double[] y = new double[300];
        for (int i = 0; i < y.length; i++) {
            y[i] = (x[i] > 0.5) == (z[i] > 0.5) ? 1 : 0;
        }
        double[] predicted = ForestModel.fit(List.of("x", "z"), List.of(x, z), y, 100, 1)
                .predict(List.of(new double[] {0.2, 0.2, 0.8}, new double[] {0.2, 0.8, 0.8}));
        assertTrue(predicted[0] > 0.75 && predicted[1] < 0.25 && predicted[2] > 0.75);
    }

    @Test
    @Tag("says")
    void saysHowManyRowsItNeeds() {
        double[] x = {1, 2, 3, 4};
        assertTrue(
                assertThrows(IllegalArgumentException.class, () -> ForestModel.fit(List.of("x"), List.of(x), x, 10, 1))
                        .getMessage()
                        .contains("at least 10 rows"));
    }
}
