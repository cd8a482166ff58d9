package parchment.drift;

import java.util.ArrayList;
import java.util.List;
import parchment.display.FirstFew;
import parchment.display.Report;
import parchment.display.Sentence;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Cautions;
import parchment.quantity.TemperatureUnit;

/** Lays the week out as a page. */
final class WeekPage {
    private WeekPage() {}

    static Showable of(Week week) {
        Report page = Report.titled("The week of " + week.logbook().name()).say(week.toString() + ".");
        if (!week.batches().isEmpty()) {
            page = page.add(batches(week));
        }
        for (String words : WeekProblems.of(week)) {
            page = page.say(Sentence.of(words));
        }
        page = page.heading("Unlike the others");
        List<Usual> odd = week.batches().stream()
                .filter(u -> u.verdict() != Usual.Verdict.LIKE_THE_OTHERS)
                .toList();
        page = odd.isEmpty() ? page.say("No batch of the week.") : page;
        for (Usual usual : odd) {
            page = page.say(Sentence.of(usual.toString()) + ".");
        }
        page = page.heading("Worth cupping");
        for (String words : orNone(week.worthCupping(), nothingToCup(week))) {
            page = page.say(Sentence.of(words));
        }
        page = page.heading("First signs of drift");
        for (String words : signs(week)) {
            page = page.say(Sentence.of(words));
        }
        if (!week.orders().isEmpty()) {
            page = page.heading("Green coffee for the orders");
            for (GreenNeeded order : week.orders()) {
                page = page.say(Sentence.of(order.toString()) + ".");
            }
            page = page.say("Roasted as it was; a darker roast loses more. Weigh cooled and before sorting.");
        }
        page = page.heading("Before you roast");
        for (String caution : Cautions.forAPage()) {
            page = page.caution(caution);
        }
        return page;
    }

    /** Says why nothing is worth cupping: all was cupped, or what was not cupped can be held against nothing. */
    private static String nothingToCup(Week week) {
        int left = week.notCupped().size();
        int all = week.batches().size();
        if (all == 0) {
            return "No batch was roasted in these days.";
        }
        if (left == 0) {
            return "Every batch of the week was cupped.";
        }
        List<String> names =
                week.notCupped().stream().map(usual -> usual.batch().name()).toList();
        return left == 1
                ? "Batch " + names.get(0)
                        + " of the week was not cupped, and it cannot be held against others of its lot."
                : left + " batches of the week were not cupped (" + FirstFew.of(names)
                        + "), and none of them can be held against others of its lot.";
    }

    /** The steps of the probes first: whatever is watched was read by them. */
    private static List<String> signs(Week week) {
        ProbeShifts shifts = ProbeShifts.of(week.logbook());
        List<String> signs = new ArrayList<>();
        boolean stepped = !shifts.changes().isEmpty();
        if (stepped) {
            signs.addAll(shifts.sentences());
        }
        signs.addAll(orNone(week.signs(), stepped ? "Nothing else in what is watched." : "None in what is watched."));
        if (!stepped) {
            signs.addAll(shifts.sentences());
        }
        return signs;
    }

    private static List<String> orNone(List<String> sentences, String none) {
        return sentences.isEmpty() ? List.of(none) : sentences;
    }

    private static Table batches(Week week) {
        List<Usual> rows = week.batches();
        TemperatureUnit reader = week.logbook().readerUnit();
        Table table = Table.titled("Batches of the week")
                .withText("batch", rows, u -> u.batch().name())
                .withText(
                        "roasted on",
                        rows,
                        u -> u.batch().roastDay().orElseThrow().toString())
                .withText("lot", rows, u -> u.batch().lot().orElse(""))
                .withText(
                        "recipe", rows, u -> u.batch().label(Batch.Label.RECIPE).orElse(""));
        for (var feature : List.of(
                Features.developmentTime(), Features.dropTime(), Features.dropTemperature(), Features.massLoss())) {
            table = table.withNumber(
                    feature.name(),
                    feature.unit(),
                    reader,
                    rows,
                    u -> u.compared().stream()
                            .filter(c -> c.feature().name().equals(feature.name()))
                            .mapToDouble(Usual.Compared::value)
                            .findFirst()
                            .orElse(Double.NaN));
        }
        return table.withText("against its lot", rows, u -> switch (u.verdict()) {
                    case LIKE_THE_OTHERS -> "as usual";
                    case A_LITTLE_UNLIKE_THE_OTHERS -> "a little unlike";
                    case UNLIKE_THE_OTHERS -> "unlike";
                    case CANNOT_TELL -> "cannot tell";
                })
                .withDashForMissing("not written or not measured")
                .withRowsShown(40);
    }
}
