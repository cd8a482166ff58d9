/**
 * Holds what watches one number through time: control charts with the run lengths they promise, and the search for dates at which a
 * level changed.
 *
 * <p>Everything is in the unit of the values. Nothing here knows what they measure. For example:
 *
 * <pre>{@code
 * IndividualsChart usual = IndividualsChart.of(firstTwenty);
 * EwmaChart watch = EwmaChart.of(all, usual.center(), usual.standardDeviation());
 * watch.signals();                                   // where the weighted mean left its limits
 * RunLength.ofEwma(0.2, 2.962).at(0);                // false alarms: one in about 500 values
 *
 * LevelChanges changes = LevelChanges.exact(flows, 15, 3);
 * changes.positions(1);                              // the best single date
 * }</pre>
 */
@NullMarked
package parchment.stats.process;

import org.jspecify.annotations.NullMarked;
