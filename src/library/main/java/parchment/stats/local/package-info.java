/**
 * Local regression along a sampled curve, with standard errors that know that neighbouring samples share noise.
 *
 * <pre>{@code
 * LocalFit fit = LocalRegression.of(15).fit(seconds, readings);   // half-window of 15 seconds
 * fit.point(0).slope();                                           // units of the reading per second
 * }</pre>
 */
@NullMarked
package parchment.stats.local;

import org.jspecify.annotations.NullMarked;
