/**
 * Controls that are alive on a page, as models of the core widgets.
 */
@NullMarked
package parchment.kernel.widget;

import org.jspecify.annotations.NullMarked;
