/**
 * Holds what is learnt from many batches without a model of coffee: whether trees find something in the features that the smooth
 * models miss, which kinds of roast there are, and which batches stand apart at a second look. It never gives a verdict.
 *
 * <p>The only room that uses the library Smile; none of its types shows in a signature. For example:
 *
 * <pre>{@code
 * Yardstick.of("sweetness", logbook)
 * KindsOfRoast.of(logbook)
 * SecondLook.of(logbook)
 * }</pre>
 */
@NullMarked
package parchment.learning;

import org.jspecify.annotations.NullMarked;
