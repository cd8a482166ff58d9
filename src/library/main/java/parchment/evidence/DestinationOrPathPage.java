package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.chart.Axis;
import parchment.chart.Boundary;
import parchment.chart.Marker;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.logbook.contents.Cautions;
import parchment.quantity.Unit;
import parchment.stats.linear.Correlation;

/** Writes the comparison of destination and path as a page. */
final class DestinationOrPathPage {
    private DestinationOrPathPage() {}

    static Report of(DestinationOrPath asked) {
        List<PathContrast> contrasts = asked.contrasts();
        Report page = Report.titled(Wording.sentence(asked.question().attribute()) + ": destination or path")
                .add(asked.inShort());
        page = asked.joint().material().sayDoubts(page).add(asked.picture()).say(each(contrasts));
        Optional<SeparatingBatches> next = asked.next();
        if (next.isPresent() && next.get().batches() > 0) {
            page = page.add(next.get().table());
        }
        if (asked.fit().isPresent()) {
            page = page.caution(Cautions.BESIDE_A_READING);
        }
        Report workedOut = Report.titled("How this was worked out")
                .say(first(contrasts))
                .say(counts(asked))
                .add(words(contrasts))
                .add(numbers(asked, contrasts));
        if (asked.fit().isPresent()) {
            workedOut = workedOut.heading("What can be told apart").say(apart(asked));
        }
        if (next.isPresent()) {
            workedOut = workedOut.heading("What to roast").say(next.get().words());
        }
        return page.fold(workedOut.heading("How it was reached").say(reached(asked)));
    }

    /** Gives every comparison a word, those without a finding too. */
    static String each(List<PathContrast> contrasts) {
        List<String> words = new ArrayList<>();
        for (Verdict verdict :
                List.of(Verdict.SUGGESTIVE, Verdict.TOO_SMALL, Verdict.NOTHING_SEEN, Verdict.CANNOT_TELL)) {
            List<String> names = contrasts.stream()
                    .filter(contrast -> contrast.verdict() == verdict)
                    .map(PathContrast::name)
                    .toList();
            if (!names.isEmpty()) {
                words.add(Wording.sentence(verdict.words()) + ": " + Wording.list(names) + ".");
            }
        }
        return String.join(" ", words);
    }

    private static String first(List<PathContrast> contrasts) {
        List<String> words = new ArrayList<>(List.of(each(contrasts)));
        contrasts.stream()
                .filter(contrast -> contrast.verdict() == Verdict.SUGGESTIVE)
                .forEach(contrast -> words.add(contrast.toString()));
        return String.join(" ", words);
    }

    private static String counts(DestinationOrPath asked) {
        List<String> left = asked.leftOut().stream().map(Exclusion::toString).toList();
        return "Behind it: " + asked.joint().material() + ". "
                + (left.isEmpty() ? "Nothing was left out." : Wording.sentence(String.join("; ", left)) + ".");
    }

    static Plot picture(DestinationOrPath asked) {
        List<PathContrast> contrasts = asked.contrasts();
        List<String> rows = contrasts.stream()
                .map(contrast -> contrast.name() + ", per " + contrast.stepWords())
                .toList();
        double level = asked.question().settings().level();
        String title = "Difference in " + asked.question().attribute() + " for each comparison";
        Axis along = Axis.of(
                "difference in " + asked.question().attribute(),
                Unit.POINTS.withDigits(2),
                asked.question().measures().get(0).reader());
        if (contrasts.stream().noneMatch(contrast -> contrast.perStep().known())) {
            return Plot.of(title, along, Axis.number("", ""))
                    .withEmptySentence(
                            "There is nothing to draw: " + contrasts.get(0).reason() + ".");
        }
        Plot plot = Plot.of(title, along, Axis.rows("", rows))
                .with(Boundary.at("no difference", 0))
                .with(points(contrasts, PathContrast.Separation.SEPARATED, "has moved by itself", Marker.CIRCLE))
                .with(points(
                        contrasts,
                        PathContrast.Separation.NOT_SEPARATED,
                        "has moved together with something else",
                        Marker.CROSS));
        if (contrasts.stream().anyMatch(contrast -> contrast.because() == PathContrast.Because.BEND)) {
            plot = plot.withNote(
                    "Where the score rose, then fell, or fell, then rose, a dot is only the tilt from one end to the other, not the course.");
        }
        return plot.withNote(String.format(
                        Locale.ROOT,
                        "A bar holds the true change %.0f times in 100. Each comparison holds fixed what its name does not move.",
                        100 * level))
                .withNote(Wording.sentence(asked.joint().material().toString()) + ".");
    }

    private static List<Points> points(
            List<PathContrast> contrasts, PathContrast.Separation separation, String label, Marker marker) {
        List<Integer> rows = new ArrayList<>();
        for (int k = 0; k < contrasts.size(); k++) {
            if (contrasts.get(k).separation() == separation
                    && contrasts.get(k).perStep().known()) {
                rows.add(k);
            }
        }
        if (rows.isEmpty()) {
            return List.of();
        }
        double[] places = rows.stream()
                .mapToDouble(k -> contrasts.get(k).perStep().estimate())
                .toArray();
        double[] errors = rows.stream()
                .mapToDouble(k -> contrasts.get(k).interval().width() / 2)
                .toArray();
        double[] heights = rows.stream().mapToDouble(Integer::doubleValue).toArray();
        return List.of(Points.of(label, places, heights)
                .withErrorsAlongX(errors)
                .withMarker(marker)
                .withNames(rows.stream().map(k -> contrasts.get(k).meaning()).toList()));
    }

    private static Table words(List<PathContrast> contrasts) {
        return Table.titled("Five comparisons")
                .withText("comparison", contrasts, PathContrast::name)
                .withText("what changes and what stays", contrasts, PathContrast::meaning)
                .withText("verdict", contrasts, contrast -> contrast.verdict().words())
                .withText("why", contrasts, PathContrast::reason);
    }

    private static Table numbers(DestinationOrPath asked, List<PathContrast> contrasts) {
        return Table.titled("The same in numbers")
                .withText("comparison", contrasts, PathContrast::name)
                .withText("per", contrasts, PathContrast::stepWords)
                .withNumber(
                        "points",
                        "",
                        3,
                        contrasts,
                        contrast -> contrast.perStep().estimate())
                .withNumber(
                        "from",
                        "",
                        3,
                        contrasts,
                        contrast -> contrast.interval().lower())
                .withNumber(
                        "to", "", 3, contrasts, contrast -> contrast.interval().upper())
                .withNumber(
                        "as fitted",
                        "",
                        3,
                        contrasts,
                        contrast -> contrast.fitted().estimate())
                .withNumber(
                        "reliability",
                        "",
                        2,
                        contrasts,
                        contrast -> contrast.reliability().value())
                .withNumber("variance inflation", "", 1, contrasts, contrast -> finite(contrast.inflation()))
                .withNumber("steps tried", "", 1, contrasts, PathContrast::triedSteps)
                .withNote(
                        "Steps tried: how many steps lie between the 10th and the 90th percentile of the batches with the rest held. "
                                + Wording.percent(asked.question().settings().level())
                                + " intervals, corrected for error of measuring where the reliability is under 0.9.")
                .withDashForMissing("could not be worked out");
    }

    private static double finite(double inflation) {
        return Double.isInfinite(inflation) ? Double.NaN : inflation;
    }

    private static String apart(DestinationOrPath asked) {
        List<double[]> within = asked.fit().orElseThrow().within();
        List<Measure> measures = asked.question().measures();
        List<String> words = new ArrayList<>();
        for (int k = 0; k < within.size(); k++) {
            for (int l = k + 1; l < within.size(); l++) {
                double r = Correlation.pearson(within.get(k), within.get(l));
                words.add(measures.get(k).name() + " and " + measures.get(l).name() + " " + Wording.plain(r, 2));
            }
        }
        List<String> lost = asked.contrasts().stream()
                .filter(contrast -> contrast.separation() == PathContrast.Separation.NOT_SEPARATED)
                .map(PathContrast::name)
                .toList();
        return "Correlations inside lots: " + String.join(", ", words) + ". "
                + (lost.isEmpty()
                        ? "In this logbook all five comparisons can be told from each other, the rest held; the drop asked by itself, with"
                                + " nothing held, still moves along with the others."
                        : "In this logbook " + Wording.list(lost)
                                + " cannot be told from the rest or from what else was set.");
    }

    private static String reached(DestinationOrPath asked) {
        List<String> words = new ArrayList<>();
        words.add(
                "One model of all scores with drop temperature, development time and time to first crack side by side, each counted"
                        + " from the mean of its lot and probe period, and everything that a single question takes into account. Never all"
                        + " phases at once: the two times add up to the drop time, and the rate after first crack follows from the three."
                        + " Five comparisons are looked at, so each must be rarer by chance than 1 in 100.");
        asked.fit().ifPresent(fit -> words.addAll(fit.fitted().words()));
        words.addAll(asked.joint().material().remarks());
        return String.join(" ", words);
    }
}
