/**
 * Holds regressions of rows in order of time that share an effect of their day, the days resembling their neighbours.
 */
@NullMarked
package parchment.stats.series;

import org.jspecify.annotations.NullMarked;
