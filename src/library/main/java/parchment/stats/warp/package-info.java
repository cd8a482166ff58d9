/**
 * Holds what puts curves of different speed on one clock: warps, dynamic time warping, elastic alignment, and what is told of a set
 * of curves once they share a clock.
 *
 * <p>A <em>warp</em> is a strictly increasing map from one clock to another; it can be turned round and chained. Landmarks give one
 * directly; {@link parchment.stats.warp.DynamicTimeWarping} and {@link parchment.stats.warp.ElasticAlignment} find one from two
 * curves. Nothing here knows what the curves measure. For example:
 *
 * <pre>{@code
 * Warp toReference = Warp.monotoneCubic(new double[] {0, 250, 500, 640}, new double[] {0, 270, 540, 660});
 * toReference.at(300);                      // where second 300 of this curve falls on the reference clock
 * toReference.inverse().at(540);            // 500
 *
 * WarpingPath path = DynamicTimeWarping.of(StepPattern.SYMMETRIC2).align(query, reference);
 * path.normalisedDistance();                // average cost per step, in the unit of the curves
 *
 * ElasticMatch match = ElasticAlignment.of(200).align(seconds, reference, curve);
 * match.amplitudeDistance();                // what timing cannot explain
 * match.phaseDistance();                    // how far the clocks differ, 0 to pi/2
 * }</pre>
 */
@NullMarked
package parchment.stats.warp;

import org.jspecify.annotations.NullMarked;
