package parchment.evidence;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Report;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.logbook.Logbook;

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
public final class Screen implements Showable {
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

    private final List<Look> looks;
    private final double luckLine;
    private final Shuffled shuffled;
    private final int sets;
    private final int batches;
    private final int shuffles;
    private final long seed;

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
        this.looks = looks.stream()
                .sorted(Comparator.comparingDouble(look -> -Math.abs(look.statistic())))
                .toList();
        this.luckLine = luckLine;
        this.shuffled = shuffled;
        this.sets = sets;
        this.batches = batches;
        this.shuffles = shuffles;
        this.seed = seed;
    }

    /**
     * Looks at every attribute of a logbook against every built-in feature, with 400 shuffles and seed 1. Takes some seconds.
     *
     * @throws IllegalArgumentException if the logbook has no scores
     */
    public static Screen of(Logbook logbook) {
        return ScreenRun.of(logbook, Readings.all(logbook), SHUFFLES, 1).screen();
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

    private Table table() {
        List<Look> shown = looks.stream().limit(SHOWN).toList();
        return Table.titled("The looks furthest from zero")
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
        long above = aboveTheLine().size();
        return String.format(
                Locale.ROOT,
                "%s at %s: the best of that many reaches %.2f on shuffled batches in 1 of 20. %s above that line.",
                Wording.count(looks.size(), "look", "looks"),
                Wording.count(batches, "batch", "batches"),
                luckLine,
                above == 0 ? "None stands" : Wording.count(above, "stands", "stand"));
    }

    private Report page() {
        List<Look> above = aboveTheLine();
        Report page = Report.titled("What goes with what").say(this.toString()).say(how());
        page = page.say(
                above.isEmpty()
                        ? "So nothing here is a finding: the furthest look is what luck alone would show."
                        : "What stands above the line went together more closely than luck explains; nothing here says what is behind"
                                + " it. Ask each by itself with Evidence.of. Nothing below the line is a finding.");
        return page.add(table());
    }

    @Override
    public String text() {
        return page().text();
    }

    @Override
    public Optional<String> html() {
        return page().html();
    }
}
