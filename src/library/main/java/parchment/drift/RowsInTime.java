package parchment.drift;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import parchment.stats.series.WanderingDays;

/** When the rows of a watch were roasted: the stretch that limits are set from, and those behind it. */
final class RowsInTime {
    private final int[] day;
    private final double[] dates;
    private final int stretch;

    /**
     * @param day number of each row's roast day, from 0, never falling
     * @param dates date of each roast day, in days
     * @param stretch how many of the first rows to estimate from
     */
    RowsInTime(int[] day, double[] dates, int stretch) {
        this.day = day.clone();
        this.dates = dates.clone();
        this.stretch = stretch;
    }

    /** When rows were roasted, as a value that can be compared. */
    record Times(List<Integer> days, List<Double> dates, int stretch) {}

    Times times() {
        return new Times(
                Arrays.stream(day).boxed().toList(),
                Arrays.stream(dates).boxed().toList(),
                stretch);
    }

    int size() {
        return day.length;
    }

    int stretch() {
        return stretch;
    }

    WanderingDays days() {
        return new WanderingDays(day, dates);
    }

    RowsInTime head(int rows) {
        int[] first = Arrays.copyOf(day, rows);
        return new RowsInTime(first, Arrays.copyOf(dates, first[rows - 1] + 1), Math.min(rows, stretch));
    }

    /** The rows as they follow each other, each a day of its own. */
    RowsInTime oneByOne() {
        return new RowsInTime(
                IntStream.range(0, day.length).toArray(),
                IntStream.range(0, day.length).asDoubleStream().toArray(),
                stretch);
    }

    /** The stretch, and a future that goes on like it, its days at their usual distance. */
    RowsInTime goingOn(int further) {
        RowsInTime first = head(stretch);
        double gap = first.days().usualGap();
        int[] on = Arrays.copyOf(first.day, stretch + further);
        for (int i = stretch; i < on.length; i++) {
            int like = i % stretch;
            on[i] = on[i - 1] + (like == 0 || day[like] != day[like - 1] ? 1 : 0);
        }
        double[] when = Arrays.copyOf(first.dates, on[on.length - 1] + 1);
        for (int d = first.dates.length; d < when.length; d++) {
            when[d] = when[d - 1] + gap;
        }
        return new RowsInTime(on, when, stretch);
    }
}
