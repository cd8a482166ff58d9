/**
 * What a reader is told while writing: what could stand at the cursor, and what a name is and means.
 */
@NullMarked
package parchment.kernel.help;

import org.jspecify.annotations.NullMarked;
