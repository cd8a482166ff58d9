/**
 * Puts many batches on one clock, or along the temperature, and draws them over each other.
 *
 * <p>The <em>pace</em> of a batch is its speed seen along the temperature: {@code PaceChart.of(logbook)} draws the rate of rise at each
 * bean temperature, {@code OverlayChart.of(logbook, Clock.SINCE_FIRST_CRACK_START)} the temperatures on a clock that starts at a mark.
 */
@NullMarked
package parchment.align;

import org.jspecify.annotations.NullMarked;
