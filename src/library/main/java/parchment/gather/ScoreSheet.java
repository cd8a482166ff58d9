package parchment.gather;

import java.time.LocalDate;
import java.util.List;

/**
 * The outcome of reading a table of scores: what it says, cup by cup.
 *
 * @param table where it stands
 * @param cups a row for each cup and cupper, in the order of the sheet
 * @param scales the scales that the sheet tells
 * @param confidence how certain it is that these are scores, read the right way
 * @param reason why, in a sentence
 * @param served whether the sheet names batches, or only codes
 * @param told what was left out, read another way than it stands, or off its scale: a sentence each
 * @param open what cannot be told from the sheet and only the roaster knows: a question each
 */
record ScoreSheet(
        FoundTable table,
        List<TastedCup> cups,
        List<ScoreScale> scales,
        Confidence confidence,
        String reason,
        Served served,
        List<String> told,
        List<String> open) {

    /** Says how certain a reading is. */
    enum Confidence {
        /** The words and the values say the same. */
        CLEAR,
        /** The words or the values say so. */
        LIKELY,
        /** It can be read in another way, which {@link ScoreSheet#open} asks about. */
        DOUBTFUL
    }

    /** Says what the sheet knows a cup by. */
    enum Served {
        /** Nothing but a code stands in each row. */
        CODES_ALONE,
        /** A batch, a lot or a date of roast stands in some rows. */
        NAMED
    }

    ScoreSheet {
        cups = List.copyOf(cups);
        scales = List.copyOf(scales);
        told = List.copyOf(told);
        open = List.copyOf(open);
    }

    /** Returns the sheet with the day of tasting, as the roaster answers, where none stands. */
    ScoreSheet on(LocalDate day) {
        return with(cups.stream()
                .map(cup -> cup.tastedOn().isPresent() ? cup : cup.on(day))
                .toList());
    }

    /** Returns the sheet with the cupper, as the roaster answers, where none stands. */
    ScoreSheet by(String cupper) {
        return with(cups.stream()
                .map(cup -> cup.cupper().isEmpty() ? cup.by(cupper) : cup)
                .toList());
    }

    private ScoreSheet with(List<TastedCup> others) {
        return new ScoreSheet(table, others, scales, confidence, reason, served, told, open);
    }

    /** Returns the sheet with what is still open. */
    ScoreSheet leaving(List<String> stillOpen) {
        return new ScoreSheet(table, cups, scales, confidence, reason, served, told, stillOpen);
    }
}
