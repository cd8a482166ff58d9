package parchment.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import parchment.chart.Axis;
import parchment.chart.Boundary;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Panels;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.drift.found.YearPart;
import parchment.logbook.Logbook;
import parchment.period.NearbyWork;
import parchment.period.ProbeChange;
import parchment.quantity.Unit;
import parchment.stats.Estimate;

/** Draws a lot's year: its batches against the date, the probe periods as boundaries, and the parts under each other. */
final class YearPicture {
    private YearPicture() {}

    static Report page(LotYear year) {
        Report page = Report.titled(
                        "The year of " + year.lot() + ": " + year.response().name())
                .add(year.inShort());
        Report workedOut = Report.titled("How this was worked out").say(Sentence.of(year.toString()));
        if (year.model().isEmpty()) {
            return page.fold(workedOut);
        }
        page = page.add(picture(year));
        for (String words : otherWork(year.rows().changes(), year.logbook())) {
            page = page.say(words);
        }
        workedOut = workedOut.add(Table.titled("What moved it")
                .withText("part", year.parts(), YearPart::name)
                .withText("can it be told", year.parts(), p -> switch (p.verdict()) {
                    case TOLD -> "yes";
                    case SUM_ONLY -> "only the sum";
                    case CANNOT_TELL -> "no";
                })
                .withText("change, with its 90 % interval", year.parts(), YearPart::shown)
                .withText("why", year.parts(), YearPart::words)
                .withDashForMissing("nothing to say or no number"));
        var pooled = year.pooledSlopes();
        Estimate drawn = pooled.get(year.lot());
        if (drawn != null) {
            workedOut = workedOut.say("Drawn towards the other lots (" + pooled.size()
                    + " in all) as far as they are alike, its change per" + " 100 days is " + year.shown(drawn) + ".");
        }
        for (String words : year.ageWords()) {
            workedOut = workedOut.say(words);
        }
        List<String> roaster = year.roaster();
        return page.fold(workedOut.say(
                roaster.isEmpty()
                        ? "Nothing of what the roaster did is written in enough batches to be taken into account."
                        : "Compared at like " + String.join(", ", roaster) + "."));
    }

    /** Says of the steps that the picture draws as changes of the probe which other work may be why. */
    static List<String> otherWork(List<ProbeChange> changes, Logbook logbook) {
        return changes.stream()
                .flatMap(change -> NearbyWork.of(change, logbook).stream())
                .map(near -> "The bean probe may read differently since about "
                        + near.change().on() + ". " + near.words())
                .toList();
    }

    static Panels picture(LotYear year) {
        YearModel model = year.model().orElseThrow();
        LotRows rows = year.rows();
        List<Integer> own = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            if (rows.batches().get(i).lot().filter(year.lot()::equals).isPresent()) {
                own.add(i);
            }
        }
        double[] x = own.stream().mapToDouble(i -> rows.day(i).toEpochDay()).toArray();
        double[] y = model.y();
        Unit unit = year.response().unit();
        List<String> names =
                own.stream().map(i -> "batch " + rows.batches().get(i).name()).toList();
        Plot raw = Plot.of("", Axis.dates("roast day"), Axis.of(year.response().name(), unit, year.reader()))
                .withHeight(180)
                .with(Points.of("one batch, as measured", x, pick(y, own))
                        .withNames(names)
                        .withColour(Colour.BLUE));
        double[] roaster = model.contribution(YearModel.Part.ROASTER);
        double[] period = model.contribution(YearModel.Part.PERIOD);
        double[] room = model.contribution(YearModel.Part.ROOM);
        double[] season = model.contribution(YearModel.Part.SEASON);
        double[] age = model.contribution(YearModel.Part.AGE);
        double[] level = model.contribution(YearModel.Part.LEVEL);
        double[] even = new double[y.length];
        double[] line = new double[y.length];
        double last = own.isEmpty() ? 0 : period[own.get(own.size() - 1)];
        for (int i = 0; i < y.length; i++) {
            even[i] = y[i] - roaster[i] - period[i] + last;
            line[i] = level[i] + age[i] + season[i] + room[i] + last;
        }
        Plot like = Plot.of(
                        "",
                        Axis.dates("roast day"),
                        Axis.of(year.response().name() + " at like roasting", unit, year.reader()))
                .withHeight(180)
                .with(Points.of("one batch, on the latest probe and at like roasting", x, pick(even, own))
                        .withNames(names)
                        .withColour(Colour.BLUE))
                .with(Line.of("age, season and room", x, pick(line, own)).withColour(Colour.VERMILLION));
        List<Plot> plots = new ArrayList<>(List.of(raw, like));
        if (model.has(YearModel.Part.SEASON)) {
            plots.add(Plot.of(
                            "",
                            Axis.dates("roast day"),
                            Axis.of(
                                    "part",
                                    year.response().kind() == Response.Kind.SCORE ? Unit.POINTS : stepOf(unit),
                                    year.reader()))
                    .withHeight(120)
                    .with(Line.of("time of year", x, pick(season, own)).withColour(Colour.BLUE))
                    .with(Line.of("since arrival", x, pick(age, own)).withColour(Colour.VERMILLION)));
        }
        plots.set(0, withBoundaries(plots.get(0), rows, x));
        plots.set(1, withBoundaries(plots.get(1), rows, x));
        return Panels.stacked("Through the year: " + year.response().name() + " of " + year.lot(), plots)
                .withNote(String.format(
                        Locale.ROOT,
                        "%d batches of %s; the model rests on %d batches of all lots on the machine, %d are left out (not"
                                + " dated, not measured, or without what the roaster did).",
                        own.size(),
                        year.lot(),
                        rows.size(),
                        rows.leftOut()))
                .withNote(
                        rows.elsewhere() == 0
                                ? "The second picture takes out what the roaster did and puts all on the latest probe."
                                : rows.elsewhere() + " batches of the lot on another machine are not compared.");
    }

    private static Unit stepOf(Unit unit) {
        return unit.equals(Unit.TEMPERATURE) ? Unit.TEMPERATURE_STEP : unit;
    }

    private static Plot withBoundaries(Plot plot, LotRows rows, double[] x) {
        Plot out = plot;
        double low = Arrays.stream(x).min().orElse(0);
        double high = Arrays.stream(x).max().orElse(0);
        for (ProbeChange change : rows.changes()) {
            double at = change.on().toEpochDay();
            if (at >= low && at <= high) {
                out = out.with(Boundary.at("probe changed", at));
            }
        }
        return out;
    }

    private static double[] pick(double[] values, List<Integer> rows) {
        return rows.stream().mapToDouble(row -> values[row]).toArray();
    }
}
