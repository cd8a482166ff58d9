package parchment.evidence;

import java.util.Locale;
import parchment.display.Showable;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Wording;
import parchment.feature.kind.Role;

/**
 * Reckons how many more batches would settle a question.
 *
 * <p>A 90 % interval of the difference over the tried range that is no wider than the smallest difference that matters settles it whatever
 * the truth is: it leaves out zero, or it lies wholly inside plus and minus that difference. The information at hand is one over the
 * squared error of the slope (Fisher). A new roast day of batches half at the lower and half at the higher value adds n (half the
 * distance)^2 / (variance of a batch's mean score inside a day); differences between days cancel in it. The error that no batch takes
 * away, as that of few cuppers who each go their own way, is left as it is. The width uses the t quantile that holds after the new batches.
 *
 * @param batches how many more batches; 0 if no affordable number would tell
 * @param roastDays on how many roast days
 * @param low the lower of the two values to roast at
 * @param high the higher one
 * @param size the smallest difference that matters, in points over the tried range
 * @param kind what stands in the way of an answer
 */
record NextBatches(long batches, long roastDays, double low, double high, double size, Kind kind) implements Showable {
    /** What an answer lacks. */
    public enum Kind {
        /** More of the same batches would tell. */
        MORE,
        /** More batches would tell, some of them in the middle of the range: a bend deep enough to matter was not ruled out. */
        BEND,
        /** New batches would tell by themselves; those at hand follow something else and do not count. */
        AFRESH,
        /** No affordable number of batches over the same range would tell. */
        TOO_MANY,
        /** The feature hardly varied. */
        MOVE_IT,
        /** Something else always moved with it. */
        MOVE_APART;

        /** Says whether what stands against the slope stands against a best place too, however clear the course looks. */
        boolean holdsForPlaces() {
            return this == AFRESH || this == MOVE_IT || this == MOVE_APART;
        }
    }

    /** The most further batches that are called affordable. */
    static final long MOST = 200;

    /** The width of the interval that is told. */
    private static final double LEVEL = 0.90;

    /** With fewer new days nothing can be fitted to the new batches alone. */
    private static final long FEWEST_NEW_DAYS = 4;

    /**
     * What the number is worked out from.
     *
     * @param error the standard error of the slope at hand, NaN if there is none
     * @param bendError the standard error of the bend's coefficient, NaN if there is none
     * @param lasting the part of it that no further batch takes away
     * @param degrees its degrees of freedom
     * @param batchVariance the variance of a batch's mean score inside a roast day
     * @param perDay batches on a roast day, as now
     */
    record AtHand(double error, double bendError, double lasting, double degrees, double batchVariance, long perDay) {}

    static NextBatches of(Analysis analysis, Kind asked) {
        FittedScores fitted = analysis.fitted();
        ModelFrame material = analysis.material();
        Slope slope = analysis.headline();
        double own = fitted.spread("cupper's own slope");
        return of(
                new AtHand(
                        slope.standardError(),
                        analysis.bendSlope().standardError(),
                        own / Math.sqrt(material.cuppers().size()),
                        slope.degreesOfFreedom(),
                        fitted.batchVariance(),
                        Math.round((double) material.batches().size() / material.roastDays())),
                analysis.range(),
                analysis.margin().points(),
                asked);
    }

    static NextBatches of(AtHand now, TriedRange range, double size, Kind asked) {
        if (!(range.width() > 0)) {
            return new NextBatches(0, 0, range.low(), range.high(), size, Kind.MOVE_IT);
        }
        if (asked == Kind.MOVE_IT || asked == Kind.MOVE_APART) {
            return new NextBatches(0, 0, range.low(), range.high(), size, asked);
        }
        long places = asked == Kind.BEND ? 3 : 2;
        long perDay = places * Math.max(1, (now.perDay() + places - 1) / places);
        double lasting = now.lasting() * now.lasting();
        double atHand = now.error() * now.error() - lasting;
        boolean counts = asked != Kind.AFRESH && atHand > 0 && now.degrees() >= 1;
        double information = counts ? 1 / atHand : 0;
        double width = range.width();
        // Evenly over both ends, or over both ends and the middle: mean square of the distance, and of its square from
        // its own mean.
        double perBatch = width * width / (asked == Kind.BEND ? 6 : 4) / now.batchVariance();
        double bendPerBatch = Math.pow(width, 4) / 72 / now.batchVariance();
        double bendInformation = now.bendError() > 0 ? 1 / (now.bendError() * now.bendError()) : 0;
        double whole = range.highest() - range.lowest();
        for (long days = counts ? 1 : FEWEST_NEW_DAYS; days * perDay <= MOST; days++) {
            long batches = days * perDay;
            double error = Math.sqrt(lasting + 1 / (information + batches * perBatch));
            double degrees = (counts ? now.degrees() : 0) + batches - days;
            double half = new Slope(0, error * whole, degrees).interval(LEVEL).upper();
            double bendError = 1 / Math.sqrt(bendInformation + batches * bendPerBatch);
            double depth = new Slope(0, bendError * whole * whole / 4, degrees)
                    .interval(LEVEL)
                    .upper();
            if (2 * half <= size && (asked != Kind.BEND || 2 * depth <= size)) {
                return new NextBatches(batches, days, range.low(), range.high(), size, asked);
            }
        }
        return new NextBatches(0, 0, range.low(), range.high(), size, Kind.TOO_MANY);
    }

    /** Returns what to do in one sentence, for the first sentences of an answer. */
    String inShort(Measure measure) {
        RoundReadings round = RoundReadings.of(measure, low, high);
        String tooMany = "It takes over " + MOST + " batches between " + round.words(round.from(low)) + " and "
                + round.words(round.to(high)) + "; ";
        if (measure.role() == Role.CALENDAR) {
            return kind == Kind.TOO_MANY
                    ? tooMany + "wait for batches of other seasons and lots."
                    : FirstWords.notMoved(measure);
        }
        return switch (kind) {
            case MOVE_IT ->
                "Move the " + measure.name()
                        + " on purpose from batch to batch, inside what your machine's maker allows.";
            case MOVE_APART ->
                "Vary only the " + measure.name() + " from batch to batch, and keep what moved with it the same.";
            // How far is for the machine's maker to say: no reading is named at which nobody roasted.
            case TOO_MANY ->
                tooMany + "cup each more often, or go slightly beyond, inside what your machine's maker allows.";
            case MORE, AFRESH ->
                "About " + batches + (kind == Kind.AFRESH ? " new " : " more ") + (batches == 1 ? "batch" : "batches")
                        + " on "
                        + Wording.count(roastDays, "roast day", "roast days") + " would tell, half near "
                        + round.words(round.from(low)) + " and half near " + round.words(round.to(high)) + ".";
            case BEND ->
                "About " + batches + " more batches on " + Wording.count(roastDays, "roast day", "roast days")
                        + " would tell: a third each near " + round.words(round.from(low)) + ", "
                        + round.words((low + high) / 2) + " and " + round.words(round.to(high)) + ".";
        };
    }

    /** Returns the sentence in the reader's unit. */
    String words(Measure measure) {
        return switch (kind) {
            case MOVE_IT ->
                "What would tell: batches in which the " + measure.name()
                        + " is moved on purpose, inside what your machine's maker allows; it hardly varied, and more batches like"
                        + " these tell nothing, however many.";
            case MOVE_APART ->
                "What would tell: batches in which the " + measure.name()
                        + " is moved and whatever moved with it is not; more batches like these cannot tell the two apart,"
                        + " however many.";
            case TOO_MANY ->
                String.format(
                        Locale.ROOT,
                        "No affordable number tells: over the range tried so far a difference of %s points would take more than %d"
                                + " further batches. A wider range of %s, inside what your machine's maker allows, or more cups of"
                                + " each batch would be cheaper.",
                        Wording.points(size),
                        MOST,
                        measure.name());
            case MORE, BEND, AFRESH ->
                String.format(
                        Locale.ROOT,
                        "What would tell: about %d more batches on %s, all of one lot and each roast day as many with a %s near %s"
                                + " as near %s%s, which of them drawn by chance before charge, cupped blind and scored before anybody"
                                + " speaks. %sThen the 90 %% interval would be no wider than %s points, the smallest difference that"
                                + " matters: it leaves out zero or holds nothing that matters, in at least 8 of 10 such logbooks.",
                        batches,
                        Wording.count(roastDays, "roast day", "roast days"),
                        measure.name(),
                        measure.value(low),
                        measure.value(high),
                        kind == Kind.BEND ? " and half way between" : "",
                        kind == Kind.AFRESH
                                ? "They would have to tell by themselves, as those at hand may follow the calendar. "
                                : "",
                        Wording.points(size));
        };
    }

    @Override
    public String toString() {
        return switch (kind) {
            case MORE, BEND, AFRESH ->
                "about " + batches + " more batches on " + Wording.count(roastDays, "roast day", "roast days");
            case TOO_MANY -> "no affordable number of batches, more than " + MOST;
            case MOVE_IT -> "batches in which the measure is moved on purpose";
            case MOVE_APART -> "batches in which the measure is moved and what moved with it is not";
        };
    }
}
