/** Facts of machines over all recorded batches: their days, written periods of a probe, dates that stray. */
@NullMarked
package parchment.calendar.machine;

import org.jspecify.annotations.NullMarked;
