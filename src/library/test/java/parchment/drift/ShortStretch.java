package parchment.drift;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** A stretch of twelve batches, one a day, with two to come: the kinds of resemblance it may have, and two series that look like one kind or another. */
final class ShortStretch {
    static final int ROWS = 12;

    private ShortStretch() {}

    static LikelyWandering kinds() {
        int[] day = IntStream.range(0, ROWS + 2).toArray();
        RowsInTime rows =
                new RowsInTime(day, Arrays.stream(day).asDoubleStream().toArray(), ROWS);
        double[] level = new double[ROWS + 2];
        Arrays.fill(level, 1);
        return new LikelyWandering(List.of(level), rows, rows.goingOn(2));
    }

    static double[] waves() {
        return IntStream.range(0, ROWS).mapToDouble(i -> Math.sin(i * 0.6)).toArray();
    }

    static double[] alternating() {
        return IntStream.range(0, ROWS)
                .mapToDouble(i -> (i % 2 == 0 ? 1 : -1) + 0.1 * (i % 3))
                .toArray();
    }
}
