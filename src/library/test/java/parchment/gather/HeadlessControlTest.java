package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Quantity;

/** Which column without a heading is taken for the gas: one row on each side of each edge. */
class HeadlessControlTest {
    private static List<MeaningProposal> proposals(int rows, List<IntToDoubleFunction> controls) {
        List<List<String>> lines = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
            List<String> line =
                    new ArrayList<>(List.of(Integer.toString(2 * i), Double.toString(95 + 115.0 * i / rows)));
            for (IntToDoubleFunction control : controls) {
                line.add(Double.toString(control.applyAsDouble(i)));
            }
            lines.add(line);
        }
        List<String> headings = new ArrayList<>(List.of("#1", "#2"));
        for (int i = 0; i < controls.size(); i++) {
            headings.add("#" + (3 + i));
        }
        FoundTable table = Tables.of(headings, lines);
        return MeaningProposal.of(IntStream.range(0, headings.size())
                .mapToObj(i -> StrangeColumn.of(table, i))
                .toList());
    }

    private static boolean isGas(MeaningProposal proposal) {
        return proposal.meaning().quantity().equals(Optional.of(Quantity.GAS));
    }

    @ParameterizedTest
    @CsvSource({
        "300, 2, 40, 80, true",
        "300, 1, 40, 80, false",
        "300, 25, 0, 100, true",
        "300, 26, 0, 100, false",
        "50, 5, 0, 100, true",
        "50, 6, 0, 100, false",
        "300, 5, 0, 100, true",
        "300, 5, 0, 101, false",
        "300, 5, -0.5, 100, false",
    })
    void theGasGoesInAFewStepsFromNoughtToAHundred(int rows, int steps, double low, double high, boolean gas) {
        IntToDoubleFunction control = i -> low + (high - low) * (i * steps / rows) / Math.max(steps - 1, 1);
        assertEquals(gas, isGas(proposals(rows, List.of(control)).get(2)));
    }

    @Test
    void ofTwoSuchColumnsNoneIsTheGas() {
        List<MeaningProposal> two = proposals(300, List.of(i -> i < 150 ? 80 : 40, i -> i < 200 ? 30 : 60));
        assertEquals(List.of(false, false), List.of(isGas(two.get(2)), isGas(two.get(3))));
    }
}
