package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Optional;
import parchment.logbook.MarkKind;

/**
 * Saves working out for every recording what of a row of the lists is compared with it.
 *
 * @param roast the row
 * @param plain its name as two writings of it are compared
 * @param isNumber whether that is a number and nothing else
 * @param number the last number of its name; empty if there is none
 * @param inName its name as it would stand in that of a file
 * @param inLines its name as it would stand in a file's first lines
 * @param roastedAt when it was charged
 * @param day its day
 * @param numberOfDay its number among the batches of its day
 * @param drop the drop in seconds since the charge; NaN if the lists do not have it
 */
record JoinRow(
        ListedRoast roast,
        String plain,
        boolean isNumber,
        Optional<String> number,
        String inName,
        String inLines,
        Optional<LocalDateTime> roastedAt,
        Optional<LocalDate> day,
        Optional<String> numberOfDay,
        double drop) {
    static JoinRow of(ListedRoast roast) {
        String plain = BatchNumbers.plain(GatherNames.plain(roast.name()));
        return new JoinRow(
                roast,
                plain,
                plain.matches("\\d+"),
                BatchNumbers.last(plain),
                BatchNumbers.spaced(plain).strip(),
                BatchNumbers.words(roast.name()),
                roast.roastedAt(),
                roast.day(),
                roast.numberOfDay(),
                roast.marks().getOrDefault(MarkKind.DROP, Double.NaN));
    }

    String name() {
        return roast.name();
    }
}
