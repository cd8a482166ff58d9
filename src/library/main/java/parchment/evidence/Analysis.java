package parchment.evidence;

import java.util.Locale;
import java.util.Optional;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Wording;
import parchment.stats.linear.CannotFitException;

/**
 * Everything that is computed for one question from one set of joined scores, so that verdict, page and pictures take their numbers from
 * one place.
 *
 * <p>Nothing here decides; {@link VerdictRules} does.
 */
final class Analysis {
    /** Under this many scored batches no model is fitted. */
    static final int FEWEST_BATCHES = 8;

    /** Under this many roast days no model is fitted. */
    static final int FEWEST_DAYS = 3;

    private final ModelFrame material;
    private final EvidenceSettings settings;
    private final SmallestDifference margin;
    private final FittedScores line;
    private final TodaysCourse course;
    private final Reliability reliability;
    private final TriedRange range;
    private final PredictiveSkill gain;
    private final SpecificationCurve specificationCurve;
    private final NegativeControl control;
    private final Optional<Bests> bests;
    private final LotsApart lotsApart;
    private final OrdinalCheck ordinal;

    private Analysis(ModelFrame material, Measure measure, EvidenceSettings settings, SmallestDifference margin) {
        this.material = material;
        this.margin = margin;
        this.settings = settings;
        this.line = FittedScores.of(material, ModelForm.STANDARD);
        this.course = TodaysCourse.of(material, line);
        this.range = TriedRange.of(course.line().design());
        this.reliability = Reliability.of(
                material.within(),
                material.batches().stream().mapToDouble(TastedBatch::error).toArray(),
                line.measureVariance().variance());
        this.gain = PredictiveSkill.of(
                bendSeen() ? drawn().design() : line.design(),
                bendSeen()
                        ? course.withoutFeature()
                        : ScoreDesign.of(material, ModelForm.STANDARD.with(ModelForm.Shape.ABSENT)),
                settings);
        this.specificationCurve = SpecificationCurve.of(material, measure.step(), settings.level());
        this.control = NegativeControl.of(material);
        this.bests = switch (course.places()) {
            case READINGS -> Optional.of(Bests.of(todays(), range, settings.level()));
            case FROM_LOTS_MEANS -> Optional.empty();
            case OF_SEVERAL_PROBES -> bestsOnEachMachine();
        };
        this.lotsApart = LotsApart.of(this);
        this.ordinal = OrdinalCheck.of(this, measure);
    }

    private Optional<Bests> bestsOnEachMachine() {
        ModelFrame today = material.changed(TastedBatch::onTodaysProbe);
        return whyNot(today).isEmpty()
                ? Optional.of(Bests.of(
                        today,
                        TriedRange.of(
                                today.batches().stream()
                                        .mapToDouble(TastedBatch::measure)
                                        .toArray(),
                                today.center()),
                        settings.level()))
                : Optional.empty();
    }

    /** Returns the analysis, or nothing if there is too little to fit; {@link #whyNot} says why. */
    static Optional<Analysis> of(
            ModelFrame material, Measure measure, EvidenceSettings settings, SmallestDifference margin) {
        if (!whyNot(material).isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Analysis(material, measure, settings, margin));
        } catch (CannotFitException tooFew) {
            return Optional.empty();
        }
    }

    /** Returns why nothing can be fitted, empty if there is enough to try. */
    static String whyNot(ModelFrame material) {
        int batches = material.batches().size();
        if (batches < FEWEST_BATCHES) {
            return (batches == 0 ? "no batch has" : "only " + Wording.count(batches, "batch has", "batches have"))
                    + " both a score and the measure; at least " + FEWEST_BATCHES + " are needed";
        }
        if (material.roastDays() < FEWEST_DAYS) {
            return "all scored batches come from " + Wording.count(material.roastDays(), "roast day", "roast days")
                    + "; at least " + FEWEST_DAYS + " are needed";
        }
        double[] within = material.within();
        double largest = 0;
        for (double value : within) {
            largest = Math.max(largest, Math.abs(value));
        }
        return largest > 1e-9 ? "" : "the measure does not vary inside any lot";
    }

    ModelFrame material() {
        return material;
    }

    /** Returns the model with the feature as a line. */
    FittedScores fitted() {
        return line;
    }

    /** Returns the course that is drawn, on today's probe: with the bend if it was seen, as a line otherwise. */
    FittedScores drawn() {
        return course.bend().filter(fitted -> bendSeen()).orElse(course.line());
    }

    /** Returns the batches with their readings as on today's probe. */
    ModelFrame todays() {
        return course.line().design().material();
    }

    /** Says what the places along the drawn course are. */
    TodaysCourse.Places places() {
        return course.places();
    }

    /** Returns the best place of each lot; empty if places are not readings. */
    Optional<Bests> bests() {
        return bests;
    }

    /** Returns whether one slope describes all lots. */
    LotsApart lotsApart() {
        return lotsApart;
    }

    /** Returns the slope as fitted. */
    Slope fittedSlope() {
        return line.slope();
    }

    /** Returns the slope that is told: corrected for the measure's error where that matters. */
    Slope headline() {
        return reliability.corrects() ? reliability.corrected(line.slope()) : line.slope();
    }

    /** Returns the coefficient of the squared feature; missing if no bend could be fitted. */
    Slope bendSlope() {
        return course.bend().map(fitted -> fitted.slope(ScoreDesign.SQUARE)).orElse(Slope.MISSING);
    }

    Peak peak() {
        return course.bend()
                .filter(fitted -> course.places() == TodaysCourse.Places.READINGS)
                .map(fitted -> Peak.of(fitted, range, settings.level()))
                .orElseGet(() -> Peak.unknown(range));
    }

    /** Returns the course that is drawn: the bend if it was seen, the line otherwise. */
    FittedCurve curve() {
        return FittedCurve.of(drawn(), range, settings.level());
    }

    boolean bendSeen() {
        return bendSlope().chance() < VerdictRules.CHANCE_OF_BEND;
    }

    boolean slopeSeen() {
        return fittedSlope().chance() < VerdictRules.CHANCE_OF_SLOPE;
    }

    /** Returns the level of the intervals. */
    double level() {
        return settings.level();
    }

    Reliability reliability() {
        return reliability;
    }

    TriedRange range() {
        return range;
    }

    PredictiveSkill gain() {
        return gain;
    }

    SpecificationCurve specificationCurve() {
        return specificationCurve;
    }

    NegativeControl control() {
        return control;
    }

    /** Returns the second answer, of scores in few steps. */
    OrdinalCheck ordinal() {
        return ordinal;
    }

    HiddenCause robustness() {
        return HiddenCause.of(fittedSlope(), settings.level());
    }

    /** Returns the smallest difference that matters, as it was fixed beforehand. */
    SmallestDifference margin() {
        return margin;
    }

    Equivalence equivalence() {
        return Equivalence.of(
                curve(), headline(), course.bend().map(PairsOfPlaces::of).orElse(PairsOfPlaces.UNKNOWN), range, margin);
    }

    /** Says how well one cupper can see the smallest difference that matters between two cups. */
    String repeatability() {
        double cup = line.cupToCup();
        double right = 1 - new Slope(margin.points() / (Math.sqrt(2) * cup), 1, 1e9).chance() / 2;
        return String.format(
                Locale.ROOT,
                "One cupper's scores differ from cup to cup by %s points (standard deviation): two cups that differ by %s are told"
                        + " the right way round by one cupper in %.0f of 100 tries.",
                Wording.points(cup),
                Wording.points(margin.points()),
                100 * right);
    }

    @Override
    public String toString() {
        return material + ": slope " + fittedSlope();
    }
}
