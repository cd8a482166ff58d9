package parchment.learning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.contents.ScoreQuestion;
import parchment.sheet.Words;

/**
 * Answers whether there is anything in the features of a roast that lines and bends miss about a score: yes, no, or cannot tell.
 *
 * <p>Roast days are left out and foretold by a line and a bend in every feature, and by trees, which know nothing of lines. If the
 * trees help on days that they never saw, there is something that lines and bends miss: a step, or features that only count
 * together. It is a yardstick for the other answers, never a verdict on a feature. "No" is said only where something planted for a trial would have been found.
 *
 * <pre>{@code
 * Yardstick.of("sweetness", logbook)
 * }</pre>
 *
 * <p>The trees draw by a seed, which stands on the page: the same scores and seed give the same answer. Takes some ten seconds.
 *
 * @see <a href="https://doi.org/10.1214/aos/1013203451">Friedman 2001, Ann. Statist. 29:1189</a>, for the trees; Lundberg and Lee 2017, Advances in
 *     Neural Information Processing Systems 30, for what each feature has to do with it
 */
public final class Yardstick implements ShownAs {
    /** Says whether lines and bends miss something. */
    public enum Missed {
        /** Trees helped on roast days that they never saw. */
        YES,
        /** They did not, and something as large as was planted for a trial would have been found. */
        NO,
        /** They did not, and might not have found it either. */
        CANNOT_TELL
    }

    /** Fewest batches and roast days from which days are left out; common practice, no source. */
    static final int FEWEST_BATCHES = 60;

    static final int FEWEST_DAYS = 20;
    private static final int FEWEST_FEATURES = 2;
    private static final long SEED = 1;

    private final String attribute;
    private final ScoredRows scored;
    private final Optional<HeldOutDays> judged;
    private final Optional<PlantedStep.Result> planted;
    private final List<Share> shares;

    /**
     * Says how much one feature has to do with what was missed.
     *
     * @param feature its name
     * @param points by how many points it moves what is foretold of a batch, on average without regard to sign
     */
    public record Share(String feature, double points) {}

    private Yardstick(
            String attribute,
            ScoredRows scored,
            Optional<HeldOutDays> judged,
            Optional<PlantedStep.Result> planted,
            List<Share> shares) {
        this.attribute = attribute;
        this.scored = scored;
        this.judged = judged;
        this.planted = planted;
        this.shares = List.copyOf(shares);
    }

    /**
     * Holds every built-in feature against the scores of an attribute.
     *
     * @param attribute a column of scores, as in "sweetness"
     * @throws LogbookException if the logbook scores others, but not this attribute
     */
    public static Yardstick of(String attribute, Logbook logbook) {
        // A logbook that never scored anything is no slip: it is answered, with what is missing.
        if (!logbook.attributes().isEmpty() && !logbook.attributes().contains(attribute)) {
            throw new LogbookException("The logbook has no attribute '" + attribute + "'. Attributes: "
                    + String.join(", ", logbook.attributes()) + ".");
        }
        List<Feature> all = Features.all().list();
        Yardstick answer = of(attribute, ScoredRows.of(attribute, logbook, all));
        return ScoreQuestion.answered(answer, logbook, attribute);
    }

    static Yardstick of(String attribute, ScoredRows scored) {
        long days = scored.days().stream().distinct().count();
        if (scored.rows().size() < FEWEST_BATCHES
                || days < FEWEST_DAYS
                || !scored.differ()
                || scored.names().size() < FEWEST_FEATURES) {
            return new Yardstick(attribute, scored, Optional.empty(), Optional.empty(), List.of());
        }
        HeldOutDays judged = HeldOutDays.of(scored.rows(), scored.response(), scored.lots(), scored.days(), SEED);
        boolean found = judged.low() > 0;
        return new Yardstick(
                attribute,
                scored,
                Optional.of(judged),
                found ? Optional.empty() : Optional.of(PlantedStep.of(scored, judged, SEED)),
                found ? shares(scored) : List.of());
    }

    /** What the trees on top of the lines and bends go by, all batches together. */
    private static List<Share> shares(ScoredRows scored) {
        int[] all = IntStream.range(0, scored.rows().size()).toArray();
        double[] smooth = SmoothCourses.of(scored.rows(), scored.response(), scored.lots())
                .foretell(all);
        double[][] rows = HeldOutDays.pick(scored.rows(), all);
        double[][] shares = BoostedTrees.fit(rows, HeldOutDays.less(scored.response(), smooth, all), SEED)
                .shares(rows);
        List<Share> out = new ArrayList<>();
        for (int k = 0; k < scored.names().size(); k++) {
            double sum = 0;
            for (double[] row : shares) {
                sum += Math.abs(row[k]);
            }
            out.add(new Share(scored.names().get(k), sum / shares.length));
        }
        out.sort(Comparator.comparingDouble(Share::points).reversed());
        return out;
    }

    /** Returns whether lines and bends miss something. */
    public Missed missed() {
        if (judged.isEmpty()) {
            return Missed.CANNOT_TELL;
        }
        if (judged.get().low() > 0) {
            return Missed.YES;
        }
        return planted.filter(trial -> trial.found() == PlantedStep.TRIALS).isPresent()
                ? Missed.NO
                : Missed.CANNOT_TELL;
    }

    /** Returns the share of the mean square miss that the trees took away on days left out; NaN with too few batches or days. */
    public double gain() {
        return judged.map(HeldOutDays::gain).orElse(Double.NaN);
    }

    /** Returns what each feature has to do with what was missed, the most first; empty unless something was. */
    public List<Share> shares() {
        return shares;
    }

    /** Returns the answer in three sentences: whether something is missed, how sure that is, what to do next. */
    public InShort inShort() {
        return YardstickInShort.of(attribute, missed(), judged, planted, shares, scored);
    }

    @Override
    public Showable shownAs() {
        Report page = Report.titled("Do lines and bends miss something about the " + attribute + "?")
                .add(inShort());
        if (judged.isEmpty()) {
            return page;
        }
        Report folded = Report.titled("How this was worked out").say(toString() + ".");
        HeldOutDays days = judged.get();
        List<Way> ways = List.of(
                new Way("the mean of its lot", days.ofLots()),
                new Way("a line and a bend in each feature", days.smooth()),
                new Way("trees alone", days.trees()),
                new Way("lines and bends drawn towards the trees", days.both()));
        folded = folded.add(Table.titled("How far roast days left out were missed")
                        .withText("foretold by", ways, Way::words)
                        .withNumber("root mean square miss", "points", 3, ways, Way::miss))
                .say(YardstickInShort.gain(days));
        if (!shares.isEmpty()) {
            List<Share> told = shares.subList(0, Math.min(8, shares.size()));
            folded = folded.add(Table.titled("What the trees go by, beyond lines and bends")
                    .withText("feature", told, Share::feature)
                    .withNumber("moves what is foretold by", "points", 3, told, Share::points)
                    .withNote("Features that move together share this at random; it is no cause."));
        }
        return page.fold(YardstickInShort.method(folded, scored, planted, SEED));
    }

    private record Way(String words, double miss) {}

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%s: %s; %s of %s, %s, seed %d",
                attribute,
                switch (missed()) {
                    case YES -> "something is missed by lines and bends";
                    case NO -> "nothing was found that lines and bends miss";
                    case CANNOT_TELL -> "cannot tell whether lines and bends miss something";
                },
                Words.count(scored.rows().size(), "batch", "batches"),
                Words.count(scored.days().stream().distinct().count(), "roast day", "roast days"),
                Words.count(scored.names().size(), "feature", "features"),
                SEED);
    }
}
