/**
 * Rows in order of time: regressions of rows whose days resemble their neighbours, the search for dates at which a level changed, and how a
 * control chart says where it left its limits.
 *
 * <pre>{@code
 * LevelChanges changes = LevelChanges.exact(flows, 15, 3);
 * changes.positions(1);                              // the best single date
 * }</pre>
 */
@NullMarked
package parchment.stats.series;

import org.jspecify.annotations.NullMarked;
