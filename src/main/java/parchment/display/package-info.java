/**
 * Says how a value of the library shows itself when a notebook cell ends with it: as text, as HTML, as a picture.
 *
 * <p>Nothing here knows of Jupyter: the kernel asks a {@link parchment.display.Showable} for its forms and sends what it gets.
 */
@NullMarked
package parchment.display;

import org.jspecify.annotations.NullMarked;
