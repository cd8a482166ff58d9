/** Scores drawn towards the mean of their group, for pictures that colour batches by score. */
@NullMarked
package parchment.align.score;

import org.jspecify.annotations.NullMarked;
