package parchment.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import parchment.align.Unusual;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.ShownAs;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.feature.path.OnProbe;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.Problem;
import parchment.period.ProbePeriods;
import parchment.phase.Phases;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Interval;

/**
 * Answers whether a batch is like its lot's others, feature by feature, and names what was different.
 *
 * <pre>{@code
 * Usual.of(logbook.lastWithCurve(), logbook)
 * }</pre>
 *
 * <p>Held against: the other batches of its lot on its machine, of the same recipe and within a tenth of its green mass where there are
 * enough of them; a batch of a charge that there are too few of is held against the others only by what does not follow from the charge; bean temperatures are put on one scale across probe periods, and the charge
 * temperature is held against those of the same period. A feature is unlike if it lies outside of the range that
 * is meant to hold the next batch in 95 of 100 cases, all features taken together: median and spread of the others, as wide as a t
 * distribution with Bonferroni's share asks. The spread is the larger of two, by the median and by the mean of the deviations: habits, first
 * batches of a day and seasons make the others no normal sample, and a batch is not odd for being what some of them are. One that lies ten
 * spreads off is no habit and is left out of the mean. Times are compared on
 * the scale of their logarithm and shares on that of their odds, so that no range reaches beyond what is possible. A second, narrower range,
 * meant to hold the next batch in 80 of 100 cases, parts "as usual" from "a little unlike".
 */
public final class Usual implements ShownAs {
    /** Fewest others that say what is usual; common practice, no source. */
    static final int ENOUGH = 8;

    static final double ALARM = 0.05;
    /** Share of ordinary batches that may have something beyond the narrower range, all features taken together; common practice, no source. */
    static final double LITTLE = 0.2;

    /** Another batch farther off than this many spreads is a slip of the pen or a fault, and says nothing of what is usual. */
    static final double SLIP = 10;

    /** Share of a mark's delay that must be missing in the development time; the batch may also have been dropped a little later. */
    static final double ABOUT_AS_MUCH = 0.5;

    static final List<Feature> LOOKED_AT = List.of(
            Features.chargeTemperature(),
            WrittenCharge.AGAINST_THE_CURVE,
            Features.turningPointTemperature(),
            Features.dryingTime(),
            Features.browningTime(),
            Features.developmentTime(),
            Features.dropTime(),
            Features.firstCrackTemperature(),
            Features.dropTemperature(),
            Features.rateAtFirstCrack(),
            Features.massLoss());

    /** Least share of the temperatures that the lot's others have, for a batch to be told as like them; common practice, no source. */
    static final double LEAST_TEMPERATURES = 0.5;

    /** What a comparison came to. */
    public enum Verdict {
        /** Nothing looked at lies outside of what holds 80 of 100 batches: as usual. */
        LIKE_THE_OTHERS,
        /** Something does, and all lies within what holds 95 of 100. */
        A_LITTLE_UNLIKE_THE_OTHERS,
        /** Something lies outside of what holds 95 of 100, or the path went otherwise. */
        UNLIKE_THE_OTHERS,
        /** There are too few others, or most of the temperatures that the others have are missing and nothing else was unlike. */
        CANNOT_TELL
    }

    /**
     * Holds one feature of the batch against the others.
     *
     * @param feature the feature
     * @param value the batch's, on the scale of the latest probe; NaN if missing
     * @param usual the median of the others
     * @param narrower what is meant to hold the next batch in 80 of 100 cases, all features taken together
     * @param range what is meant to hold it in 95 of 100
     * @param others how many others have the feature
     */
    public record Compared(Feature feature, double value, double usual, Interval narrower, Interval range, int others) {
        /** Returns what the feature by itself comes to. */
        public Verdict verdict() {
            return !Double.isFinite(value) || !Double.isFinite(usual)
                    ? Verdict.CANNOT_TELL
                    : !range.contains(value)
                            ? Verdict.UNLIKE_THE_OTHERS
                            : narrower.contains(value) ? Verdict.LIKE_THE_OTHERS : Verdict.A_LITTLE_UNLIKE_THE_OTHERS;
        }

        /** Tells whether the batch lies outside of the usual range. */
        public boolean unlike() {
            return verdict() == Verdict.UNLIKE_THE_OTHERS;
        }
    }

    private final Batch batch;
    private final TemperatureUnit reader;
    private final String comparedWith;
    private final List<Batch> others;
    private final List<Compared> compared;
    private final Optional<Unusual.Found> path;
    private final Optional<String> twins;
    private final Optional<OddCharge> charge;
    private final Optional<String> leftOut;
    private final Optional<Problem> massNotRead;

    private Usual(
            Batch batch,
            TemperatureUnit reader,
            String comparedWith,
            List<Batch> others,
            List<Compared> compared,
            Optional<Unusual.Found> path,
            Optional<String> twins,
            Optional<OddCharge> charge,
            Optional<String> leftOut,
            Optional<Problem> massNotRead) {
        this.massNotRead = massNotRead;
        this.charge = charge;
        this.batch = batch;
        this.reader = reader;
        this.comparedWith = comparedWith;
        this.others = List.copyOf(others);
        this.compared = List.copyOf(compared);
        this.path = path;
        this.twins = twins;
        this.leftOut = leftOut;
    }

    /**
     * Holds a batch against its lot's others.
     *
     * @throws parchment.logbook.contents.LogbookException if the logbook has no such batch
     */
    public static Usual of(Batch batch, Logbook logbook) {
        Batch own = logbook.batch(batch.name());
        BatchTable table = BatchTable.of(logbook, LOOKED_AT);
        List<Batch> others = table.batches().stream()
                .filter(b -> !b.name().equals(own.name()))
                .filter(b -> b.lot().isPresent()
                        && b.lot().equals(own.lot())
                        && b.machine().equals(own.machine()))
                .toList();
        List<String> alike = new ArrayList<>();
        alike.add(own.lot().map(lot -> "lot " + lot).orElse("its lot"));
        others = narrowed(
                others,
                b -> b.label(Batch.Label.RECIPE).equals(own.label(Batch.Label.RECIPE)),
                own.label(Batch.Label.RECIPE).map(r -> "recipe " + r).orElse(""),
                alike);
        Optional<OddCharge> charge = OddCharge.of(own, others, logbook);
        Optional<OneCharge> mass =
                own.conditions().greenMass().map(green -> new OneCharge(green.kilograms(), logbook.massUnit()));
        others = narrowed(others, b -> mass.filter(one -> one.holds(b)).isPresent(), "about the same mass", alike);
        List<Batch> kept = others;
        BatchTable today = table.onTodaysProbe();
        int place = table.batches().indexOf(own);
        ProbePeriods periods = ProbePeriods.of(logbook);
        List<Compared> compared = new ArrayList<>();
        for (Feature feature : LOOKED_AT) {
            boolean reading = feature.onProbe() == OnProbe.READING;
            double[] values = (reading ? today : table).values(feature);
            int[] rows = kept.stream()
                    .filter(b -> charge.isEmpty() || OddCharge.canHold(feature))
                    .filter(b -> !ofOneProbeOnly(feature) || periods.key(b).equals(periods.key(own)))
                    .mapToInt(table.batches()::indexOf)
                    .toArray();
            compared.add(UsualRange.of(feature, values, rows).compare(place < 0 ? Double.NaN : values[place]));
        }
        Optional<Unusual.Found> path = charge.isPresent()
                ? Optional.empty() // Paths go with the mass.
                : logbook.remembered(Unusual.class, Unusual::of).find(own.name());
        List<Batch> twins = Twins.of(logbook).of(own);
        return new Usual(
                own,
                logbook.readerUnit(),
                kept.size() + (kept.size() == 1 ? " other of " : " others of ") + String.join(", ", alike),
                kept,
                compared,
                path,
                twins.isEmpty()
                        ? Optional.empty()
                        : Optional.of("Meant like it, as far as was written: "
                                + String.join(
                                        ", ",
                                        twins.stream().map(Batch::name).limit(8).toList())
                                + (twins.size() > 8 ? " and " + (twins.size() - 8) + " more" : "") + "."),
                charge,
                logbook.whole().problems().batchesLeftOut(),
                MassNotRead.of(own, kept, logbook));
    }

    /** Tells whether a number can be held only against those of the same probe: by how much another probe changes it is not known. */
    static boolean ofOneProbeOnly(Feature feature) {
        return feature.onProbe() == OnProbe.HANGS_ON_IT && feature != WrittenCharge.AGAINST_THE_CURVE;
    }

    private static List<Batch> narrowed(
            List<Batch> others, Predicate<Batch> condition, String words, List<String> alike) {
        List<Batch> fewer = others.stream().filter(condition).toList();
        if (fewer.size() < ENOUGH || words.isEmpty()) {
            return others;
        }
        alike.add(words);
        return fewer;
    }

    /** Returns the batch. */
    public Batch batch() {
        return batch;
    }

    /** Returns the batches it was held against, in the logbook's order; empty if there are none of its lot. */
    public List<Batch> others() {
        return others;
    }

    /** Returns every feature looked at. */
    public List<Compared> compared() {
        return compared;
    }

    /** Returns the features beside what is usual, as a table. */
    public Table byFeature() {
        return UsualPage.byFeature(this);
    }

    /** Returns the answer. */
    public Verdict verdict() {
        if (path.isPresent()) {
            return Verdict.UNLIKE_THE_OTHERS;
        }
        return Stream.of(Verdict.UNLIKE_THE_OTHERS, Verdict.A_LITTLE_UNLIKE_THE_OTHERS, Verdict.LIKE_THE_OTHERS)
                .filter(verdict -> verdict == Verdict.UNLIKE_THE_OTHERS || !lacksTemperatures())
                .filter(verdict -> compared.stream().anyMatch(one -> one.verdict() == verdict))
                .findFirst()
                .orElse(Verdict.CANNOT_TELL);
    }

    /** Tells whether fewer of its temperatures are known than half of those that its lot's others have. */
    boolean lacksTemperatures() {
        long theirs = temperatures(false);
        return theirs > 1 && temperatures(true) < LEAST_TEMPERATURES * theirs;
    }

    private long temperatures(boolean own) {
        return compared.stream()
                .filter(one -> one.feature().onProbe() != OnProbe.FREE_OF_IT && Double.isFinite(one.usual()))
                .filter(one -> !own || Double.isFinite(one.value()))
                .count();
    }

    /** Says which temperatures it lacks, as the end of a sentence that begins with its name. */
    String lackingWords() {
        return Phases.of(batch).clean().isEmpty()
                ? "has no curve that can be read"
                : "lacks most of the temperatures that its lot's others have";
    }

    /** Returns how many numbers of the batch could be held against its lot's. */
    long held() {
        return compared.stream()
                .filter(one -> one.verdict() != Verdict.CANNOT_TELL)
                .count();
    }

    TemperatureUnit reader() {
        return reader;
    }

    String comparedWith() {
        return comparedWith;
    }

    Optional<Unusual.Found> path() {
        return path;
    }

    /** Returns the charge where it is one that too few others are of. */
    Optional<OddCharge> oddCharge() {
        return charge;
    }

    /** Returns what was found in place of its green mass where that could not be read and its lot's others have one. */
    public Optional<Problem> massNotRead() {
        return massNotRead;
    }

    /** Says of which charge it was where too few others are of it, as in "a half charge (2.49 kg; usually 4.99 kg)"; empty if that is not so. */
    public Optional<String> rareCharge() {
        return charge.map(OddCharge::words);
    }

    Optional<String> twins() {
        return twins;
    }

    /** Says why the batch has no lot where the list of batches was left out as a whole. */
    Optional<String> leftOut() {
        return leftOut;
    }

    /** Returns the answer in three sentences: whether the batch is like the others, how sure that is, what to do next. */
    public InShort inShort() {
        return UsualPage.inShort(this);
    }

    /**
     * Returns what was different, in words: what makes the batch unlike the others, or a little unlike them where nothing more was; empty if
     * nothing was, or if it cannot be told.
     */
    public List<String> reasons() {
        Verdict verdict = verdict();
        return verdict == Verdict.LIKE_THE_OTHERS || verdict == Verdict.CANNOT_TELL
                ? List.of()
                : UsualReasons.of(this, verdict);
    }

    @Override
    public Showable shownAs() {
        return UsualPage.of(this);
    }

    @Override
    public String toString() {
        return UsualReasons.sentence(this);
    }

    /** Says how many others there are where they are too few, or what the batch lacks. */
    String tooFew() {
        if (lacksTemperatures()) {
            return "it " + lackingWords() + ", and " + temperatures(true) + " of " + temperatures(false)
                    + " temperatures can be held against theirs";
        }
        if (charge.isPresent()) {
            return "it was " + charge.get().words() + ", and too few are like it to say anything";
        }
        String there = (others.size() == 1 ? "there is " : "there are ") + comparedWith;
        return others.size() < ENOUGH
                ? there + ", and " + ENOUGH + " are needed"
                : there + ", but not " + ENOUGH + " of them have a number that it has too";
    }
}
