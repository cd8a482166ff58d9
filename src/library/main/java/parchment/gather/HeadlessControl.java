package parchment.gather;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.gather.StrangeColumn.Form;
import parchment.logbook.Quantity;

/**
 * Proposes that the one column without a heading that was set by hand is the gas: it stands still, then takes another step from 0 to 100.
 *
 * <p>Gas is what a roaster sets most (common practice, no source). With two such columns nothing says which is the gas.
 */
final class HeadlessControl {
    private static final int FEWEST_STEPS = 2;
    private static final int MOST_STEPS = 25;
    private static final double MOST = 100;
    private static final double STILL = 0.1;

    private HeadlessControl() {}

    /** Returns the proposal by the column's place; nothing where no column, or more than one, is such. */
    static Map<Integer, MeaningProposal> in(List<StrangeColumn> columns, List<MeaningProposal> proposals) {
        if (!MeaningProposal.isRecording(proposals)) {
            return Map.of();
        }
        Optional<Integer> only = Optional.empty();
        for (int i = 0; i < columns.size(); i++) {
            if (proposals.get(i).meaning().kind() == Meaning.Kind.EXTRA && isSet(columns.get(i))) {
                if (only.isPresent()) {
                    return Map.of();
                }
                only = Optional.of(i);
            }
        }
        return only.map(place -> Map.of(
                        place,
                        new MeaningProposal(
                                Meaning.of(Quantity.GAS, "%"),
                                "it has no heading, goes in "
                                        + columns.get(place).distinct()
                                        + " steps within 0 to 100, and is the only control, which mostly is the gas")))
                .orElse(Map.of());
    }

    private static boolean isSet(StrangeColumn column) {
        return column.heading().matches("#\\d+")
                && column.mostly(Form.NUMBER)
                && column.distinct() >= FEWEST_STEPS
                && column.distinct() <= Math.min(MOST_STEPS, STILL * column.numberCount())
                && column.quantile(0) >= 0
                && column.quantile(1) <= MOST;
    }
}
