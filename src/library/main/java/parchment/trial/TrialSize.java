package parchment.trial;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.stats.linear.Robust;
import parchment.trial.sealed.TrialTerms;

/**
 * Says how large a trial has to be before anything is drawn: in batches, roast days, cuppings and kilograms, from the logbook's own spread; or that it is not worth
 * starting.
 *
 * <p>Sized for four trials in five to find the smallest difference that was stated, at the upper 80 % limit of the spread. A set is roasted on one day and cupped on one
 * table. The fifteen roast days that a watched answer needs to be called strong are no rule of a trial.
 */
public final class TrialSize implements ShownAs {
    /** Fewer degrees of freedom tell next to nothing of a spread; a choice of this project. */
    static final int FEWEST_DEGREES = 5;

    /** Below so many sets shuffles are coarse, and the formula promises too much. */
    static final int FEW_SETS = 6;

    /** The same where a set has two batches and so only two ways of dealing. */
    static final int FEW_SETS_OF_TWO = 13;

    private final TrialTerms terms;
    private final Optional<TrialSpread> spread;
    private final double followed;
    private final double lost;
    private final OptionalInt sets;
    private final OptionalDouble greenMass;
    private final MassUnit shown;

    private TrialSize(
            TrialTerms terms,
            Optional<TrialSpread> spread,
            double followed,
            double lost,
            OptionalDouble greenMass,
            MassUnit shown) {
        this.terms = terms;
        this.spread = spread.filter(found -> found.degreesOfFreedom() >= FEWEST_DEGREES);
        this.followed = followed;
        this.lost = lost;
        this.greenMass = greenMass;
        this.shown = shown;
        this.sets = this.spread.map(found -> sets(power(found))).orElse(OptionalInt.empty());
    }

    /** Sizes a trial by a logbook, with every target followed and no batch lost. */
    static TrialSize of(TrialTerms terms, Logbook logbook) {
        double[] masses = logbook.whole().batches().stream()
                .flatMap(batch -> batch.conditions().greenMass().stream())
                .mapToDouble(Mass::kilograms)
                .toArray();
        return new TrialSize(
                terms,
                TrialSpread.of(terms.score(), terms.control(), logbook),
                1,
                0,
                masses.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(Robust.median(masses)),
                logbook.massUnit());
    }

    /** Sizes a trial by a spread that is known. */
    static TrialSize of(TrialTerms terms, TrialSpread spread) {
        return new TrialSize(terms, Optional.of(spread), 1, 0, OptionalDouble.empty(), MassUnit.KILOGRAM);
    }

    /** Returns the size where only this share of the targets will be followed; a missed one comes out by habit. */
    TrialSize withFollowed(double share) {
        return new TrialSize(terms, spread, share(share), lost, greenMass, shown);
    }

    /** Returns the size where this share of the batches will be lost. */
    TrialSize withLost(double share) {
        return new TrialSize(terms, spread, followed, share(share), greenMass, shown);
    }

    private static double share(double share) {
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException(
                    "A share of a trial's batches lies between 0 and 1, but it is " + share + ".");
        }
        return share;
    }

    /** Returns how many batches a set has: each target once. */
    int setSize() {
        return terms.targets().size();
    }

    private int fewSets() {
        return setSize() == 2 ? FEW_SETS_OF_TWO : FEW_SETS;
    }

    private TrialPower power(TrialSpread found) {
        double middle = terms.targets().stream()
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(0);
        double squares = terms.targets().stream()
                .mapToDouble(target -> (target - middle) * (target - middle))
                .sum();
        return new TrialPower(
                terms.smallestDifference() / terms.span(),
                found.varianceAt(terms.cuppers().size() * terms.cups()) * found.upperFactor(),
                setSize(),
                squares,
                terms.chance());
    }

    /** The formula's number of sets; by simulation where sets are few, targets missed or batches lost. */
    private OptionalInt sets(TrialPower power) {
        OptionalInt formula = power.sets();
        if (formula.isEmpty()) {
            return formula;
        }
        boolean reaches = followed == 1 && lost == 0 && formula.getAsInt() >= fewSets();
        if (reaches) {
            return formula;
        }
        int most = TrialPower.MOST_BATCHES / setSize();
        int low = formula.getAsInt();
        int high = low;
        TrialSimulation simulated = new TrialSimulation(power, terms.targets(), followed, lost);
        while (simulated.power(high) < TrialPower.WANTED) {
            if (high == most) {
                return OptionalInt.empty();
            }
            low = high + 1;
            high = Math.min(most, 2 * high);
        }
        while (low < high) {
            int middle = (low + high) / 2;
            if (simulated.power(middle) >= TrialPower.WANTED) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return OptionalInt.of(low);
    }

    /** Returns the number of batches; empty if the trial is not worth starting, or the logbook cannot say. */
    public OptionalInt batches() {
        return sets.isPresent() ? OptionalInt.of(sets.getAsInt() * setSize()) : OptionalInt.empty();
    }

    /** Returns the number of roast days, and of cuppings: one of each a set. */
    public OptionalInt days() {
        return sets;
    }

    /** Returns the mass of green coffee in kilograms, by the usual charge of the logbook; empty if no mass is written or there is no number of batches. */
    public OptionalDouble kilograms() {
        return batches().isPresent() && greenMass.isPresent()
                ? OptionalDouble.of(batches().getAsInt() * greenMass.getAsDouble())
                : OptionalDouble.empty();
    }

    /** Returns the answer in three sentences. */
    public InShort inShort() {
        if (spread.isEmpty()) {
            return new InShort(
                    "This logbook cannot say how large the trial has to be.",
                    "Too few batches of one lot and one day were cupped blind side by side.",
                    "Cup two or three batches of one lot and day on one table, on several days, then ask again.");
        }
        String difference = TrialWords.points(terms.smallestDifference()) + " points";
        if (sets.isEmpty()) {
            return new InShort(
                    "This trial is not worth starting: " + TrialPower.MOST_BATCHES + " batches would show " + difference
                            + " less often than four times in five.",
                    "Batches of one lot and day differ by about " + TrialWords.points(limit())
                            + " points for other reasons.",
                    "State a larger difference, targets further apart, or more cuppers and cups.");
        }
        return new InShort(
                "This trial takes " + batches().getAsInt() + " batches: "
                        + TrialWords.count(days().getAsInt(), "roast day", "roast days") + ", as many cuppings" + mass()
                        + ".",
                "It then shows " + difference + " four times in five, if batches differ as they did here.",
                "Draw it if the answer is worth that; a larger difference or more cuppers would make it smaller.");
    }

    private String mass() {
        return kilograms().isPresent()
                ? " and " + Mass.kilograms(kilograms().getAsDouble()).words(shown) + " of green coffee"
                : "";
    }

    /** Returns the spread that the trial is sized by, in points. */
    double limit() {
        return spread.map(found -> Math.sqrt(power(found).variance())).orElse(Double.NaN);
    }

    /** Returns the page. */
    public Report page() {
        Report page =
                Report.titled("How large trial " + terms.trial() + " has to be").add(inShort());
        return page.fold(Report.titled("How this was worked out").say(behind()));
    }

    private String behind() {
        if (spread.isEmpty()) {
            return "A spread needs at least " + FEWEST_DEGREES
                    + " degrees of freedom: batches of one lot and day on one table, less one for each such set, less two.";
        }
        TrialSpread found = spread.get();
        return String.format(
                Locale.ROOT,
                "%s of one lot, day and table in %s differ by %.2f points once the line and the bend of the %s are taken out (%d degrees of freedom, %.1f scores a mean). With %s and %s each"
                        + " the upper 80 %% limit is %.2f points. %s %.0f %% of the targets followed, %.0f %% of the batches lost; %s.",
                TrialWords.count(found.batches(), "batch", "batches"),
                TrialWords.count(found.sets(), "set", "sets"),
                Math.sqrt(found.variance()),
                terms.control().words(),
                found.degreesOfFreedom(),
                found.scores(),
                TrialWords.count(terms.cuppers().size(), "cupper", "cuppers"),
                TrialWords.count(terms.cups(), "cup", "cups"),
                limit(),
                Double.isNaN(found.single())
                        ? "What one score adds is not known, as no two cuppers shared a table, so the spread is taken as it was seen."
                        : "",
                100 * followed,
                100 * lost,
                sets.isPresent() && (followed < 1 || lost > 0 || sets.getAsInt() < fewSets())
                        ? "by " + TrialSimulation.TRIALS + " drawn trials of each size"
                        : "by the noncentral t distribution");
    }

    @Override
    public Showable shownAs() {
        return page();
    }

    @Override
    public String toString() {
        return inShort().toString();
    }
}
