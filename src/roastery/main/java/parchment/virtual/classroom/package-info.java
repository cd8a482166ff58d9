/** The names of a class, and what only its teacher may read. */
@NullMarked
package parchment.virtual.classroom;

import org.jspecify.annotations.NullMarked;
