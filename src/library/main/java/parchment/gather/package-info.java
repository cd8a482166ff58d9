/**
 * Makes a logbook of whatever a roaster has: recordings of any logger, lists, score sheets and keys. It proposes what each file, column and
 * row is, shows why before it writes, asks little, and writes a new logbook elsewhere; nothing in the old folder is changed.
 */
@NullMarked
package parchment.gather;

import org.jspecify.annotations.NullMarked;
