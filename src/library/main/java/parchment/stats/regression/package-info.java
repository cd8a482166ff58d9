/**
 * Regressions that are not linear in their columns: nonlinear least squares and Gaussian processes. They predict; no verdict about
 * a cup rests on them.
 */
@NullMarked
package parchment.stats.regression;

import org.jspecify.annotations.NullMarked;
