package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.gather.ColumnClaim.UnitDoubt;
import parchment.gather.StrangeColumn.Form;
import parchment.logbook.Quantity;
import parchment.sheet.Words;

/**
 * Proposes what the columns of a strange file mean, each with its reason; a person confirms it.
 *
 * @param meaning what the column is taken for
 * @param reason why, as the rest of a sentence
 * @param doubt whether the unit is open, so that a person is asked
 */
record MeaningProposal(Meaning meaning, String reason, UnitDoubt doubt) {
    /** A column needs as many numbers to be taken for times or temperatures. */
    static final int FEWEST_ROWS = 10;

    MeaningProposal(Meaning meaning, String reason) {
        this(meaning, reason, UnitDoubt.KNOWN);
    }

    /** Proposes a meaning for each column, by place; the columns are of one file. */
    static List<MeaningProposal> of(List<StrangeColumn> columns) {
        Map<Integer, MeaningProposal> found = new LinkedHashMap<>();
        TimeProposal.in(columns).forEach(found::put);
        TemperatureProposal.in(columns, found.keySet()).forEach(found::put);
        List<MeaningProposal> all = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            MeaningProposal proposal = found.get(i);
            all.add(proposal != null ? proposal : other(columns.get(i)));
        }
        HeadlessControl.in(columns, all).forEach(all::set);
        return all;
    }

    /** Returns whether a file with these proposals is a recording: it has times and a temperature. */
    static boolean isRecording(List<MeaningProposal> proposals) {
        return proposals.stream().anyMatch(p -> p.meaning().kind() == Meaning.Kind.TIME)
                && proposals.stream()
                        .anyMatch(p -> p.meaning().quantity().equals(Optional.of(Quantity.BEAN_TEMPERATURE)));
    }

    /**
     * Returns whether half of the rows with a bean temperature or more have a time: a list that stands beside readings has times too, and they
     * are not the readings'.
     */
    static boolean hasTimes(List<StrangeColumn> columns, List<MeaningProposal> proposals) {
        int timed = 0;
        int read = 0;
        for (int i = 0; i < proposals.size(); i++) {
            Meaning meaning = proposals.get(i).meaning();
            if (meaning.kind() == Meaning.Kind.TIME) {
                timed = columns.get(i).filled();
            } else if (meaning.quantity().equals(Optional.of(Quantity.BEAN_TEMPERATURE))) {
                read = columns.get(i).filled();
            }
        }
        return 2 * timed >= read;
    }

    private static MeaningProposal other(StrangeColumn column) {
        if (column.filled() == 0) {
            return new MeaningProposal(Meaning.LEFT_OUT, "it is empty");
        }
        if (column.mostly(Form.WORDS)) {
            long marks = column.words().keySet().stream()
                    .filter(word -> MarkWords.of(word).isPresent())
                    .count();
            return new MeaningProposal(
                    Meaning.EVENTS,
                    "it holds words such as " + Words.some(column.words().keySet())
                            + (marks > 0
                                    ? ", of which " + marks + (marks == 1 ? " names a mark" : " name a mark")
                                    : ""));
        }
        if (!column.mostly(Form.NUMBER)) {
            return new MeaningProposal(Meaning.LEFT_OUT, "it is neither numbers nor words throughout");
        }
        CurveHeading heading = CurveHeading.of(column);
        Optional<Quantity> control = heading.control().map(spoken -> switch (spoken) {
            case GAS -> Quantity.GAS;
            case AIRFLOW -> Quantity.AIRFLOW;
            case HEATER_POWER -> Quantity.HEATER_POWER;
            case DRUM_SPEED -> Quantity.DRUM_SPEED;
        });
        return control.map(quantity -> new MeaningProposal(
                        Meaning.of(quantity, heading.unit()),
                        "its heading speaks of it, and it takes " + Words.count(column.distinct(), "value", "values")))
                .orElseGet(() -> new MeaningProposal(
                        Meaning.EXTRA,
                        heading.temperatureUnit().isPresent()
                                ? "its heading has a unit of temperature, and its values are none of a roast; kept under its own name"
                                : "its heading says nothing that is known; kept under its own name"));
    }
}
