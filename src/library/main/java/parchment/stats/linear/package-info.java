/**
 * What all other packages of the numerics stand on: vectors, small systems and their inverses, orthonormal columns, quantiles, one search for
 * the lowest place of a smooth function, and refusals in one way. A matrix that is singular to working precision has no inverse here: it is
 * nothing ({@link java.util.Optional}), never a number.
 */
@NullMarked
package parchment.stats.linear;

import org.jspecify.annotations.NullMarked;
