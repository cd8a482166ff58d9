/** What goes to and fro between a page and a running session: a value that is on a page, the words sent, what is asked. */
@NullMarked
package parchment.display.live;

import org.jspecify.annotations.NullMarked;
