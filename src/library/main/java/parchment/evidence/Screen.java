package parchment.evidence;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.chart.Axis;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.chart.Span;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.evidence.finding.Wording;
import parchment.logbook.Logbook;
import parchment.logbook.contents.ScoreQuestion;
import parchment.stats.linear.CannotFitException;

/**
 * Looks at every attribute against every feature and says which stand above the luck line: what the best of that many looks would
 * reach on shuffled batches.
 *
 * <p>Whole rows of features are shuffled among the batches of one lot and one roast day, never the scores, and only batches of one lot
 * and one day are compared; the luck line is the largest statistic that the best look of a shuffle exceeds in 1 of 20. With fewer than
 * 20 lots-and-days of two batches or more, whole roast days are shuffled instead, and what stands above the line is a hint only.
 * Nothing below it is called a finding.
 *
 * <pre>{@code
 * Screen.of(logbook)
 * }</pre>
 *
 * <p>The line is the single-step maximum method of Westfall and Young 1993, Resampling-Based Multiple Testing.
 */
public final class Screen implements ShownAs {
    /** Says what was shuffled. */
    public enum Shuffled {
        /** Batches inside one lot and one roast day. */
        BATCHES_OF_ONE_LOT_AND_DAY,
        /** Whole roast days. */
        WHOLE_DAYS
    }

    private static final double CHANCE = 0.05;
    private static final int SHUFFLES = 400;
    private static final int SHOWN = 12;
    private static final long SEED = 1;

    private final List<Look> looks;
    private final double luckLine;
    private final Shuffled shuffled;
    private final int sets;
    private final int batches;
    private final int shuffles;
    private final long seed;
    private final String whyNot;

    /**
     * Holds one look.
     *
     * @param attribute the attribute that was scored
     * @param feature the name of the feature
     * @param statistic slope divided by its error; the sign says whether the score rises or falls
     * @param chance share of shuffles in which the best of all looks reached as much
     * @param perStep points per natural step of the feature
     * @param stepWords that step, as in "1 °C"
     */
    public record Look(
            String attribute, String feature, double statistic, double chance, double perStep, String stepWords) {}

    Screen(List<Look> looks, double luckLine, Shuffled shuffled, int sets, int batches, int shuffles, long seed) {
        this(looks, luckLine, shuffled, sets, batches, shuffles, seed, "");
    }

    private Screen(
            List<Look> looks,
            double luckLine,
            Shuffled shuffled,
            int sets,
            int batches,
            int shuffles,
            long seed,
            String whyNot) {
        this.looks = looks.stream()
                .sorted(Comparator.comparingDouble(look -> -Math.abs(look.statistic())))
                .toList();
        this.luckLine = luckLine;
        this.shuffled = shuffled;
        this.sets = sets;
        this.batches = batches;
        this.shuffles = shuffles;
        this.seed = seed;
        this.whyNot = whyNot;
    }

    /**
     * Looks at every attribute of a logbook against every built-in feature, with 400 shuffles and seed 1. Takes some seconds. With too
     * few scored batches there are no looks, and the answer says how many it needs.
     */
    public static Screen of(Logbook logbook) {
        try {
            Screen screen = ScreenRun.of(logbook, FeatureReadings.all(logbook), SHUFFLES, SEED)
                    .screen();
            return ScoreQuestion.answered(screen, logbook);
        } catch (CannotFitException tooFew) {
            String why = tooFew.getMessage() == null ? "too few scores" : tooFew.getMessage();
            return new Screen(List.of(), Double.NaN, Shuffled.WHOLE_DAYS, 0, 0, 0, SEED, why);
        }
    }

    /** Returns all looks, the furthest from zero first. */
    public List<Look> looks() {
        return looks;
    }

    /** Returns the looks above the luck line. */
    public List<Look> aboveTheLine() {
        return looks.stream().filter(look -> look.chance() < CHANCE).toList();
    }

    /** Returns the statistic that the best of all looks exceeds on shuffled batches in 1 of 20. */
    public double luckLine() {
        return luckLine;
    }

    /** Returns what was shuffled. */
    public Shuffled shuffled() {
        return shuffled;
    }

    String whyNot() {
        return whyNot;
    }

    /** Returns the answer in three sentences: what stands furthest above luck, how sure that is, what to do next. */
    public InShort inShort() {
        return ScreenInShort.of(this);
    }

    private Table table() {
        List<Look> shown = looks.stream().limit(SHOWN).toList();
        Table table = Table.titled("The looks furthest from zero")
                .withText("attribute", shown, Look::attribute)
                .withText("feature", shown, Look::feature)
                .withNumber("change", "points", 3, shown, Look::perStep)
                .withText("per", shown, Look::stepWords)
                .withNumber("slope over its error", "", 2, shown, Look::statistic)
                .withText("luck line", shown, look -> look.chance() < CHANCE ? "above" : "below")
                .withNote(String.format(
                        Locale.ROOT,
                        "The first %d of %d looks. %d shuffles, seed %d.",
                        shown.size(),
                        looks.size(),
                        shuffles,
                        seed));
        return shown.stream().anyMatch(look -> look.stepWords().equals("1"))
                ? table.withNote(
                        "Per 1 without a unit: on the feature's own scale; for gas and airflow that is the machine's.")
                : table;
    }

    /** Returns the picture: the features with the furthest looks, each attribute a mark of its own, and the luck line to both sides. */
    public Plot picture() {
        List<String> features =
                looks.stream().map(Look::feature).distinct().limit(SHOWN).toList();
        Plot plot = Plot.of(
                        "What goes with what: the features with the furthest looks",
                        Axis.number("slope over its error", ""),
                        Axis.rows("", features))
                .withEmptySentence("There is nothing to draw: " + whyNot);
        if (features.isEmpty()) {
            return plot;
        }
        plot = plot.with(Span.of("within luck", -luckLine, luckLine));
        for (String attribute :
                looks.stream().map(Look::attribute).distinct().sorted().toList()) {
            List<Look> own = looks.stream()
                    .filter(look -> look.attribute().equals(attribute) && features.contains(look.feature()))
                    .toList();
            if (!own.isEmpty()) {
                plot = plot.with(Points.of(
                        attribute,
                        own.stream().mapToDouble(Look::statistic).toArray(),
                        own.stream()
                                .mapToDouble(look -> features.indexOf(look.feature()))
                                .toArray()));
            }
        }
        return plot.withNote(
                        "Outside the grey stretch a look stands above the luck line: to the right the score rises with the feature, to the"
                                + " left it falls.")
                .withNote(counts() + ".");
    }

    private String counts() {
        long attributes = looks.stream().map(Look::attribute).distinct().count();
        long features = looks.stream().map(Look::feature).distinct().count();
        return Wording.count(looks.size(), "look", "looks") + " ("
                + Wording.count(attributes, "attribute", "attributes") + ", "
                + Wording.count(features, "feature", "features") + ") at " + Wording.count(batches, "batch", "batches");
    }

    private String how() {
        return shuffled == Shuffled.BATCHES_OF_ONE_LOT_AND_DAY
                ? "Only batches of one lot and one roast day were compared, and shuffled with all their features among each other ("
                        + Wording.count(sets, "such set", "such sets") + ")."
                : "There are only " + Wording.count(sets, "set", "sets")
                        + " of batches of one lot and one roast day, under 20, so whole roast days were shuffled; what stands above the"
                        + " line is a hint only, as anything that drifts with the calendar can lift it.";
    }

    @Override
    public String toString() {
        if (looks.isEmpty()) {
            return "Cannot tell what goes with what. " + whyNot;
        }
        long above = aboveTheLine().size();
        return String.format(
                Locale.ROOT,
                "%s: the best of that many reaches %.2f on shuffled batches in 1 of 20. %s above that line.",
                counts(),
                luckLine,
                above == 0 ? "None stands" : Wording.count(above, "stands", "stand"));
    }

    private Report page() {
        List<Look> above = aboveTheLine();
        Report page = Report.titled("What goes with what").add(inShort());
        Report workedOut = Report.titled("How this was worked out").say(this.toString());
        if (looks.isEmpty()) {
            return page.fold(workedOut);
        }
        return page.add(picture())
                .fold(workedOut
                        .say(how())
                        .say(
                                above.isEmpty()
                                        ? "So nothing here is a finding: the furthest look is what luck alone would show."
                                        : (shuffled == Shuffled.WHOLE_DAYS
                                                        ? "What stands above the line is a hint, not a finding: anything that moves with the"
                                                                + " calendar can lift it."
                                                        : "What stands above the line went together more closely than luck explains; nothing"
                                                                + " here says what is behind it.")
                                                + " Only straight lines inside one lot and day are looked at here: a best in the middle, or"
                                                + " what differs from day to day, can be seen by Evidence.of and not here."
                                                + " Features that move together, and attributes that do, are not several findings. Ask each by"
                                                + " itself with Evidence.of. Nothing below the line is a finding.")
                        .add(table()));
    }

    @Override
    public Showable shownAs() {
        return page();
    }

    @Override
    public Optional<String> svg() {
        return picture().svg();
    }
}
