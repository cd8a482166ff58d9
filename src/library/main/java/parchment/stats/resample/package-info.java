/**
 * Resampling by whole groups: folds that leave groups out, bootstrap and jackknife of groups, permutation within blocks, and intervals that hold
 * for a new group whatever the shape of the errors.
 */
@NullMarked
package parchment.stats.resample;

import org.jspecify.annotations.NullMarked;
