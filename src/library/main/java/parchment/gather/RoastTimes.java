package parchment.gather;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import parchment.sheet.Words;

/**
 * Tells what times without a name of the trade are: those that rise through a day are times of day, and the marks of a roast follow one
 * another row by row.
 *
 * <p>Shares are common practice, no source: beans turn before 0.25 of the roast, are yellow before 0.65, and crack before 0.98.
 */
final class RoastTimes {
    private static final int FEWEST_PAIRS = 5;
    private static final int MANY_PAIRS = 12;
    private static final double MOST_ODD = 0.09;
    private static final int FEWEST_ROWS = 3;
    private static final double ROWS_AGREE = 0.9;
    private static final double SHORTEST_ROAST = 200;
    private static final double LONGEST_ROAST = 2_000;
    private static final double TURNED = 0.25;
    private static final double YELLOW = 0.65;
    private static final double CRACKED = 0.98;
    private static final double TIME_OF_DAY = 0.93;
    private static final double MARK = 0.7;

    private record Mark(ColumnValues column, String form, double[] seconds, double median) {}

    private RoastTimes() {}

    static List<ColumnClaim> of(List<ColumnValues> columns) {
        List<ColumnClaim> claims = new ArrayList<>();
        Optional<ColumnValues> dates = columns.stream()
                .filter(column -> ColumnDayFit.day(column).score() > 0)
                .findFirst();
        List<Mark> marks = new ArrayList<>();
        for (ColumnValues column : columns) {
            if (!column.mostly(CellForm.CLOCK)) {
                continue;
            }
            if (dates.isPresent() && !isCalledMark(column) && risesThroughDays(column, dates.get())) {
                claims.add(ColumnClaim.of(
                        column,
                        ListMeaning.TIME_OF_DAY,
                        "",
                        TIME_OF_DAY,
                        "holds times that rise row by row on each day"));
                continue;
            }
            ColumnFit form = ColumnTimeFit.form(column);
            double[] seconds = column.seconds(form.unit());
            double median = ColumnValues.quantile(seconds, 0.5);
            if (form.score() > 0
                    && ColumnTimeFit.sinceCharge(column, ListMeaning.DROP)
                            .unit()
                            .equals(form.unit())) {
                marks.add(new Mark(column, form.unit(), seconds, median));
            }
        }
        marks.sort(Comparator.comparingDouble(Mark::median));
        claims.addAll(inOrder(marks));
        return claims;
    }

    /** What a heading says counts before what values look like: drops may rise by chance, or because somebody tried that. */
    private static boolean isCalledMark(ColumnValues column) {
        boolean unit = column.unit().equals(ColumnTimes.MINUTES_AND_SECONDS);
        boolean named = column.named().whole().stream().anyMatch(m -> m.kind() == ListMeaning.Kind.SINCE_CHARGE)
                && !column.named().whole().contains(ListMeaning.TIME_OF_DAY);
        return unit
                || named && ColumnTimeFit.sinceCharge(column, ListMeaning.DROP).score() > 0;
    }

    /** Times of day rise with each row of a day; times since the charge do so by chance, and not five times in a row. */
    private static boolean risesThroughDays(ColumnValues column, ColumnValues dates) {
        int pairs = 0;
        int up = 0;
        int alike = 0;
        boolean stands = false;
        for (int i = 1; i < column.cells().size(); i++) {
            double before = hour(column.cells().get(i - 1));
            double here = hour(column.cells().get(i));
            String day = dates.cells().get(i).strip();
            if (Double.isNaN(here - before)
                    || !day.isEmpty() && !day.equals(dates.cells().get(i - 1).strip())) {
                alike = 0;
                continue;
            }
            // Two machines may be charged in one minute; such a pair says nothing, but three alike are no clock.
            alike = here == before ? alike + 1 : 0;
            stands |= alike > 1;
            pairs += here == before ? 0 : 1;
            up += here > before ? 1 : 0;
        }
        // Where no heading says what it is, one time written wrong may break the row: among many rows that is no
        // chance.
        int odd = Math.min(up, pairs - up);
        boolean nearly = pairs >= MANY_PAIRS
                && odd <= MOST_ODD * pairs
                && !column.named().isKnown();
        return !stands && pairs >= FEWEST_PAIRS && (odd == 0 || nearly);
    }

    private static double hour(String cell) {
        return CellForm.of(cell) == CellForm.CLOCK
                ? WrittenDay.timeOfDay(cell)
                        .map(time -> time.toSecondOfDay() / 3600.0)
                        .orElse(Double.NaN)
                : Double.NaN;
    }

    private static List<ColumnClaim> inOrder(List<Mark> marks) {
        List<ColumnClaim> claims = new ArrayList<>();
        if (marks.size() < 2) {
            return claims;
        }
        Mark last = marks.get(marks.size() - 1);
        if (!(last.median() >= SHORTEST_ROAST && last.median() <= LONGEST_ROAST) || isOther(last, ListMeaning.DROP)) {
            return claims;
        }
        boolean any = false;
        for (Mark mark : marks.subList(0, marks.size() - 1)) {
            double share = mark.median() / last.median();
            ListMeaning meaning = share < TURNED
                    ? ListMeaning.TURNING_POINT
                    : share < YELLOW ? ListMeaning.YELLOWING : ListMeaning.FIRST_CRACK_START;
            boolean follows = share < CRACKED && comesBefore(mark, last);
            any |= follows && share >= YELLOW;
            if (follows && share >= TURNED && !mark.column().named().isKnown()) {
                claims.add(ColumnClaim.of(
                        mark.column(),
                        meaning,
                        mark.form(),
                        MARK,
                        String.format(
                                java.util.Locale.ROOT,
                                "comes at %.2f of %s, as the %s does",
                                share,
                                Words.quote(last.column().heading()),
                                meaning.words())));
            }
        }
        if (any && !last.column().named().isKnown()) {
            claims.add(ColumnClaim.of(
                    last.column(),
                    ListMeaning.DROP,
                    last.form(),
                    MARK,
                    "comes last of the times of a roast, row by row"));
        }
        return claims;
    }

    private static boolean isOther(Mark mark, ListMeaning meaning) {
        return mark.column().named().isKnown() && mark.column().named().strength(meaning) == 0;
    }

    private static boolean comesBefore(Mark mark, Mark last) {
        int rows = 0;
        int before = 0;
        for (int i = 0; i < mark.seconds().length; i++) {
            double step = last.seconds()[i] - mark.seconds()[i];
            rows += Double.isNaN(step) ? 0 : 1;
            before += step > 0 ? 1 : 0;
        }
        return rows >= FEWEST_ROWS && before >= ROWS_AGREE * rows;
    }
}
