package parchment.card;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import parchment.calendar.machine.StrayDates;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;

/**
 * Makes a card of a lot to take to the machine before its next batch: the last batches that went well, laid side by side, and how far they agree.
 *
 * <pre>{@code
 * LotCard.of("Cinder Ridge", logbook)
 * }</pre>
 *
 * <p>Batches went well by blind scores where at least three of the lot have them, else by other scores, else because they were as usual, else they
 * are simply the last; the card says which. They are on the machine, by the recipe and of the charge
 * of the lot's newest batch; {@link #withCharge} asks for another charge. All temperatures are as today's probe
 * would show them. It shows what was, and is no plan.
 */
public final class LotCard implements ShownAs {
    private final Logbook logbook;
    private final GoodBatches good;
    private final InShort inShort;
    private final Showable page;

    private LotCard(Logbook logbook, GoodBatches good, InShort inShort, Showable page) {
        this.logbook = logbook;
        this.good = good;
        this.inShort = inShort;
        this.page = page;
    }

    /**
     * Makes the card of a lot.
     *
     * @throws parchment.logbook.contents.LogbookException if the logbook has no lot of that name; the message names the nearest
     */
    public static LotCard of(String lot, Logbook logbook) {
        return of(GoodBatches.of(lot, logbook), logbook);
    }

    private static LotCard of(GoodBatches good, Logbook logbook) {
        return of(good, logbook, Optional.empty());
    }

    private static LotCard of(GoodBatches good, Logbook logbook, Optional<LocalDate> today) {
        Optional<BestPlace.Place> best = BestPlace.of(good, logbook);
        InShort inShort = LotCardPage.inShort(good, best, logbook);
        Optional<String> doubt = today.flatMap(day -> StrayDates.afterToday(logbook.whole(), day));
        return new LotCard(logbook, good, inShort, LotCardPage.of(good, best, inShort, logbook, doubt));
    }

    /** Returns the card as it is read on a day: where dates of the logbook lie after it, the card says so; without it none are doubted. */
    public LotCard readOn(LocalDate day) {
        return of(good, logbook, Optional.of(day));
    }

    /**
     * Returns the card of the lot's batches of another charge than that of its newest: those within a tenth of a green mass.
     *
     * @throws parchment.logbook.contents.LogbookException if no batch of the lot was charged with about as much; the message names the charges used
     */
    public LotCard withCharge(Mass green) {
        return of(GoodBatches.of(lot(), logbook, Optional.of(green)), logbook);
    }

    /** Returns the lot. */
    public String lot() {
        return good.lot();
    }

    /** Returns the batches on the card, the earliest first; empty if none of the lot was roasted. */
    public List<Batch> batches() {
        return good.batches();
    }

    /** Returns the card in three sentences: what the batches had in common, how sure it is that they went well, what to do with it. */
    public InShort inShort() {
        return inShort;
    }

    @Override
    public Showable shownAs() {
        return page;
    }

    @Override
    public String toString() {
        int shown = good.batches().size();
        return "Lot card of " + good.lot() + ": "
                + (shown == 0
                        ? "no batch of it was roasted"
                        : shown + (shown == 1 ? " batch, " : " batches, ") + GroundWords.shortly(good));
    }
}
