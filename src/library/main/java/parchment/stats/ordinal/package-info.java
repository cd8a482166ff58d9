/**
 * Mixed models of scores in few ordered steps: cumulative logits with random intercepts, by Laplace's approximation.
 *
 * <pre>{@code
 * OrdinalMixedModel model = OrdinalMixedModel.fit(design);
 * model.term("x").interval(0.90);
 * }</pre>
 */
@NullMarked
package parchment.stats.ordinal;

import org.jspecify.annotations.NullMarked;
