package parchment.stats.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.stats.ReferenceData;
import parchment.stats.linear.Vectors;
import parchment.stats.mixed.LinearModel;
import parchment.stats.mixed.MixedDesign;

/** NIST's certified sets are in {@link AgreementTest}. */
class NonlinearModelTest {

    /** Bates and Watts 1988, treated cells: 212.7, 0.06412, residual 10.93; digits and errors from R 4.2.2's nls. */
    @Test
    @Tag("agrees-with")
    void agreesOnPuromycin() {
        ReferenceData data = ReferenceData.table("r-datasets/Puromycin.csv");
        List<String> state = data.words("state");
        int[] treated = IntStream.range(0, state.size())
                .filter(i -> state.get(i).equals("treated"))
                .toArray();
        NonlinearModel model = NonlinearModel.fit(
                Vectors.pick(data.numbers("conc"), treated),
                Vectors.pick(data.numbers("rate"), treated),
                List.of("largest rate", "half-way concentration"),
                new double[] {200, 0.05},
                (x, b) -> b[0] * x[0] / (b[1] + x[0]));
        assertEquals(212.683741382723, model.term("largest rate").estimate(), 1e-5);
        assertEquals(6.94715509555086, model.term("largest rate").standardError(), 1e-5);
        assertEquals(0.0641212789680984, model.term("half-way concentration").estimate(), 1e-8);
        assertEquals(0.00828094925970162, model.term("half-way concentration").standardError(), 1e-8);
        assertEquals(10.9336581912888, model.residualStandardDeviation(), 1e-9);
    }

    @Test
    void straightLineIsLeastSquares() {
        double[] x = {1, 2, 3, 4, Double.NaN, 6};
        double[] y = {1.1, 1.9, 3.2, 3.9, 5, 6.2};
        NonlinearModel model =
                NonlinearModel.fit(x, y, List.of("a", "b"), new double[] {1, 1}, (t, b) -> b[0] + b[1] * t[0]);
        LinearModel line = LinearModel.fit(MixedDesign.of("y", y).withCovariate("x", x));
        assertEquals(line.term("x").estimate(), model.term("b").estimate(), 1e-10);
        assertEquals(line.term("x").standardError(), model.term("b").standardError(), 1e-10);
        assertEquals(1, model.leftOut());
    }

    @Test
    void saysWhenParametersCannotBeToldApart() {
        double[] x = {1, 2, 3, 4, 5};
        double[] y = {2, 4.1, 6, 8.2, 9.9};
        NonlinearModel model =
                NonlinearModel.fit(x, y, List.of("a", "b"), new double[] {1, 1}, (t, b) -> b[0] * b[1] * t[0]);
        assertTrue(model.toString().contains("do not tell all parameters apart"), model.toString());
        assertTrue(Double.isNaN(model.term("a").standardError()));
    }

    @Test
    @Tag("says")
    void saysWhenTheCurveHasNoValueAtTheStart() {
        double[] x = {1, 2, 3};
        assertTrue(assertThrows(
                        IllegalArgumentException.class,
                        () -> NonlinearModel.fit(
                                x, x, List.of("a"), new double[] {-1}, (t, b) -> Math.log(b[0]) * t[0]))
                .getMessage()
                .contains("no finite value at the starting values"));
    }
}
