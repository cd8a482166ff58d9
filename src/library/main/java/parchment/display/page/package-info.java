/** Linked pictures of many batches on one page, and the choice made there; {@code feature.Explorer} is what a cell says. */
@NullMarked
package parchment.display.page;

import org.jspecify.annotations.NullMarked;
