package parchment.evidence;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;

/**
 * Turns what was computed into a verdict, with the reasons in words.
 *
 * <p>In order: too little to fit, a measure that hardly varied or is too coarse, or something that moved with the feature as one gives
 * "cannot tell". A slope (at 4 in 100) or a bend (at 1 in 100; together 5) is a finding: "suggestive", or "strong" if the target was
 * drawn by chance and all further conditions hold. Whatever was seen, if no difference that matters is left it is "too small to matter";
 * where nothing was seen either, "nothing seen"; else "cannot tell". A negative control that is set off lowers the verdict by one level.
 * See {@code docs/evidence.md}.
 */
final class VerdictRules {
    /** A slope is a finding if chance alone would do as much in fewer than this share of logbooks. */
    static final double CHANCE_OF_SLOPE = 0.04;

    /** The same for a bend; the two together make 5 in 100. */
    static final double CHANCE_OF_BEND = 0.01;

    /** A strong verdict needs this many roast days. */
    static final int DAYS_FOR_STRONG = 15;

    /** With fewer degrees of freedom nothing is said. */
    static final double FEWEST_DEGREES = 3;

    private final Findings findings;
    private final List<String> reasons = new ArrayList<>();
    private Decisive decisive = new Decisive(Why.OPEN, List.of());

    /**
     * Holds a verdict with its reasons, the decisive one first, and what an answer lacks.
     *
     * @param lacks what further batches would have to bring; of use only where the verdict is "cannot tell"
     * @param decisive what decided, for the first sentences of an answer
     */
    record Judgement(Verdict verdict, List<String> reasons, NextBatches.Kind lacks, Decisive decisive) {}

    /** Names what decided a verdict: for a finding that is not strong, the first condition that it does not meet. */
    enum Why {
        NOTHING_FITTED,
        HARDLY_VARIED,
        MOSTLY_ERROR,
        MOVED_WITH_ANOTHER,
        TOO_FEW_DAYS_LEFT,
        FOLLOWS_A_FACT,
        NEXT_DAY_GOES_WITH_IT_TOO,
        OPEN,
        NOT_RARE_ENOUGH,
        NO_DIFFERENCE_THAT_MATTERS,
        NOT_DRAWN_BY_CHANCE,
        NOT_BLIND,
        TOO_FEW_DAYS,
        ONLY_A_BEND,
        OTHER_LOOKS_DIFFER,
        NO_GAIN,
        STEPS_SHOW_NOTHING,
        STEPS_LEAVE_ROOM,
        STEPS_SAY_ANOTHER_SIZE,
        STEPS_NOT_FITTED,
        ALL_HOLDS
    }

    /**
     * Holds what decided a verdict.
     *
     * @param beside what moved together with the feature, by name; empty where nothing did
     */
    record Decisive(Why why, List<String> beside) {
        /** Says whether the scores' few steps stand in the way, so that finer steps help and not the number of batches. */
        boolean stepsAreTooFew() {
            return why == Why.STEPS_SHOW_NOTHING || why == Why.STEPS_LEAVE_ROOM;
        }
    }

    private VerdictRules(Findings findings) {
        this.findings = findings;
    }

    /** Judges a question to which nothing could be fitted. */
    static Judgement nothingFitted(ModelFrame material) {
        String why = Analysis.whyNot(material);
        return new Judgement(
                Verdict.CANNOT_TELL,
                List.of(why.isEmpty() ? "there are too few scores for the terms that have to be in the model" : why),
                NextBatches.Kind.MORE,
                new Decisive(Why.NOTHING_FITTED, List.of()));
    }

    static Judgement judge(Findings findings) {
        return new VerdictRules(findings).judged();
    }

    private Judgement judged() {
        Optional<NextBatches.Kind> blocked = blocked();
        if (blocked.isPresent()) {
            return new Judgement(Verdict.CANNOT_TELL, List.copyOf(reasons), blocked.get(), decisive);
        }
        Verdict verdict = verdict();
        NextBatches.Kind lacks = findings.equivalence().bendIsOpen() ? NextBatches.Kind.BEND : NextBatches.Kind.MORE;
        if (findings.control().setOff() && verdict != Verdict.CANNOT_TELL) {
            reasons.add(
                    0,
                    "the " + findings.feature()
                            + " of the next roast day goes with today's score, which it cannot have changed; one logbook in"
                            + " twenty shows this by chance, but something that moves with the calendar may stand behind both,"
                            + " so the verdict drops one level");
            verdict = verdict.lowered();
            decided(Why.NEXT_DAY_GOES_WITH_IT_TOO);
            lacks = NextBatches.Kind.AFRESH;
        }
        return new Judgement(verdict, List.copyOf(reasons), lacks, decisive);
    }

    private Optional<NextBatches.Kind> blocked() {
        Reliability reliability = findings.reliability();
        String feature = findings.feature();
        if (reliability.tooNarrow()) {
            decided(Why.HARDLY_VARIED);
            reasons.add(String.format(
                    Locale.ROOT,
                    "the %s hardly varied inside lots: the middle 80 %% of the batches span less than three times its own error",
                    feature));
            return Optional.of(NextBatches.Kind.MOVE_IT);
        }
        if (reliability.tooLow()) {
            decided(Why.MOSTLY_ERROR);
            reasons.add(String.format(
                    Locale.ROOT,
                    "only %.0f %% of the spread of the %s is the batches' own, the rest is error of measuring",
                    100 * reliability.value(),
                    feature));
            return Optional.of(NextBatches.Kind.MOVE_IT);
        }
        if (!findings.twins().isEmpty()) {
            Collinearity.Twin first = findings.twins().get(0);
            decisive = new Decisive(
                    Why.MOVED_WITH_ANOTHER,
                    findings.twins().stream().map(Collinearity.Twin::name).toList());
            reasons.add("inside lots the " + feature + " cannot be told from "
                    + Wording.list(findings.twins().stream()
                            .limit(3)
                            .map(Collinearity.Twin::name)
                            .toList())
                    + ": they moved together so closely that the score may have gone with either (variance inflation "
                    + Wording.inflation(first.inflation()) + ", over " + Wording.plain(Collinearity.MOST_INFLATION, 0)
                    + ")");
            return Optional.of(NextBatches.Kind.MOVE_APART);
        }
        if (!findings.slope().known() || findings.degreesLeft() < FEWEST_DEGREES) {
            decided(Why.TOO_FEW_DAYS_LEFT);
            reasons.add(
                    "once lots, dates and the other terms are taken into account, too few roast days are left to compare");
            return Optional.of(NextBatches.Kind.AFRESH);
        }
        if (!findings.standIns().isEmpty()) {
            decisive = new Decisive(
                    Why.FOLLOWS_A_FACT,
                    findings.standIns().stream().map(Facts.Fact::name).toList());
            reasons.add(Wording.list(
                            findings.standIns().stream().map(Facts.Fact::name).toList())
                    + " explains the " + feature + " so closely that the two cannot be told apart");
            return Optional.of(NextBatches.Kind.MOVE_APART);
        }
        return Optional.empty();
    }

    private Verdict verdict() {
        String margin = Wording.points(findings.equivalence().margin());
        boolean small = findings.equivalence().noneThatMatters();
        if (small && findings.ordinal().leavesRoomFor(findings.equivalence().margin())) {
            decided(Why.STEPS_LEAVE_ROOM);
            reasons.add("the scores come in few steps; as steps in their order they leave room for a difference of "
                    + margin + " points, the smallest that matters; as numbers they leave none");
            return Verdict.CANNOT_TELL;
        }
        if (findings.slopeSeen() || findings.bendSeen()) {
            String among = findings.planned() == Findings.Planned.BY_CHANCE
                    ? "among batches whose target was drawn by chance, "
                    : "";
            String seen = among
                    + (findings.slopeSeen()
                            ? "the slope inside lots passed the threshold of a finding: chance alone brings about as much in fewer than 4 of 100 logbooks"
                            : "the bend of the course passed the threshold of a finding: chance alone brings about as much in fewer than 1 of 100 logbooks");
            if (small) {
                decided(Why.NO_DIFFERENCE_THAT_MATTERS);
                reasons.add("no two places of the tried range differ by as much as " + margin
                        + " points, the smallest difference that matters");
                reasons.add(seen);
                return Verdict.TOO_SMALL;
            }
            if (findings.ordinal().doesNotShow(findings.slopeSeen())) {
                decided(Why.STEPS_SHOW_NOTHING);
                reasons.add(
                        "the scores come in few steps; as steps in their order they do not show what they show as numbers, so it is no finding");
                reasons.add(seen);
                return Verdict.CANNOT_TELL;
            }
            reasons.add(seen);
            return finding();
        }
        if (small) {
            decided(Why.NO_DIFFERENCE_THAT_MATTERS);
        }
        if (small && findings.zeroRuledOut()) {
            reasons.add("no two places of the tried range differ by as much as " + margin
                    + " points, the smallest difference that matters");
            reasons.add("zero lies outside the interval, by less than a finding needs");
            return Verdict.TOO_SMALL;
        }
        if (small) {
            reasons.add("no difference larger than " + margin
                    + " points over the tried range is left, by two one-sided tests at 5 in 100");
            return Verdict.NOTHING_SEEN;
        }
        if (findings.zeroRuledOut()) {
            decided(Why.NOT_RARE_ENOUGH);
            double share = 100 * findings.slope().chance();
            long least = Math.round(100 * CHANCE_OF_SLOPE);
            reasons.add("the interval leaves zero out, but chance alone would do as much in "
                    + (Math.round(share) > least ? Long.toString(Math.round(share)) : "just over " + least)
                    + " of 100 logbooks, more than the " + least
                    + " that count as a finding; differences large enough to matter ("
                    + margin + " points) agree with the scores too");
            return Verdict.CANNOT_TELL;
        }
        reasons.add("zero and differences large enough to matter (" + margin + " points) both agree with the scores");
        return Verdict.CANNOT_TELL;
    }

    private Verdict finding() {
        Map<Why, String> missing = missingForStrong();
        if (missing.isEmpty()) {
            decided(Why.ALL_HOLDS);
            reasons.add(
                    "the target was drawn by chance, all eight other ways of looking agree, and roast days left out were foretold"
                            + " better");
            return Verdict.STRONG;
        }
        reasons.addAll(missing.values());
        decided(missing.keySet().iterator().next());
        return Verdict.SUGGESTIVE;
    }

    private void decided(Why why) {
        decisive = new Decisive(why, List.of());
    }

    private Map<Why, String> missingForStrong() {
        Map<Why, String> missing = new LinkedHashMap<>();
        if (findings.planned() == Findings.Planned.NOT_BY_CHANCE) {
            missing.put(
                    Why.NOT_DRAWN_BY_CHANCE,
                    "the " + findings.feature()
                            + " was not drawn by chance beforehand, so what the roaster saw in the beans may stand behind both");
        }
        if (!findings.blindness().enough()) {
            missing.put(Why.NOT_BLIND, "not all scores were given blind and before discussion");
        }
        if (findings.roastDays() < DAYS_FOR_STRONG) {
            missing.put(Why.TOO_FEW_DAYS, "fewer than " + DAYS_FOR_STRONG + " roast days stand behind it");
        }
        if (!findings.slopeSeen()) {
            missing.put(Why.ONLY_A_BEND, "the eight other ways of looking compare slopes, not bends");
        }
        if (findings.agreeing() < findings.looks()) {
            missing.put(
                    Why.OTHER_LOOKS_DIFFER,
                    "only " + findings.agreeing() + " of the " + findings.looks()
                            + " other ways of looking show the same sign");
        }
        if (!(findings.gain().lowerBound() > 0)) {
            missing.put(
                    Why.NO_GAIN,
                    "on roast days left out the gain may be none: its one-sided 95 % bound is not above zero");
        }
        if (findings.ordinal().state() == OrdinalCheck.State.NOT_FITTED) {
            missing.put(
                    Why.STEPS_NOT_FITTED,
                    "the scores come in few steps; no model of steps in their order could be fitted to hold the answer against");
        }
        if (findings.ordinal().saysAnotherSize()) {
            missing.put(
                    Why.STEPS_SAY_ANOTHER_SIZE,
                    "the scores come in few steps; as steps in their order they show the difference but "
                            + (findings.ordinal().bendIsDoubtful() ? "no bend" : "another size of it"));
        }
        return missing;
    }
}
