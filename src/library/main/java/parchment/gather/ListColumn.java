package parchment.gather;

import java.util.List;

/**
 * What one column of a table is taken for, and why, as it is told and can be answered otherwise.
 *
 * @param place its place in the table, counted from 0
 * @param heading its heading as written
 * @param meaning what it is taken for
 * @param unit the unit as the logbook writes it: "kg", "°F", "min:s" …, one of {@link ColumnTimes}; "" if it needs none
 * @param reason why, as the rest of a sentence that begins with the column
 * @param confidence how sure that is
 * @param others what else it could be, most likely first
 */
record ListColumn(
        int place,
        String heading,
        ListMeaning meaning,
        String unit,
        String reason,
        Confidence confidence,
        List<ListMeaning> others) {
    ListColumn {
        others = List.copyOf(others);
    }

    /** Says how sure a reading of a column is. */
    enum Confidence {
        /** Its values and its name agree, or its values alone leave no other choice. */
        CERTAIN,
        /** One of both says so and the other does not object. */
        LIKELY,
        /** Two readings are about as good, or a unit is not known: a person should be asked. */
        OPEN
    }

    /** Returns the heading that its values get in the logbook. */
    String written() {
        String name = meaning == ListMeaning.EXTRA ? heading : meaning.words();
        return unit.isEmpty() || name.endsWith("]") ? name : name + " [" + unit + "]";
    }
}
