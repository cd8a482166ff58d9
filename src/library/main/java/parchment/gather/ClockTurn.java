package parchment.gather;

import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;

/**
 * Finds where times of day fall back as a clock does, so that they can go on rising: from 12:20 to 1:05 where hours count to 12, or from
 * 23:20 to 0:10 past midnight.
 *
 * <p>The hours of a roastery are common practice, no source: nobody begins between 1 and 7 at night after a morning's work.
 */
record ClockTurn(Turn turn, String before, String after) {
    /** Names what happens where the times fall back. */
    enum Turn {
        NOON,
        MIDNIGHT
    }

    private static final int MORNING = 7;
    private static final int LAST_BEFORE_NOON = 12;
    /** From one batch to the next of a day go 5 hours at most: from one day to the next, times fall back by less. */
    private static final Duration LEAST_FALL = Duration.ofHours(7);

    private static final int EVENING = 19;
    private static final int NIGHT = 4;

    /** Returns where the times of a column fall back first; empty if they do not, or not as a clock does. */
    static Optional<ClockTurn> of(List<String> cells) {
        List<LocalTime> times =
                cells.stream().flatMap(cell -> time(cell).stream()).toList();
        boolean twelve = times.stream().allMatch(time -> time.getHour() <= LAST_BEFORE_NOON);
        for (int i = 1; i < cells.size(); i++) {
            Optional<LocalTime> before = time(cells.get(i - 1));
            Optional<LocalTime> after = time(cells.get(i));
            if (before.isEmpty() || after.isEmpty()) {
                continue;
            }
            int from = before.get().getHour();
            int to = after.get().getHour();
            boolean far = Duration.between(after.get(), before.get()).compareTo(LEAST_FALL) >= 0;
            if (twelve && far && isAfterNoon(after.get())) {
                return Optional.of(new ClockTurn(Turn.NOON, cells.get(i - 1), cells.get(i)));
            }
            if (from >= EVENING && to < NIGHT) {
                return Optional.of(new ClockTurn(Turn.MIDNIGHT, cells.get(i - 1), cells.get(i)));
            }
        }
        return Optional.empty();
    }

    private static Optional<LocalTime> time(String cell) {
        return CellForm.of(cell) == CellForm.CLOCK ? WrittenDay.timeOfDay(cell) : Optional.empty();
    }

    private static boolean isAfterNoon(LocalTime time) {
        return time.getHour() >= 1 && time.getHour() < MORNING;
    }

    /** Returns a time of a clock of 12 hours as one of 24: 1:05 is 13:05. */
    static LocalTime afterNoon(LocalTime time) {
        return isAfterNoon(time) ? time.plusHours(12) : time;
    }

    /** Returns the hours since midnight of the day on which the work began. */
    double hours(double hour) {
        return turn == Turn.NOON ? hour >= 1 && hour < MORNING ? hour + 12 : hour : hour < NIGHT ? hour + 24 : hour;
    }

    /** Returns the rest of a sentence that begins with the column. */
    String reason() {
        String falls = "holds times that fall back from " + before + " to " + after;
        return turn == Turn.NOON
                ? falls + ", as where hours count to 12, so those before " + MORNING
                        + ":00 are after noon (time of day [24 h] if they are at night)"
                : falls + ", as past midnight: each is written on the day that its row names";
    }
}
