/**
 * Puts many batches on one clock, or along the temperature, and says how they differ.
 *
 * <p>A <em>warp</em> is the map that carries one batch's clock to a reference clock; the <em>pace</em> of a batch is its speed seen along
 * the temperature. On one clock batches have a mean path with a band, a spread that splits into timing and temperature, and a few shapes
 * along which they differ; some stand apart, each for a reason, and some are most alike. Chance is counted in roast days. Readings of
 * different probes are never laid together in silence.
 *
 * <pre>{@code
 * PaceChart.of(logbook)                                   // the rate of rise at each bean temperature
 * OneClock.of(logbook, Clock.BY_ALL_MARKS)                // mean and band at the same stage
 * SpreadSplit.of(logbook)                                 // how much is timing, how much is temperature
 * Unusual.of(logbook)                                     // which batches went another way, and why
 * Nearest.to(logbook.lastWithCurve(), logbook)            // which roasts were most like this one
 * Difference.betweenLots(logbook)                         // two groups with a band
 * }</pre>
 */
@NullMarked
package parchment.align;

import org.jspecify.annotations.NullMarked;
