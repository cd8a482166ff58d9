package parchment.lesson;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.chart.Axis;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.display.answer.Spelling;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;
import parchment.stats.Interval;
import parchment.stats.mixed.LinearModel;
import parchment.stats.mixed.MixedDesign;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.written.Overprint;

/**
 * Shows what became of a plan: the batches as they were roasted, what the cuppers said, and the straight line through them with its
 * interval.
 *
 * <p>The line is least squares through the batches' mean scores, so its degrees of freedom are the batches less two: cups of one batch
 * share the batch.
 */
public final class PlanTasted implements ShownAs {
    private static final double LEVEL = 0.9;
    private static final int FEWEST = 3;
    /** A plan whose drops lie closer together says nothing about a degree, °C. */
    private static final double NARROW = 3;

    private final Logbook logbook;
    private final String attribute;
    private final Measures drops;
    private final List<Batch> batches;

    PlanTasted(Logbook logbook) {
        this(logbook, logbook.scored("sweetness"));
    }

    private PlanTasted(Logbook logbook, String attribute) {
        this.logbook = logbook;
        this.attribute = attribute;
        this.drops = Measures.of(logbook, Features.dropTemperature());
        this.batches = logbook.batches().stream()
                .filter(drops::hasAll)
                .filter(batch -> !Double.isNaN(mean(batch)))
                .toList();
    }

    /** Returns the same batches seen by another attribute. */
    public PlanTasted about(String other) {
        if (!logbook.attributes().contains(other)) {
            throw new IllegalArgumentException("The cuppers do not score '" + other + "'."
                    + Spelling.question(other, logbook.attributes())
                    + " They score: " + String.join(", ", logbook.attributes()) + ".");
        }
        return new PlanTasted(logbook, other);
    }

    /** Returns the roasted batches with their cups: a logbook like any other. */
    public Logbook logbook() {
        return logbook;
    }

    /** Returns the points per degree of the reader's scale; empty with fewer than three batches, or if their drops hardly differ. */
    public Optional<Estimate> slope() {
        if (batches.size() < FEWEST || spread() < NARROW) {
            return Optional.empty();
        }
        double[] x = batches.stream().mapToDouble(this::shownDrop).toArray();
        double[] y = batches.stream().mapToDouble(this::mean).toArray();
        return Optional.of(LinearModel.fit(MixedDesign.of(attribute, y).withCovariate("drop temperature", x))
                .term("drop temperature"));
    }

    private double spread() {
        double low = batches.stream().mapToDouble(this::drop).min().orElse(Double.NaN);
        double high = batches.stream().mapToDouble(this::drop).max().orElse(Double.NaN);
        return high - low;
    }

    private double drop(Batch batch) {
        return drops.value(batch.name(), Features.dropTemperature());
    }

    private double shownDrop(Batch batch) {
        return Unit.TEMPERATURE.shown(drop(batch), reader());
    }

    private TemperatureUnit reader() {
        return logbook.readerUnit();
    }

    private double mean(Batch batch) {
        return CupsTable.of(attribute, logbook, batch).mean(batch);
    }

    /** Standard error of a batch's mean across cuppers; whoever scores everything high adds nothing to it. */
    private double errorOfMean(Batch batch) {
        Map<String, Double> all = byCupper(logbook.cups().stream());
        Map<String, Double> own =
                byCupper(logbook.cups().stream().filter(cup -> cup.batch().equals(batch.name())));
        double[] above = own.entrySet().stream()
                .mapToDouble(one -> one.getValue() - all.getOrDefault(one.getKey(), Double.NaN))
                .toArray();
        double mean = Arrays.stream(above).average().orElse(Double.NaN);
        double squares = Arrays.stream(above).map(a -> (a - mean) * (a - mean)).sum();
        return above.length < 2 ? Double.NaN : StrictMath.sqrt(squares / (above.length - 1) / above.length);
    }

    private Map<String, Double> byCupper(Stream<CupScores> cups) {
        return cups.filter(cup -> !Double.isNaN(cup.score(attribute)))
                .collect(Collectors.groupingBy(
                        CupScores::cupper, Collectors.averagingDouble(cup -> cup.score(attribute))));
    }

    private String leftOutWords() {
        int leftOut = logbook.batches().size() - batches.size();
        return leftOut == 0
                ? "No planned batch was left out."
                : LessonWords.count(leftOut, "planned batch is", "planned batches are")
                        + " left out: no score, or no drop temperature.";
    }

    private String sentence() {
        String degree = reader().symbol();
        return slope().map(found -> {
                    Interval interval = found.interval(LEVEL);
                    return String.format(
                            Locale.ROOT,
                            "One %s more at the drop: %+.3f points of %s (90 %% interval %+.3f to %+.3f), from %d batches that"
                                    + " were planned before anybody tasted.",
                            degree,
                            found.estimate(),
                            attribute,
                            interval.lower(),
                            interval.upper(),
                            batches.size());
                })
                .orElse("Cannot tell what a degree does: that needs at least " + FEWEST
                        + " cupped batches whose drops lie at least "
                        + Unit.TEMPERATURE_STEP.formatStep(NARROW, reader()) + " apart; here are " + batches.size()
                        + ".");
    }

    private Report page() {
        return Report.titled("What became of the plan")
                .say(sentence())
                .add(Table.titled("Planned batches")
                        .withText("batch", batches, Batch::name)
                        .withText("lot", batches, batch -> batch.lot().orElse(""))
                        .withNumber("drop temperature", Unit.TEMPERATURE, reader(), batches, this::drop)
                        .withNumber("mean " + attribute, "points", 2, batches, this::mean)
                        .withNumber(
                                "scores",
                                "",
                                0,
                                batches,
                                batch -> CupsTable.of(attribute, logbook, batch)
                                        .cups()
                                        .size())
                        .withNumber("standard error", "points", 2, batches, this::errorOfMean)
                        .withNote(
                                "The standard error is that of the mean across cuppers, each held against their own mean of"
                                        + " all these batches.")
                        .withNote(leftOutWords()))
                .add(picture())
                .caution(
                        "Seen in these batches, nothing more. Never leave a roast unattended; watch the drum, not the screen.");
    }

    private Plot picture() {
        return Plot.of(
                        "Mean " + attribute + " of each planned batch",
                        Axis.of("drop temperature", Unit.TEMPERATURE, reader()),
                        Axis.number(attribute, "points"))
                .with(Points.of(
                                "one planned batch, mean of its cuppers",
                                batches.stream().mapToDouble(this::drop).toArray(),
                                batches.stream().mapToDouble(this::mean).toArray())
                        .withIntervals(
                                batches.stream()
                                        .mapToDouble(batch -> mean(batch) - errorOfMean(batch))
                                        .toArray(),
                                batches.stream()
                                        .mapToDouble(batch -> mean(batch) + errorOfMean(batch))
                                        .toArray())
                        .withNames(batches.stream().map(Batch::name).toList()))
                .withNote("A dot's bar holds the batch's mean over many such cuppers about two times in three.")
                .withEmptySentence("No planned batch has been cupped.");
    }

    @Override
    public Showable shownAs() {
        return Overprint.across(page());
    }

    @Override
    public String toString() {
        return sentence() + " " + VirtualLogbook.WARNING;
    }
}
