/**
 * What other rooms take from a logbook as a whole, and what they say of one that cannot answer: its contents, blends, checks of lots,
 * the assumed scale of scores, cautions.
 */
@NullMarked
package parchment.logbook.contents;

import org.jspecify.annotations.NullMarked;
