package parchment.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import parchment.chart.Plot;
import parchment.display.Progress;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.display.answer.ShownAs;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.ScoreQuestion;
import parchment.logbook.written.CupScores;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Interval;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.RandomTerm;
import parchment.stats.mixed.ShareIntervals;

/**
 * Finds out where the differences between batches come from: lots, roast days, batches within a day, roasters; for scores also cuppers,
 * cuppings and single cups.
 *
 * <pre>{@code
 * VarianceShares.of(browningTime(), logbook)
 * }</pre>
 *
 * <p>A linear mixed model with one random term each; temperatures of the bean probe are put on one scale first. Intervals come from
 * responses drawn from the fitted model and fitted again, so that a source with three lots gets the wide interval it deserves, and so
 * does whatever is held beside it. How often they hold the true share: {@code docs/measurements/drift.md}.
 */
public final class VarianceShares implements ShownAs {
    private static final int DRAWS = 99;
    private static final long SEED = 20250612;
    private static final int FEWEST = 20;

    /**
     * Holds one source of differences.
     *
     * @param source in words
     * @param groups how many there are: lots, days, ...
     * @param standardDeviation between them, as the library keeps the number
     * @param share of the whole variance, from 0 to 1
     * @param interval of the share, 90 %
     */
    public record Share(String source, int groups, double standardDeviation, double share, Interval interval) {}

    private final String name;
    private final Unit unit;
    private final TemperatureUnit reader;
    private final List<Share> shares;
    private final int used;
    private final int leftOut;
    private final List<String> notes;

    private VarianceShares(
            String name,
            Unit unit,
            TemperatureUnit reader,
            List<Share> shares,
            int used,
            int leftOut,
            List<String> notes) {
        this.name = name;
        this.unit = unit;
        this.reader = reader;
        this.shares = List.copyOf(shares);
        this.used = used;
        this.leftOut = leftOut;
        this.notes = List.copyOf(notes);
    }

    /** Splits the variance of a feature between batches. */
    public static VarianceShares of(Feature feature, Logbook logbook) {
        BatchTable table = BatchTable.of(logbook, feature);
        double[] values = table.onTodaysProbe().values(feature);
        Map<String, List<String>> groups = new LinkedHashMap<>();
        List<Batch> batches = table.batches();
        groups.put("lots", batches.stream().map(VarianceShares::lot).toList());
        groups.put("roast days", batches.stream().map(b -> day(b, logbook)).toList());
        List<String> operators =
                batches.stream().map(b -> b.operator().orElse("")).toList();
        groups.put("roasters", operators);
        return fit(feature.name(), feature.unit(), logbook.readerUnit(), values, groups, "batches within a day");
    }

    /**
     * Splits the variance of an attribute between cups.
     *
     * @throws parchment.logbook.contents.LogbookException if nobody scored that attribute
     */
    public static VarianceShares of(String attribute, Logbook logbook) {
        Response.check(attribute, logbook);
        List<CupScores> cups = logbook.cups().stream()
                .filter(cup -> logbook.find(cup.batch()).isPresent())
                .toList();
        double[] values = cups.stream().mapToDouble(cup -> cup.score(attribute)).toArray();
        List<Batch> batches =
                cups.stream().map(cup -> logbook.batch(cup.batch())).toList();
        Map<String, List<String>> groups = new LinkedHashMap<>();
        groups.put("lots", batches.stream().map(VarianceShares::lot).toList());
        groups.put("roast days", batches.stream().map(b -> day(b, logbook)).toList());
        groups.put("batches within a day", batches.stream().map(Batch::name).toList());
        groups.put(
                "roasters", batches.stream().map(b -> b.operator().orElse("")).toList());
        groups.put("cuppers", cups.stream().map(CupScores::cupper).toList());
        groups.put("cuppings", cups.stream().map(CupScores::cupping).toList());
        VarianceShares shares = fit(
                attribute, Unit.POINTS, logbook.readerUnit(), values, groups, "cups of a batch, and what else is left");
        return ScoreQuestion.answered(shares, logbook, attribute);
    }

    private static String lot(Batch batch) {
        return batch.lot().orElse("");
    }

    private static String day(Batch batch, Logbook logbook) {
        return batch.roastedAt().isEmpty()
                ? ""
                : batch.machine().orElse("") + "\n" + batch.roastDay().orElseThrow();
    }

    private static VarianceShares fit(
            String name,
            Unit unit,
            TemperatureUnit reader,
            double[] values,
            Map<String, List<String>> groups,
            String rest) {
        int[] order = order(values, groups);
        return fitSorted(
                name,
                unit,
                reader,
                Arrays.stream(order).mapToDouble(row -> values[row]).toArray(),
                sorted(groups, order),
                rest);
    }

    /** Sorts rows by their groups and values: drawing and fitting then do not depend on the order in which they were written. */
    private static int[] order(double[] values, Map<String, List<String>> groups) {
        Comparator<Integer> by = Comparator.comparing(row -> 0);
        for (List<String> group : groups.values()) {
            by = by.thenComparing(group::get);
        }
        return IntStream.range(0, values.length)
                .boxed()
                .sorted(by.thenComparing(row -> values[row]))
                .mapToInt(row -> row)
                .toArray();
    }

    private static Map<String, List<String>> sorted(Map<String, List<String>> groups, int[] order) {
        Map<String, List<String>> sorted = new LinkedHashMap<>();
        groups.forEach((name, of) ->
                sorted.put(name, Arrays.stream(order).mapToObj(of::get).toList()));
        return sorted;
    }

    private static VarianceShares fitSorted(
            String name,
            Unit unit,
            TemperatureUnit reader,
            double[] values,
            Map<String, List<String>> groups,
            String rest) {
        List<String> notes = new ArrayList<>();
        if (Arrays.stream(values).noneMatch(Double::isFinite)) {
            notes.add("Of the batches asked about none has it.");
            return new VarianceShares(name, unit, reader, List.of(), 0, values.length, notes);
        }
        MixedDesign design = MixedDesign.of(name, values);
        List<String> sources = new ArrayList<>();
        for (Map.Entry<String, List<String>> one : groups.entrySet()) {
            long written =
                    one.getValue().stream().filter(g -> !g.isEmpty()).distinct().count();
            if (written < 2) {
                notes.add("Between " + one.getKey() + " nothing can be told: there "
                        + (written == 0 ? "are none written." : "is one only."));
            } else {
                design = design.withRandom(RandomTerm.intercept(one.getKey(), one.getValue()));
                sources.add(one.getKey());
            }
        }
        int complete = complete(values, groups, sources);
        if (complete < FEWEST || sources.isEmpty()) {
            notes.add("Shares need " + FEWEST + " rows with all of it written and two groups of something; there are "
                    + complete + ".");
            return new VarianceShares(name, unit, reader, List.of(), complete, values.length - complete, notes);
        }
        if (Arrays.stream(values).filter(Double::isFinite).distinct().count() < 2) {
            notes.add("Every row has the same value: there is no difference to share out.");
            return new VarianceShares(name, unit, reader, List.of(), complete, values.length - complete, notes);
        }
        LinearMixedModel model = design.fit();
        notes.addAll(model.notes());
        sources.removeIf(source -> !model.randomNames().contains(source));
        double[] variances = variances(model, sources);
        double[][] drawn = new double[variances.length][DRAWS];
        try (Progress progress = Progress.of(DRAWS, "drawing and fitting again")) {
            for (int d = 0; d < DRAWS; d++) {
                double[] again =
                        variances(design.withResponse(model.simulate(SEED + d)).fit(), sources);
                for (int k = 0; k < again.length; k++) {
                    drawn[k][d] = again[k];
                }
                progress.step();
            }
        }
        double[] shares = shares(variances);
        int[] counts = sources.stream()
                .mapToInt(source -> (int) groups.getOrDefault(source, List.of()).stream()
                        .filter(g -> !g.isEmpty())
                        .distinct()
                        .count())
                .toArray();
        Interval[] intervals = ShareIntervals.of(variances, drawn, counts);
        List<Share> found = new ArrayList<>();
        for (int k = 0; k < shares.length; k++) {
            boolean last = k == counts.length;
            found.add(new Share(
                    last ? rest : sources.get(k),
                    last ? model.used() : counts[k],
                    Math.sqrt(variances[k]),
                    shares[k],
                    intervals[k]));
        }
        return new VarianceShares(name, unit, reader, found, model.used(), model.leftOut(), notes);
    }

    private static int complete(double[] values, Map<String, List<String>> groups, List<String> sources) {
        int complete = 0;
        for (int i = 0; i < values.length; i++) {
            int row = i;
            complete += Double.isFinite(values[i])
                            && sources.stream()
                                    .noneMatch(s -> groups.getOrDefault(s, List.of())
                                            .get(row)
                                            .isEmpty())
                    ? 1
                    : 0;
        }
        return complete;
    }

    static double[] variances(LinearMixedModel model, List<String> sources) {
        double[] variances = new double[sources.size() + 1];
        for (int k = 0; k < sources.size(); k++) {
            double deviation = model.standardDeviation(sources.get(k));
            variances[k] = deviation * deviation;
        }
        variances[sources.size()] = Math.pow(model.residualStandardDeviation(), 2);
        return variances;
    }

    private static double[] shares(double[] variances) {
        double total = Arrays.stream(variances).sum();
        return Arrays.stream(variances)
                .map(v -> total > 0 ? v / total : Double.NaN)
                .toArray();
    }

    /** Returns the shares, in the order in which they are nested; empty if they cannot be told. */
    public List<Share> shares() {
        return shares;
    }

    /** Returns what could not be told, or lies on a bound, in words. */
    public List<String> notes() {
        return notes;
    }

    /** Returns the picture of the shares with their intervals. */
    public Plot plot() {
        Plot plot = SharesPicture.of(name, shares);
        return shares.isEmpty()
                ? plot
                : plot.withNote(used + " rows used, " + leftOut + " left out (something not written).");
    }

    /** Returns the answer in three sentences: the largest source, whether it is that for sure, what to do next. */
    public InShort inShort() {
        return SharesInShort.of(name, shares, notes);
    }

    @Override
    public Showable shownAs() {
        Report page = Report.titled("Where " + name + " differs").add(inShort());
        Report folded = Report.titled("How this was worked out");
        if (!shares.isEmpty()) {
            folded = folded.say(Sentence.of(toString()) + ".");
            Unit step = unit.withDigits(Math.max(1, unit.digits()));
            page = page.add(plot());
            folded = folded.add(Table.titled("Shares of the variance")
                    .withText("source", shares, Share::source)
                    .withNumber("how many", "", 0, shares, Share::groups)
                    .withText("standard deviation", shares, s -> step.formatStep(s.standardDeviation(), reader))
                    .withNumber("share", "%", 0, shares, s -> 100 * s.share())
                    .withText(
                            "90 % interval [%]",
                            shares,
                            s -> String.format(
                                    Locale.ROOT,
                                    "%.0f to %.0f",
                                    100 * s.interval().lower(),
                                    100 * s.interval().upper())));
        }
        // Without shares the last note is the reason, which stands above already.
        for (String note : shares.isEmpty() ? notes.subList(0, notes.size() - 1) : notes) {
            folded = folded.say(note);
        }
        return page.fold(folded.say(
                "Recipes, masses and seasons are not taken out first: what they move counts where they change."));
    }

    @Override
    public String toString() {
        if (shares.isEmpty()) {
            return "Cannot tell where " + name + " differs: "
                    + String.join(" ", notes).replaceFirst("\\.$", "");
        }
        return String.format(
                Locale.ROOT,
                "%s differs by: %s (%d rows used, %d left out)",
                name,
                String.join(
                        ", ",
                        shares.stream()
                                .map(s -> String.format(
                                        Locale.ROOT,
                                        "%s %.0f %% (%.0f to %.0f)",
                                        s.source(),
                                        100 * s.share(),
                                        100 * s.interval().lower(),
                                        100 * s.interval().upper()))
                                .toList()),
                used,
                leftOut);
    }
}
