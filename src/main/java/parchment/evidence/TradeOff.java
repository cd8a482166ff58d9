package parchment.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import parchment.chart.Panels;
import parchment.display.Report;
import parchment.display.Showable;
import parchment.display.ShownAs;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Logbook;
import parchment.logbook.ScoreQuestion;
import parchment.stats.Interval;
import parchment.stats.Robust;

/**
 * Weighs several attributes along one feature: what one gains where another loses, where the compromise lies, and how sure that is.
 *
 * <p>How welcome a score is goes from 0 to 1 ({@link Desirability}); the compromise is where the geometric mean of all is highest. If
 * nothing else is said, every attribute is the more the better, from the 10th to the 90th percentile of the batches' scores. The
 * compromise is drawn 1,000 times from what the scores leave open, all attributes jointly; its interval is where 90 % of the draws have
 * their best.
 *
 * <pre>{@code
 * TradeOff.of(List.of("sweetness", "acidity"), dropTemperature(), logbook)
 * }</pre>
 */
public final class TradeOff implements ShownAs {
    private static final int DRAWS = 1000;
    private static final int PLACES = 41;

    private final List<String> attributes;
    private final Measure measure;
    private final List<Material> materials;
    private final Optional<JointCourses> courses;
    private final List<Desirability> aims;
    private final EvidenceSettings settings;
    private final String whyNot;
    private final Optional<Found> found;

    /** Holds what was fitted and drawn. */
    record Found(
            JointCourses courses,
            List<Double> places,
            List<Double> overall,
            List<Double> lower,
            List<Double> upper,
            double best,
            Interval bestSet,
            boolean seen) {}

    private TradeOff(
            List<String> attributes,
            Measure measure,
            List<Material> materials,
            Optional<JointCourses> courses,
            Map<String, Desirability> stated,
            EvidenceSettings settings) {
        this.attributes = List.copyOf(attributes);
        this.measure = measure;
        this.materials = List.copyOf(materials);
        this.settings = settings;
        String why = "";
        for (Material material : materials) {
            why = why.isEmpty() ? Analysis.whyNot(material) : why;
        }
        this.courses = courses;
        this.whyNot = !why.isEmpty()
                ? why
                : attributes.size() < 2
                        ? "a trade-off needs two different attributes, as in List.of(\"sweetness\", \"acidity\")"
                        : courses.isEmpty() ? "there are too few scores" : "";
        List<Desirability> all = new ArrayList<>();
        for (int a = 0; a < attributes.size(); a++) {
            Desirability given = stated.get(attributes.get(a));
            all.add(given != null ? given : usual(courses, a));
        }
        this.aims = List.copyOf(all);
        this.found = courses.map(this::weigh);
    }

    /**
     * Weighs attributes along a feature.
     *
     * @param attributes two or more columns of scores; with fewer than two different ones it says that there is nothing to trade
     * @throws IllegalArgumentException if one is not scored in the logbook
     */
    public static TradeOff of(List<String> attributes, Feature feature, Logbook logbook) {
        return of(attributes, feature, logbook, EvidenceSettings.standard());
    }

    /** Weighs the same with other settings. */
    public static TradeOff of(List<String> attributes, Feature feature, Logbook logbook, EvidenceSettings settings) {
        check(attributes, logbook);
        BatchTable table = BatchTable.of(logbook, feature);
        TradeOff answer = of(attributes, Readings.measure(feature, table, logbook), logbook, settings);
        return ScoreQuestion.answered(answer, logbook, attributes, feature.name(), feature.definition(), settings);
    }

    static TradeOff of(List<String> asked, Measure measure, Logbook logbook, EvidenceSettings settings) {
        check(asked, logbook);
        List<String> different = asked.stream().distinct().toList();
        List<Material> materials = different.stream()
                .map(attribute -> Gathering.of(attribute, logbook, measure.readings()))
                .toList();
        return new TradeOff(different, measure, materials, courses(materials, settings), Map.of(), settings);
    }

    private static void check(List<String> attributes, Logbook logbook) {
        attributes.forEach(attribute -> Checks.attribute(attribute, logbook.attributes(), logbook.name()));
    }

    private static Optional<JointCourses> courses(List<Material> materials, EvidenceSettings settings) {
        if (materials.size() < 2
                || materials.stream()
                        .anyMatch(material -> !Analysis.whyNot(material).isEmpty())) {
            return Optional.empty();
        }
        try {
            return Optional.of(JointCourses.of(materials, settings.level()));
        } catch (IllegalArgumentException tooFewRows) {
            return Optional.empty();
        }
    }

    /** The more the better, over the middle 80 % of the batches' scores. */
    private static Desirability usual(Optional<JointCourses> courses, int attribute) {
        if (courses.isEmpty()) {
            return Desirability.larger(0, 10);
        }
        double[] scores = courses.get().fit(attribute).adjustedBatchScores();
        double low = Robust.quantile(scores, 0.1);
        return Desirability.larger(low, Math.max(low + 1e-6, Robust.quantile(scores, 0.9)));
    }

    /**
     * Returns the same with another aim for one attribute; state it before looking.
     *
     * @throws IllegalArgumentException if the attribute is not among those weighed
     */
    public TradeOff withAim(String attribute, Desirability aim) {
        if (!attributes.contains(attribute)) {
            throw new IllegalArgumentException("This trade-off weighs " + Wording.list(attributes) + ", not '"
                    + attribute + "'. Name it in the list first.");
        }
        Map<String, Desirability> stated = new LinkedHashMap<>();
        for (int a = 0; a < attributes.size(); a++) {
            stated.put(attributes.get(a), attributes.get(a).equals(attribute) ? aim : aims.get(a));
        }
        return new TradeOff(attributes, measure, materials, courses, stated, settings);
    }

    private Found weigh(JointCourses courses) {
        TriedRange range = courses.range();
        double[] places = new double[PLACES];
        for (int i = 0; i < PLACES; i++) {
            places[i] = range.low() + range.width() * i / (PLACES - 1.0);
        }
        double[] mean = new double[PLACES];
        for (int i = 0; i < PLACES; i++) {
            double[] at = new double[attributes.size()];
            for (int a = 0; a < at.length; a++) {
                at[a] = courses.at(a, places[i]);
            }
            mean[i] = overall(at);
        }
        SplittableRandom random = new SplittableRandom(settings.seed());
        double[][] drawn = new double[PLACES][DRAWS];
        double[] best = new double[DRAWS];
        for (int d = 0; d < DRAWS; d++) {
            double[][] scores = courses.draw(places, random);
            double[] all = new double[PLACES];
            for (int i = 0; i < PLACES; i++) {
                double[] at = new double[attributes.size()];
                for (int a = 0; a < at.length; a++) {
                    at[a] = scores[a][i];
                }
                all[i] = overall(at);
                drawn[i][d] = all[i];
            }
            best[d] = places[highest(all)];
        }
        double tail = (1 - settings.level()) / 2;
        boolean seen = false;
        for (int a = 0; a < attributes.size(); a++) {
            FittedScores fit = courses.fit(a);
            seen |= fit.slope().chance() < VerdictRules.CHANCE_OF_SLOPE / attributes.size()
                    || fit.slope(ScoreDesign.SQUARE).known();
        }
        return new Found(
                courses,
                list(places),
                list(mean),
                list(Arrays.stream(drawn)
                        .mapToDouble(row -> Robust.quantile(row, tail))
                        .toArray()),
                list(Arrays.stream(drawn)
                        .mapToDouble(row -> Robust.quantile(row, 1 - tail))
                        .toArray()),
                places[highest(mean)],
                new Interval(Robust.quantile(best, tail), Robust.quantile(best, 1 - tail), settings.level()),
                seen);
    }

    private double overall(double[] scores) {
        List<Double> each = new ArrayList<>();
        for (int a = 0; a < scores.length; a++) {
            each.add(aims.get(a).of(scores[a]));
        }
        return Desirability.overall(each);
    }

    /** Returns the place of the highest value; where several are as high, the one in their middle. */
    private static int highest(double[] values) {
        double most = Arrays.stream(values).max().orElse(0);
        int first = -1;
        int last = -1;
        for (int i = 0; i < values.length; i++) {
            if (values[i] >= most - 1e-12) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        return (first + last) / 2;
    }

    private static List<Double> list(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }

    /** Returns whether a compromise can be named: suggestive if its interval is under half of what was tried, else cannot tell. */
    public Verdict verdict() {
        return found.filter(Found::seen)
                        .filter(is ->
                                is.bestSet().width() <= is.courses().range().width() / 2)
                        .isPresent()
                ? Verdict.SUGGESTIVE
                : Verdict.CANNOT_TELL;
    }

    /** Returns where the compromise lies, as the library keeps the feature; its ends are NaN if nothing could be fitted. */
    public Interval compromise() {
        return found.map(Found::bestSet).orElse(new Interval(Double.NaN, Double.NaN, settings.level()));
    }

    /** Returns how welcome each attribute's scores are taken to be, in the order of the attributes. */
    public List<Desirability> aims() {
        return aims;
    }

    List<String> attributes() {
        return attributes;
    }

    Measure measure() {
        return measure;
    }

    List<Material> materials() {
        return materials;
    }

    EvidenceSettings settings() {
        return settings;
    }

    String whyNot() {
        return whyNot;
    }

    Optional<Found> found() {
        return found;
    }

    /** Returns the picture: each attribute along the feature, and how welcome they are together. */
    public Panels picture() {
        return TradeOffPage.picture(this);
    }

    private Report page() {
        return TradeOffPage.of(this);
    }

    @Override
    public Showable shownAs() {
        return page();
    }

    @Override
    public Optional<String> svg() {
        return picture().chart().svg();
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%s along the %s: %s.",
                attributes.isEmpty() ? "No attribute" : Wording.sentence(Wording.list(attributes)),
                measure.name(),
                verdict().words());
    }
}
