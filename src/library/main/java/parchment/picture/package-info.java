/**
 * Draws a reader's own question in one line: how the numbers of a feature are spread, whether lots, machines or months differ in it, and where batches
 * lie in two features at once.
 *
 * <pre>{@code
 * Histogram.of(dropTemperature(), logbook)
 * BoxPlot.byLot(dropTemperature(), logbook)
 * HeatMap.of(dropTemperature(), developmentTime(), logbook)
 * }</pre>
 *
 * <p>These three kinds are drawn by the library XChart, in our colours and words; every other picture is ours ({@link parchment.chart}). They show what the
 * logbook holds and conclude nothing: whether a difference is more than chance is asked of {@code evidence} and {@code drift}. XChart is needed only by
 * whoever asks for such a picture; in a notebook of Parchment it is there.
 */
@NullMarked
package parchment.picture;

import org.jspecify.annotations.NullMarked;
