package parchment.evidence;

import java.util.Optional;
import parchment.stats.Correlation;

/**
 * Holds everything that is computed for one question from one set of joined scores.
 *
 * <p>Nothing here decides; {@link VerdictRules} does.
 */
final class Analysis {
    /** Under this many scored batches no model is fitted. */
    static final int FEWEST_BATCHES = 8;

    /** Under this many roast days no model is fitted. */
    static final int FEWEST_DAYS = 3;

    private final Material material;
    private final EvidenceSettings settings;
    private final FittedScores line;
    private final Optional<FittedScores> bend;
    private final Reliability reliability;
    private final TriedRange range;
    private final HeldOutGain gain;
    private final Alternatives alternatives;
    private final NegativeControl control;

    private Analysis(Material material, double step, EvidenceSettings settings) {
        this.material = material;
        this.settings = settings;
        this.line = FittedScores.of(material, ModelForm.STANDARD);
        this.bend = fitBend(material);
        this.range = TriedRange.of(line.design());
        this.reliability = Reliability.of(
                material.within(),
                material.batches().stream().mapToDouble(TastedBatch::error).toArray(),
                line.measureVariance().variance());
        this.gain = HeldOutGain.of(
                bend.filter(fitted -> bendSeen()).orElse(line).design(),
                ScoreDesign.of(material, ModelForm.STANDARD.with(ModelForm.Shape.ABSENT)),
                settings);
        this.alternatives = Alternatives.of(material, step, settings.level());
        this.control = NegativeControl.of(material);
    }

    /** Returns the analysis, or nothing if there is too little to fit; {@link #whyNot} says why. */
    static Optional<Analysis> of(Material material, double step, EvidenceSettings settings) {
        if (!whyNot(material).isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Analysis(material, step, settings));
        } catch (IllegalArgumentException tooFewRows) {
            return Optional.empty();
        }
    }

    /** Returns why nothing can be fitted, empty if there is enough to try. */
    static String whyNot(Material material) {
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

    private static Optional<FittedScores> fitBend(Material material) {
        try {
            FittedScores fitted = FittedScores.of(material, ModelForm.STANDARD.with(ModelForm.Shape.BEND));
            return fitted.slope(ScoreDesign.SQUARE).known() ? Optional.of(fitted) : Optional.empty();
        } catch (IllegalArgumentException tooFewRows) {
            return Optional.empty();
        }
    }

    Material material() {
        return material;
    }

    /** Returns the model with the feature as a line. */
    FittedScores fitted() {
        return line;
    }

    /** Returns the model with a bend; empty if it could not be fitted. */
    Optional<FittedScores> bent() {
        return bend;
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
        return bend.map(fitted -> fitted.slope(ScoreDesign.SQUARE)).orElse(Slope.MISSING);
    }

    Peak peak() {
        return bend.map(fitted -> Peak.of(fitted, range, settings.level())).orElseGet(() -> Peak.unknown(range));
    }

    /** Returns the course that is drawn: the bend if it was seen, the line otherwise. */
    FittedCurve curve() {
        FittedScores drawn = bend.filter(fitted -> bendSeen()).orElse(line);
        return FittedCurve.of(drawn, range, settings.level());
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

    HeldOutGain gain() {
        return gain;
    }

    Alternatives alternatives() {
        return alternatives;
    }

    NegativeControl control() {
        return control;
    }

    /** Returns the share of the feature's spread inside lots that a straight line over the date explains. */
    double calendarShare() {
        double[] date = material.changed(batch -> batch.withMeasure(batch.day().toEpochDay(), Double.NaN))
                .within();
        double correlation = Correlation.pearson(material.within(), date);
        return Double.isNaN(correlation) ? 0 : correlation * correlation;
    }

    HiddenCause hiddenCause() {
        return HiddenCause.of(fittedSlope(), settings.level());
    }

    /** Returns the smallest difference that matters: as stated beforehand, or the spread of one cupper's scores from cup to cup. */
    double margin() {
        return settings.smallestDifference().orElse(line.cupToCup());
    }

    Equivalence equivalence() {
        return Equivalence.of(
                headline(),
                bendSlope(),
                range,
                margin(),
                settings.smallestDifference().isPresent()
                        ? "stated beforehand"
                        : "the spread of one cupper's scores from cup to cup, after everything in the model");
    }

    NextBatches nextBatches() {
        return NextBatches.of(this, margin());
    }

    @Override
    public String toString() {
        return material + ": slope " + fittedSlope();
    }
}
