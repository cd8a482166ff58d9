/**
 * Says how a value of the library shows itself when a notebook cell ends with it: as text, as HTML, as a picture.
 *
 * <p>Nothing here knows of Jupyter: the kernel asks a {@link parchment.display.Showable} for its forms and sends what it gets.
 *
 * <p>A table is made column by column from a list of rows, and a report puts sentences, tables and pictures under one title:
 *
 * <pre>{@code
 * Table table = Table.titled("Phases of batch 112")
 *         .withText("phase", phases, Phase::name)
 *         .withNumber("length", "s", 0, phases, Phase::seconds)      // NaN shows as "missing"
 *         .withNote("Browning is missing: no first crack was logged.");
 * Report report = Report.titled("Batch 112").say("Dropped at 9:19.").add(table).add(chart);
 * }</pre>
 */
@NullMarked
package parchment.display;

import org.jspecify.annotations.NullMarked;
