package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.Logbook;
import parchment.stats.Interval;
import parchment.stats.Robust;

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
 */
record PathQuestion(
        String attribute,
        List<Measure> measures,
        Measure rates,
        Map<String, double[][]> errors,
        EvidenceSettings settings) {
    /** Beyond this variance inflation two things count as one (Marquardt 1970: above 10 a coefficient is not to be trusted). */
    static final double MOST_INFLATION = 10;

    /** Five comparisons share a chance of 5 in 100. */
    static final double CHANCE = 0.01;

    /** Five bends share a chance of 1 in 100 on top. */
    static final double CHANCE_OF_BEND = 0.002;

    private static final double FEWEST_DEGREES = 3;

    /** Two one-sided tests at 5 %, as one interval. */
    private static final double TWO_ONE_SIDED = 0.90;

    /** Holds one comparison before it is answered: weights per step of drop temperature, development time, time to first crack. */
    private record Asked(String name, String meaning, Measure told, double[] weights) {}

    DestinationOrPath ask(Logbook logbook) {
        Checks.attribute(attribute, logbook.attributes(), logbook.name());
        JointMaterial joint = JointMaterial.of(attribute, logbook, measures);
        String whyNot = Analysis.whyNot(joint.material());
        Optional<JointFit> fit = whyNot.isEmpty() ? fit(joint) : Optional.empty();
        double rate = usualRate(joint);
        List<PathContrast> contrasts = new ArrayList<>();
        List<Asked> asked = asked(rate);
        for (Asked one : asked) {
            contrasts.add(fit.map(found -> answer(one, found))
                    .orElseGet(() -> unanswered(
                            one, whyNot.isEmpty() ? "there are too few scores for three measures" : whyNot)));
        }
        Optional<SeparatingBatches> next = fit.flatMap(found -> SeparatingBatches.of(
                found,
                asked.stream().map(Asked::weights).toList(),
                contrasts,
                rates,
                settings.smallestDifference().orElse(found.fitted().cupToCup())));
        return new DestinationOrPath(this, joint, fit, contrasts, next);
    }

    private Optional<JointFit> fit(JointMaterial joint) {
        try {
            return Optional.of(JointFit.of(joint, errors));
        } catch (IllegalArgumentException tooFewRows) {
            return Optional.empty();
        }
    }

    private double usualRate(JointMaterial joint) {
        double[] known = joint.material().batches().stream()
                .mapToDouble(batch -> rates.readings()
                        .getOrDefault(batch.name(), Gathering.Reading.NONE)
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

    private PathContrast answer(Asked asked, JointFit fit) {
        JointSlope slope = fit.slope(asked.weights());
        double margin = settings.smallestDifference().orElse(fit.fitted().cupToCup());
        double width = slope.width();
        Slope told = slope.told();
        List<String> why = new ArrayList<>();
        Verdict verdict = verdict(slope, told.per(width), margin, fit, why);
        return new PathContrast(
                asked.name(),
                asked.meaning(),
                asked.told().stepWords(),
                slope.fitted(),
                told,
                told.interval(settings.level()),
                slope.reliability(),
                slope.inflation(),
                width,
                verdict,
                String.join("; ", why));
    }

    private Verdict verdict(JointSlope slope, Slope overRange, double margin, JointFit fit, List<String> why) {
        if (Double.isNaN(slope.fitted().estimate())) {
            why.add(
                    "in this logbook one of drop temperature, development time and time to first crack follows from the others");
            return Verdict.CANNOT_TELL;
        }
        if (!slope.told().known() || slope.fitted().degreesOfFreedom() < FEWEST_DEGREES) {
            why.add("once lots, dates and the rest are taken into account, too few roast days are left to compare");
            return Verdict.CANNOT_TELL;
        }
        if (slope.inflation() > MOST_INFLATION) {
            why.add("the batches differ in it only together with the rest (variance inflation "
                    + Wording.plain(slope.inflation(), 0) + ", over " + Wording.plain(MOST_INFLATION, 0) + ")");
            return Verdict.CANNOT_TELL;
        }
        if (slope.reliability().tooNarrow() || slope.reliability().tooLow()) {
            why.add("once the rest is held, the batches differ in it by little more than the error of measuring");
            return Verdict.CANNOT_TELL;
        }
        if (slope.fitted().chance() < CHANCE) {
            NegativeControl control = NegativeControl.of(fit.joint().with(slope.compared()));
            if (control.setOff()) {
                why.add(
                        "it went with the score, but the next roast day's does too, which cannot be: something that moves with the"
                                + " calendar is behind both");
                return Verdict.CANNOT_TELL;
            }
            why.add(
                    "chance alone would do as much in fewer than 1 of 100 logbooks; nobody drew it by chance, so what the roaster saw in"
                            + " the beans may stand behind both");
            return Verdict.SUGGESTIVE;
        }
        Slope bend = fit.bend(slope);
        if (bend.chance() < CHANCE_OF_BEND) {
            why.add(
                    "the score " + (bend.estimate() < 0 ? "rises and falls" : "falls and rises")
                            + " along it, so no one slope describes it; chance alone brings about such a bend in fewer than 1 of 500 logbooks");
            return Verdict.SUGGESTIVE;
        }
        double width = slope.width();
        Interval depth = bend.per(width * width / 4).interval(TWO_ONE_SIDED);
        Interval left = overRange.interval(TWO_ONE_SIDED);
        if (inside(left, margin) && (Double.isNaN(depth.lower()) || inside(depth, margin))) {
            why.add("over what was tried of it no difference and no bend larger than " + Wording.points(margin)
                    + " points is left");
            return Verdict.NOTHING_SEEN;
        }
        why.add("zero and differences large enough to matter (" + Wording.points(margin)
                + " points over what was tried) both agree with the scores");
        return Verdict.CANNOT_TELL;
    }

    private static boolean inside(Interval interval, double margin) {
        return interval.lower() > -margin && interval.upper() < margin;
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
                reason);
    }
}
