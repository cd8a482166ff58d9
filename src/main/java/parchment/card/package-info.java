/** Puts on one page what a roaster wants to know before going on: what a logbook has to tell, the next batch of a lot, one batch. */
@NullMarked
package parchment.card;

import org.jspecify.annotations.NullMarked;
