/**
 * Says what the blind scores tell about one feature of the roasts, and how sure one can be.
 *
 * <p>An answer is an {@link parchment.evidence.Evidence}: a verdict with its reasons, the slope within lots with its interval, where
 * the best lies (or that it cannot be told), the gain on roast days left out, what else moved together with the feature, and one
 * picture. What was only watched is an {@link parchment.evidence.finding.Association} and "went with" the score; only batches whose target
 * was drawn by chance before charge make an {@link parchment.evidence.finding.Effect}. "Cannot tell" is an answer, and says which batches
 * would tell.
 *
 * <pre>{@code
 * var logbook = Logbook.open();
 * Evidence.of("sweetness", dropTemperature(), logbook)
 * }</pre>
 *
 * <p>Method, rules, formulas, sources and limits are in {@code docs/evidence.md}.
 */
@NullMarked
package parchment.evidence;

import org.jspecify.annotations.NullMarked;
