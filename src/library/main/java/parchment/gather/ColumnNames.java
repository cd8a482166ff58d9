package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import parchment.sheet.Words;

/**
 * Proposes what a column could mean by its name, as far as its values agree, and by its values alone where they leave no other choice.
 */
final class ColumnNames {
    private static final double WHOLE = 0.52;
    private static final double PART = 0.32;
    private static final double VALUES = 0.46;
    private static final double FITS = 0.5;

    private ColumnNames() {}

    static List<ColumnClaim> of(ColumnValues column, ListScale scale) {
        List<ColumnClaim> claims = new ArrayList<>();
        Set<ListMeaning> named = new LinkedHashSet<>(column.named().whole());
        named.addAll(column.named().part());
        // A heading "Date" may hold dates with times, and "Roasted at" dates alone.
        if (named.contains(ListMeaning.DATE) || named.contains(ListMeaning.TIME_OF_DAY)) {
            named.add(ListMeaning.ROASTED_AT);
        }
        if (named.contains(ListMeaning.ROASTED_AT)) {
            named.add(ListMeaning.DATE);
            named.add(ListMeaning.TIME_OF_DAY);
        }
        for (ListMeaning meaning : named) {
            ColumnFit fit = ColumnFit.of(column, meaning, scale);
            if (fit.score() > 0) {
                boolean whole = !column.named().whole().isEmpty();
                claims.add(new ColumnClaim(
                        column.place(),
                        meaning,
                        fit.unit(),
                        (whole ? WHOLE : PART) + VALUES * fit.score(),
                        fit.doubt(),
                        "is named " + Words.quote(column.heading()) + " and " + fit.reason()));
            }
        }
        for (ListMeaning meaning : HeadAbbreviations.of(column.heading())) {
            ColumnFit fit = ColumnFit.of(column, meaning, scale);
            if (fit.score() >= FITS) {
                claims.add(new ColumnClaim(
                        column.place(),
                        meaning,
                        fit.unit(),
                        PART + VALUES * fit.score(),
                        fit.doubt(),
                        "may be short for a word for " + meaning.words() + " and " + fit.reason()));
            }
        }
        byValues(column, claims);
        return claims;
    }

    private static void byValues(ColumnValues column, List<ColumnClaim> claims) {
        ColumnFit both = ColumnDayFit.dateAndTime(column);
        if (both.score() > 0) {
            claims.add(ColumnClaim.of(
                    column, ListMeaning.ROASTED_AT, both.unit(), 0.55 + 0.1 * both.score(), both.reason()));
        }
        ColumnFit day = ColumnDayFit.day(column);
        if (day.score() > 0) {
            claims.add(ColumnClaim.of(column, ListMeaning.DATE, day.unit(), 0.55 + 0.1 * day.score(), day.reason()));
        }
        boolean unnamed = !column.named().isKnown();
        if (unnamed && column.mostly(CellForm.CLOCK)) {
            ColumnFit clock = ColumnTimeFit.timeOfDay(column);
            if (clock.score() >= 0.9) {
                claims.add(ColumnClaim.of(column, ListMeaning.TIME_OF_DAY, clock.unit(), 0.62, clock.reason()));
            }
        }
        boolean headless = column.heading().matches("#\\d+");
        if (headless && column.mostly(CellForm.CLOCK)) {
            ColumnFit drop = ColumnTimeFit.sinceCharge(column, ListMeaning.DROP);
            if (drop.score() > 0.9 && ColumnTimeFit.timeOfDay(column).score() < 0.9) {
                claims.add(ColumnClaim.of(
                        column, ListMeaning.DROP, drop.unit(), 0.55, drop.reason() + " as long as a roast"));
            }
        }
        if (unnamed
                && column.mostly(CellForm.WORDS)
                && column.wordsEach() >= 3
                && column.distinct() > 0.7 * column.filled()) {
            claims.add(ColumnClaim.of(
                    column, ListMeaning.NOTE, "", 0.61, "holds words, different ones on nearly each row"));
        }
        boolean repeated = column.filled() >= 6 && column.distinct() >= 2 && column.distinct() <= 0.5 * column.filled();
        if (unnamed && repeated && headless && column.mostly(CellForm.WORDS)) {
            claims.add(ColumnClaim.of(
                    column,
                    ListMeaning.LOT,
                    "",
                    0.55,
                    "holds " + column.distinct() + " different words on " + column.filled() + " rows, as lots are"));
        }
    }
}
