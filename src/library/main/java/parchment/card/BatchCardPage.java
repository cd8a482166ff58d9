package parchment.card;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import parchment.align.Nearest;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.drift.Usual;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.logbook.contents.EmptyLogbook;
import parchment.period.ProbePeriods;
import parchment.phase.found.Mark;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;

/** Lays the card of a batch out as a page. */
final class BatchCardPage {
    private static final int NEAREST = 3;

    private BatchCardPage() {}

    static Showable of(Usual usual, InShort inShort, Logbook logbook, Optional<String> dates) {
        Batch batch = usual.batch();
        if (EmptyLogbook.isStandIn(batch)) {
            return Report.titled("The newest batch").add(inShort);
        }
        Report page = Report.titled("Batch " + batch.name()
                + batch.lot().map(lot -> " of " + lot).orElse("")
                + batch.roastDay().map(day -> ", " + day).orElse(""));
        if (logbook.provenance() == Logbook.Provenance.INVENTED) {
            page = page.caution(Cautions.INVENTED_PAGE);
        }
        page = page.add(inShort);
        page = dates.map(page::say).orElse(page);
        List<Batch> laid = new ArrayList<>(usual.others());
        laid.add(batch); // Last, so that it is the one set off.
        page = LaidOver.isDrawn(batch, logbook)
                ? page.add(LaidOver.of(laid, List.of(batch), logbook))
                : page.say("It has no bean temperature to draw, or none that is known on today's probe.");
        for (String sentence :
                TodaysReadings.of(logbook).sentences(List.of(batch), drop(batch, logbook), "at the drop")) {
            page = page.say(sentence);
        }
        if (usual.verdict() != Usual.Verdict.CANNOT_TELL) {
            page = page.add(usual.byFeature());
        }
        page = said(page.heading("Its day"), BatchDay.sentences(batch, logbook));
        page = said(page.heading("What was written"), BatchWritten.sentences(batch, logbook));
        BatchCups cups = BatchCups.of(batch, logbook);
        page = page.heading("Its cups").say(cups.words());
        Optional<Table> scores = cups.table();
        page = scores.isPresent() ? page.add(scores.get()) : page;
        page = nearest(page.heading("Batches most like it"), batch, logbook);
        page = page.fold(
                Report.titled("How this was worked out")
                        .say(Sentence.of(usual.toString()) + ".")
                        .say(
                                "What differed went with this batch; it need not be what made the cup. Unlike is not bad: the cup decides."));
        page = page.heading("Before you roast");
        for (String caution : Cautions.forAPage()) {
            page = page.caution(caution);
        }
        return page;
    }

    private static Report said(Report page, List<String> sentences) {
        Report longer = page;
        for (String sentence : sentences) {
            longer = longer.say(sentence);
        }
        return longer;
    }

    private static double drop(Batch batch, Logbook logbook) {
        return SideBySide.middle(SideBySide.of(List.of(batch), logbook).values(Features.dropTemperature()));
    }

    private static double asRead(Nearest.Neighbour one) {
        return one.drop()
                .flatMap(Mark::beanTemperature)
                .map(Temperature::celsius)
                .orElse(Double.NaN);
    }

    private static double drop(Nearest.Neighbour one, TodaysReadings readings) {
        return readings.today(one.batch(), asRead(one));
    }

    private static Report nearest(Report page, Batch batch, Logbook logbook) {
        Optional<Nearest> found = Nearest.ifKnown(batch, logbook);
        if (found.isEmpty() || found.get().list().isEmpty()) {
            return page.say(
                    found.isEmpty()
                            ? "It has no path of bean temperature to hold against others."
                            : found.get().whyNone());
        }
        List<Nearest.Neighbour> rows = new ArrayList<>();
        rows.addAll(found.get().ofSameLot().stream().limit(NEAREST).toList());
        rows.addAll(found.get().ofOtherLots().stream().limit(NEAREST).toList());
        rows.sort(Comparator.comparingDouble(Nearest.Neighbour::secondsElsewhere));
        TodaysReadings readings = TodaysReadings.of(logbook);
        boolean onToday = rows.stream()
                .filter(one -> one.drop().flatMap(Mark::beanTemperature).isPresent())
                .allMatch(one -> Double.isFinite(drop(one, readings)));
        return page.add(Table.titled("Nearest by path, on the same probe")
                .withText("batch", rows, one -> one.batch().name())
                .withText("lot", rows, one -> one.batch().lot().orElse(""))
                .withText(
                        "roasted on",
                        rows,
                        one -> one.batch().roastDay().map(LocalDate::toString).orElse(""))
                .withText(
                        "at other temperatures for",
                        rows,
                        one -> Unit.SECONDS.formatOnClock(one.secondsElsewhere(), logbook.readerUnit()))
                .withText(
                        "drop",
                        rows,
                        one -> one.drop().map(mark -> mark.at().toString()).orElse(""))
                .withNumber(
                        "drop temperature",
                        Unit.TEMPERATURE,
                        logbook.readerUnit(),
                        rows,
                        one -> onToday ? drop(one, readings) : asRead(one))
                .withDashForMissing("not written or not measured")
                .withNote("The nearest first: three of its lot and three of others, where there are so many."
                        + " For how long one of the two was at other bean temperatures than the other, in minutes and seconds, stands beside it. "
                        + (ProbePeriods.of(logbook).isTodays(batch)
                                ? ""
                                : onToday
                                        ? "Temperatures are as today's probe would show them. "
                                        : "Temperatures are as read then. ")
                        + "Alike on paper is not alike in the cup."));
    }
}
