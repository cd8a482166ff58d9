package parchment.otherroastery;

import java.time.LocalDate;

/**
 * Holds when is roasted, and on how many machines.
 *
 * @param days roast days
 * @param batchesEach batches on each
 * @param spanDays calendar days from the first to about the last
 * @param first the first day
 * @param machines one or two; with two the batches take turns
 */
public record RoastDays(int days, int batchesEach, int spanDays, LocalDate first, int machines) {
    public RoastDays {
        if (days < 1 || batchesEach < 1 || spanDays < days || machines < 1 || machines > 2) {
            throw new IllegalArgumentException(
                    "A calendar needs at least one roast day with one batch, a span of at least"
                            + " as many days, and one or two machines; it was given " + days + " roast days, "
                            + batchesEach
                            + " batches, " + spanDays + " days and " + machines + " machines.");
        }
    }

    public static RoastDays of(int days, int batchesEach) {
        return new RoastDays(days, batchesEach, 4 * days, LocalDate.of(2031, 1, 6), 1);
    }

    public RoastDays over(int calendarDays) {
        return new RoastDays(days, batchesEach, calendarDays, first, machines);
    }

    public RoastDays onTwoMachines() {
        return new RoastDays(days, batchesEach, spanDays, first, 2);
    }

    int gap() {
        return spanDays / days;
    }
}
