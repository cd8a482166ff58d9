package parchment.gather;

import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What a score sheet says of one cup, or of one cupper's mean over cups where no more stands there, ready to be written.
 *
 * @param tastedOn the day, if it stands in the row, above the table, or in the name of the file or tab
 * @param cupping the cupping's own name; "" if it has none
 * @param cupper who scored; "" where only averages stand
 * @param batch what the sheet says the cup was of, as written: a batch's name, or a lot with a date; "" if only a code stands
 * @param code the blind code; "" if there is none
 * @param lot the lot, if the sheet names one; ""
 * @param cup which cup of the batch, counted from 1; 0 if it is not said
 * @param scores by attribute, in the roaster's own words
 * @param position serving position, 0 if it is not said
 * @param note the cupper's words
 * @param table the table it stands in
 * @param line the line in its sheet, counted from 1
 */
record TastedCup(
        Optional<LocalDate> tastedOn,
        String cupping,
        String cupper,
        String batch,
        String code,
        String lot,
        int cup,
        Map<String, Double> scores,
        int position,
        String note,
        FoundTable table,
        int line) {
    TastedCup {
        scores = Collections.unmodifiableMap(new LinkedHashMap<>(scores));
    }

    /** Returns the same cup where what stands for its batch is the code it was served under. */
    TastedCup coded() {
        return new TastedCup(tastedOn, cupping, cupper, "", batch, lot, cup, scores, position, note, table, line);
    }

    /** Returns the same cup, tasted on a day. */
    TastedCup on(LocalDate day) {
        return new TastedCup(
                Optional.of(day), cupping, cupper, batch, code, lot, cup, scores, position, note, table, line);
    }

    /** Returns the same cup, scored by a cupper. */
    TastedCup by(String name) {
        return new TastedCup(tastedOn, cupping, name, batch, code, lot, cup, scores, position, note, table, line);
    }

    /** Returns the same cup, counted among those of its batch. */
    TastedCup numbered(int number) {
        return new TastedCup(tastedOn, cupping, cupper, batch, code, lot, number, scores, position, note, table, line);
    }
}
