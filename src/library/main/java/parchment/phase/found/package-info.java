/**
 * Marks, moments and phases as values: each with its time, its source and its error. A cell gets them from {@code Phases} and {@code
 * Moments}.
 */
@NullMarked
package parchment.phase.found;

import org.jspecify.annotations.NullMarked;
