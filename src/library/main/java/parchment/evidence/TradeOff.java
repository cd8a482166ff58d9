package parchment.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import parchment.chart.Panels;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Logbook;
import parchment.logbook.contents.ScoreQuestion;
import parchment.stats.Interval;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Robust;

/**
 * Weighs several attributes along one feature: what one gains where another loses, where the compromise lies, and how sure that is.
 *
 * <p>How welcome a score is goes from 0 to 1 ({@link Desirability}); the compromise is where the geometric mean of all is highest. If
 * nothing else is said, every attribute is the more the better, over the middle 80 % of the batches' scores (their mean give or take 1.28
 * standard deviations); those aims are estimates, and their own error is in the draws. The compromise is drawn 1,000 times from what the scores leave open, all attributes jointly; its interval is where 90 % of the draws have
 * their best.
 *
 * <pre>{@code
 * TradeOff.of(List.of("sweetness", "acidity"), dropTemperature(), logbook)
 * }</pre>
 */
public final class TradeOff implements ShownAs {
    private static final int DRAWS = 1000;
    private static final int PLACES = 41;

    /** Into how many parts a step between two places is cut around the best of them. */
    private static final int FINER = 10;

    private final List<String> attributes;
    private final Measure measure;
    private final List<ModelFrame> materials;
    private final Optional<JointCourses> courses;
    private final Map<String, Desirability> stated;
    private final List<Desirability> aims;
    private final EvidenceSettings settings;
    private final String whyNot;
    private final List<CollinearFeatures.Other> others;
    private final List<Collinearity.Twin> twins;
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
            List<ModelFrame> materials,
            Optional<JointCourses> courses,
            List<CollinearFeatures.Other> others,
            Map<String, Desirability> stated,
            EvidenceSettings settings) {
        this.others = List.copyOf(others);
        this.attributes = List.copyOf(attributes);
        this.measure = measure;
        this.materials = List.copyOf(materials);
        this.settings = settings;
        this.stated = Map.copyOf(stated);
        String why = "";
        for (ModelFrame material : materials) {
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
        this.twins = found.map(is -> twins(is, measure.name(), others)).orElse(List.of());
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
        BatchTable table = FeatureReadings.table(feature, logbook);
        TradeOff answer = of(
                attributes,
                FeatureReadings.measure(feature, table, logbook),
                FeatureReadings.others(feature, table),
                logbook,
                settings);
        return ScoreQuestion.answered(answer, logbook, attributes, feature.name(), feature.definition(), settings);
    }

    static TradeOff of(List<String> asked, Measure measure, Logbook logbook, EvidenceSettings settings) {
        return of(asked, measure, List.of(), logbook, settings);
    }

    static TradeOff of(
            List<String> asked,
            Measure measure,
            List<CollinearFeatures.Other> others,
            Logbook logbook,
            EvidenceSettings settings) {
        check(asked, logbook);
        List<String> different = asked.stream().distinct().toList();
        List<ModelFrame> materials = different.stream()
                .map(attribute -> ModelFrames.of(attribute, logbook, measure.readings()))
                .toList();
        return new TradeOff(different, measure, materials, courses(materials, settings), others, Map.of(), settings);
    }

    private boolean seen(JointCourses courses, int attribute) {
        return courses.line(attribute).slope().chance() < VerdictRules.CHANCE_OF_SLOPE / attributes.size()
                || courses.fit(attribute).slope(ScoreDesign.SQUARE).chance()
                        < VerdictRules.CHANCE_OF_BEND / attributes.size();
    }

    /** Returns the controls and calendar facts from which the feature cannot be told, as for one attribute by itself. */
    private static List<Collinearity.Twin> twins(Found found, String feature, List<CollinearFeatures.Other> others) {
        FittedScores fitted = FittedScores.of(found.courses().line(0).design().material(), ModelForm.STANDARD);
        return Collinearity.of(feature, fitted, others);
    }

    private static void check(List<String> attributes, Logbook logbook) {
        attributes.forEach(attribute -> EvidenceChecks.attribute(attribute, logbook.attributes(), logbook.name()));
    }

    private static Optional<JointCourses> courses(List<ModelFrame> materials, EvidenceSettings settings) {
        if (materials.size() < 2
                || materials.stream()
                        .anyMatch(material -> !Analysis.whyNot(material).isEmpty())) {
            return Optional.empty();
        }
        try {
            return Optional.of(JointCourses.of(materials, settings.level()));
        } catch (CannotFitException tooFewRows) {
            return Optional.empty();
        }
    }

    /** The more the better, over the middle 80 % of the batches' scores. */
    private static Desirability usual(Optional<JointCourses> courses, int attribute) {
        if (courses.isEmpty()) {
            return Desirability.larger(0, 10);
        }
        return usual(courses.get().welcome(attribute));
    }

    private static Desirability usual(Interval middle) {
        return Desirability.larger(middle.lower(), middle.upper());
    }

    /** Returns the aims in one draw: what was stated stays, what was taken from the batches' scores moves with them. */
    private List<Desirability> aims(JointCourses.Drawn drawn) {
        List<Desirability> all = new ArrayList<>();
        for (int a = 0; a < attributes.size(); a++) {
            Desirability given = stated.get(attributes.get(a));
            all.add(given != null ? given : usual(drawn.welcome().get(a)));
        }
        return all;
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
        Map<String, Desirability> now = new LinkedHashMap<>(stated);
        now.put(attribute, aim);
        return new TradeOff(attributes, measure, materials, courses, others, now, settings);
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
            mean[i] = overall(aims, at);
        }
        SplittableRandom random = new SplittableRandom(settings.seed());
        double[][] drawn = new double[PLACES][DRAWS];
        double[] best = new double[DRAWS];
        for (int d = 0; d < DRAWS; d++) {
            JointCourses.Drawn scores = courses.draw(random);
            List<Desirability> wanted = aims(scores);
            double[] all = new double[PLACES];
            for (int i = 0; i < PLACES; i++) {
                double[] at = new double[attributes.size()];
                for (int a = 0; a < at.length; a++) {
                    at[a] = courses.at(scores, a, places[i]);
                }
                all[i] = overall(wanted, at);
                drawn[i][d] = all[i];
            }
            best[d] = best(places, all, place -> {
                double[] at = new double[attributes.size()];
                for (int a = 0; a < at.length; a++) {
                    at[a] = courses.at(scores, a, place);
                }
                return overall(wanted, at);
            });
        }
        double tail = (1 - settings.level()) / 2;
        boolean seen = false;
        for (int a = 0; a < attributes.size(); a++) {
            seen |= seen(courses, a);
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
                best(places, mean, place -> {
                    double[] at = new double[attributes.size()];
                    for (int a = 0; a < at.length; a++) {
                        at[a] = courses.at(a, place);
                    }
                    return overall(aims, at);
                }),
                new Interval(Robust.quantile(best, tail), Robust.quantile(best, 1 - tail), settings.level()),
                seen);
    }

    private static double overall(List<Desirability> wanted, double[] scores) {
        List<Double> each = new ArrayList<>();
        for (int a = 0; a < scores.length; a++) {
            each.add(wanted.get(a).of(scores[a]));
        }
        return Desirability.overall(each);
    }

    /**
     * Returns the place of the highest value, looked for again between its neighbours; where several places are as high, the one in their
     * middle.
     */
    private static double best(double[] places, double[] values, DoubleUnaryOperator welcome) {
        double most = Arrays.stream(values).max().orElse(0);
        int first = -1;
        int last = -1;
        for (int i = 0; i < values.length; i++) {
            if (values[i] >= most - 1e-12) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        if (first != last) {
            return (places[first] + places[last]) / 2;
        }
        double step = places[1] - places[0];
        double best = places[first];
        for (int k = -FINER; k <= FINER; k++) {
            double place = places[first] + step * k / FINER;
            double value = welcome.applyAsDouble(place);
            if (place >= places[0] && place <= places[places.length - 1] && value > most) {
                most = value;
                best = place;
            }
        }
        return best;
    }

    private static List<Double> list(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }

    /**
     * Returns whether a compromise can be named: suggestive if its interval is under half of what was tried and nothing that was set, and
     * no fact of the calendar, moved with the feature as one; else cannot tell.
     */
    public Verdict verdict() {
        return found.filter(Found::seen)
                        .filter(is -> twins.isEmpty())
                        .filter(is ->
                                is.bestSet().width() <= is.courses().range().width() / 2)
                        .isPresent()
                ? Verdict.SUGGESTIVE
                : Verdict.CANNOT_TELL;
    }

    /** Returns where the compromise lies, as the library keeps the feature; its ends are NaN if nothing could be fitted, or if the
     * feature moved as one with a control or a fact of the calendar. */
    public Interval compromise() {
        return found.filter(is -> twins.isEmpty())
                .map(Found::bestSet)
                .orElse(new Interval(Double.NaN, Double.NaN, settings.level()));
    }

    /** Says whether the aim of an attribute was stated or taken from the batches' scores. */
    boolean stated(String attribute) {
        return stated.containsKey(attribute);
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

    List<ModelFrame> materials() {
        return materials;
    }

    EvidenceSettings settings() {
        return settings;
    }

    /** Returns the controls and calendar facts from which the feature cannot be told, the closest first. */
    List<Collinearity.Twin> twins() {
        return twins;
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

    /** Returns the answer in three sentences: where the best compromise lies, how sure that is, what to do next. */
    public InShort inShort() {
        return TradeInShort.of(this);
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
