package parchment.virtual.written;

import java.util.List;

/**
 * What a logger wrote of one batch, as it goes into the batch's curve file.
 *
 * @param readings in the order written
 */
public record LoggedCurve(List<Reading> readings) {
    /** Copies the list. */
    public LoggedCurve {
        readings = List.copyOf(readings);
    }

    /**
     * Holds one line of a logger.
     *
     * @param seconds since the charge was pressed; negative before
     * @param bean bean temperature, °C
     * @param air air temperature, °C
     * @param gas share of full gas
     * @param airflow share of full airflow
     */
    public record Reading(double seconds, double bean, double air, double gas, double airflow) {}
}
