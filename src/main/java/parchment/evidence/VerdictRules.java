package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Turns what was computed into one of four verdicts, with the reasons in words.
 *
 * <p>In order: too little to fit, a measure that hardly varied or is too coarse, or a fact outside the model that stands in for the
 * feature gives "cannot tell". A slope (at 4 in 100) or a bend (at 1 in 100; together 5) is a finding: "suggestive", or "strong" if
 * the target was drawn by chance and all further conditions hold. No finding is "nothing seen" if no difference that matters is left,
 * else "cannot tell". A negative control that is set off lowers the verdict by one level. See {@code docs/evidence.md}.
 */
final class VerdictRules {
    /** A slope is a finding if chance alone would do as much in fewer than this share of logbooks. */
    static final double CHANCE_OF_SLOPE = 0.04;

    /** The same for a bend; the two together make 5 in 100. */
    static final double CHANCE_OF_BEND = 0.01;

    /** A strong verdict needs this many roast days. */
    static final int DAYS_FOR_STRONG = 15;

    private static final double FEWEST_DEGREES = 3;

    /** Holds a verdict with its reasons, the decisive one first. */
    record Judgement(Verdict verdict, List<String> reasons) {}

    /** Says whether the feature was drawn by chance before charge. */
    enum Planned {
        BY_CHANCE,
        NOT_BY_CHANCE
    }

    private final String feature;
    private final List<String> reasons = new ArrayList<>();

    private VerdictRules(String feature) {
        this.feature = feature;
    }

    static Judgement judge(
            String feature,
            Material material,
            Optional<Analysis> analysis,
            Facts facts,
            Blindness blindness,
            Planned planned) {
        VerdictRules rules = new VerdictRules(feature);
        Verdict verdict = analysis.map(found -> rules.verdict(found, facts, blindness, planned))
                .orElseGet(() -> rules.cannotTell(
                        Analysis.whyNot(material).isEmpty()
                                ? "there are too few scores for the terms that have to be in the model"
                                : Analysis.whyNot(material)));
        return new Judgement(verdict, List.copyOf(rules.reasons));
    }

    private Verdict verdict(Analysis analysis, Facts facts, Blindness blindness, Planned planned) {
        Optional<String> blocked = blocked(analysis, facts);
        if (blocked.isPresent()) {
            return cannotTell(blocked.get());
        }
        Verdict verdict = analysis.slopeSeen() || analysis.bendSeen()
                ? finding(analysis, blindness, planned)
                : noFinding(analysis);
        if (analysis.control().setOff() && verdict != Verdict.CANNOT_TELL) {
            reasons.add(
                    0,
                    "the " + feature
                            + " of the next roast day goes with today's score, so time stands behind both; the verdict"
                            + " drops one level");
            return verdict.lowered();
        }
        return verdict;
    }

    private Optional<String> blocked(Analysis analysis, Facts facts) {
        Reliability reliability = analysis.reliability();
        if (reliability.tooNarrow()) {
            return Optional.of(String.format(
                    Locale.ROOT,
                    "the %s hardly varied inside lots: the middle 80 %% of the batches span less than three times its own error",
                    feature));
        }
        if (reliability.tooLow()) {
            return Optional.of(String.format(
                    Locale.ROOT,
                    "only %.0f %% of the spread of the %s is the batches' own, the rest is error of measuring",
                    100 * reliability.value(),
                    feature));
        }
        if (!analysis.fittedSlope().known() || analysis.fitted().mostDegrees() < FEWEST_DEGREES) {
            return Optional.of(
                    "once lots, dates and the other terms are taken into account, too few roast days are left to compare");
        }
        if (analysis.calendarShare() >= Facts.SAME_CALENDAR) {
            return Optional.of(
                    "inside lots the " + feature
                            + " follows the calendar so closely that it cannot be told from whatever else changed with the date");
        }
        List<Facts.Fact> standIns = facts.standIns();
        if (!standIns.isEmpty()) {
            return Optional.of(
                    Wording.list(standIns.stream().map(Facts.Fact::name).toList()) + " explains the " + feature
                            + " so closely that the two cannot be told apart");
        }
        return Optional.empty();
    }

    private Verdict finding(Analysis analysis, Blindness blindness, Planned planned) {
        String among = planned == Planned.BY_CHANCE ? "among batches whose target was drawn by chance, " : "";
        reasons.add(among
                + (analysis.slopeSeen()
                        ? "the slope inside lots is further from zero than chance alone brings about in 4 of 100 logbooks"
                        : "the course has a bend that chance alone brings about in fewer than 1 of 100 logbooks"));
        if (analysis.equivalence().noneThatMatters()) {
            reasons.add("but any difference over the tried range is smaller than " + Wording.points(analysis.margin())
                    + " points, the smallest that matters");
        }
        List<String> missing = missingForStrong(analysis, blindness, planned);
        if (missing.isEmpty()) {
            reasons.add(
                    "the target was drawn by chance, all eight other ways of looking agree, and roast days left out were foretold"
                            + " better");
            return Verdict.STRONG;
        }
        reasons.addAll(missing);
        return Verdict.SUGGESTIVE;
    }

    private List<String> missingForStrong(Analysis analysis, Blindness blindness, Planned planned) {
        List<String> missing = new ArrayList<>();
        if (planned == Planned.NOT_BY_CHANCE) {
            missing.add(
                    "the " + feature
                            + " was not drawn by chance beforehand, so what the roaster saw in the beans may stand behind both");
        }
        if (!blindness.enough()) {
            missing.add("not all scores were given blind and before discussion");
        }
        if (analysis.material().roastDays() < DAYS_FOR_STRONG) {
            missing.add("fewer than " + DAYS_FOR_STRONG + " roast days stand behind it");
        }
        if (!analysis.slopeSeen()) {
            missing.add("the eight other ways of looking compare slopes, not bends");
        }
        Alternatives looks = analysis.alternatives();
        long agreeing = looks.agreeing(analysis.fittedSlope());
        if (agreeing < looks.looks().size()) {
            missing.add("only " + agreeing + " of the " + looks.looks().size()
                    + " other ways of looking show the same sign");
        }
        if (!(analysis.gain().lowerBound() > 0)) {
            missing.add("on roast days left out it did not foretell scores better beyond doubt");
        }
        return missing;
    }

    private Verdict noFinding(Analysis analysis) {
        if (analysis.equivalence().noneThatMatters()) {
            reasons.add("no difference larger than " + Wording.points(analysis.margin())
                    + " points over the tried range is left, by two one-sided tests at 5 in 100");
            return Verdict.NOTHING_SEEN;
        }
        return cannotTell("zero and differences large enough to matter (" + Wording.points(analysis.margin())
                + " points) both agree with the scores");
    }

    private Verdict cannotTell(String reason) {
        reasons.add(0, reason);
        return Verdict.CANNOT_TELL;
    }
}
