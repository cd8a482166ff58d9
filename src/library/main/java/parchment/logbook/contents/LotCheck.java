package parchment.logbook.contents;

import java.time.LocalDate;
import java.util.OptionalDouble;

/**
 * A later measurement of a lot, by which its ageing can be followed.
 *
 * @param lot the lot's name
 * @param measuredOn the day of the measurement
 * @param moisture the moisture, a share from 0 to 1
 * @param waterActivity the water activity, from 0 to 1
 * @param density the density, in grams per litre
 */
public record LotCheck(
        String lot,
        LocalDate measuredOn,
        OptionalDouble moisture,
        OptionalDouble waterActivity,
        OptionalDouble density) {}
