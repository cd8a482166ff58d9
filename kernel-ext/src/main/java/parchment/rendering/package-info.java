/**
 * Makes of any value something that shows itself: of what Java has (arrays, lists, maps, streams), of what other libraries make (tables,
 * charts, pictures), and of what the reader has said how to show.
 *
 * <p>Classes of other libraries are known by their names and asked by reflection, so that none is loaded before a value of it is there, and
 * so that a value of the reader's own jar shows itself as one of ours does. Everything has bounds, and says so in words where it meets one.
 */
@NullMarked
package parchment.rendering;

import org.jspecify.annotations.NullMarked;
