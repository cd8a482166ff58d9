/**
 * Hands what a logbook holds to people who filter, join and summarise by themselves, as tables of the library Tablesaw. Nothing is worked out here:
 * every number comes from the room that owns it.
 *
 * <pre>{@code
 * Tables.batches(logbook)                       // a row for each batch, with all its features
 * Tables.marks(logbook)                         // a row for each mark of each batch
 * Tables.cups(logbook)                          // a row for each cup that somebody scored
 * Tables.cups(logbook).countBy("cupper")        // Tablesaw's own words from here on
 * }</pre>
 *
 * <p>Tablesaw is needed only by whoever asks for a table; in a notebook of Parchment it is there.
 */
@NullMarked
package parchment.table;

import org.jspecify.annotations.NullMarked;
