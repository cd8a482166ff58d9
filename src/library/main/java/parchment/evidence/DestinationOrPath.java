package parchment.evidence;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.chart.Plot;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Wording;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.contents.ScoreQuestion;
import parchment.stats.Interval;

/**
 * Asks whether the destination of a roast or the path to it went with a score: how hot the beans were dropped, how long they developed,
 * or how fast they came to first crack.
 *
 * <p>The three hang together: whoever roasts on drops hotter and later at once. So one model holds all three, and each comparison is
 * named by what gives way: added time, swapped time, faster finish, later drop, slower start. Where the logbook cannot tell two of them
 * apart it says so, and names the fewest batches that would.
 *
 * <pre>{@code
 * DestinationOrPath.of("sweetness", logbook)
 * }</pre>
 *
 * <p>It is all watched, nothing drawn by chance, so no verdict is better than "suggestive". Method: {@code docs/evidence.md}.
 */
public final class DestinationOrPath implements ShownAs {
    private final PathQuestion question;
    private final JointFrame joint;
    private final Optional<JointFit> fit;
    private final List<PathContrast> contrasts;
    private final Optional<SeparatingBatches> next;

    DestinationOrPath(
            PathQuestion question,
            JointFrame joint,
            Optional<JointFit> fit,
            List<PathContrast> contrasts,
            Optional<SeparatingBatches> next) {
        this.question = question;
        this.joint = joint;
        this.fit = fit;
        this.contrasts = List.copyOf(contrasts);
        this.next = next;
    }

    /**
     * Asks of one attribute.
     *
     * @param attribute a column of scores, as in "sweetness"
     * @throws IllegalArgumentException if the logbook does not score the attribute
     */
    public static DestinationOrPath of(String attribute, Logbook logbook) {
        return of(attribute, logbook, EvidenceSettings.standard());
    }

    /** Asks the same with other settings; state them before looking at the scores. */
    public static DestinationOrPath of(String attribute, Logbook logbook, EvidenceSettings settings) {
        EvidenceChecks.attribute(attribute, logbook.attributes(), logbook.name());
        List<Feature> three =
                List.of(Features.dropTemperature(), Features.developmentTime(), Features.firstCrackTime());
        BatchTable table = BatchTable.of(logbook);
        Map<String, double[][]> errors = new LinkedHashMap<>();
        logbook.batches().forEach(batch -> errors.put(batch.name(), table.covariance(batch.name(), three)));
        PathQuestion question = new PathQuestion(
                attribute,
                three.stream()
                        .map(feature -> FeatureReadings.measure(feature, table, logbook))
                        .toList(),
                FeatureReadings.measure(Features.developmentRate(), table, logbook),
                errors,
                FeatureReadings.others(three.get(0), table),
                settings);
        return ScoreQuestion.answered(question.ask(logbook), logbook, attribute, settings);
    }

    /** Returns the comparisons, always in the same order. */
    public List<PathContrast> contrasts() {
        return contrasts;
    }

    /**
     * Returns one comparison by its name, as in "added time".
     *
     * @throws IllegalArgumentException if there is none of that name
     */
    public PathContrast contrast(String name) {
        return contrasts.stream()
                .filter(contrast -> contrast.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("There is no comparison '" + name + "'. There are: "
                        + Wording.list(
                                contrasts.stream().map(PathContrast::name).toList())
                        + "."));
    }

    /** Returns how many further batches would tell what cannot be told; 0 if all is told or nothing could be fitted. */
    public int batchesThatWouldTell() {
        return next.map(SeparatingBatches::batches).orElse(0);
    }

    /**
     * Says what score goes with a planned batch, counted from the mean of the batches; refuses in words where such a mixture was not
     * tried. Tried is what has each value between the lowest and the highest batch, and lies no further from the batches' mean than 95
     * in 100 of them (Mahalanobis distance inside lots).
     *
     * @param drop drop temperature in degrees Celsius, as a reading on today's probe
     * @param development development time in seconds
     * @param firstCrack time from charge to first crack in seconds
     * @throws IllegalStateException if nothing could be fitted
     */
    public ScorePrediction at(double drop, double development, double firstCrack) {
        JointFit found = fit.orElseThrow(() -> new IllegalStateException(
                "No score can be foretold, because " + contrasts.get(0).reason() + "."));
        double[] mixture = {drop, development, firstCrack};
        TriedMixture tried = TriedMixture.of(found);
        List<String> nearest = tried.nearest(mixture, 3);
        String near = " The nearest tried batches: " + Wording.list(nearest) + ".";
        String whyNot = tried.whyNot(mixture);
        Slope difference =
                onTodaysProbe(found, found.slope(tried.fromCenter(mixture)).fitted());
        double level = question.settings().level();
        Interval interval = difference.interval(level);
        if (!whyNot.isEmpty() || !difference.known()) {
            String why = whyNot.isEmpty() ? "the three measures cannot be told apart here" : whyNot;
            return new ScorePrediction(
                    ScorePrediction.Tried.NO,
                    Double.NaN,
                    new Interval(Double.NaN, Double.NaN, level),
                    nearest,
                    "No score is foretold: " + why + "." + near);
        }
        return new ScorePrediction(
                ScorePrediction.Tried.YES,
                difference.estimate(),
                interval,
                nearest,
                "The mean " + question.attribute() + " of such a batch is "
                        + Wording.signed(difference.estimate(), interval)
                        + " points from that of the batches' mean (" + Wording.percent(level) + " interval "
                        + Wording.signed(interval)
                        + "), as seen in this logbook." + near);
    }

    /** Widens an error by how well the batches' mean drop is known as a reading on today's probe. */
    private Slope onTodaysProbe(JointFit found, Slope difference) {
        double[] degree = new double[question.measures().size()];
        degree[0] = joint.centerError(0);
        double shared = degree[0] > 0 ? found.slope(degree).fitted().estimate() : 0;
        return new Slope(
                difference.estimate(), Math.hypot(difference.standardError(), shared), difference.degreesOfFreedom());
    }

    /** Returns what was left out and why. */
    List<Exclusion> leftOut() {
        return joint.material().leftOut();
    }

    /** Returns how many batches stand behind it. */
    public int batches() {
        return joint.material().batches().size();
    }

    /** Returns the picture: each comparison with its interval. */
    public Plot picture() {
        return DestinationOrPathPage.picture(this);
    }

    PathQuestion question() {
        return question;
    }

    JointFrame joint() {
        return joint;
    }

    Optional<JointFit> fit() {
        return fit;
    }

    Optional<SeparatingBatches> next() {
        return next;
    }

    /** Returns the answer in three sentences: what went with the score, how sure that is, what to do next. */
    public InShort inShort() {
        return PathInShort.of(question.attribute(), contrasts, batchesThatWouldTell());
    }

    private Report page() {
        return DestinationOrPathPage.of(this);
    }

    @Override
    public Showable shownAs() {
        return page();
    }

    @Override
    public Optional<String> svg() {
        return picture().svg();
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%s, destination or path, from %s: %s.",
                question.attribute(),
                Wording.count(batches(), "batch", "batches"),
                String.join(
                        ", ",
                        contrasts.stream()
                                .map(contrast -> contrast.name() + " "
                                        + contrast.verdict().words())
                                .toList()));
    }
}
