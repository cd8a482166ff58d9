/**
 * Parts of the answers of this room that other rooms name too: causes of a week, parts of a year, one scale of two probes, cups
 * beside.
 */
@NullMarked
package parchment.drift.found;

import org.jspecify.annotations.NullMarked;
