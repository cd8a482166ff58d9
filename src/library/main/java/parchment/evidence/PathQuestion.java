package parchment.evidence;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.logbook.Logbook;
import parchment.stats.Interval;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Robust;

/**
 * Asks whether the destination or the path went with a score.
 *
 * <p>Three measures stand in one model: drop temperature, development time and the time to first crack. A fourth is never added: drop
 * time is the sum of the two times, and drop temperature, development time and rate after first crack fix each other. Five comparisons
 * are read off the three slopes; as five are looked at, each must be rarer by chance than 1 in 100.
 *
 * @param measures drop temperature, development time, time to first crack, in this order
 * @param rates the mean rate of rise after first crack of each batch, °C/min
 * @param errors the covariance of the three measures' errors by batch
 * @param others what else was set or given, from which a comparison may not be told
 */
record PathQuestion(
        String attribute,
        List<Measure> measures,
        Measure rates,
        Map<String, double[][]> errors,
        List<CollinearFeatures.Other> others,
        EvidenceSettings settings) {
    private static final int MOST_NAMED = 3;

    /** Holds one comparison before it is answered: weights per step of drop temperature, development time, time to first crack. */
    private record Asked(String name, String meaning, Measure told, double[] weights) {}

    DestinationOrPath ask(Logbook logbook) {
        EvidenceChecks.attribute(attribute, logbook.attributes(), logbook.name());
        JointFrame joint = JointFrame.of(attribute, logbook, measures);
        String whyNot = Analysis.whyNot(joint.material());
        Optional<JointFit> fit = whyNot.isEmpty() ? fit(joint) : Optional.empty();
        double rate = usualRate(joint);
        double margin = margin(logbook);
        List<PathContrast> contrasts = new ArrayList<>();
        List<Asked> asked = asked(rate);
        List<List<String>> tied = fit.map(this::tied).orElse(List.of());
        for (Asked one : asked) {
            contrasts.add(fit.map(found -> answer(one, found, tied, margin))
                    .orElseGet(() -> unanswered(
                            one, whyNot.isEmpty() ? "there are too few scores for three measures" : whyNot)));
        }
        Optional<SeparatingBatches> next = fit.flatMap(found ->
                SeparatingBatches.of(found, asked.stream().map(Asked::weights).toList(), contrasts, rates, margin));
        return new DestinationOrPath(this, joint, fit, contrasts, next);
    }

    private Optional<JointFit> fit(JointFrame joint) {
        try {
            return Optional.of(JointFit.of(joint, errors));
        } catch (CannotFitException tooFewRows) {
            return Optional.empty();
        }
    }

    /** Returns the smallest difference that matters, in points: as stated, or half a point of a ten-point scale. */
    private double margin(Logbook logbook) {
        return SmallestDifference.of(attribute, logbook, settings).points();
    }

    private double usualRate(JointFrame joint) {
        double[] known = joint.material().batches().stream()
                .mapToDouble(batch -> rates.readings()
                        .getOrDefault(batch.name(), ModelFrames.Reading.NONE)
                        .value())
                .filter(rate -> Double.isFinite(rate) && rate > 0)
                .toArray();
        return known.length == 0 ? Double.NaN : Robust.median(known);
    }

    private List<Asked> asked(double rate) {
        Measure drop = measures.get(0);
        Measure development = measures.get(1);
        Measure early = measures.get(2);
        double degree = drop.step();
        double seconds = development.step();
        List<Asked> asked = new ArrayList<>();
        asked.add(new Asked(
                "added time",
                "development longer, with the same time to first crack and the same drop temperature: the roast ends later, the"
                        + " beans rise more slowly at the end",
                development,
                new double[] {0, seconds, 0}));
        asked.add(new Asked(
                "swapped time",
                "development longer and first crack as much earlier, with the same drop time and drop temperature",
                development,
                new double[] {0, seconds, -seconds}));
        asked.add(new Asked(
                "faster finish",
                "drop hotter after the same development time and the same time to first crack: the beans rise faster at the end",
                drop,
                new double[] {degree, 0, 0}));
        if (Double.isFinite(rate)) {
            asked.add(new Asked(
                    "later drop",
                    String.format(
                            Locale.ROOT,
                            "drop hotter by roasting on at the usual rate after first crack: development %.0f s longer per %s",
                            60 * degree / rate,
                            drop.stepWords()),
                    drop,
                    new double[] {degree, 60 * degree / rate, 0}));
        }
        asked.add(new Asked(
                "slower start",
                "first crack later, with the same development time and drop temperature: the beans rise more slowly before first"
                        + " crack",
                early,
                new double[] {0, 0, early.step()}));
        return asked;
    }

    private PathContrast answer(Asked asked, JointFit fit, List<List<String>> tied, double margin) {
        JointSlope slope = fit.slope(asked.weights());
        Slope told = slope.told();
        Interval interval = told.interval(settings.level());
        PathRules.Judgement judgement = PathRules.judge(new PathRules.Findings(
                slope,
                interval,
                () -> controls(asked, slope, fit, tied),
                () -> fit.bend(asked.weights(), slope),
                () -> NegativeControl.of(fit.joint().with(slope.compared())),
                margin));
        return new PathContrast(
                asked.name(),
                asked.meaning(),
                asked.told().stepWords(),
                slope.fitted(),
                told,
                interval,
                slope.reliability(),
                slope.inflation(),
                slope.width(),
                judgement.verdict(),
                judgement.because(),
                judgement.words());
    }

    /** Returns by measure the controls and calendar facts that moved as one with it alone, the closest first. */
    private List<List<String>> tied(JointFit fit) {
        List<List<String>> tied = new ArrayList<>();
        for (int k = 0; k < measures.size(); k++) {
            tied.add(tied(measures.get(k).name(), fit.joint().with(fit.joint().values(k))));
        }
        return tied;
    }

    private List<String> tied(String name, ModelFrame material) {
        return Collinearity.of(name, FittedScores.of(material, ModelForm.STANDARD), others).stream()
                .map(Collinearity.Twin::name)
                .toList();
    }

    /**
     * Returns the controls and calendar facts that moved as one with the part of the batches' differences that a comparison rests on, or
     * with one of the measures that it moves: where the question about that measure cannot be answered, this one cannot either.
     */
    private List<String> controls(Asked asked, JointSlope slope, JointFit fit, List<List<String>> tied) {
        Set<String> controls =
                new LinkedHashSet<>(tied(asked.name(), fit.joint().with(slope.compared())));
        for (int k = 0; k < tied.size(); k++) {
            if (asked.weights()[k] != 0) {
                controls.addAll(tied.get(k));
            }
        }
        return controls.stream().limit(MOST_NAMED).toList();
    }

    private PathContrast unanswered(Asked asked, String reason) {
        return new PathContrast(
                asked.name(),
                asked.meaning(),
                asked.told().stepWords(),
                Slope.MISSING,
                Slope.MISSING,
                Slope.MISSING.interval(settings.level()),
                new Reliability(Double.NaN, Double.NaN, 0, 0),
                Double.POSITIVE_INFINITY,
                0,
                Verdict.CANNOT_TELL,
                PathContrast.Because.TOO_FEW_SCORES,
                reason);
    }
}
