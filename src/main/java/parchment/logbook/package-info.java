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
 */
@NullMarked
package parchment.logbook;

import org.jspecify.annotations.NullMarked;
