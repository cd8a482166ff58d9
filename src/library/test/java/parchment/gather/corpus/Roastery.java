package parchment.gather.corpus;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import parchment.logbook.MarkKind;

/**
 * Holds what truly happened in an invented roastery, before it is written down in a strange folder.
 *
 * @param batches the roasts, in the order of their charges
 * @param tastings the cups that were scored
 */
public record Roastery(List<Roast> batches, List<Tasting> tastings) {

    /**
     * Holds one roast.
     *
     * @param number the roaster's running number, such as 101
     * @param chargedAt the charge, in local time
     * @param lot the green coffee
     * @param greenKilograms mass of the green coffee
     * @param roastedKilograms mass after cooling
     * @param marks seconds since the charge, of yellowing, first crack start and drop at least
     * @param readings one a second from before the charge until after the drop
     * @param note free words, "" for most
     */
    public record Roast(
            int number,
            LocalDateTime chargedAt,
            String lot,
            double greenKilograms,
            double roastedKilograms,
            Map<MarkKind, Double> marks,
            List<Reading> readings,
            String note) {}

    /**
     * Holds what the probes and the gas lever said at one instant.
     *
     * @param seconds since the charge; negative before it
     * @param beanCelsius the bean probe
     * @param airCelsius the probe in the exhaust
     * @param gasPercent the gas
     */
    public record Reading(double seconds, double beanCelsius, double airCelsius, double gasPercent) {}

    /**
     * Holds one cupper's scores of one cup.
     *
     * @param cupping the cupping's running number
     * @param tastedOn its day
     * @param cupper an invented first name
     * @param batch the batch's running number
     * @param code the blind code of that batch in that cupping
     * @param scores by attribute (acidity, sweetness, body, overall), from 0 to 10 in quarter points
     */
    public record Tasting(
            int cupping, LocalDate tastedOn, String cupper, int batch, String code, Map<String, Double> scores) {}
}
