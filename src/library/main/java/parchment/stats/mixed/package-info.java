/**
 * Models of a {@link parchment.stats.mixed.MixedDesign}: least squares, linear mixed models by restricted or full likelihood, what follows from
 * them (degrees of freedom, predictions, simulated responses, shares of variance with their intervals), and forecasts of a new group.
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
package parchment.stats.mixed;

import org.jspecify.annotations.NullMarked;
