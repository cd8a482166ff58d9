package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.chart.Plot;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.evidence.finding.Association;
import parchment.evidence.finding.Claim;
import parchment.evidence.finding.Effect;
import parchment.evidence.finding.FinishedTrial;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.feature.Feature;
import parchment.logbook.Logbook;
import parchment.logbook.contents.ScoreQuestion;
import parchment.quantity.Temperature;
import parchment.stats.Interval;

/**
 * Answers what the scores of one attribute tell about one feature of the roasts.
 *
 * <p>A verdict with its reasons, the slope inside lots with its interval, where the best lies or that it cannot be told, the gain on
 * roast days left out, what moved together with the feature, how strong a hidden cause would have to be, and one picture. It answers
 * "cannot tell" where the logbook cannot, and says which batches would.
 *
 * <pre>{@code
 * Evidence.of("sweetness", dropTemperature(), logbook)
 * }</pre>
 *
 * <p>Numbers of the feature are as the library keeps them (degrees Celsius, seconds, shares); the page is in the reader's unit.
 */
public final class Evidence implements ShownAs {
    private final Question question;
    private final ModelFrame material;
    private final Optional<Analysis> analysis;
    private final Optional<Analysis> drawn;
    private final Optional<Analysis> judged;
    private final VerdictRules.Judgement judgement;
    private final Surroundings surroundings;
    private final List<FinishedTrial> trials;

    Evidence(
            Question question,
            ModelFrame material,
            Optional<Analysis> analysis,
            Optional<Analysis> drawn,
            Optional<Analysis> judged,
            VerdictRules.Judgement judgement,
            Surroundings surroundings,
            List<FinishedTrial> trials) {
        this.question = question;
        this.material = material;
        this.analysis = analysis;
        this.drawn = drawn;
        this.judged = judged;
        this.judgement = judgement;
        this.surroundings = surroundings;
        this.trials = List.copyOf(trials);
    }

    /**
     * Answers what the scores of an attribute tell about a feature.
     *
     * @param attribute a column of scores, as in "sweetness"
     * @param feature as in {@code Features.dropTemperature()}
     * @throws IllegalArgumentException if the logbook does not score the attribute
     */
    public static Evidence of(String attribute, Feature feature, Logbook logbook) {
        return of(attribute, feature, logbook, EvidenceSettings.standard());
    }

    /** Answers the same with other settings; state them before looking at the scores. */
    public static Evidence of(String attribute, Feature feature, Logbook logbook, EvidenceSettings settings) {
        Evidence answer =
                FeatureReadings.question(attribute, feature, logbook, settings).ask(logbook);
        return ScoreQuestion.answered(answer, logbook, attribute, feature.name(), feature.definition(), settings);
    }

    /**
     * Returns the same answer with a finished trial of its question shown apart from it, as an effect by the trial's own rules. The verdict of
     * this answer stays what it is.
     *
     * @throws IllegalArgumentException if the trial asked another question
     */
    public Evidence withTrial(FinishedTrial trial) {
        if (!trial.asks(attribute(), feature())) {
            throw new IllegalArgumentException("Trial " + trial.trial() + " asked what the "
                    + trial.effect().feature() + " does to " + trial.effect().attribute()
                    + "; this answer is about the " + feature() + " and " + attribute()
                    + ". Show it beside an answer to its own question.");
        }
        List<FinishedTrial> more = new ArrayList<>(trials);
        more.add(trial);
        return new Evidence(question, material, analysis, drawn, judged, judgement, surroundings, more);
    }

    /** Returns the finished trials that are shown beside the answer. */
    public List<FinishedTrial> trials() {
        return trials;
    }

    /** Returns the verdict. */
    public Verdict verdict() {
        return judgement.verdict();
    }

    /** Returns the reasons of the verdict in words, the decisive one first. */
    public List<String> reasons() {
        return judgement.reasons();
    }

    /** Returns the answer in three sentences: what was found between two readings, how sure that is, what to do next. */
    public InShort inShort() {
        return judged.map(found -> FirstWords.of(
                        question.attribute(),
                        question.measure(),
                        judgement,
                        TwoReadings.of(found, question.measure(), verdict()),
                        found.margin().points(),
                        found.bendSeen()
                                ? found.bendSlope().chance()
                                : found.fittedSlope().chance(),
                        NextBatches.of(found, judgement.lacks()),
                        help()))
                .orElseGet(() -> FirstWords.nothingFitted(
                        question.attribute(),
                        question.measure(),
                        reasons().get(0),
                        surroundings.scoredWithoutFeature()));
    }

    /** Says why just the two readings of the first sentence are compared; empty where it names none. */
    String whyThese() {
        return judged.map(found -> WhyThese.words(
                        TwoReadings.of(found, question.measure(), verdict()),
                        question.measure(),
                        verdict(),
                        judgement.decisive().why(),
                        planned()))
                .orElse("");
    }

    /** Says that nobody tried what lies beyond the better end; empty where the score was not best there. */
    String beyond() {
        return judged.map(found -> WhyThese.beyond(
                        TwoReadings.of(found, question.measure(), verdict()),
                        question.measure(),
                        verdict(),
                        found.range()))
                .orElse("");
    }

    /** Says what else would help where something cheaper than batches comes first; empty where nothing does. */
    String afterThat() {
        boolean asksForBatches = verdict() == Verdict.CANNOT_TELL
                && judgement.decisive().why() != VerdictRules.Why.MOVED_WITH_ANOTHER
                && judgement.decisive().why() != VerdictRules.Why.FOLLOWS_A_FACT
                && !judgement.decisive().stepsAreTooFew();
        return judged.filter(found -> asksForBatches)
                .map(found -> NextBatches.of(found, judgement.lacks()))
                .map(next ->
                        FirstWords.more(question.measure(), next, help()).afterThat(next.inShort(question.measure())))
                .orElse("");
    }

    private CheapestHelp help() {
        return CheapestHelp.of(material, judgedMaterial(), judgedBlindness());
    }

    /** Says how readings of earlier probe periods were told; empty if none was moved. */
    String readingsMoved() {
        return judged.filter(found -> found.places() == TodaysCourse.Places.READINGS)
                .map(found -> surroundings.readingsMoved().words(question.measure()))
                .orElse("");
    }

    /** Says whether chance set the targets of the batches that the verdict rests on. */
    Findings.Planned planned() {
        return judgedByChance() ? Findings.Planned.BY_CHANCE : Findings.Planned.NOT_BY_CHANCE;
    }

    /** Returns the attribute that was scored. */
    public String attribute() {
        return question.attribute();
    }

    /** Returns the name of the feature. */
    public String feature() {
        return question.measure().name();
    }

    /** Returns what was fixed before the scores were looked at. */
    public EvidenceSettings settings() {
        return question.settings();
    }

    /** Returns how the score went with the feature. */
    public Association association() {
        Slope slope = analysis.map(Analysis::headline).orElse(Slope.MISSING);
        Measure measure = question.measure();
        Slope perStep = slope.per(measure.step());
        return new Association(
                question.attribute(),
                measure.name(),
                measure.stepWords(),
                slope,
                perStep,
                perStep.interval(question.settings().level()));
    }

    /**
     * Returns how the attribute relative to the rest of its cup, its score less the mean of all attributes there, went with the feature:
     * a second view beside the answer, in which a halo is taken out, and with it whatever lifted the whole cup. Empty if only one
     * attribute is scored.
     */
    public Optional<Association> relativeToGeneralLevel() {
        Slope slope = surroundings.relative();
        Measure measure = question.measure();
        Slope perStep = slope.per(measure.step());
        return slope.known()
                ? Optional.of(new Association(
                        question.attribute() + " relative to the rest of its cup",
                        measure.name(),
                        measure.stepWords(),
                        slope,
                        perStep,
                        perStep.interval(question.settings().level())))
                : Optional.empty();
    }

    /** Returns what the target drawn by chance did to the score; empty if too few targets were drawn by chance. */
    public Optional<Effect> effect() {
        Measure measure = question.measure();
        return drawn.map(found -> {
            Slope perStep = found.headline().per(measure.step());
            return new Effect(
                    question.attribute(),
                    measure.name(),
                    measure.stepWords(),
                    found.headline(),
                    perStep,
                    perStep.interval(question.settings().level()));
        });
    }

    /** Returns what is told first: the effect if there is one, otherwise the association. */
    public Claim claim() {
        Optional<Effect> effect = effect();
        return effect.isPresent() ? effect.get() : association();
    }

    /** Returns the interval of the slope per natural step that is told first, in points; its ends are NaN if nothing could be fitted. */
    public Interval interval() {
        return claim().interval();
    }

    /**
     * Returns where the best lies, as a reading on today's probe: of the one lot, or of the common course of several; empty if nothing
     * could be fitted. It is told of nowhere if the verdict is "cannot tell" for a reason that touches the place too, and for the probes of
     * several machines at once.
     */
    public Optional<Peak> peak() {
        return analysis.map(found -> (whyNoBest().isEmpty() ? found.peak() : Peak.unknown(found.range()))
                .told(question.attribute(), question.measure(), whyNoBest().orElseGet(() -> switch (found.places()) {
                    case READINGS -> "a curve could not be fitted";
                    case FROM_LOTS_MEANS -> "the probe was changed since, and by how much is not known";
                    case OF_SEVERAL_PROBES -> "a place on one machine's probe is not the same on another's";
                })));
    }

    /**
     * Returns why no best may be told, in words, though a course could be fitted: what moved with the feature, or with the calendar, may have
     * brought about the course as well as the slope. Empty if one may.
     */
    Optional<String> whyNoBest() {
        return verdict() == Verdict.CANNOT_TELL && judgement.lacks().holdsForPlaces()
                ? Optional.of(reasons().get(0))
                : bendIsDoubtful()
                        ? Optional.of("taken as steps in their order the scores do not bend with it")
                        : Optional.empty();
    }

    /** Says whether a bend was seen that scores in few steps do not show as steps in their order. */
    boolean bendIsDoubtful() {
        return analysis.map(found -> found.ordinal().bendIsDoubtful()).orElse(false);
    }

    /** Says the second answer of scores in few steps and whether it agrees; empty where scores come in many. */
    String bySteps() {
        return judged.map(found -> found.ordinal()
                        .words(
                                TwoReadings.of(found, question.measure(), verdict()),
                                question.measure(),
                                question.settings().level(),
                                judgement.decisive().why(),
                                found.margin().points()))
                .orElse("");
    }

    /** Says what would tell where nothing can be told. */
    String whatWouldTell() {
        return judgement.decisive().stepsAreTooFew()
                ? "What would tell: scores in finer steps, with room left at both ends of the scale. In steps like these the number of"
                        + " batches that would settle it is not known."
                : nextBatches().orElseThrow().words(question.measure());
    }

    /** Says below the picture where the second answer agrees on the difference only; empty otherwise. */
    String stepsDiffer() {
        boolean found = verdict() == Verdict.SUGGESTIVE || verdict() == Verdict.STRONG;
        return judged.filter(told -> found)
                .map(told -> told.ordinal().inTheFirstScreen())
                .orElse("");
    }

    /** Returns the best place of each lot, as a reading on today's probe; empty if nothing could be fitted. */
    public Optional<Bests> bests() {
        return analysis.filter(found -> whyNoBest().isEmpty())
                .flatMap(Analysis::bests)
                .map(found -> found.told(question.attribute(), question.measure()));
    }

    /** Returns whether one slope describes all lots, and which lot goes its own way; empty if nothing could be fitted. */
    public Optional<LotsApart> lotsApart() {
        return analysis.map(Analysis::lotsApart);
    }

    /**
     * Returns the best place of one lot, as a reading on today's probe.
     *
     * @param lot its name; where the logbook has several machines and the lot was roasted on more than one, with its machine, as in
     *     "Amber on barrel"
     * @throws IllegalArgumentException if no scored batch is of that lot, or if batches of several machines are
     * @throws IllegalStateException if no best place can be told of any lot
     */
    public LotBest best(String lot) {
        Bests found = bests().orElseThrow(() -> new IllegalStateException("No best place can be told of any lot: "
                + whyNoBest()
                        .or(() -> analysis.isPresent()
                                ? Optional.of(
                                        "the probe was changed since, and by how much its readings differ is not known")
                                : Optional.of(String.join("; ", judgement.reasons())))
                        .orElseThrow()
                + "."));
        List<LotBest> named = found.named(lot);
        if (named.size() == 1) {
            return named.get(0);
        }
        String all = String.join(
                ", ",
                (named.isEmpty() ? found.lots() : named)
                        .stream().map(LotBest::lot).toList());
        throw new IllegalArgumentException(
                named.isEmpty()
                        ? "The best place of a lot needs scored batches of it; there are none of '" + lot + "'. Lots: "
                                + all + "."
                        : "'" + lot + "' was roasted on several machines, and each has a best of its own. Name one: "
                                + all + ".");
    }

    /** Returns the gain on roast days left out; its numbers are NaN if there are too few. */
    PredictiveSkill gain() {
        return analysis.map(Analysis::gain).orElse(PredictiveSkill.MISSING);
    }

    /** Returns the tried range; empty if nothing could be fitted. */
    Optional<TriedRange> triedRange() {
        return analysis.map(Analysis::range);
    }

    /** Returns how much of the feature's spread is its own; empty if nothing could be fitted. */
    Optional<Reliability> reliability() {
        return analysis.map(Analysis::reliability);
    }

    /** Returns how strong a hidden cause would have to be; empty if nothing could be fitted. */
    Optional<HiddenCause> robustness() {
        return analysis.map(Analysis::robustness);
    }

    /** Returns whether the next roast day's feature goes with today's score. */
    NegativeControl negativeControl() {
        return analysis.map(Analysis::control).orElse(NegativeControl.MISSING);
    }

    /** Returns the eight other ways of looking; empty if nothing could be fitted. */
    Optional<SpecificationCurve> specificationCurve() {
        return analysis.map(Analysis::specificationCurve);
    }

    /** Returns whether every difference that is left is too small to matter; empty if nothing could be fitted. */
    Optional<Equivalence> equivalence() {
        return analysis.map(Analysis::equivalence);
    }

    /** Returns how many more batches would settle the question; empty if nothing could be fitted. */
    Optional<NextBatches> nextBatches() {
        return analysis.map(found -> NextBatches.of(found, judgement.lacks()));
    }

    /** Returns the facts that moved together with the feature. */
    Facts facts() {
        return surroundings.facts();
    }

    /** Returns the other features that moved together with it. */
    public CollinearFeatures movedTogether() {
        return surroundings.moved();
    }

    /** Returns how the scored batches differ from those not scored. */
    CuppedBatches cuppedBatches() {
        return surroundings.cupped();
    }

    /** Returns how many scores were blind and before discussion. */
    Blindness blindness() {
        return surroundings.blindness();
    }

    /** Returns how batches were laid out over cuppings. */
    CuppingLayout layout() {
        return surroundings.layout();
    }

    /** Returns how many batches stand behind the answer. */
    public int batches() {
        return material.batches().size();
    }

    /** Returns how many roast days stand behind the answer. */
    public int roastDays() {
        return material.roastDays();
    }

    /** Returns how many cuppings stand behind the answer. */
    public int cuppings() {
        return material.cuppings();
    }

    /** Returns how many cuppers stand behind the answer. */
    public int cuppers() {
        return material.cuppers().size();
    }

    /** Returns how many scores stand behind the answer: one cupper's of one cup. */
    public int scores() {
        return material.scores().size();
    }

    /** Returns how many of the batches that were scored had a target drawn by chance, enough for an effect or not. */
    public int drawnTargets() {
        return surroundings.drawnTargets();
    }

    /** Returns what was left out and why. */
    List<Exclusion> leftOut() {
        return material.leftOut();
    }

    /**
     * Says what score goes with a value of the feature, as the library keeps it; refuses in words outside the tried range.
     *
     * @throws IllegalStateException if nothing could be fitted
     */
    public ScorePrediction at(double value) {
        Analysis found = analysis.orElseThrow(() -> new IllegalStateException(
                "No score can be foretold, because " + String.join("; ", judgement.reasons()) + "."));
        return ScorePrediction.of(found, question.measure(), question.attribute(), value);
    }

    /** Says what score goes with a temperature; refuses in words outside the tried range. */
    public ScorePrediction at(Temperature temperature) {
        return at(temperature.celsius());
    }

    /** Returns the picture: the attribute against the feature, of the batches that the verdict rests on. */
    public Plot picture() {
        Plot plot = pictureAlone();
        for (String note : pictureNotes()) {
            plot = plot.withNote(note);
        }
        return plot;
    }

    /** Says how the picture is read; nothing where there is none. */
    List<String> pictureNotes() {
        return judged.map(found -> PictureNotes.of(
                        question.measure(),
                        found.todays(),
                        judgement,
                        planned(),
                        question.settings().level()))
                .orElse(List.of());
    }

    /** Returns the picture without the sentences under it. */
    Plot pictureAlone() {
        return judged.map(found -> marked(
                        EvidencePicture.of(
                                question.attribute(),
                                question.measure(),
                                found,
                                whyNoBest().isEmpty() ? found.peak() : Peak.unknown(found.range()),
                                judgement.verdict(),
                                planned()),
                        TwoReadings.of(found, question.measure(), verdict())))
                .orElseGet(() -> EvidencePicture.of(question.attribute(), question.measure(), "")
                        .withEmptySentence(
                                "There is nothing to draw: " + String.join("; ", judgement.reasons()) + "."));
    }

    private Plot marked(Plot plot, TwoReadings told) {
        boolean compares = told.placesAreReadings() && judgement.decisive().why() != VerdictRules.Why.HARDLY_VARIED;
        return compares ? EvidencePicture.compared(plot, told) : plot;
    }

    /** Returns the whole answer as a page of words, tables and the picture. */
    public Report page() {
        return EvidencePage.of(this);
    }

    Question question() {
        return question;
    }

    ModelFrame material() {
        return material;
    }

    /** Returns the batches and scores that the verdict rests on. */
    ModelFrame judgedMaterial() {
        return judged.map(Analysis::material).orElse(material);
    }

    Optional<Analysis> analysis() {
        return analysis;
    }

    Optional<Analysis> drawn() {
        return drawn;
    }

    /** Returns what the verdict rests on: the batches whose targets were drawn by chance where those settle it, otherwise all. */
    Optional<Analysis> judged() {
        return judged;
    }

    /** Says whether the verdict rests on targets that were drawn by chance. */
    boolean judgedByChance() {
        return judged.isPresent() && judged.equals(drawn);
    }

    /** Returns how blind the scores were that the verdict rests on. */
    Blindness judgedBlindness() {
        return surroundings.judgedBlindness();
    }

    @Override
    public Showable shownAs() {
        return page();
    }

    @Override
    public Optional<String> svg() {
        return picture().svg();
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%s and %s: %s. %s%s %s.",
                question.attribute(),
                feature(),
                verdict().words(),
                claim(),
                lotsApart().filter(LotsApart::differ).map(lots -> " " + lots).orElse(""),
                Wording.sentence(material.toString()));
    }
}
