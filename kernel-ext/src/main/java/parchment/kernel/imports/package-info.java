/**
 * What the names of a cell can mean: the rooms of the library, what a session imports by itself, what a reader imports, and the class path behind it.
 */
@NullMarked
package parchment.kernel.imports;

import org.jspecify.annotations.NullMarked;
