package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.stats.series.WanderingDays;

class RowsInTimeTest {
    /** Two batches on the third of the month, one on the fifth, two on the ninth; limits from the first three. */
    private static RowsInTime rows() {
        return new RowsInTime(new int[] {0, 0, 1, 2, 2}, new double[] {3, 5, 9}, 3);
    }

    private static List<Integer> days(RowsInTime rows) {
        WanderingDays days = rows.days();
        return IntStream.range(0, rows.size()).mapToObj(days::dayOf).toList();
    }

    @Test
    void theFirstRowsKeepTheirDaysAndNoStretchIsLongerThanTheyAre() {
        assertEquals(5, rows().size());
        assertEquals(3, rows().stretch());
        assertEquals(3, rows().days().usualGap());
        RowsInTime four = rows().head(4);
        assertEquals(List.of(0, 0, 1, 2), days(four));
        assertEquals(3, four.stretch());
        assertEquals(3, four.days().days());
        RowsInTime two = rows().head(2);
        assertEquals(List.of(0, 0), days(two));
        assertEquals(2, two.stretch());
        assertEquals(1, two.days().days());
    }

    @Test
    void rowsOneByOneAreADayApart() {
        RowsInTime single = rows().oneByOne();
        assertEquals(List.of(0, 1, 2, 3, 4), days(single));
        assertEquals(3, single.stretch());
        assertEquals(5, single.days().days());
        assertEquals(1, single.days().usualGap());
    }

    @Test
    void aFutureLikeTheStretchRepeatsItsDaysAtTheirUsualDistance() {
        RowsInTime on = rows().goingOn(5);
        assertEquals(List.of(0, 0, 1, 2, 2, 3, 4, 4), days(on));
        assertEquals(3, on.stretch());
        assertEquals(5, on.days().days());
        assertEquals(2, on.days().usualGap(), "of the stretch, not of all rows");
        RowsInTime uneven = new RowsInTime(new int[] {0, 1, 2, 3}, new double[] {0, 1, 5, 6}, 3);
        assertEquals(2.5, uneven.goingOn(6).days().usualGap());
        RowsInTime oneDay = new RowsInTime(new int[25], new double[] {7}, 20).goingOn(5);
        assertEquals(2, oneDay.days().days());
    }

    @Test
    void aFutureLikeTheStretchIsNotThatOfTheRowsBehindIt() {
        int[] day = IntStream.range(0, 24).map(i -> i / 2).toArray();
        double[] dates =
                IntStream.range(0, 12).mapToDouble(d -> 5 * d + (d % 2)).toArray();
        RowsInTime twenty = new RowsInTime(day, dates, 20);
        RowsInTime on = twenty.goingOn(6);
        assertEquals(26, on.size());
        assertEquals(List.of(9, 10, 10, 11, 11, 12, 12), days(on).subList(19, 26));
        assertEquals(twenty.head(20).days().usualGap(), on.days().usualGap(), 1e-12);
    }

    @Test
    void rowsStayAsTheyWere() {
        int[] day = {0, 0, 1};
        double[] dates = {3, 5};
        RowsInTime rows = new RowsInTime(day, dates, 2);
        day[2] = 0;
        dates[1] = 50;
        assertEquals(List.of(0, 0, 1), days(rows));
        assertEquals(2, rows.days().usualGap());
    }
}
