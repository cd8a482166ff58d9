package parchment.evidence;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import parchment.chart.Axis;
import parchment.chart.Band;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Panels;
import parchment.chart.Plot;
import parchment.chart.Span;
import parchment.chart.Weight;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.logbook.contents.Cautions;
import parchment.quantity.Unit;
import parchment.stats.Interval;

/** Writes a trade-off as a page. */
final class TradeOffPage {
    private TradeOffPage() {}

    static Report of(TradeOff asked) {
        Report page = Report.titled(question(asked)).add(asked.inShort());
        Report workedOut = Report.titled("How this was worked out")
                .say("Verdict: " + asked.verdict().words() + ". " + verdict(asked));
        if (asked.found().isEmpty()) {
            return page.fold(workedOut);
        }
        page = asked.materials().get(0).sayDoubts(page).add(asked.picture());
        page = page.caution(Cautions.BESIDE_A_READING);
        workedOut = workedOut.say(counts(asked)).say(trade(asked, asked.found().get()));
        if (asked.twins().isEmpty()) {
            workedOut = workedOut.add(table(asked, asked.found().get()));
        }
        return page.fold(workedOut.say(
                "How welcome each is from 0 to 1, and the geometric mean of all (Derringer and Suich 1980). 1,000 draws of all courses"
                        + " together, seed " + asked.settings().seed()
                        + ", the attributes' errors correlated as their batches are. Batches are taken as they came out, whatever was planned, so"
                        + " this went together and no more."));
    }

    /** The picture has the title; the page asks, so that nothing stands there twice. */
    private static String question(TradeOff asked) {
        return "Which " + asked.measure().name() + " for "
                + (asked.attributes().isEmpty() ? "the scores" : Wording.list(asked.attributes())) + " together?";
    }

    private static String title(TradeOff asked) {
        return (asked.attributes().isEmpty() ? "No attribute" : Wording.sentence(Wording.list(asked.attributes())))
                + " along the " + asked.measure().name();
    }

    private static String verdict(TradeOff asked) {
        if (asked.found().isEmpty()) {
            return Wording.sentence(asked.whyNot()) + ".";
        }
        TradeOff.Found found = asked.found().get();
        if (!asked.twins().isEmpty()) {
            return "Inside lots the " + asked.measure().name() + " cannot be told from "
                    + Wording.list(asked.twins().stream()
                            .limit(3)
                            .map(Collinearity.Twin::name)
                            .toList())
                    + ": they moved together so closely that the scores may have gone with either. So no compromise can be told.";
        }
        if (!found.seen()) {
            return "None of these attributes went with the " + asked.measure().name()
                    + " more closely than chance brings about, so no compromise can be told.";
        }
        String set =
                asked.measure().range(found.bestSet().lower(), found.bestSet().upper());
        String whole = asked.measure()
                .range(found.courses().range().low(), found.courses().range().high());
        return asked.verdict() == Verdict.SUGGESTIVE
                ? "The best compromise lies "
                        + where(
                                asked.measure(),
                                found.bestSet(),
                                found.courses().range()) + " ("
                        + Wording.percent(found.bestSet().level()) + " of draws), of " + whole
                        + " that was tried (the middle 80 %); the sentence above tells it in round readings that leave nothing of it out."
                : "The best compromise may lie anywhere from " + set + ", of " + whole
                        + " that was tried: that is too wide to name a place.";
    }

    /** Beyond an end of what was tried nothing was looked at, so a set that touches it is open there. */
    static String where(Measure measure, Interval set, TriedRange range) {
        double little = range.width() / 100;
        boolean low = set.lower() <= range.low() + little;
        boolean high = set.upper() >= range.high() - little;
        if (low && set.upper() <= range.low() + little) {
            return "at the low end of what was tried, " + measure.value(range.low()) + ", or below";
        }
        if (high && set.lower() >= range.high() - little) {
            return "at the high end of what was tried, " + measure.value(range.high()) + ", or above";
        }
        if (low) {
            return "from the low end of what was tried, or below, to " + measure.value(set.upper());
        }
        return high
                ? "from " + measure.value(set.lower()) + " to the high end of what was tried, or above"
                : "at " + measure.range(set.lower(), set.upper());
    }

    private static String counts(TradeOff asked) {
        Map<String, List<String>> same = new LinkedHashMap<>();
        for (int a = 0; a < asked.attributes().size(); a++) {
            same.computeIfAbsent(asked.materials().get(a).toString(), key -> new ArrayList<>())
                    .add(asked.attributes().get(a));
        }
        List<String> each = new ArrayList<>();
        same.forEach((counts, attributes) -> each.add(Wording.list(attributes) + " " + counts));
        return "Behind it: " + String.join("; ", each) + ".";
    }

    /** Says what each attribute gains or loses from the low to the high end of what was tried. */
    private static String trade(TradeOff asked, TradeOff.Found found) {
        TriedRange range = found.courses().range();
        List<String> words = new ArrayList<>();
        for (int a = 0; a < asked.attributes().size(); a++) {
            FittedScores fit = found.courses().fit(a);
            Slope line = fit.slope();
            Slope square = fit.slope(ScoreDesign.SQUARE);
            double low = range.low() - fit.design().center();
            double high = range.high() - fit.design().center();
            double squares = high * high - low * low;
            double estimate =
                    fit.coefficient(ScoreDesign.FEATURE) * (high - low) + fit.coefficient(ScoreDesign.SQUARE) * squares;
            double variance = Math.pow((high - low) * line.standardError(), 2);
            if (square.known()) {
                variance += Math.pow(squares * square.standardError(), 2)
                        + 2 * (high - low) * squares * fit.covariance(ScoreDesign.FEATURE, ScoreDesign.SQUARE);
            }
            Slope change = new Slope(estimate, Math.sqrt(Math.max(0, variance)), line.degreesOfFreedom());
            Interval interval = change.interval(asked.settings().level());
            words.add(asked.attributes().get(a) + " " + Wording.signed(estimate, interval) + " points ("
                    + Wording.signed(interval) + ")");
        }
        return "From " + asked.measure().value(range.low()) + " to "
                + asked.measure().value(range.high()) + ", inside lots: " + String.join(", ", words) + "."
                + places(asked, found);
    }

    private static String places(TradeOff asked, TradeOff.Found found) {
        if (found.courses().places() == TodaysCourse.Places.FROM_LOTS_MEANS) {
            return " Each lot is brought to the mean of all lots first, as what today's probe would read is not known: count from a lot's"
                    + " own mean.";
        }
        if (found.courses().places() == TodaysCourse.Places.OF_SEVERAL_PROBES) {
            return " Each lot on its machine is brought to the mean of all first, as the probes of several machines are not one scale: count"
                    + " from a lot's own mean on its machine.";
        }
        return asked.materials().stream().anyMatch(ModelFrame::movedToToday)
                ? asked.measure().placesOnTodaysProbe()
                : "";
    }

    private static Table table(TradeOff asked, TradeOff.Found found) {
        List<Integer> rows = List.of(0, 10, 20, 30, 40);
        Table table = Table.titled("The compromise")
                .withNumber(
                        asked.measure().name(),
                        asked.measure().unit(),
                        asked.measure().reader(),
                        rows,
                        i -> found.places().get(i));
        for (int a = 0; a < asked.attributes().size(); a++) {
            int attribute = a;
            table = table.withNumber(
                            asked.attributes().get(a),
                            "points",
                            2,
                            rows,
                            i -> found.courses().at(attribute, found.places().get(i)))
                    .withNumber(
                            "how welcome: " + asked.attributes().get(a),
                            "",
                            2,
                            rows,
                            i -> asked.aims()
                                    .get(attribute)
                                    .of(found.courses()
                                            .at(attribute, found.places().get(i))));
        }
        table = table.withNumber(
                        "all together", "", 2, rows, i -> found.overall().get(i))
                .withNumber("from", "", 2, rows, i -> found.lower().get(i))
                .withNumber("to", "", 2, rows, i -> found.upper().get(i));
        for (int a = 0; a < asked.attributes().size(); a++) {
            table = table.withNote(
                    Wording.sentence(asked.attributes().get(a)) + ": "
                            + asked.aims().get(a)
                            + (asked.stated(asked.attributes().get(a))
                                    ? "."
                                    : "; that is the middle 80 % of the batches' scores, and how sure it is, is in the draws."));
        }
        return table;
    }

    static Panels picture(TradeOff asked) {
        Axis along = Axis.of(
                asked.measure().name(), asked.measure().unit(), asked.measure().reader());
        List<Plot> plots = new ArrayList<>();
        for (int a = 0; a < asked.attributes().size(); a++) {
            int attribute = a;
            Plot plot = Plot.of(
                            Wording.sentence(asked.attributes().get(a)),
                            along,
                            Axis.of(
                                    asked.attributes().get(a),
                                    Unit.POINTS.withDigits(1),
                                    asked.measure().reader()))
                    .withHeight(180)
                    .withEmptySentence("There is nothing to draw: " + asked.whyNot() + ".");
            plots.add(asked.found()
                    .map(found -> course(plot, asked, found, attribute))
                    .orElse(plot));
        }
        Plot together = Plot.of(
                        "How welcome together",
                        along,
                        Axis.number("welcome, 0 to 1", "").withLimits(0, 1))
                .withHeight(180)
                .withEmptySentence("There is nothing to draw: " + asked.whyNot() + ".");
        plots.add(asked.found().map(found -> together(together, asked, found)).orElse(together));
        Panels panels = Panels.stacked("The scores one by one, and together", plots);
        return asked.found().isPresent() && asked.verdict() == Verdict.CANNOT_TELL
                ? panels.withNote("The lines are dashed because these batches cannot tell: they may be luck.")
                : panels;
    }

    private static Weight weight(TradeOff asked) {
        return asked.verdict() == Verdict.CANNOT_TELL ? Weight.TENTATIVE : Weight.STRONG;
    }

    private static Plot course(Plot plot, TradeOff asked, TradeOff.Found found, int attribute) {
        double level = asked.settings().level();
        double[] places = doubles(found.places());
        double[] mean = IntStream.range(0, places.length)
                .mapToDouble(i -> found.courses().at(attribute, places[i]))
                .toArray();
        FittedCurve curve = found.courses().curve(attribute);
        double[] lower = new double[places.length];
        double[] upper = new double[places.length];
        for (int i = 0; i < places.length; i++) {
            Interval band = curve.band(places[i]);
            lower[i] = band.lower();
            upper[i] = band.upper();
        }
        return plot.with(Band.of(
                        String.format(Locale.ROOT, "holds the mean %.0f times in 100", 100 * level),
                        places,
                        lower,
                        upper))
                .with(Line.of("mean", places, mean).withWeight(weight(asked)).withColour(Colour.BLUE));
    }

    private static Plot together(Plot plot, TradeOff asked, TradeOff.Found found) {
        double[] places = doubles(found.places());
        Plot drawn = plot.with(Band.of(
                                String.format(
                                        Locale.ROOT,
                                        "holds all together %.0f times in 100",
                                        100 * asked.settings().level()),
                                places,
                                doubles(found.lower()),
                                doubles(found.upper()))
                        .withColour(Colour.VERMILLION))
                .with(Line.of("all together", places, doubles(found.overall()))
                        .withWeight(weight(asked))
                        .withColour(Colour.VERMILLION));
        return asked.verdict() == Verdict.SUGGESTIVE
                ? drawn.with(Span.of(
                        "compromise", found.bestSet().lower(), found.bestSet().upper()))
                : drawn;
    }

    private static double[] doubles(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
