package parchment.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.chart.Axis;
import parchment.chart.Boundary;
import parchment.chart.Marker;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.evidence.finding.Wording;
import parchment.logbook.Logbook;
import parchment.logbook.contents.ScoreQuestion;
import parchment.logbook.written.CupScores;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;
import parchment.stats.Interval;
import parchment.stats.resample.GroupJackknife;

/**
 * Measures how far the attributes of a cup move together in one cupper's scores: the halo (Thorndike 1920, J. Appl. Psychol. 4:25).
 *
 * <p>Whoever likes a cup scores all of it higher. Where several cuppers taste the same batches two things can be told apart: what they
 * agree on, which is in the cup, and what moves together in one cupper's scores alone, which is in the cupper. With one cupper the two
 * cannot be told apart, and it says so. No score is ever adjusted by other scores; {@link Evidence#relativeToGeneralLevel()} shows an
 * attribute relative to the rest of its cup beside the answer.
 *
 * <pre>{@code
 * Halo.of(logbook)
 * }</pre>
 */
public final class Halo implements ShownAs {
    private static final double LEVEL = 0.90;

    /** Under this many cuppings intervals did not hold the truth as often as stated in simulated score sheets. */
    static final int FEWEST_CUPPINGS = 8;

    private static final int SHOWN = 15;

    private final String logbook;
    private final List<String> attributes;
    private final List<Pair> pairs;
    private final Cuppers cuppers;
    private final double mean;
    private final Interval interval;
    private final double looks;
    private final int scores;
    private final int leftOut;
    private final int cuppings;

    /** Says whether what is in the cup can be told from what is in the cupper. */
    public enum Cuppers {
        /** Several cuppers scored the same batches. */
        SEVERAL,
        /** Only one did. */
        ONE
    }

    /**
     * Holds how far two attributes move together.
     *
     * @param first one attribute
     * @param second the other
     * @param alone correlation in one cupper's scores alone, from -1 to 1; with one cupper, in all that differs
     * @param agreed correlation of what the cuppers agree on; NaN with one cupper, or where they agree on next to nothing
     */
    public record Pair(String first, String second, double alone, double agreed) {
        String words() {
            return first + " and " + second;
        }
    }

    private Halo(
            String logbook,
            List<String> attributes,
            List<Pair> pairs,
            Cuppers cuppers,
            double mean,
            Interval interval,
            double looks,
            int scores,
            int leftOut,
            int cuppings) {
        this.logbook = logbook;
        this.attributes = List.copyOf(attributes);
        this.pairs = List.copyOf(pairs);
        this.cuppers = cuppers;
        this.mean = mean;
        this.interval = interval;
        this.looks = looks;
        this.scores = scores;
        this.leftOut = leftOut;
        this.cuppings = cuppings;
    }

    /**
     * Measures the halo of a logbook. If fewer than two attributes are scored, or no cupper scored two batches in one cupping, it says
     * that it cannot tell.
     */
    public static Halo of(Logbook logbook) {
        List<String> attributes = List.copyOf(logbook.attributes());
        Map<String, HaloMoments> moments = HaloMoments.of(logbook.cups(), attributes);
        if (attributes.size() < 2 || moments.isEmpty()) {
            return new Halo(
                    logbook.name(),
                    attributes,
                    List.of(),
                    Cuppers.ONE,
                    Double.NaN,
                    new Interval(Double.NaN, Double.NaN, LEVEL),
                    Double.NaN,
                    0,
                    logbook.cups().size(),
                    0);
        }
        int count = attributes.size();
        List<HaloMoments> all = List.copyOf(moments.values());
        HaloMoments sum = HaloMoments.sum(all, count);
        double[][] alone = sum.alone();
        double[][] agreed = sum.agreed();
        List<Pair> pairs = new ArrayList<>();
        for (int a = 0; a < count; a++) {
            for (int b = a + 1; b < count; b++) {
                pairs.add(new Pair(
                        attributes.get(a), attributes.get(b), correlation(alone, a, b), correlation(agreed, a, b)));
            }
        }
        pairs.sort(Comparator.comparingDouble(pair -> -Math.abs(pair.alone())));
        Interval interval =
                moments.size() < FEWEST_CUPPINGS ? new Interval(Double.NaN, Double.NaN, LEVEL) : interval(all, count);
        int used = (int)
                logbook.cups().stream().filter(cup -> complete(cup, attributes)).count();
        Halo halo = new Halo(
                logbook.name(),
                attributes,
                pairs,
                sum.severalCuppers() ? Cuppers.SEVERAL : Cuppers.ONE,
                meanCorrelation(alone),
                interval,
                looks(alone),
                used,
                logbook.cups().size() - used,
                moments.size());
        return ScoreQuestion.answered(halo, logbook);
    }

    /**
     * Returns the interval of the mean correlation: on Fisher's z scale (Fisher 1921, Metron 1:3), where its error depends little on the
     * correlation itself, each cupping left out in turn. Its ends are NaN if the correlation cannot be had without one of the cuppings.
     */
    private static Interval interval(List<HaloMoments> cuppings, int attributes) {
        HaloMoments all = HaloMoments.sum(cuppings, attributes);
        double[] leftOut = new double[cuppings.size()];
        for (int out = 0; out < leftOut.length; out++) {
            List<HaloMoments> others = new ArrayList<>(cuppings);
            others.remove(out);
            HaloMoments rest = HaloMoments.sum(others, attributes);
            // Where cuppers met in one cupping only, the rest would measure something else: the cup with the cupper.
            leftOut[out] =
                    rest.severalCuppers() == all.severalCuppers() ? fisher(meanCorrelation(rest.alone())) : Double.NaN;
        }
        double whole = fisher(meanCorrelation(all.alone()));
        Estimate found = GroupJackknife.estimate("mean correlation", whole, leftOut);
        if (Double.isNaN(found.standardError())) {
            return new Interval(Double.NaN, Double.NaN, LEVEL);
        }
        Interval z = found.interval(LEVEL);
        return new Interval(Math.tanh(z.lower()), Math.tanh(z.upper()), LEVEL);
    }

    private static double fisher(double correlation) {
        return 0.5 * Math.log((1 + correlation) / (1 - correlation));
    }

    private static boolean complete(CupScores cup, List<String> attributes) {
        return attributes.stream().noneMatch(attribute -> Double.isNaN(cup.score(attribute)));
    }

    private static double correlation(double[][] covariance, int a, int b) {
        double product = covariance[a][a] * covariance[b][b];
        return covariance[a][a] > 0 && product > 0
                ? Math.max(-1, Math.min(1, covariance[a][b] / Math.sqrt(product)))
                : Double.NaN;
    }

    private static double meanCorrelation(double[][] covariance) {
        double sum = 0;
        int known = 0;
        for (int a = 0; a < covariance.length; a++) {
            for (int b = a + 1; b < covariance.length; b++) {
                double r = correlation(covariance, a, b);
                if (!Double.isNaN(r)) {
                    sum += r;
                    known++;
                }
            }
        }
        return known == 0 ? Double.NaN : sum / known;
    }

    /** Returns n^2 / sum of squared correlations: how many attributes that do not move together would be as much. */
    private static double looks(double[][] covariance) {
        double squares = covariance.length;
        for (int a = 0; a < covariance.length; a++) {
            for (int b = 0; b < covariance.length; b++) {
                double r = a == b ? 0 : correlation(covariance, a, b);
                squares += Double.isNaN(r) ? 0 : r * r;
            }
        }
        return (double) covariance.length * covariance.length / squares;
    }

    /** Returns each two attributes, those that move together most first. */
    public List<Pair> pairs() {
        return pairs;
    }

    /** Returns the mean correlation of two attributes in one cupper's scores alone. */
    public double meanCorrelation() {
        return mean;
    }

    /** Returns its 90 % interval, each cupping left out in turn; NaN ends under eight cuppings, or where it hangs on one of them. */
    public Interval interval() {
        return interval;
    }

    /** Returns as how many attributes that do not move together these count in one cupper's scores. */
    public double countsAs() {
        return looks;
    }

    /** Returns whether the cup can be told from the cupper. */
    public Cuppers cuppers() {
        return cuppers;
    }

    /** Returns the picture: each two attributes with both correlations. */
    public Plot picture() {
        List<Pair> shown = pairs.stream().limit(SHOWN).toList();
        double[] rows = new double[shown.size()];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = i;
        }
        Plot plot = Plot.of(
                        "How far attributes move together",
                        Axis.of(
                                        "how closely they move together: 1 always, 0 not at all",
                                        Unit.NONE.withDigits(1),
                                        TemperatureUnit.CELSIUS)
                                .withLimits(-1.05, 1.05),
                        Axis.rows("", shown.stream().map(Pair::words).toList()))
                .withEmptySentence(toString());
        if (shown.isEmpty()) {
            return plot;
        }
        plot = plot.with(Boundary.at("not together", 0))
                .with(Points.of(
                                cuppers == Cuppers.SEVERAL ? "in one cupper alone" : "in this cupper's scores",
                                shown.stream().mapToDouble(Pair::alone).toArray(),
                                rows)
                        .withMarker(Marker.CIRCLE));
        if (cuppers == Cuppers.SEVERAL) {
            plot = plot.with(Points.of(
                            "agreed by the cuppers",
                            shown.stream().mapToDouble(Pair::agreed).toArray(),
                            rows)
                    .withMarker(Marker.CROSS));
        }
        return plot.withNote(counts());
    }

    private String counts() {
        return Wording.count(scores, "row", "rows") + " of scores in " + Wording.count(cuppings, "cupping", "cuppings")
                + (leftOut == 0 ? "." : "; " + leftOut + " left out because an attribute is missing in them.");
    }

    /** Returns the answer in three sentences: whether attributes move together, how far, what to do next. */
    public InShort inShort() {
        return HaloInShort.of(attributes.size(), cuppers, looks, mean, interval, cuppings);
    }

    private Report page() {
        Report page = Report.titled("Halo: how far attributes move together in " + logbook)
                .add(inShort());
        Report folded = Report.titled("How this was worked out").say(toString());
        return pairs.isEmpty()
                ? page.fold(folded)
                : page.add(picture()).fold(folded.say(meaning()).add(table()));
    }

    private String meaning() {
        String told = cuppers == Cuppers.SEVERAL
                ? "What is in one cupper alone is the halo; what the cuppers agree on is in the cups. Ask several cuppers before you"
                        + " believe that a roast lifted everything."
                : "There is only one cupper, so a cup in which everything is better cannot be told from a cupper who scores everything"
                        + " higher. A second cupper at the same table would tell.";
        return told
                + String.format(
                        Locale.ROOT,
                        " These %d attributes count as about %.1f that do not move together: several attributes that go with one measure are"
                                + " not several findings.",
                        attributes.size(),
                        looks);
    }

    private Table table() {
        return Table.titled("Correlation of two attributes")
                .withText("attributes", pairs, Pair::words)
                .withNumber(
                        cuppers == Cuppers.SEVERAL ? "in one cupper alone" : "in this cupper's scores",
                        "",
                        2,
                        pairs,
                        Pair::alone)
                .withNumber("agreed by the cuppers", "", 2, pairs, Pair::agreed)
                .withNote("Inside cuppings, each cupper's scores counted from their mean. " + counts())
                .withDashForMissing("only one cupper, or the cuppers agree on next to nothing");
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
        if (pairs.isEmpty()) {
            return "Cannot tell how far attributes move together: that needs two attributes, and a cupper who scored both of them for two"
                    + " batches in one cupping. This logbook scores "
                    + (attributes.isEmpty() ? "nothing" : Wording.list(attributes)) + ".";
        }
        return "In one cupper's scores" + (cuppers == Cuppers.SEVERAL ? " alone" : "")
                + " two attributes move together with a correlation of "
                + Wording.plain(mean, 2) + " on average"
                + sure() + ", over " + counts();
    }

    private String sure() {
        if (!Double.isNaN(interval.lower())) {
            return " (90 % interval " + Wording.plain(interval.lower(), 2) + " to " + Wording.plain(interval.upper(), 2)
                    + ", each cupping left out in turn)";
        }
        return cuppings < FEWEST_CUPPINGS
                ? " (how sure that is cannot be told: at least " + FEWEST_CUPPINGS + " cuppings are needed)"
                : " (how sure that is cannot be told: without one of the cuppings it cannot be worked out)";
    }
}
