package parchment.trial;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import parchment.display.Showable;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookPlace;
import parchment.logbook.written.CupScores;
import parchment.quantity.Temperature;
import parchment.sheet.Words;
import parchment.trial.sealed.DrawnLine;
import parchment.trial.sealed.SetDraw;
import parchment.trial.sealed.TrialControl;
import parchment.trial.sealed.TrialPlan;
import parchment.trial.sealed.TrialTerms;

/**
 * Plans a trial in which chance chooses the target of each batch, so that what comes of it was done by the target and by nothing else.
 *
 * <pre>{@code
 * CoinFlip.of("sweetness", celsius(203))
 *         .triedIn(logbook)
 *         .sellableBetween(celsius(200), celsius(206))
 *         .makerAllowsBetween(celsius(0), celsius(225))
 *         .withSets(13)
 *         .sealTo(Path.of("flip-1"))
 * }</pre>
 *
 * <p>Unless said otherwise: sets of three batches of one lot and one roast day, targets a step of 1.5 °C below the middle, at it and above it,
 * 0.50 points from end to end as the smallest difference that matters, one look, two cups for each cupper of the logbook. Nothing is drawn
 * unless both ends were tried, can be sold, and are within the maker's limits.
 */
public final class CoinFlip implements Showable {
    /** The step of a drop temperature where nothing else is stated, °C. */
    private static final double USUAL_STEP = 1.5;

    private static final int MOST_SETS = 999;

    private static final String NO_STEP =
            "It is not said how far the ends are from the middle. Say it with withStep(...).";

    private static final String NO_LOGBOOK =
            "It is not said in which logbook the ends were tried. Say it with triedIn(logbook).";

    private static final String NO_CUPPERS =
            "Nobody is named who will cup, and the logbook names nobody. Say it with withCuppers(...).";

    /** The trial's name is part of every line, and of file names. */
    private static final String NAME = "[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]{0,60}";

    /** What is stated beforehand for the answer. */
    private record Stated(String score, double smallest, int looks, double lost, List<String> cuppers, int cups) {}

    private final FlipDrawing drawing;
    private final Stated stated;
    private final FlipLimits limits;
    private final Optional<Logbook> logbook;

    private CoinFlip(FlipDrawing drawing, Stated stated, FlipLimits limits, Optional<Logbook> logbook) {
        this.drawing = drawing;
        this.stated = stated;
        this.limits = limits;
        this.logbook = logbook;
    }

    private static CoinFlip of(String score, TrialControl control, String unit, double middle, double step) {
        String plain = score.strip();
        if (plain.isEmpty() || plain.matches(".*[,:|\\p{Cntrl}].*")) {
            throw new IllegalArgumentException(
                    "A trial asks about one attribute of the score sheet, such as \"sweetness\", but was given "
                            + Words.quote(score) + ".");
        }
        return new CoinFlip(
                FlipDrawing.around(control, unit, tenths(middle), tenths(step)),
                new Stated(plain, 0.5, 1, TrialTerms.USUAL_LOST_BATCH, List.of(), 2),
                FlipLimits.NONE,
                Optional.empty());
    }

    /** Targets are sealed with one decimal. */
    private static double tenths(double value) {
        return Math.rint(value * 10) / 10;
    }

    /** Asks what the drop temperature does to an attribute, around a middle. */
    public static CoinFlip of(String attribute, Temperature middleDrop) {
        return of(attribute, TrialControl.DROP_TEMPERATURE, "°C", middleDrop.celsius(), USUAL_STEP);
    }

    /** Asks what the charge temperature does to an attribute, around a middle; the step is stated with {@link #withStep}. */
    public static CoinFlip ofChargeTemperature(String attribute, Temperature middle) {
        return of(attribute, TrialControl.CHARGE_TEMPERATURE, "°C", middle.celsius(), 0);
    }

    /**
     * Asks what the gas at charge does to an attribute, around a middle; the step is stated with {@link #withStep}. A pace cannot be set by
     * hand, the gas can.
     *
     * @param unit the label of the gas in the curves, such as "%"
     */
    public static CoinFlip ofFirstGas(String attribute, double middle, String unit) {
        return of(attribute, TrialControl.FIRST_GAS, unit.strip(), middle, 0);
    }

    private CoinFlip with(FlipDrawing changed) {
        return new CoinFlip(changed, stated, limits, logbook);
    }

    private CoinFlip with(Stated changed) {
        return new CoinFlip(drawing, changed, limits, logbook);
    }

    private CoinFlip with(FlipLimits changed) {
        return new CoinFlip(drawing, stated, changed, logbook);
    }

    /** Returns the trial with so many sets; how many are needed is asked before anything is drawn. */
    public CoinFlip withSets(int sets) {
        if (sets < 1 || sets > MOST_SETS) {
            throw new IllegalArgumentException(
                    "A trial has 1 to " + MOST_SETS + " sets, but " + sets + " were asked for.");
        }
        return with(drawing.withSets(sets));
    }

    /**
     * Returns the trial with sets of 2, 3 or 4 batches: of two both ends; of three the middle too; of four these three and one end more.
     *
     * @throws IllegalArgumentException if it is another number
     */
    public CoinFlip withSetsOf(int batches) {
        if (batches < 2 || batches > 4) {
            throw new IllegalArgumentException("A set has 2, 3 or 4 batches, but " + batches
                    + " were asked for: they are roasted on one day and cupped at one table.");
        }
        return with(drawing.withSetsOf(batches));
    }

    /** Returns the trial with the two ends alone, which sees a slope with fewer batches and overlooks every bend; for sets of 2 or 4. */
    public CoinFlip withEndsOnly() {
        return with(drawing.with(SetDraw.Targets.ENDS));
    }

    /** Returns the trial with another step from the middle to each end: degrees Celsius, or the gas's unit; rounded to a tenth. */
    public CoinFlip withStep(double step) {
        if (!(tenths(step) > 0) || Double.isInfinite(step)) {
            throw new IllegalArgumentException("A step is a number of 0.1 or more, but " + step + " was given.");
        }
        return with(drawing.withStep(tenths(step)));
    }

    /** Returns the trial drawn from a seed, so that it can be drawn again; only for the logbook of a virtual roastery. */
    public CoinFlip withSeed(long seed) {
        return with(drawing.withSeed(seed));
    }

    /** Returns the trial held against what a logbook has tried. */
    public CoinFlip triedIn(Logbook read) {
        return new CoinFlip(drawing, stated, limits, Optional.of(read));
    }

    /** Returns the trial with the two temperatures between which the roaster can sell the coffee. */
    public CoinFlip sellableBetween(Temperature low, Temperature high) {
        return sellableBetween(low.celsius(), high.celsius());
    }

    /** Returns the trial with the two settings between which the roaster can sell the coffee, °C or the gas's unit. */
    public CoinFlip sellableBetween(double low, double high) {
        return with(limits.sellable(ordered(low, high), high));
    }

    /** Returns the trial with the two bean-probe readings between which the maker allows it. */
    public CoinFlip makerAllowsBetween(Temperature low, Temperature high) {
        return makerAllowsBetween(low.celsius(), high.celsius());
    }

    /** Returns the trial with the two settings between which the maker allows it, °C or the gas's unit. */
    public CoinFlip makerAllowsBetween(double low, double high) {
        return with(limits.allowed(ordered(low, high), high));
    }

    private static double ordered(double low, double high) {
        if (!(low < high)) {
            throw new IllegalArgumentException("The lower end comes first, and is below the upper one, but they are "
                    + low + " and " + high + ".");
        }
        return low;
    }

    /** Returns the trial with the hottest air that the maker allows; the logbook's machines.csv counts where this is not said. */
    public CoinFlip makerAllowsAirUpTo(Temperature highest) {
        return with(limits.air(highest.celsius()));
    }

    /** Returns the trial with the usual miss of an aim to either side, °C or the gas's unit; the logbook tells it where ten aims are written. */
    public CoinFlip hittingWithin(double error) {
        if (!(error >= 0) || Double.isInfinite(error)) {
            throw new IllegalArgumentException("A usual miss is a number of 0 or more, but " + error + " was given.");
        }
        return with(limits.hits(error));
    }

    /** Returns the trial with another smallest difference that matters: points from the lowest target to the highest. */
    public CoinFlip withSmallestDifference(double points) {
        return with(new Stated(stated.score, points, stated.looks, stated.lost, stated.cuppers, stated.cups));
    }

    /** Returns the trial with two looks at the scores instead of one, each with a smaller chance of a false finding. */
    public CoinFlip withTwoLooks() {
        return with(new Stated(stated.score, stated.smallest, 2, stated.lost, stated.cuppers, stated.cups));
    }

    /** Returns the trial with another bound for a lost batch: how many points it may have lain from its set's mean. */
    public CoinFlip withLostBatchWithin(double points) {
        return with(new Stated(stated.score, stated.smallest, stated.looks, points, stated.cuppers, stated.cups));
    }

    /** Returns the trial with the names of those who will cup; the logbook's cuppers where this is not said. */
    public CoinFlip withCuppers(String... names) {
        List<String> all = Arrays.stream(names).map(String::strip).distinct().toList();
        all.stream()
                .filter(name -> name.isEmpty() || name.matches(".*[,:|;\\p{Cntrl}].*"))
                .findFirst()
                .ifPresent(name -> {
                    throw new IllegalArgumentException(
                            "A cupper is named without commas, colons and bars, but one is " + Words.quote(name) + ".");
                });
        return with(new Stated(stated.score, stated.smallest, stated.looks, stated.lost, all, stated.cups));
    }

    /** Returns the trial with another number of cups of each batch for each cupper. */
    public CoinFlip withCups(int cups) {
        if (cups < 1 || cups > 20) {
            throw new IllegalArgumentException("A cupper scores 1 to 20 cups of a batch, but " + cups + " were given.");
        }
        return with(new Stated(stated.score, stated.smallest, stated.looks, stated.lost, stated.cuppers, cups));
    }

    private List<String> cuppers(Logbook read) {
        return !stated.cuppers.isEmpty()
                ? stated.cuppers
                : read.cups().stream()
                        .map(CupScores::cupper)
                        .filter(name -> !name.isBlank())
                        .distinct()
                        .sorted()
                        .toList();
    }

    /**
     * Returns how many batches, days, cuppings and kilograms the trial would take, or that it is not worth starting; draws nothing.
     *
     * @throws IllegalArgumentException if the step, the logbook or the cuppers are not said yet
     */
    public TrialSize size() {
        if (drawing.step() == 0) {
            throw new IllegalArgumentException(NO_STEP);
        }
        Logbook read = logbook.orElseThrow(() -> new IllegalArgumentException(NO_LOGBOOK));
        if (cuppers(read).isEmpty()) {
            throw new IllegalArgumentException(NO_CUPPERS);
        }
        return TrialSize.of(terms("to come", read), read);
    }

    /** Returns why nothing may be drawn, in the roaster's words; empty if all holds. */
    public List<String> reasonsAgainst() {
        List<String> reasons = new ArrayList<>();
        if (drawing.sets() == 0) {
            reasons.add("It is not said how many sets are to be drawn. Say it with withSets(...).");
        }
        if (drawing.step() == 0) {
            reasons.add(NO_STEP);
        }
        if (drawing.which() == SetDraw.Targets.ENDS && drawing.size() == 3) {
            reasons.add("A set of three cannot have both ends alike often. Take sets of 2 or 4, or keep the middle.");
        }
        if (logbook.isEmpty()) {
            reasons.add(NO_LOGBOOK);
            return reasons;
        }
        Logbook read = logbook.get();
        if (!read.attributes().isEmpty() && !read.attributes().contains(stated.score)) {
            reasons.add("The logbook '" + read.name() + "' has no attribute " + Words.quote(stated.score) + "."
                    + Words.didYouMean(stated.score, read.attributes()) + " Attributes: "
                    + String.join(", ", read.attributes()) + ".");
        }
        if (cuppers(read).isEmpty()) {
            reasons.add(NO_CUPPERS);
        }
        if (drawing.seed().isPresent() && read.provenance() != Logbook.Provenance.INVENTED) {
            reasons.add(
                    "A seed makes a draw that can be foreseen. It is only for the logbook of a virtual roastery; leave it out.");
        }
        if (drawing.step() > 0) {
            reasons.addAll(checks(read).reasons());
        }
        return reasons;
    }

    private FlipChecks checks(Logbook read) {
        return FlipChecks.of(drawing.control(), drawing.unit(), drawing.middle(), drawing.step(), limits, read);
    }

    /**
     * Draws all targets, seals plan and draw, and writes them into a new folder, whole or not at all. The folder's name becomes the trial's.
     *
     * @param folder a folder that is not there yet, or is empty; in no logbook
     * @return the trial, whose {@link TrialFolder#seal} is to be given to somebody else
     * @throws IllegalArgumentException if something speaks against it; the message says what, and nothing was drawn
     */
    public TrialFolder sealTo(Path folder) {
        return sealTo(folder, Clock.systemUTC());
    }

    TrialFolder sealTo(Path folder, Clock clock) {
        Path last = folder.toAbsolutePath().normalize().getFileName();
        String trial = last == null ? "" : last.toString();
        if (!trial.matches(NAME)) {
            throw new IllegalArgumentException(
                    "A trial is named after its folder, with letters, digits, blanks, dots and dashes, but this one is "
                            + Words.quote(trial) + ".");
        }
        LogbookPlace.around(folder).ifPresent(around -> {
            throw new IllegalArgumentException("'" + folder + "' lies in the logbook '" + around
                    + "', and nothing is written there. Name a folder beside it.");
        });
        List<String> reasons = reasonsAgainst();
        if (!reasons.isEmpty()) {
            throw new IllegalArgumentException("Nothing was drawn. "
                    + String.join(" ", reasons.subList(0, Math.min(3, reasons.size())))
                    + (reasons.size() > 3
                            ? " And " + Words.count(reasons.size() - 3, "reason", "reasons") + " more."
                            : ""));
        }
        Logbook read = logbook.orElseThrow();
        Random chance = drawing.seed().isPresent() ? new Random(drawing.seed().getAsLong()) : new SecureRandom();
        TrialPlan plan = plan(trial, read, clock);
        List<DrawnLine> lines = SetDraw.draw(
                trial, drawing.sets(), drawing.size(), drawing.which(), drawing.middle(), drawing.step(), chance);
        return TrialFolder.seal(folder, plan, lines);
    }

    private TrialTerms terms(String trial, Logbook read) {
        List<Double> targets =
                SetDraw.targets(drawing.size(), drawing.which(), drawing.middle(), drawing.step()).stream()
                        .map(target -> Double.parseDouble(DrawnLine.target(target)))
                        .toList();
        return new TrialTerms(
                trial,
                stated.score,
                drawing.control(),
                targets,
                stated.smallest,
                stated.looks,
                stated.lost,
                cuppers(read),
                stated.cups,
                read.readerUnit());
    }

    private TrialPlan plan(String trial, Logbook read, Clock clock) {
        return new TrialPlan(
                terms(trial, read),
                drawing.sets(),
                drawing.size(),
                drawing.size() == 2 ? SetDraw.Targets.ENDS : drawing.which(),
                drawing.unit(),
                (drawing.seed().isPresent() ? "seed " + drawing.seed().getAsLong() : TrialPlan.SECURE)
                        + (read.provenance() == Logbook.Provenance.INVENTED ? TrialPlan.INVENTED : ""),
                checks(read).held(),
                clock.instant().truncatedTo(ChronoUnit.SECONDS).toString());
    }

    @Override
    public String text() {
        List<String> reasons = reasonsAgainst();
        return toString() + (reasons.isEmpty() ? " It can be sealed." : "\n" + String.join("\n", reasons));
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "Coin flip: what %s does to %s, around %s by %s %s, %s of %d.",
                drawing.control().words(),
                stated.score,
                DrawnLine.target(drawing.middle()),
                DrawnLine.target(drawing.step()),
                drawing.unit(),
                Words.count(drawing.sets(), "set", "sets"),
                drawing.size());
    }
}
