package parchment.card;

import java.time.LocalDate;
import java.util.Optional;
import parchment.calendar.machine.StrayDates;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.ShownAs;
import parchment.drift.Usual;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/**
 * Tells on one page what differed in one batch: from its lot's others, on its day, in what was written about it and in its cups.
 *
 * <pre>{@code
 * BatchCard.of(logbook.lastWithCurve(), logbook)
 * }</pre>
 *
 * <p>What is missing is said to be missing: a batch without a curve, a date, a lot or cups has a card of what is left. What differed need not be what made
 * the cup; a card holds what to look at.
 */
public final class BatchCard implements ShownAs {
    private final Usual usual;
    private final InShort inShort;
    private final Showable page;

    private final Logbook logbook;

    private BatchCard(Usual usual, InShort inShort, Showable page, Logbook logbook) {
        this.logbook = logbook;
        this.usual = usual;
        this.inShort = inShort;
        this.page = page;
    }

    /**
     * Makes the card of a batch by its name.
     *
     * @throws parchment.logbook.contents.LogbookException if the logbook has no batch of that name; the message names the nearest
     */
    public static BatchCard of(String batch, Logbook logbook) {
        return of(logbook.batch(batch), logbook);
    }

    /**
     * Makes the card of a batch.
     *
     * @throws parchment.logbook.contents.LogbookException if the logbook has no such batch
     */
    public static BatchCard of(Batch batch, Logbook logbook) {
        Logbook whole = logbook.whole();
        Usual usual = Usual.of(batch, whole);
        // A green mass that could not be read is to be mended first, whatever the cups said.
        InShort inShort = usual.massNotRead().isPresent()
                ? usual.inShort()
                : BatchCups.of(usual.batch(), whole).after(usual.inShort(), usual.verdict());
        return of(usual, inShort, whole, Optional.empty());
    }

    private static BatchCard of(Usual usual, InShort inShort, Logbook whole, Optional<LocalDate> today) {
        Optional<String> doubt = today.flatMap(day -> StrayDates.afterToday(whole, day));
        return new BatchCard(usual, inShort, BatchCardPage.of(usual, inShort, whole, doubt), whole);
    }

    /** Returns the card as it is read on a day: where dates of the logbook lie after it, the card says so; without it none are doubted. */
    public BatchCard readOn(LocalDate day) {
        return of(usual, inShort, logbook, Optional.of(day));
    }

    /** Returns the batch. */
    public Batch batch() {
        return usual.batch();
    }

    /** Returns what the batch is beside its lot's others. */
    public Usual usual() {
        return usual;
    }

    /**
     * Returns the card in three sentences: whether the batch is like its lot's others, how sure that is, and what to do next or, where it was
     * cupped, how it scored.
     */
    public InShort inShort() {
        return inShort;
    }

    @Override
    public Showable shownAs() {
        return page;
    }

    @Override
    public String toString() {
        return "Card of batch " + batch().name() + ": " + usual;
    }
}
