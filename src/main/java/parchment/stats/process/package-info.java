/**
 * The search for dates at which a level changed, and how a control chart says where it left its limits.
 *
 * <p>Everything is in the unit of the values. Nothing here knows what they measure. For example:
 *
 * <pre>{@code
 * LevelChanges changes = LevelChanges.exact(flows, 15, 3);
 * changes.positions(1);                              // the best single date
 * }</pre>
 */
@NullMarked
package parchment.stats.process;

import org.jspecify.annotations.NullMarked;
