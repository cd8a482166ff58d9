/**
 * What stands written about a batch, a machine or a cupping beside its curve; a cell gets these values from a batch or a logbook and
 * need not name them.
 */
@NullMarked
package parchment.logbook.written;

import org.jspecify.annotations.NullMarked;
