/**
 * Holds the facts of days and machines, each worked out in one place, over all recorded batches whatever a filter left out.
 *
 * <pre>{@code
 * RoastCalendar.of(logbook)         // roast day, batch of the day, time since the last drop, rest days
 * WrittenPeriods.of(logbook)        // which bean probe read a batch, as far as the upkeep says
 * MachineDays.of(logbook)           // the roast days of each machine
 * }</pre>
 *
 * <p>A roast day is the calendar day of the charge in the logbook's time zone ({@link parchment.logbook.Batch#roastDay()}). Every later room asks
 * here and keeps no rule of its own.
 */
@NullMarked
package parchment.calendar;

import org.jspecify.annotations.NullMarked;
