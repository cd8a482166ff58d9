/**
 * Holds what a roaster wrote down: batches and their curves, lots, machines, cuppings, upkeep, and the problems met in reading it.
 *
 * <p>A logbook is a folder of CSV files that is only ever read. In a notebook:
 *
 * <pre>{@code
 * var logbook = Logbook.open();     // the logbook this session was started with
 * logbook.problems()                // what could not be read as written, line by line
 * logbook.batch("2025-03-04-a")     // one roast
 * }</pre>
 *
 * <p>Reading has three steps: a table or curve file becomes values with units, whatever cannot be read as written becomes a {@link
 * parchment.logbook.written.Problem}, and then names are followed from file to file. {@link parchment.logbook.CurveLayout} describes curve
 * files of another form; {@link parchment.gather.Gather} makes a new logbook of a folder of files that nobody described.
 */
@NullMarked
package parchment.logbook;

import org.jspecify.annotations.NullMarked;
