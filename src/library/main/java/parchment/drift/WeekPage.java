package parchment.drift;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.drift.found.WeekCause;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.contents.Cautions;
import parchment.quantity.TemperatureUnit;

/** Lays the week out as a page. */
final class WeekPage {
    private WeekPage() {}

    static Showable of(Week week) {
        Report page = Report.titled("The week of " + week.logbook().name()).add(week.inShort());
        Report workedOut = Report.titled("How this was worked out");
        if (!week.batches().isEmpty()) {
            boolean known = week.cannotTell().size() < week.batches().size();
            page = known ? page.add(WeekPicture.of(week)) : page;
            page = page.add(batches(week));
            page = causes(page, week);
            page = cupping(page, week);
            workedOut = explained(workedOut, week);
        }
        List<String> problems = WeekProblems.of(week);
        page = problems.isEmpty() ? page : page.heading("To check");
        for (String words : problems) {
            page = page.say(Sentence.of(words));
        }
        page = orders(page, week);
        for (String words : WeekOrders.workedOut(week.ordered())) {
            workedOut = workedOut.say(words);
        }
        if (!week.batches().isEmpty() || !week.orders().isEmpty()) {
            page = page.fold(workedOut);
        }
        page = page.heading("Before you roast");
        for (String caution : Cautions.forAPage()) {
            page = page.caution(caution);
        }
        return page;
    }

    private static Report causes(Report page, Week week) {
        Report longer = page.heading("What stands out");
        List<String> low = WeekCups.low(week.batches(), week.logbook());
        if (week.causes().isEmpty() && low.isEmpty() && WeekCharges.odd(week).isEmpty()) {
            longer = longer.say(
                    week.cannotTell().size() == week.batches().size()
                            ? "Nothing can be told yet."
                            : week.aLittle().isEmpty()
                                    ? "Nothing: no batch, and nothing that is watched."
                                    : "Nothing by much, and nothing that is watched.");
        }
        for (WeekCause cause : week.causes()) {
            longer = cause.sure() == WeekCause.Sure.WEAK ? longer : longer.say(cause.toString());
        }
        for (Usual usual : week.aLittle()) {
            longer = longer.say(Sentence.of("batch " + usual.batch().name() + " was a little unlike: "
                    + String.join("; ", usual.reasons()) + "."));
        }
        for (WeekCause cause : week.causes()) {
            longer = cause.sure() == WeekCause.Sure.WEAK ? longer.say(cause.toString()) : longer;
        }
        for (String words : WeekOldNumbers.of(
                week.logbook(), week.batches().stream().map(Usual::batch).toList())) {
            longer = longer.say(words);
        }
        for (String words : WeekCharges.of(week)) {
            longer = longer.say(words);
        }
        for (String words : low) {
            longer = longer.say(words);
        }
        for (String lot : week.newLots()) {
            long batches = week.batches().stream()
                    .filter(usual -> usual.batch().lot().filter(lot::equals).isPresent())
                    .count();
            longer = longer.say("Lot " + lot + " was roasted for the first time, in " + batches
                    + (batches == 1 ? " batch" : " batches")
                    + ". What is usual for it can be told from the ninth batch on.");
        }
        List<String> early = week.cannotTell().stream()
                .filter(usual -> usual.batch().lot().isEmpty()
                        || !week.newLots().contains(usual.batch().lot().get()))
                .map(usual -> Sentence.of(usual.toString()) + ".")
                .toList();
        for (String words : early) {
            longer = longer.say(words);
        }
        return longer;
    }

    private static Report cupping(Report page, Week week) {
        Report longer = page.heading("Worth cupping");
        List<String> worth = week.worthCupping();
        List<String> cupped = week.oddAndCupped();
        List<String> again = WeekCups.again(week);
        boolean nothing = worth.isEmpty() && cupped.isEmpty() && again.isEmpty();
        for (String words : nothing ? List.of(week.nothingToCup()) : worth) {
            longer = longer.say(Sentence.of(words));
        }
        for (String words : again) {
            longer = longer.say(words);
        }
        for (String words : cupped) {
            longer = longer.say(words);
        }
        return longer;
    }

    private static Report explained(Report workedOut, Week week) {
        Report longer = workedOut.say(
                "A batch is unlike the others if a number of it lies outside of what holds 95 of 100 batches of its lot."
                        + " A number is said to have moved if its last batches stay on one side of what was usual.");
        for (WeekCause cause : week.causes()) {
            if (cause.sure() == WeekCause.Sure.WEAK) {
                continue; // Told once, where it stands out.
            }
            longer = longer.say(Sentence.of(cause.what()) + ". "
                    + (cause.kind() == WeekCause.Kind.BATCH ? "" : cause.howSure() + " ")
                    + (cause.explains().isEmpty()
                            ? ""
                            : (cause.kind() == WeekCause.Kind.BATCH ? "Seen in it: " : "It accounts for: ")
                                    + String.join("; ", cause.explains()) + "."));
        }
        List<String> without = week.found().notWatched();
        for (String words : without) {
            longer = longer.say(words);
        }
        if (week.causes().stream().anyMatch(cause -> cause.sure() == WeekCause.Sure.WEAK)) {
            longer = longer.say("A sign is weak if the interval of its size holds zero: nothing may have moved.");
        }
        List<LocalDate> earlier = WeekProbes.earlier(
                week.logbook(), week.batches().stream().map(Usual::batch).toList());
        if (!earlier.isEmpty()) {
            longer = longer.say("Earlier changes of a bean probe, reckoned with and no news: "
                    + String.join(
                            ", ", earlier.stream().map(LocalDate::toString).toList()) + ".");
        }
        List<String> changes = ProbeShifts.of(week.logbook()).sentences();
        if (ProbeShifts.of(week.logbook()).changes().isEmpty()) {
            for (String words : changes) {
                longer = longer.say(words);
            }
        }
        return longer;
    }

    private static Report orders(Report page, Week week) {
        if (week.orders().isEmpty()) {
            return page;
        }
        Report longer = page.heading("Green coffee for the orders");
        for (String words : week.ordered().blends()) {
            longer = longer.say(words);
        }
        for (GreenNeeded order : week.orders()) {
            longer = longer.say(order.words());
        }
        return WeekOrders.table(week.ordered())
                .map(longer::add)
                .orElse(longer)
                .say("Roasted as it was; a darker roast loses more. Weigh cooled and before sorting.");
    }

    private static double value(Usual usual, Feature feature) {
        return usual.compared().stream()
                .filter(one -> one.feature().name().equals(feature.name()))
                .mapToDouble(Usual.Compared::value)
                .findFirst()
                .orElse(Double.NaN);
    }

    private static Table batches(Week week) {
        List<Usual> rows = week.batches();
        TemperatureUnit reader = week.logbook().readerUnit();
        // The answer stands first: on a narrow screen the numbers behind it are out of sight until the table is moved.
        Table table = Table.titled("Batches of the week")
                .withText("batch", rows, u -> u.batch().name())
                .withText("against its lot", rows, WeekCharges::word)
                .withText(
                        "roasted on",
                        rows,
                        u -> u.batch().roastDay().orElseThrow().toString());
        table = withWritten(table, "lot", rows, u -> u.batch().lot());
        table = withWritten(table, "recipe", rows, u -> u.batch().label(Batch.Label.RECIPE));
        for (var feature : List.of(
                Features.developmentTime(), Features.dropTime(), Features.dropTemperature(), Features.massLoss())) {
            table = feature.unit().isTime()
                    ? table.withText(
                            feature.name(),
                            rows,
                            u -> Double.isFinite(value(u, feature))
                                    ? feature.unit().formatOnClock(value(u, feature), reader)
                                    : "")
                    : table.withNumber(feature.name(), feature.unit(), reader, rows, u -> value(u, feature));
        }
        String attribute = week.logbook().scored("overall", "liking", "sweetness");
        if (rows.stream().anyMatch(u -> Double.isFinite(WeekCups.blindMean(u.batch(), attribute, week.logbook())))) {
            table = table.withNumber(
                    attribute + ", scored blind",
                    "points",
                    1,
                    rows,
                    u -> WeekCups.blindMean(u.batch(), attribute, week.logbook()));
        }
        return table.withDashForMissing("not written, not measured or not cupped")
                .withRowsShown(400);
    }

    /** A column in which nothing is written says nothing, and is in the way. */
    private static Table withWritten(
            Table table, String heading, List<Usual> rows, Function<Usual, Optional<String>> words) {
        return rows.stream().allMatch(row -> words.apply(row).isEmpty())
                ? table
                : table.withText(heading, rows, row -> words.apply(row).orElse(""));
    }
}
