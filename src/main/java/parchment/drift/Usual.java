package parchment.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.hipparchus.distribution.continuous.TDistribution;
import parchment.align.Unusual;
import parchment.display.InShort;
import parchment.display.Report;
import parchment.display.Sentence;
import parchment.display.Showable;
import parchment.display.ShownAs;
import parchment.display.Table;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.feature.OnProbe;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbePeriods;
import parchment.quantity.Mass;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Interval;
import parchment.stats.Robust;

/**
 * Answers whether a batch is like its lot's others, feature by feature, and names what was different.
 *
 * <pre>{@code
 * Usual.of(logbook.lastWithCurve(), logbook)
 * }</pre>
 *
 * <p>Held against: the other batches of its lot on its machine, of the same recipe and within a tenth of its green mass where there are
 * enough of them; bean temperatures are put on one scale across probe periods, and the charge
 * temperature is held against those of the same period. A feature is unlike if it lies outside of the range that
 * is meant to hold the next batch in 95 of 100 cases, all features taken together: median and spread of the others, as wide as a t
 * distribution with Bonferroni's share asks. The spread is the larger of two, by the median and by the mean of the deviations: habits, first
 * batches of a day and seasons make the others no normal sample, and a batch is not odd for being what some of them are. One that lies ten
 * spreads off is no habit and is left out of the mean. Times are compared on
 * the scale of their logarithm and shares on that of their odds, so that no range reaches beyond what is possible.
 */
public final class Usual implements ShownAs {
    /** Fewest others that say what is usual; common practice, no source. */
    static final int ENOUGH = 8;

    static final double MASS_SHARE = 0.1;
    static final double ALARM = 0.05;
    /** Median and mean absolute deviation of a normal sample, in parts of its standard deviation: one over each. */
    private static final double NORMAL = 1.4826;

    /** Another batch farther off than this many spreads is a slip of the pen or a fault, and says nothing of what is usual. */
    static final double SLIP = 10;

    /** Share of a mark's delay that must be missing in the development time; the batch may also have been dropped a little later. */
    static final double ABOUT_AS_MUCH = 0.5;

    private static final double NORMAL_MEAN = Math.sqrt(Math.PI / 2);

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

    /** What a comparison came to. */
    public enum Verdict {
        /** Nothing looked at lies outside of what is usual. */
        LIKE_THE_OTHERS,
        /** Something does. */
        UNLIKE_THE_OTHERS,
        /** There are too few others. */
        CANNOT_TELL
    }

    /**
     * Holds one feature of the batch against the others.
     *
     * @param feature the feature
     * @param value the batch's, on the scale of the latest probe; NaN if missing
     * @param usual the median of the others
     * @param range what is meant to hold the next batch
     * @param others how many others have the feature
     */
    public record Compared(Feature feature, double value, double usual, Interval range, int others) {
        /** Tells whether the batch lies outside of the usual range. */
        public boolean unlike() {
            return Double.isFinite(value) && Double.isFinite(range.lower()) && !range.contains(value);
        }
    }

    private final Batch batch;
    private final TemperatureUnit reader;
    private final String comparedWith;
    private final int others;
    private final List<Compared> compared;
    private final Optional<Unusual.Found> path;
    private final Optional<String> twins;

    private Usual(
            Batch batch,
            TemperatureUnit reader,
            String comparedWith,
            int others,
            List<Compared> compared,
            Optional<Unusual.Found> path,
            Optional<String> twins) {
        this.batch = batch;
        this.reader = reader;
        this.comparedWith = comparedWith;
        this.others = others;
        this.compared = List.copyOf(compared);
        this.path = path;
        this.twins = twins;
    }

    /**
     * Holds a batch against its lot's others.
     *
     * @throws parchment.logbook.LogbookException if the logbook has no such batch
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
        double mass = own.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN);
        others = narrowed(
                others,
                b -> Math.abs(b.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN) - mass)
                        <= MASS_SHARE * mass,
                "about the same mass",
                alike);
        List<Batch> kept = others;
        BatchTable today = table.onTodaysProbe();
        int place = table.batches().indexOf(own);
        ProbePeriods periods = ProbePeriods.of(logbook);
        List<Compared> compared = new ArrayList<>();
        for (Feature feature : LOOKED_AT) {
            boolean reading = feature.onProbe() == OnProbe.READING;
            double[] values = (reading ? today : table).values(feature);
            int[] rows = kept.stream()
                    .filter(b -> !ofOneProbeOnly(feature) || periods.key(b).equals(periods.key(own)))
                    .mapToInt(table.batches()::indexOf)
                    .toArray();
            compared.add(Sample.of(feature, values, rows).compare(values[place]));
        }
        Optional<Unusual.Found> path =
                logbook.remembered(Unusual.class, Unusual::of).find(own.name());
        List<Batch> twins = Twins.of(logbook).of(own);
        return new Usual(
                own,
                logbook.readerUnit(),
                kept.size() + (kept.size() == 1 ? " other of " : " others of ") + String.join(", ", alike),
                kept.size(),
                compared,
                path,
                twins.isEmpty()
                        ? Optional.empty()
                        : Optional.of("Meant like it, as far as was written: "
                                + String.join(
                                        ", ",
                                        twins.stream().map(Batch::name).limit(8).toList())
                                + (twins.size() > 8 ? " and " + (twins.size() - 8) + " more" : "") + "."));
    }

    /** Tells whether a number can be held only against those of the same probe: by how much another probe changes it is not known. */
    private static boolean ofOneProbeOnly(Feature feature) {
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

    /**
     * Holds a feature of the others on its scale.
     *
     * @param known how many have it
     * @param spread how far they lie from their median, like a standard deviation
     */
    private record Sample(Feature feature, Scale scale, int known, double median, double spread) {
        static Sample of(Feature feature, double[] all, int[] rows) {
            Scale scale = Scale.of(feature.unit());
            double[] theirs = Arrays.stream(rows)
                    .mapToDouble(row -> scale.from(all[row]))
                    .filter(Double::isFinite)
                    .toArray();
            if (theirs.length < ENOUGH) {
                return new Sample(feature, scale, theirs.length, Double.NaN, Double.NaN);
            }
            double median = Robust.median(theirs);
            double[] away = Arrays.stream(theirs).map(v -> Math.abs(v - median)).toArray();
            double middle = NORMAL * Robust.median(away);
            // Where more than half are the same, the median of the deviations is no spread; the mean is one.
            double spread = Math.max(
                    middle,
                    NORMAL_MEAN
                            * Arrays.stream(away)
                                    .filter(a -> middle == 0 || a <= SLIP * middle)
                                    .average()
                                    .orElse(0));
            return new Sample(
                    feature, scale, theirs.length, median, Math.max(spread, least(feature.unit(), scale, median)));
        }

        /** Half a printed step: it keeps a feature that never differs from making every batch odd. */
        private static double least(Unit unit, Scale scale, double median) {
            double step = 0.5 * Math.pow(10, -unit.digits()) / unit.shownStep(1, TemperatureUnit.CELSIUS);
            return scale.from(scale.back(median) + step) - median;
        }

        Compared compare(double value) {
            double level = 1 - ALARM / LOOKED_AT.size();
            double half = Double.NaN;
            if (known >= ENOUGH) {
                half = spread
                        * Math.sqrt(1 + Math.PI / 2 / known)
                        * new TDistribution(known - 1).inverseCumulativeProbability((1 + level) / 2);
            }
            return new Compared(
                    feature,
                    value,
                    scale.back(median),
                    new Interval(scale.back(median - half), scale.back(median + half), level),
                    known);
        }
    }

    /** The scale on which a number can lie anywhere. */
    private enum Scale {
        PLAIN,
        LOGARITHM,
        ODDS;

        static Scale of(Unit unit) {
            String symbol = unit.symbol(TemperatureUnit.CELSIUS);
            return symbol.equals(Unit.SECONDS.symbol(TemperatureUnit.CELSIUS))
                    ? LOGARITHM
                    : symbol.equals(Unit.SHARE.symbol(TemperatureUnit.CELSIUS)) ? ODDS : PLAIN;
        }

        /** Returns NaN for what is not possible: a time or a share that is not above 0. */
        double from(double value) {
            return switch (this) {
                case PLAIN -> value;
                case LOGARITHM -> value > 0 ? Math.log(value) : Double.NaN;
                case ODDS -> value > 0 && value < 1 ? Math.log(value / (1 - value)) : Double.NaN;
            };
        }

        double back(double value) {
            return switch (this) {
                case PLAIN -> value;
                case LOGARITHM -> Math.exp(value);
                case ODDS -> 1 / (1 + Math.exp(-value));
            };
        }
    }

    /** Returns the batch. */
    public Batch batch() {
        return batch;
    }

    /** Returns every feature looked at. */
    public List<Compared> compared() {
        return compared;
    }

    /** Returns the answer. */
    public Verdict verdict() {
        return !heldAgainstItsLot() && path.isEmpty()
                ? Verdict.CANNOT_TELL
                : reasons().isEmpty() ? Verdict.LIKE_THE_OTHERS : Verdict.UNLIKE_THE_OTHERS;
    }

    private boolean heldAgainstItsLot() {
        return compared.stream().anyMatch(c -> Double.isFinite(c.value()) && Double.isFinite(c.usual()));
    }

    /** Returns the answer in three sentences: whether the batch is like the others, how sure that is, what to do next. */
    public InShort inShort() {
        String name = "batch " + batch.name();
        long known = compared.stream()
                .filter(c -> Double.isFinite(c.value()) && Double.isFinite(c.usual()))
                .count();
        return switch (verdict()) {
            case CANNOT_TELL ->
                new InShort(
                        "Whether " + name + " is like the others cannot be told.",
                        batch.lot().isEmpty() ? "No lot was written for it." : Sentence.of(tooFew()) + ".",
                        batch.lot().isEmpty()
                                ? "Write its lot into the list of batches and ask again."
                                : "Ask again when more of the lot are roasted.");
            case LIKE_THE_OTHERS ->
                new InShort(
                        Sentence.of(name) + " is like " + comparedWith + ".",
                        (known == 1 ? "The one thing looked at lies" : "All " + known + " things looked at lie")
                                + " where 95 of 100 such batches do.",
                        "Nothing to do; the cup decides.");
            case UNLIKE_THE_OTHERS ->
                new InShort(
                        Sentence.of(name) + " is unlike the others: " + shortReason() + ".",
                        reasons().size() == 1
                                ? "All else lies where 95 of 100 such batches do."
                                : "There "
                                        + (reasons().size() == 2
                                                ? "is one more"
                                                : "are " + (reasons().size() - 1) + " more")
                                        + " such in the table.",
                        "Cup it beside a usual batch before you decide: unlike is not bad.");
        };
    }

    /** The first reason without its remark in brackets. */
    private String shortReason() {
        return reasons().get(0).replaceFirst(" \\(.*", "").replace(", which is ", ", ");
    }

    /** Returns what was different, in words; empty if nothing was, or if it cannot be told. */
    public List<String> reasons() {
        List<String> reasons = new ArrayList<>(path.map(Unusual.Found::reasons).orElse(List.of()));
        Compared development = find(Features.developmentTime());
        for (Compared one : compared) {
            if (one.unlike()) {
                Unit unit = one.feature().unit();
                double off = one.value() - one.usual();
                reasons.add(one.feature().name() + " " + unit.format(one.value(), reader) + ", which is "
                        + unit.formatStep(Math.abs(off), reader) + (off > 0 ? " above" : " below")
                        + " the usual"
                        + (one.feature()
                                        .name()
                                        .equals(Features.firstCrackTemperature().name())
                                ? markWords(
                                        off,
                                        find(Features.rateAtFirstCrack()).usual(),
                                        development.usual() - development.value())
                                : ""));
            }
        }
        return List.copyOf(reasons);
    }

    /**
     * Says that the mark may be late or early where the development time is off to the other side by about as much: a crack that came at another
     * temperature, or a probe that read off, would have left it as it was.
     *
     * @param off how far the reading at the mark lies above the usual, °C
     * @param risePerMinute the usual rate of rise there
     * @param shorter by how many seconds the development time is shorter than usual
     */
    static String markWords(double off, double risePerMinute, double shorter) {
        double seconds = 60 * off / risePerMinute;
        if (!(shorter * Math.signum(off) >= ABOUT_AS_MUCH * Math.abs(seconds))) {
            return "";
        }
        return String.format(
                Locale.ROOT,
                " (perhaps first crack was marked about %.0f s too %s: the development time is %.0f s %s than usual)",
                Math.abs(seconds),
                off > 0 ? "late" : "early",
                Math.abs(shorter),
                off > 0 ? "shorter" : "longer");
    }

    private Compared find(Feature feature) {
        return compared.stream()
                .filter(c -> c.feature().name().equals(feature.name()))
                .findFirst()
                .orElseThrow();
    }

    @Override
    public Showable shownAs() {
        Report page =
                Report.titled("Is batch " + batch.name() + " like the others?").add(inShort());
        Report workedOut = Report.titled("How this was worked out").say(Sentence.of(toString()) + ".");
        if (verdict() == Verdict.CANNOT_TELL) {
            return page.fold(workedOut);
        }
        page = page.add(Table.titled("Feature by feature")
                .withText("feature", compared, c -> c.feature().name())
                .withText("this batch", compared, c -> shown(c, c.value()))
                .withText("usual", compared, c -> shown(c, c.usual()))
                .withText(
                        "usual range",
                        compared,
                        c -> Double.isFinite(c.usual())
                                ? shown(c, c.range().lower()) + " to "
                                        + shown(c, c.range().upper())
                                : "")
                .withText("", compared, c -> c.unlike() ? "unlike" : Double.isFinite(c.value()) ? "as usual" : "")
                .withNumber("others", "", 0, compared, Compared::others)
                .withNote("The ranges are meant to hold all features of the next batch in 95 of 100 cases."));
        if (twins.isPresent()) {
            workedOut = workedOut.say(twins.get());
        }
        return page.fold(workedOut.say("Unlike is not bad: the cup decides."));
    }

    private String shown(Compared one, double value) {
        return Double.isFinite(value) ? one.feature().unit().format(value, reader) : "";
    }

    @Override
    public String toString() {
        return switch (verdict()) {
            case CANNOT_TELL ->
                "Cannot tell whether batch " + batch.name() + " is like the others: "
                        + (batch.lot().isEmpty() ? "no lot was written for it" : tooFew());
            case LIKE_THE_OTHERS -> "batch " + batch.name() + " is like " + comparedWith;
            case UNLIKE_THE_OTHERS ->
                String.format(
                        Locale.ROOT,
                        "batch %s is unlike %s: %s",
                        batch.name(),
                        heldAgainstItsLot()
                                ? comparedWith
                                : path.map(Unusual.Found::comparedWith)
                                        .orElse(comparedWith)
                                        .replaceFirst(": (.*)", " ($1)"),
                        String.join("; ", reasons())
                                + (heldAgainstItsLot() ? "" : ". Its curve was held against those; " + numbersApart()));
        };
    }

    /** Its curve can be held against other lots where those of its own are few; its numbers cannot. */
    private String numbersApart() {
        return batch.lot().isEmpty()
                ? "its numbers cannot be held against any, because no lot was written for it"
                : "its numbers cannot be held against its lot's: " + tooFew();
    }

    private String tooFew() {
        String there = (others == 1 ? "there is " : "there are ") + comparedWith;
        return others < ENOUGH
                ? there + ", and " + ENOUGH + " are needed"
                : there + ", but not " + ENOUGH + " of them have a number that it has too";
    }
}
