package parchment.trial;

import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.evidence.finding.Effect;
import parchment.evidence.finding.FinishedTrial;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.TrialVerdict;
import parchment.stats.Estimate;
import parchment.stats.Interval;
import parchment.trial.sealed.TrialTerms;

/**
 * Answers a finished trial: whether the control that chance chose did change the score, did nothing larger than was stated, or whether these batches cannot
 * tell.
 *
 * <p>As assigned, whatever the batches came out at; the points are those of the trial's own cuppers. What was stated beforehand and the seal stand beside the
 * answer. Rules, formulas and sources are in {@code docs/methods.md}.
 */
public final class TrialAnswer implements ShownAs {
    private final TrialTerms terms;
    private final List<AssignedBatch> batches;
    private final String seal;
    private final int look;
    private final Optional<AsAssigned> assigned;
    private final MissingScores missing;
    private final TrialJudgement judgement;

    private TrialAnswer(TrialTerms terms, List<AssignedBatch> batches, String seal, int look) {
        this.terms = terms;
        this.batches = List.copyOf(batches);
        this.seal = seal;
        this.look = look;
        double level = TrialJudgement.level(terms);
        this.assigned = AsAssigned.of(batches, terms.span(), level);
        this.missing = MissingScores.of(terms, batches, level);
        this.judgement = TrialJudgement.of(terms, look, assigned, missing);
    }

    /** Answers at the first look. */
    static TrialAnswer of(TrialTerms terms, List<AssignedBatch> batches, String seal) {
        return atLook(1, terms, batches, seal);
    }

    /**
     * Answers at a look.
     *
     * @param look counted from 1; one more than were planned is said to be one too many and gets no verdict
     * @param seal the trial's seal, 64 digits as printed
     */
    static TrialAnswer atLook(int look, TrialTerms terms, List<AssignedBatch> batches, String seal) {
        return new TrialAnswer(terms, batches, seal, look);
    }

    /** Returns the verdict. */
    public TrialVerdict verdict() {
        return judgement.verdict();
    }

    /** Returns the verdict as it is printed, as in "did nothing larger than 0.50 points". */
    public String verdictWords() {
        return TrialWords.verdict(terms, verdict());
    }

    /** Returns the answer in three sentences. */
    public InShort inShort() {
        return TrialWords.of(terms, judgement, look, assigned, missing, needed());
    }

    /** Returns the difference of the score from the lowest target to the highest, in points; NaN if nothing could be compared. */
    public double difference() {
        return judgement.difference();
    }

    /** Returns the interval of that difference, in points; of the bounds where too many scores are missing. */
    public Interval interval() {
        return judgement.interval();
    }

    /** Returns the seal of the trial's plan and draw. */
    public String seal() {
        return seal;
    }

    /**
     * Returns the answer as it stands beside an answer to the same question: {@code Evidence.of("sweetness", dropTemperature(), logbook).withTrial(answer.finished())}.
     */
    public FinishedTrial finished() {
        double step = terms.control().unit().naturalStep();
        Interval over = judgement.interval();
        double perStep = step / terms.span();
        Slope slope = assigned.map(found -> slope(found)).orElse(new Slope(Double.NaN, Double.NaN, 0));
        return new FinishedTrial(
                terms.trial(),
                new Effect(
                        terms.score(),
                        terms.control().words(),
                        terms.control().unit().formatStep(step, terms.reader()),
                        slope,
                        slope.per(step),
                        new Interval(over.lower() * perStep, over.upper() * perStep, over.level())),
                verdict(),
                verdictWords(),
                inShort(),
                seal);
    }

    private static Slope slope(AsAssigned found) {
        Estimate estimate = found.line().slope("slope", found.means());
        return new Slope(estimate.estimate(), estimate.standardError(), estimate.degreesOfFreedom());
    }

    /** Returns how many batches a new trial in sets like these would need to show the smallest difference; empty if none of a size worth roasting would. */
    private Optional<Integer> needed() {
        if (assigned.isEmpty() || assigned.get().line().degreesOfFreedom() < 1) {
            return Optional.empty();
        }
        AsAssigned found = assigned.get();
        double size = (double) found.batches().size() / found.setCount();
        TrialPower power = new TrialPower(
                terms.smallestDifference() / terms.span(),
                found.line().residualVariance(found.means()),
                size,
                found.line().squares() / found.setCount(),
                terms.chance());
        return power.sets().isPresent()
                ? Optional.of((int) Math.ceil(power.sets().getAsInt() * size - 1e-9))
                : Optional.empty();
    }

    /** Returns the answer without the scores of cuppers who had seen targets; empty if nobody had. */
    Optional<TrialAnswer> blindOnly() {
        return sawTargets().isEmpty()
                ? Optional.empty()
                : Optional.of(new TrialAnswer(
                        terms, batches.stream().map(AssignedBatch::blindOnly).toList(), seal, look));
    }

    /** Returns the cuppers who scored a batch after they had seen targets, by name. */
    TreeSet<String> sawTargets() {
        return batches.stream()
                .flatMap(batch -> batch.scores().stream()
                        .map(AssignedBatch.GivenScore::cupper)
                        .filter(batch.sawTargets()::contains))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Returns what the achieved readings say; empty if they say nothing of their own. */
    Optional<AsAchieved> achieved() {
        return assigned.flatMap(found -> AsAchieved.of(found, terms.span(), found.level()));
    }

    TrialTerms terms() {
        return terms;
    }

    List<AssignedBatch> batches() {
        return batches;
    }

    int look() {
        return look;
    }

    Optional<AsAssigned> assigned() {
        return assigned;
    }

    MissingScores missing() {
        return missing;
    }

    TrialJudgement judgement() {
        return judgement;
    }

    /** Returns the whole answer as a page. */
    public Report page() {
        return TrialPage.of(this);
    }

    @Override
    public Showable shownAs() {
        return page();
    }

    @Override
    public Optional<String> svg() {
        return TrialPictures.sets(this).svg();
    }

    @Override
    public String toString() {
        return "Trial " + terms.trial() + ", " + terms.control().words() + " and " + terms.score() + ": "
                + verdictWords() + ". " + inShort().found() + " "
                + TrialWords.count(assigned.map(found -> found.batches().size()).orElse(0), "batch", "batches") + " in "
                + TrialWords.count(assigned.map(AsAssigned::setCount).orElse(0L), "set", "sets") + ", seal " + seal
                + ".";
    }
}
