/**
 * Draws lines, bands, points, boundaries and grey spans over two axes, as SVG whose text is text. Knows nothing of coffee.
 *
 * <p>A picture is described as a value first (a {@link parchment.chart.Plot}, or several under each other as
 * {@link parchment.chart.Panels}) and painted when it is shown. Numbers stay as the library keeps them; the axes convert them:
 *
 * <pre>{@code
 * Plot temperatures = Plot.of("", Axis.clock("time since charge"), Axis.of("temperature", Unit.TEMPERATURE, reader))
 *         .with(Line.of("bean temperature", seconds, celsius).withWeight(Weight.STRONG))
 *         .with(Band.of("middle half of 60 batches", seconds, lower, upper))
 *         .with(Boundary.at("first crack start", 510).withUncertainty(5))          // "first crack start 8:30 ± 5 s"
 *         .with(Span.of("drying", 0, 285));
 * Plot controls = Plot.of("", Axis.clock("time since charge"), Axis.number("gas", "%").withLimits(0, 100))
 *         .with(Line.steps("gas", changedAt, settings))
 *         .withHeight(80)
 *         .withEmptySentence("This batch has no controls written down.");
 * Panels.stacked("Batch 112", List.of(temperatures, controls)).withNote("Marks as heard by the roaster.");
 *
 * Plot.of("Sweetness and drop temperature", Axis.of("drop temperature", Unit.TEMPERATURE, reader), Axis.number("sweetness", "points"))
 *         .with(Band.of("95 % interval of the mean", x, lower, upper))
 *         .with(Points.of("one cupping of one batch", drops, scores).withErrorsAlongX(errors).withNames(batches))
 *         .with(Line.of("mean", x, mean))
 *         .withTriedRange(198, 212);
 * }</pre>
 *
 * <p>Lines are named at their right end (names are pushed apart), points, bands and crowds of faint lines in a key under the title,
 * boundaries above their own line. Every picture is 800 units wide, shrinks with the page, has a second layout for
 * narrow pages, and says in words what it shows. Above forty thin lines, those that run close together are drawn as shading.
 */
@NullMarked
package parchment.chart;

import org.jspecify.annotations.NullMarked;
