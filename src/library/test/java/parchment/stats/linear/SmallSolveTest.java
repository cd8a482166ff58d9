package parchment.stats.linear;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class SmallSolveTest {
    /** Factor {{2, 0}, {1, 3}} squared. */
    private static final double[][] REGULAR = {{4, 2}, {2, 10}};

    @Test
    void solvesAWorkedSystem() {
        assertArrayEquals(new double[] {2, 0}, SmallSolve.cholesky(REGULAR).orElseThrow()[0]);
        assertArrayEquals(new double[] {1, 3}, SmallSolve.cholesky(REGULAR).orElseThrow()[1]);
        assertArrayEquals(
                new double[] {1, 2},
                SmallSolve.solve(REGULAR, new double[] {8, 22}).orElseThrow(),
                1e-15);
        double[][] inverse = SmallSolve.inverse(REGULAR).orElseThrow();
        assertArrayEquals(new double[] {10 / 36.0, -2 / 36.0}, inverse[0], 1e-15);
        assertArrayEquals(new double[] {-2 / 36.0, 4 / 36.0}, inverse[1], 1e-15);
        assertArrayEquals(inverse[1], SmallSolve.unit(REGULAR, 1).orElseThrow());
    }

    @Test
    void returnsNothingForAMatrixThatCannotBeSolved() {
        for (double[][] matrix : List.of(
                new double[][] {{1, 1}, {1, 1}},
                new double[][] {{1, 2}, {2, 1}},
                new double[][] {{0}},
                new double[][] {{Double.NaN}},
                new double[][] {{Double.POSITIVE_INFINITY}},
                new double[][] {{1, Double.NaN}, {Double.NaN, 1}})) {
            assertTrue(SmallSolve.cholesky(matrix).isEmpty());
            assertTrue(SmallSolve.inverse(matrix).isEmpty());
            assertTrue(SmallSolve.solve(matrix, new double[matrix.length]).isEmpty());
            assertTrue(SmallSolve.unit(matrix, 0).isEmpty());
        }
    }

    @Test
    void aSystemOfNoUnknownsIsSolved() {
        assertEquals(0, SmallSolve.solve(new double[0][], new double[0]).orElseThrow().length);
    }
}
