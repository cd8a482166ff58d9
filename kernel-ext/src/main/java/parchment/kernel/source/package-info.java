/**
 * The text of a cell before anything runs: its statements, its brackets, whether it is whole.
 */
@NullMarked
package parchment.kernel.source;

import org.jspecify.annotations.NullMarked;
