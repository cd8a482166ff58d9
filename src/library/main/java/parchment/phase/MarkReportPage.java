package parchment.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.chart.Axis;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.chart.Weight;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.logbook.MarkKind;
import parchment.phase.MarkReport.Comparison;
import parchment.phase.MarkReport.Summary;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Shows how well marks can be foretold, on one page. */
final class MarkReportPage {
    private static final Unit WHOLE_SHARE = Unit.SHARE.withDigits(0);

    private MarkReportPage() {}

    static String sentence(Summary summary, TemperatureUnit reader) {
        String kind = Sentence.of(summary.kind().words());
        if (summary.cannotTell()) {
            return String.format(
                    Locale.ROOT,
                    "%s: cannot tell how well it is foretold, with %d written %s on %d roast %s (%d on %d days are needed).",
                    kind,
                    summary.compared(),
                    summary.compared() == 1 ? "mark" : "marks",
                    summary.days(),
                    summary.days() == 1 ? "day" : "days",
                    HabitModel.FEWEST_MARKS,
                    HabitModel.FEWEST_DAYS);
        }
        return String.format(
                Locale.ROOT,
                "%s: half of the %d written marks lie within %.0f s and %s of what the other roast days foretell; the 1-in-2 interval"
                        + " holds %s, the 9-in-10 interval %s (%d days).",
                kind,
                summary.compared(),
                summary.medianSeconds(),
                Unit.TEMPERATURE_STEP.formatStep(summary.medianCelsius(), reader),
                WHOLE_SHARE.formatWithError(summary.within50(), summary.error50(), reader),
                WHOLE_SHARE.formatWithError(summary.within90(), summary.error90(), reader),
                summary.days());
    }

    static String question(Comparison comparison, TemperatureUnit reader) {
        MarkPrediction prediction = comparison.prediction();
        String at = Double.isNaN(comparison.writtenCelsius())
                ? "outside the rising curve"
                : "where the bean probe read " + Unit.TEMPERATURE.format(comparison.writtenCelsius(), reader);
        String usual = prediction.isMissing()
                ? "the habit of the other days is around " + Unit.TEMPERATURE.format(prediction.celsius(), reader)
                        + ", which this curve never reached"
                : String.format(
                        Locale.ROOT,
                        "the habit of the other days is around %s, which this curve passes at %s (9 in 10 from %s)",
                        Unit.TEMPERATURE.format(prediction.celsius(), reader),
                        Elapsed.seconds(prediction.seconds()),
                        prediction.most());
        return String.format(
                Locale.ROOT,
                "Batch %s: %s is written at %s, %s; %s. It is kept as written: please look whether the time was mistyped, or"
                        + " something was different that day.",
                prediction.batch(),
                prediction.kind().words(),
                Elapsed.seconds(comparison.writtenSeconds()),
                at,
                usual);
    }

    static Report of(MarkReport report) {
        TemperatureUnit reader = report.reader();
        List<Summary> summaries = LearntHabit.KINDS.stream().map(report::of).toList();
        Report page = Report.titled("How well the marks of " + report.habit().name() + " can be foretold")
                .add(report.inShort());
        for (Summary summary : summaries) {
            if (!summary.cannotTell()) {
                page = page.add(report.picture(summary.kind()));
            }
        }
        List<String> questions = report.questions();
        if (!questions.isEmpty()) {
            page = page.heading("Please check");
            for (String question : questions) {
                page = page.say(question);
            }
        }
        Report folded = Report.titled("How this was worked out");
        for (Summary summary : summaries) {
            folded = folded.say(sentence(summary, reader));
        }
        return page.fold(folded.add(table(summaries, reader))
                .say(
                        "Written marks of this logbook: show LearntHabit.of(logbook) for the habit that was learnt. Foretold is what this"
                                + " roaster would have written, not when the beans turned or cracked."));
    }

    private static Table table(List<Summary> rows, TemperatureUnit reader) {
        return Table.titled("Written against foretold")
                .withText("mark", rows, s -> s.kind().words())
                .withText("rests on", rows, s -> s.basis().words())
                .withNumber("written", "", 0, rows, Summary::compared)
                .withNumber("roast days", "", 0, rows, Summary::days)
                .withNumber("left out", "", 0, rows, Summary::leftOut)
                .withNumber("median distance", "s", 0, rows, s -> told(s, s.medianSeconds()))
                .withNumber("median distance", Unit.TEMPERATURE_STEP, reader, rows, s -> told(s, s.medianCelsius()))
                .withText("1-in-2 holds", rows, s -> share(s, s.within50(), s.error50()))
                .withText("9-in-10 holds", rows, s -> share(s, s.within90(), s.error90()))
                .withNote(
                        "Each roast day is foretold from the other days. The true share lies within its ± about two times in three, with the roast days as the units.")
                .withNote("Left out: written marks without a curve from which they could be foretold.");
    }

    private static String share(Summary summary, double share, double error) {
        return summary.cannotTell()
                ? "cannot tell"
                : WHOLE_SHARE.formatWithError(share, error, TemperatureUnit.CELSIUS);
    }

    private static double told(Summary summary, double value) {
        return summary.cannotTell() ? Double.NaN : value;
    }

    static Showable picture(MarkReport report, MarkKind kind) {
        List<Comparison> shown = report.comparisons(kind).stream()
                .filter(c -> !c.prediction().isMissing())
                .toList();
        Plot plot = Plot.of(
                        "Written against foretold: " + kind.words(),
                        Axis.clock("foretold, time since charge"),
                        Axis.clock("written, time since charge"))
                .withEmptySentence("No written " + kind.words() + " can be compared with a curve.");
        if (shown.isEmpty()) {
            return plot;
        }
        List<Comparison> sorted = new ArrayList<>(shown);
        sorted.sort(java.util.Comparator.comparingDouble(c -> c.prediction().seconds()));
        double from = sorted.get(0).prediction().seconds();
        double to = sorted.get(sorted.size() - 1).prediction().seconds();
        plot = plot.with(Line.of("as foretold", new double[] {from, to}, new double[] {from, to})
                .withWeight(Weight.NORMAL));
        plot = group(plot, "within the range for 9 in 10", sorted, Place.WITHIN);
        plot = group(plot, "outside it", sorted, Place.OUTSIDE);
        plot = group(plot, "please check", sorted, Place.QUESTIONED);
        return plot.withNote("Bars across: the range that should hold 9 in 10 of the written marks.");
    }

    private enum Place {
        WITHIN,
        OUTSIDE,
        QUESTIONED
    }

    private static Place place(Comparison comparison) {
        return comparison.isQuestioned()
                ? Place.QUESTIONED
                : comparison.prediction().most().contains(comparison.writtenSeconds()) ? Place.WITHIN : Place.OUTSIDE;
    }

    private static Plot group(Plot plot, String label, List<Comparison> all, Place wanted) {
        List<Comparison> list = all.stream().filter(c -> place(c) == wanted).toList();
        if (list.isEmpty()) {
            return plot;
        }
        double[] foretold =
                list.stream().mapToDouble(c -> c.prediction().seconds()).toArray();
        double[] written = list.stream().mapToDouble(Comparison::writtenSeconds).toArray();
        double[] errors = list.stream()
                .mapToDouble(
                        c -> (c.prediction().most().to() - c.prediction().most().from()) / 2)
                .toArray();
        Points points = Points.of(label + " (" + list.size() + ")", foretold, written)
                .withNames(list.stream().map(c -> c.prediction().batch()).toList());
        return plot.with(wanted == Place.WITHIN ? points : points.withErrorsAlongX(errors));
    }
}
