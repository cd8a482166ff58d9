package parchment.drift;

import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.ShownAs;
import parchment.drift.found.YearPart;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.contents.ScoreQuestion;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.sheet.Words;
import parchment.stats.Estimate;
import parchment.stats.Interval;
import parchment.stats.mixed.PartialPooling;

/**
 * Follows a number of one lot through its months and takes apart what moved it: the lot's ageing, the time of year, the room, the probe,
 * what the roaster did. Says which of these the logbook can separate, and which it cannot.
 *
 * <pre>{@code
 * LotYear.of(logbook.lastWithCurve().lot().orElseThrow(), browningTime(), logbook)
 * }</pre>
 *
 * <p>All lots of the machine are fitted together, each with its level and its slope, on roast days whose effects wander. Date is arrival
 * plus age: a lot's ageing and a steady drift of the machine are one number unless a coffee that does not age was roasted all along
 * ({@link #withReference}) or the reader is willing to state that the machine did not drift ({@link #assuming}). No annual wave is
 * fitted on less than 24 months of roasting.
 */
public final class LotYear implements ShownAs {
    private static final int LEAST_ROWS = 24;
    private static final double KNOWN = 0.85;
    private static final List<Feature> TIMES =
            List.of(Features.browningTime(), Features.developmentTime(), Features.dropTime());

    /** What the reader states about the machine. */
    public enum Assumption {
        /** Nothing: ageing and drift of the machine stay one number. */
        NOTHING,
        /** Apart from the probe periods and the time of year, the machine stayed as it was. */
        MACHINE_DID_NOT_DRIFT
    }

    private final Logbook logbook;
    private final String lot;
    private final Response response;
    private final Assumption assumption;
    private final Optional<String> reference;
    private final LotRows rows;
    private final Optional<YearModel> model;
    private final List<YearPart> parts;

    private LotYear(Logbook logbook, String lot, Response response, Assumption assumption, Optional<String> reference) {
        this.logbook = logbook;
        this.lot = lot;
        this.response = response;
        this.assumption = assumption;
        this.reference = reference;
        this.rows = LotRows.of(logbook, lot, response);
        this.model = rows.size() >= LEAST_ROWS ? Optional.of(rows.fit()) : Optional.empty();
        this.parts = model.map(fitted ->
                        new YearParts(lot, response, rows, logbook.readerUnit(), assumption, reference).of(fitted))
                .orElse(List.of());
    }

    /**
     * Follows a feature of a lot.
     *
     * @throws parchment.logbook.contents.LogbookException if the logbook has no such lot
     */
    public static LotYear of(String lot, Feature feature, Logbook logbook) {
        logbook.ofLot(lot);
        return new LotYear(
                logbook,
                lot,
                Response.of(feature, BatchTable.of(logbook, feature)),
                Assumption.NOTHING,
                Optional.empty());
    }

    /**
     * Returns the time that is worth following in a logbook: the browning time; where fewer than half of the batches of the lot with the most
     * batches have it, the development time, and where they lack that too, the drop time, which every curve with a drop has.
     */
    public static Feature timeToFollow(Logbook logbook) {
        String lot = mostRoasted(logbook);
        BatchTable table = BatchTable.of(logbook, TIMES);
        long all = table.batches().stream()
                .filter(batch -> batch.lot().filter(lot::equals).isPresent())
                .count();
        for (Feature feature : TIMES) {
            double[] values = table.values(feature);
            long with = IntStream.range(0, values.length)
                    .filter(i -> Double.isFinite(values[i]))
                    .filter(i ->
                            table.batches().get(i).lot().filter(lot::equals).isPresent())
                    .count();
            if (with > 0 && 2 * with >= all) {
                return feature;
            }
        }
        return Features.dropTime();
    }

    private static String mostRoasted(Logbook logbook) {
        Map<String, Integer> counts = new TreeMap<>();
        logbook.batches().forEach(b -> b.lot().ifPresent(name -> counts.merge(name, 1, Integer::sum)));
        return counts.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse("");
    }

    /** Follows a feature of the lot with the most batches. */
    public static LotYear of(Feature feature, Logbook logbook) {
        return new LotYear(
                logbook,
                mostRoasted(logbook),
                Response.of(feature, BatchTable.of(logbook, feature)),
                Assumption.NOTHING,
                Optional.empty());
    }

    /**
     * Follows the scores of an attribute; each cupper's own level is taken out first. A change of all cuppers together stays in.
     *
     * @throws parchment.logbook.contents.LogbookException if the logbook has no such lot or attribute
     */
    public static LotYear of(String lot, String attribute, Logbook logbook) {
        logbook.ofLot(lot);
        LotYear year = new LotYear(
                logbook,
                lot,
                Response.of(attribute, BatchTable.of(logbook, Features.greenMass())),
                Assumption.NOTHING,
                Optional.empty());
        return ScoreQuestion.answered(year, logbook, lot, attribute);
    }

    /** Returns the same under another statement about the machine. */
    public LotYear assuming(Assumption other) {
        return new LotYear(logbook, lot, response, other, reference);
    }

    /**
     * Returns the same with a coffee that is kept so that it does not age: what it moves by is the machine's drift.
     *
     * @throws parchment.logbook.contents.LogbookException if the logbook has no such lot
     */
    public LotYear withReference(String referenceLot) {
        logbook.ofLot(referenceLot);
        return new LotYear(logbook, lot, response, assumption, Optional.of(referenceLot));
    }

    /** Returns the answer in three sentences: how the number changed, how sure that is, what to do next. */
    public InShort inShort() {
        return YearInShort.of(this);
    }

    String step(double difference) {
        return unit().formatStep(difference, reader()).replaceFirst("%$", "percentage points");
    }

    static int leastRows() {
        return LEAST_ROWS;
    }

    String shown(Estimate estimate) {
        return response.shown(estimate, reader());
    }

    Unit unit() {
        return response.stepUnit();
    }

    TemperatureUnit reader() {
        return logbook.readerUnit();
    }

    /** Returns every part, the lot's own change first; empty if there is too little to fit. */
    public List<YearPart> parts() {
        return parts;
    }

    /** Returns the lot's change with its age; empty if there is too little to fit. */
    public Optional<YearPart> ageing() {
        return parts.stream().findFirst();
    }

    /** Returns the change per 100 days of every lot, drawn towards their mean as far as they are alike; empty with fewer than 3 lots. */
    public Map<String, Estimate> pooledSlopes() {
        return model.map(YearModel::slopesOfAge).map(PartialPooling::of).orElse(Map.of());
    }

    /** Says what lots.csv and lot-checks.csv know of the lot's age. */
    public List<String> ageWords() {
        return LotAge.words(lot, logbook);
    }

    /** Returns the lot's name; empty if no batch names a lot. */
    public String lot() {
        return lot;
    }

    /** Returns the logbook of the lot's own batches. */
    public Logbook ownBatches() {
        return logbook.only(batch -> batch.lot().orElse("").equals(lot));
    }

    Response response() {
        return response;
    }

    Logbook logbook() {
        return logbook;
    }

    LotRows rows() {
        return rows;
    }

    Optional<YearModel> model() {
        return model;
    }

    List<String> roaster() {
        Map<String, String> words = new LinkedHashMap<>();
        model.ifPresent(fitted -> Arrays.stream(fitted.columns().toArray(YearModel.Column[]::new))
                .filter(c -> c.part == YearModel.Part.ROASTER)
                .forEach(c -> words.put(c.name, c.name)));
        return List.copyOf(words.keySet());
    }

    @Override
    public Showable shownAs() {
        return YearPicture.page(this);
    }

    @Override
    public String toString() {
        return parts.isEmpty()
                ? String.format(
                        Locale.ROOT,
                        "Cannot tell how %s of %s moved: %s %s it with a date and what the roaster did, and %d are"
                                + " needed.",
                        response.name(),
                        lot.isEmpty() ? "batches without a lot" : lot,
                        Words.count(rows.size(), "batch", "batches"),
                        rows.size() == 1 ? "has" : "have",
                        LEAST_ROWS)
                : response.name() + " of " + lot + ", " + parts.get(0) + swing();
    }

    /** Names the largest clear swing within the year, so that a slope near zero does not hide it. */
    private String swing() {
        return parts.stream()
                .filter(p ->
                        Arrays.stream(YearParts.WAVE).anyMatch(pair -> p.name().startsWith(pair[0])))
                .filter(p -> p.verdict() != YearPart.Verdict.CANNOT_TELL)
                .filter(p -> {
                    Interval interval = p.estimate().interval(0.90);
                    return interval.lower() > 0 || interval.upper() < 0;
                })
                .max(Comparator.comparingDouble(p -> Math.abs(p.estimate().estimate())))
                .map(p -> " Within the year it swung: " + p.name() + " " + p.shown()
                        + (p.verdict() == YearPart.Verdict.SUM_ONLY ? ", a sum too." : "."))
                .orElse("");
    }

    /** Share of rows in which a column must be known to be used. */
    static double known() {
        return KNOWN;
    }
}
