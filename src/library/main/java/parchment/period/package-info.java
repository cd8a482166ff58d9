/**
 * Holds the probe periods of each machine as they are found: stretches of calendar in which one probe installation gives comparable readings.
 *
 * <pre>{@code
 * ProbePeriods.of(logbook)                                       // changes of the bean probe, written or found
 * ProbePeriods.of(logbook).toToday(logbook.batch("H001"), 205)   // what to add to have a reading on today's probe
 * }</pre>
 *
 * <p>Worked out from marks and curves, so that everything below takes one value: {@link parchment.period.ProbePeriods}.
 */
@NullMarked
package parchment.period;

import org.jspecify.annotations.NullMarked;
