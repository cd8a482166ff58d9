package parchment.card;

import java.util.List;
import java.util.Optional;
import parchment.chart.Plot;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.drift.OneCharge;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;

/** Lays the card of a lot out as a page. */
final class LotCardPage {
    private LotCardPage() {}

    static Showable of(
            GoodBatches good,
            Optional<BestPlace.Place> place,
            InShort inShort,
            Logbook logbook,
            Optional<String> dates) {
        List<Batch> batches = good.batches();
        Report page = Report.titled("Lot card of " + good.lot());
        if (logbook.provenance() == Logbook.Provenance.INVENTED) {
            page = page.caution(Cautions.INVENTED_PAGE);
        }
        page = page.add(inShort);
        page = dates.map(page::say).orElse(page);
        SideBySide common = SideBySide.of(batches, logbook);
        Optional<String> best =
                place.map(one -> one.words(common.values(Features.dropTemperature()), logbook.readerUnit()));
        page = best.map(page::say).orElse(page);
        if (!batches.isEmpty()) {
            Plot paths = LaidOver.of(batches, batches, logbook);
            page = (paths.isEmpty()
                            ? page.say("No bean temperature was logged of " + (batches.size() == 1 ? "it" : "them")
                                    + ", or none that is known on today's probe.")
                            : page.add(paths))
                    .add(common.table(good));
            Optional<Table> middle = ControlMiddle.of(batches, logbook);
            Optional<Table> each = ControlMoves.of(batches, logbook);
            page = middle.map(page::add).orElse(page);
            page = each.isPresent()
                    ? middle.isPresent()
                            ? page.fold(Report.titled("Gas, air and other controls, batch by batch")
                                    .add(each.get()))
                            : page.add(each.get())
                    : page.say("No gas, air or other control was logged or written of "
                            + (batches.size() == 1 ? "it." : "these batches."));
        }
        double drop = SideBySide.middle(common.values(Features.dropTemperature()));
        for (String sentence :
                TodaysReadings.of(logbook).sentences(batches, drop, Double.isFinite(drop) ? "at the drop" : "")) {
            page = page.say(sentence);
        }
        if (common.leavesOutChargeTemperatures()) {
            page = page.say(
                    "A charge temperature that was read before the probe was changed is left out: what today's probe would have read"
                            + " in the empty drum is not known.");
        }
        if (batches.size() < ScoredLot.ENOUGH) {
            NearLots near = NearLots.of(good.lot(), logbook);
            page = page.say(near.words(good.lot()));
            page = near.isEmpty() ? page : page.add(near.table());
        }
        page = page.fold(Report.titled("How this was worked out").say(GroundWords.atLength(good)));
        page = page.heading("Before you roast");
        for (String caution : Cautions.forAPage()) {
            page = page.caution(caution);
        }
        return page;
    }

    static InShort inShort(GoodBatches good, Optional<BestPlace.Place> place, Logbook logbook) {
        int shown = good.batches().size();
        if (shown == 0) {
            return new InShort(
                    "No batch of " + good.lot() + " was roasted yet.",
                    GroundWords.howSure(good),
                    NearLots.of(good.lot(), logbook).isEmpty()
                            ? "Write down its first batches in full."
                            : "Look at the lots most like it below, and write down its first batches in full.");
        }
        String what = switch (good.ground()) {
            case BLIND_SCORES, OTHER_SCORES ->
                shown == 1
                        ? "The one batch of " + good.lot() + " that went best"
                        : good.isParted()
                                ? shown + " batches of " + good.lot() + " that went well"
                                : "The last " + shown + " scored batches of " + good.lot();
            case AS_USUAL -> "The last " + shown + " usual batches of " + good.lot();
            case THE_LAST ->
                shown == 1 ? "The one batch of " + good.lot() : "The last " + shown + " batches of " + good.lot();
        };
        return new InShort(
                good.charge()
                        .map(charge -> ofCharge(charge, good) + dropped(good, logbook))
                        .orElseGet(() -> what + (shown == 1 ? " was " : " were ") + dropped(good, logbook)),
                GroundWords.howSure(good),
                place.filter(one -> one.disagrees(
                                SideBySide.of(good.batches(), logbook).values(Features.dropTemperature()),
                                logbook.readerUnit()))
                        .map(one -> one.elsewhere(logbook.readerUnit()))
                        .orElse(
                                "Take it as what was seen and not as a target: beans, room and machine change from day to day."));
    }

    /** Says the charge first, and that there are too few of it where there are. */
    private static String ofCharge(OneCharge charge, GoodBatches good) {
        int shown = good.batches().size();
        String of = charge.words() + " charges of " + good.lot()
                + good.askedWords()
                        .map(asked -> " (the nearest to " + asked + ")")
                        .orElse("") + ": ";
        if (shown >= ScoredLot.ENOUGH) {
            return of
                    + switch (good.ground()) {
                        case BLIND_SCORES, OTHER_SCORES ->
                            good.isParted() ? shown + " that went well were " : "the last " + shown + " scored were ";
                        case AS_USUAL -> "the last " + shown + " usual ones were ";
                        case THE_LAST -> "the last " + shown + " were ";
                    };
        }
        return of + "only " + shown
                + (good.isParted() ? " went well, " : shown == 1 ? " was roasted, " : " were roasted, ");
    }

    private static String dropped(GoodBatches good, Logbook logbook) {
        SideBySide common = SideBySide.of(good.batches(), logbook);
        String at = common.words(Features.dropTemperature());
        String after = common.words(Features.dropTime());
        return at.isEmpty() && after.isEmpty()
                ? "written down without a drop."
                : "dropped" + (at.isEmpty() ? "" : " at " + at) + (after.isEmpty() ? "" : " after " + after) + ".";
    }
}
