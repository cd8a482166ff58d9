package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import parchment.chart.Axis;
import parchment.chart.Boundary;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Panels;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.period.IndicatorByDay;
import parchment.period.MachinePeriods;
import parchment.period.ProbeChange;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Interval;

/** Draws each indicator's days against the date, freed of what else moves them, with the level of each probe period. */
final class ShiftsPicture {
    private ShiftsPicture() {}

    static Showable page(ProbeShifts shifts) {
        Report page =
                Report.titled("Probe periods of " + shifts.logbook().name()).add(shifts.inShort());
        for (Showable picture : shifts.pictures()) {
            page = page.add(picture);
        }
        List<ProbeChange> changes = shifts.changes();
        if (!changes.isEmpty()) {
            page = page.say(Sentence.of(shifts.toString()) + ".");
        }
        for (String doubt : shifts.periods().doubts(shifts.logbook().batches())) {
            page = page.say(doubt);
        }
        Report folded = Report.titled("How this was worked out");
        for (String sentence : shifts.sentences()) {
            folded = folded.say(Sentence.of(sentence));
        }
        if (!changes.isEmpty()) {
            folded = folded.add(table(shifts, changes));
        }
        return page.fold(folded.say(
                "Compared at like batch mass, charge temperature, green temperature, batch of the day and time since the"
                        + " last drop (turning point), and at like lot, mass, rate of rise and operator (first crack). A change of"
                        + " both at once is laid to the probe; dirty ducts, a new burner or another habit of charging can also move"
                        + " them. A probe that was moved lags differently too: the offset is that of readings, not of the probe"
                        + " held still."));
    }

    private static Table table(ProbeShifts shifts, List<ProbeChange> changes) {
        TemperatureUnit reader = shifts.reader();
        Unit unit = Unit.TEMPERATURE_STEP.withDigits(1);
        Table table = Table.titled("Changes of the probe")
                .withText("first day with the new readings", changes, c -> c.on().toString())
                .withText("known by", changes, c -> c.kind().words())
                .withText(
                        "90 % date set",
                        changes,
                        c -> c.earliest().equals(c.latest())
                                ? c.earliest().toString()
                                : c.earliest() + " to " + c.latest());
        List<String> names = changes.stream()
                .flatMap(c -> c.offsets().stream())
                .map(o -> o.name())
                .distinct()
                .toList();
        for (String name : names) {
            table = table.withText(
                    "change at " + name + " [" + unit.symbol(reader) + "]",
                    changes,
                    c -> c.offsets().stream()
                            .filter(o -> o.name().equals(name) && Double.isFinite(o.estimate()))
                            .map(o -> numbers(o, unit, reader))
                            .findFirst()
                            .orElse(""));
        }
        return table.withNote(
                "In brackets the 90 % interval. The error of an offset is shared by all batches of a period.");
    }

    private static String numbers(parchment.stats.Estimate offset, Unit unit, TemperatureUnit reader) {
        if (ProbeChange.isExactlyAlike(offset)) {
            return "exactly alike";
        }
        Interval interval = offset.interval(0.90);
        Unit fitting = unit.withDigitsFor(interval.width() / 2, reader);
        return fitting.number(fitting.shownStep(offset.estimate(), reader)) + " ("
                + fitting.number(fitting.shownStep(interval.lower(), reader)) + " to "
                + fitting.number(fitting.shownStep(interval.upper(), reader)) + ")";
    }

    static Showable of(MachinePeriods machine, TemperatureUnit reader) {
        List<Plot> plots = new ArrayList<>();
        for (int j = 0; j < machine.byDay().size(); j++) {
            plots.add(plot(machine, j, reader));
        }
        String title = "What the probe of " + machine.days().words() + " read at like beans";
        return plots.isEmpty()
                ? Plot.of(title, Axis.dates("roast day"), Axis.of("bean temperature", Unit.TEMPERATURE, reader))
                        .withEmptySentence("Too few batches to draw what the probe read through time.")
                : Panels.stacked(title, plots);
    }

    private static Plot plot(MachinePeriods machine, int j, TemperatureUnit reader) {
        IndicatorByDay indicator = machine.byDay().get(j);
        List<LocalDate> dates = indicator.dates();
        double[] x = dates.stream().mapToDouble(LocalDate::toEpochDay).toArray();
        double[] means = indicator.means().stream().mapToDouble(m -> m).toArray();
        double[] level = indicator.level().stream().mapToDouble(m -> m).toArray();
        List<String> names = new ArrayList<>();
        for (int d = 0; d < x.length; d++) {
            int count = indicator.counts().get(d);
            names.add(dates.get(d) + ", " + count + (count == 1 ? " batch" : " batches"));
        }
        String what = switch (indicator.indicator()) {
            case IndicatorByDay.COLD_MACHINE -> "cold reading above the room";
            case IndicatorByDay.EMPTY_DRUM -> "bean probe above air probe, empty";
            default -> "bean temperature at " + indicator.indicator();
        };
        Plot plot = Plot.of(
                        "",
                        Axis.dates("roast day"),
                        Axis.of(what, indicator.isDifference() ? Unit.TEMPERATURE_STEP : Unit.TEMPERATURE, reader))
                .withHeight(170)
                .with(Points.of("mean of a roast day", x, means)
                        .withNames(names)
                        .withColour(Colour.BLUE))
                .with(Line.steps("level", x, level).withColour(Colour.INK));
        for (ProbeChange change : machine.changes()) {
            double from = change.earliest().toEpochDay();
            double to = change.latest().toEpochDay();
            Boundary boundary =
                    Boundary.at("probe: " + change.kind().words(), change.on().toEpochDay());
            plot = plot.with(to > from ? boundary.withUncertainty((to - from) / 2) : boundary);
        }
        return j + 1 < machine.byDay().size()
                ? plot
                : plot.withNote(indicator.batches() + " batches on " + dates.size()
                        + " roast days; batches of other lots, masses and"
                        + " paces are brought to the mean ones by the model.");
    }
}
