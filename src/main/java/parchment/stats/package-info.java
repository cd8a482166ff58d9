/**
 * The numerical methods: local regression, linear and nonlinear least squares, mixed models of scores as numbers and as ordered steps,
 * Gaussian processes and forests, resampling by group.
 *
 * <p>Nothing here knows of coffee. Inputs are plain arrays of numbers and lists of group labels; a missing number is NaN and is
 * left out, and every result says how many rows it used and how many it left out. Randomness always takes a seed. For example, a
 * slope with its standard error along a sampled curve:
 *
 * <pre>{@code
 * LocalFit fit = LocalRegression.of(15).fit(seconds, readings);   // half-window of 15 seconds
 * fit.point(0).slope();                                           // units of the reading per second
 * }</pre>
 *
 * <p>and a panel of scores with two crossed groups:
 *
 * <pre>{@code
 * LinearMixedModel model = MixedDesign.of("score", scores)
 *         .withCovariate("x", x)
 *         .withRandom(RandomTerm.intercept("judge", judges))
 *         .withRandom(RandomTerm.intercept("session", sessions))
 *         .fit();
 * model.term("x").interval(0.90);
 * }</pre>
 */
@NullMarked
package parchment.stats;

import org.jspecify.annotations.NullMarked;
