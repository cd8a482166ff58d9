/**
 * The commands behind {@code ./parchment}: open notebooks, run them without Jupyter, test everything.
 *
 * <pre>{@code
 * parchment run notebooks/tour.ipynb --logbook ~/roasts --out out
 * }</pre>
 */
@NullMarked
package parchment.launcher;

import org.jspecify.annotations.NullMarked;
