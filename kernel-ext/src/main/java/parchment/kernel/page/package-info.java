/**
 * What others see of a cell: the page that it writes to, a value in the forms that a page can show, and how the cell ended.
 */
@NullMarked
package parchment.kernel.page;

import org.jspecify.annotations.NullMarked;
