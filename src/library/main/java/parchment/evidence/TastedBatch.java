package parchment.evidence;

import java.time.LocalDate;

/**
 * What the model of the scores needs of one scored batch.
 *
 * @param position the place in the batches that it is kept with, from 0
 * @param lot the lot, or the same words for all if no lot is written in the logbook
 * @param lotPeriod a key of the lot within one probe period of one machine, not for the reader: readings inside it are comparable
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
    /** No name read from a file holds it. */
    private static final String KEY = "\n";

    /**
     * A reading as it would be on today's probe.
     *
     * @param value as the library keeps the feature
     * @param lot a key of the lot on its machine, without its probe period; {@link #lotWords} puts it into words
     * @param period what all batches of one probe period share
     * @param sharedError the standard error of what was added, one and the same for all batches of the period; 0 if nothing was
     * @param probe the machine whose probe it hangs on, not for the reader; empty for what hangs on no probe
     */
    record Today(double value, String lot, String period, double sharedError, String probe) {
        /** Holds a value of which the probe does not matter. */
        Today(double value, String lot, String period, double sharedError) {
            this(value, lot, period, sharedError, "");
        }
    }

    /** Returns the key of a lot on a machine; no two lots or machines share one, whatever their names. */
    static String lotKey(String lot, String machine) {
        return lot + KEY + machine;
    }

    /** Returns the lot of such a key. */
    static String lotOf(String key) {
        return key.split(KEY, 2)[0];
    }

    /** Puts such a key into words, as in "Amber on barrel"; a lot without a machine in its key is its own name. */
    static String lotWords(String key) {
        String[] parts = key.split(KEY, 2);
        return parts.length < 2 ? key : parts[0] + (parts[1].isEmpty() ? " (machine not written)" : " on " + parts[1]);
    }

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
                new Today(value, today.lot(), today.period(), 0, today.probe()));
    }
}
