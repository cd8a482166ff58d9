package parchment.evidence;

import java.time.LocalDate;

/**
 * Holds of one scored batch what the model of its scores needs.
 *
 * @param position the place in the batches that it is kept with, from 0
 * @param lot the lot, or the same words for all if no lot is written in the logbook
 * @param lotPeriod the lot within one probe period of one machine: readings inside it are comparable
 * @param operator who roasted, empty if not written
 * @param day the roast day in the logbook's time zone
 * @param batchOfTheDay counted from 1 on its machine
 * @param mass the green mass in kilograms, NaN if not written
 * @param room the room temperature in degrees Celsius, NaN if not written
 * @param measure the feature's value, as the library keeps it
 * @param error the standard error of that value, NaN if not known
 * @param today the same value as it would be read on today's probe
 */
record TastedBatch(
        int position,
        String name,
        String lot,
        String lotPeriod,
        String operator,
        LocalDate day,
        int batchOfTheDay,
        double mass,
        double room,
        double measure,
        double error,
        Today today) {

    /**
     * A reading as it would be on today's probe.
     *
     * @param value as the library keeps the feature
     * @param lot the lot on its machine, without its probe period
     * @param period what all batches of one probe period share
     * @param sharedError the standard error of what was added, one and the same for all batches of the period; 0 if nothing was
     */
    record Today(double value, String lot, String period, double sharedError) {}

    /** Returns the same batch with its reading brought to today's probe, compared inside its lot whatever the period. */
    TastedBatch onTodaysProbe() {
        return new TastedBatch(
                position,
                name,
                lot,
                today.lot(),
                operator,
                day,
                batchOfTheDay,
                mass,
                room,
                today.value(),
                error,
                today);
    }

    TastedBatch at(int newPosition) {
        return new TastedBatch(
                newPosition, name, lot, lotPeriod, operator, day, batchOfTheDay, mass, room, measure, error, today);
    }

    /** Returns the same batch with another value of the feature, known without error. */
    TastedBatch withMeasure(double value, double valueError) {
        return new TastedBatch(
                position,
                name,
                lot,
                lotPeriod,
                operator,
                day,
                batchOfTheDay,
                mass,
                room,
                value,
                valueError,
                new Today(value, today.lot(), today.period(), 0));
    }
}
