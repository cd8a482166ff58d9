package parchment.gather;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.sheet.DateOrder;
import parchment.sheet.Numbers;
import parchment.sheet.Value;

/**
 * Gives a recording one clock, in seconds and strictly rising: over midnight, and where a clock that counts from its start began again.
 *
 * @param seconds the times of the kept rows
 * @param rows the places of the kept rows in the file
 * @param restarts the places in the file of the rows where the clock began again
 */
record RecordingTimes(List<Double> seconds, List<Integer> rows, List<Integer> restarts) {
    /** So many rows must rise before and after a clock that began again. */
    private static final int RISING_ROWS = 10;

    /** And by steps of so many usual ones at most. */
    private static final double STEADY = 3;

    /** A clock that began again shows as much at most. */
    private static final double BEGINS_WITHIN = 60;

    static RecordingTimes of(FoundTable file, int time, String form, DateOrder order, Recording.AfterRestart after) {
        List<Double> seconds = new ArrayList<>();
        List<Integer> rows = new ArrayList<>();
        List<Integer> restarts = new ArrayList<>();
        double day = 0;
        for (int i = 0; time >= 0 && i < file.rows().size(); i++) {
            double at = seconds(
                            file.rows().get(i).get(time),
                            form,
                            order,
                            file.sheet().decimal())
                    + day;
            boolean counts = !Recording.CLOCKS.contains(form);
            if (after == Recording.AfterRestart.FOLLOW
                    && counts
                    && !seconds.isEmpty()
                    && at <= seconds.get(seconds.size() - 1)
                    && isRestart(file, time, form, order, i, seconds)) {
                // The clock counts from its start: what follows begins one step later, for how long it was off is not
                // known.
                day = seconds.get(seconds.size() - 1) + step(seconds) - (at - day);
                at = seconds.get(seconds.size() - 1) + step(seconds);
                restarts.add(i);
            }
            double latest = seconds.isEmpty() ? Double.NEGATIVE_INFINITY : seconds.get(seconds.size() - 1);
            if (form.equals(Meaning.TIME_OF_DAY) && at < latest - Recording.HALF_A_DAY) {
                day += 2 * Recording.HALF_A_DAY;
                at += 2 * Recording.HALF_A_DAY;
            }
            if (at > latest) {
                seconds.add(at);
                rows.add(i);
            }
        }
        return new RecordingTimes(seconds, rows, restarts);
    }

    /** A clock begins again where it goes back to near its start, and rises from there row by row. */
    private static boolean isRestart(
            FoundTable file, int time, String form, DateOrder order, int i, List<Double> seconds) {
        if (seconds.size() < RISING_ROWS || i + RISING_ROWS > file.rows().size()) {
            return false;
        }
        double longest = STEADY * step(seconds);
        double before = Double.NaN;
        for (int k = i; k < i + RISING_ROWS; k++) {
            double at = seconds(
                    file.rows().get(k).get(time), form, order, file.sheet().decimal());
            boolean fits = k == i ? at <= seconds.get(0) + BEGINS_WITHIN : at > before && at - before <= longest;
            if (!fits) {
                return false;
            }
            before = at;
        }
        return true;
    }

    private static double step(List<Double> seconds) {
        double[] steps = new double[seconds.size() - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = seconds.get(i + 1) - seconds.get(i);
        }
        Arrays.sort(steps);
        return steps[steps.length / 2];
    }

    private static double seconds(String cell, String form, DateOrder order, Numbers.Decimal decimal) {
        return switch (form) {
            case Meaning.MILLISECONDS -> Numbers.parse(cell, decimal) / 1000;
            case Meaning.HOURS -> Numbers.parse(cell, decimal) * 3_600;
            case Meaning.HOURS_AND_MINUTES -> Value.seconds(cell, Value.TimeUnit.MINUTES_AND_SECONDS, decimal) * 60;
            case Meaning.SHARE_OF_DAY -> Math.round(Numbers.parse(cell, decimal) * 864_000) / 10.0;
            case Meaning.SERIAL ->
                Math.round((Numbers.parse(cell, decimal) + ColumnDayFit.SERIAL_ZERO.toEpochDay()) * 864_000) / 10.0;
            case Meaning.TIME_OF_DAY ->
                Value.timeOfDay(cell).map(t -> t.toNanoOfDay() / 1e9).orElse(Double.NaN);
            case Meaning.DATE_AND_TIME ->
                at(cell, order)
                        .map(at -> at.toEpochSecond(ZoneOffset.UTC) + at.getNano() / 1e9)
                        .orElse(Double.NaN);
            default ->
                Value.TimeUnit.of(form)
                        .map(unit -> {
                            double signed =
                                    unit == Value.TimeUnit.MINUTES_AND_SECONDS ? ColumnTimes.signed(cell) : Double.NaN;
                            return Double.isNaN(signed) ? Value.seconds(cell, unit, decimal) : signed;
                        })
                        .orElse(Double.NaN);
        };
    }

    private static Optional<LocalDateTime> at(String cell, DateOrder order) {
        return Value.local(cell, order)
                .or(() -> WrittenDay.ofCell(cell)
                        .flatMap(day -> day.on(order).flatMap(on -> day.clock().map(on::atTime))));
    }
}
