/**
 * What a virtual roastery has roasted and written: its batches, lots and cuppings, the curves that its logger kept, the truth behind
 * them.
 */
@NullMarked
package parchment.virtual.written;

import org.jspecify.annotations.NullMarked;
