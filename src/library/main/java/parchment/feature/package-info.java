/**
 * Turns the path of a batch into named numbers with units, and puts many batches into one table.
 *
 * <p>A feature is an object: it has a name, a unit, a definition in words, and says which marks and readings it needs. Measured on a
 * batch it gives a number with a standard error, or the reason why there is none:
 *
 * <pre>{@code
 * BatchTable.of(logbook)                                         // every batch, the usual features
 * BatchTable.of(logbook, dropTemperature(), developmentTime())   // the ones you want
 * Features.all()                                                 // what there is, with definitions
 * Features.column("ground colour")                               // any numeric column of batches.csv
 * }</pre>
 */
@NullMarked
package parchment.feature;

import org.jspecify.annotations.NullMarked;
