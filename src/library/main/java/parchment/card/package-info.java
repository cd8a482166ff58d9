/**
 * Makes the pages of one lot and of one batch that a roaster takes to the machine or to the table.
 *
 * <p>{@link parchment.card.LotCard} lays the last good batches of a lot beside one another before its next batch is roasted: their settings, marks
 * and paths on today's probe, and how far they agree. {@link parchment.card.BatchCard} says of one batch what differed: from its lot's others, on its
 * day, in what was written and in its cups. Neither is a plan: they show what was, and never what to do.
 *
 * <pre>{@code
 * var logbook = Logbook.open();
 * LotCard.of("Cinder Ridge", logbook)
 * }</pre>
 *
 * <p>{@link parchment.card.Overview} says before the day begins what a whole logbook has to tell; it is the first page of {@code parchment open}.
 *
 * <p>This room works nothing out by itself: what is usual comes from {@code drift}, paths from {@code align}, numbers from {@code feature}, today's
 * probe from {@code period}, the week from {@code drift}, what is unsettled from {@code evidence}. What each part rests on is told in {@code docs/cards.md}.
 */
@NullMarked
package parchment.card;

import org.jspecify.annotations.NullMarked;
