/**
 * The front room of the numerics: what a result is said with. An estimate with its standard error, an interval, the middle and the spread of
 * numbers, a correlation, the set of places for a turning point, how strong a hidden cause would have to be.
 *
 * <p>The methods themselves lie by subject in packages of their own, which a cell imports by name:
 * {@link parchment.stats.linear} (vectors, solving, quantiles, search for a lowest place), {@link parchment.stats.mixed} (least squares and
 * mixed models), {@link parchment.stats.ordinal} (scores in steps), {@link parchment.stats.local} (smoothing along a sampled curve),
 * {@link parchment.stats.regression} (what is not linear in its columns), {@link parchment.stats.resample} (folds, bootstrap and permutation
 * by group), {@link parchment.stats.series} (rows in time), {@link parchment.stats.warp} (clocks and distances of curves).
 *
 * <p>Nothing here knows of coffee. Inputs are plain arrays of numbers and lists of group labels; a missing number is NaN and is
 * left out, and every result says how many rows it used and how many it left out. Randomness always takes a seed.
 */
@NullMarked
package parchment.stats;

import org.jspecify.annotations.NullMarked;
