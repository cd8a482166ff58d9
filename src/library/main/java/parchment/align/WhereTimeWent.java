package parchment.align;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.chart.Axis;
import parchment.chart.Band;
import parchment.chart.Colour;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.chart.Weight;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.phase.Phases;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.linear.Robust;

/**
 * Tells where a batch's time went: the seconds it spent in each step of bean temperature, beside the other batches of its lot on the same
 * probe.
 *
 * <p>The reference is the median of the other batches, step by step; a lot with fewer than ten batches on the probe is held against all
 * such lots together. Steps are of 10 °C (18 °F) on either scale.
 *
 * <pre>{@code
 * WhereTimeWent.of(logbook.lastWithCurve(), logbook)
 * }</pre>
 */
public final class WhereTimeWent implements ShownAs {
    /** Fewest other batches from which a usual time is told; common practice, no source. */
    static final int FEWEST = 4;

    private final Batch batch;
    private final String against;
    private final int others;
    private final TemperatureUnit reader;
    private final List<Step> steps;

    /**
     * Holds one step of bean temperature.
     *
     * @param from lower edge in °C
     * @param to upper edge in °C
     * @param seconds what the batch spent in it; NaN if it did not pass it whole
     * @param usual the median of the others
     * @param low their lower quartile
     * @param high their upper quartile
     */
    public record Step(double from, double to, double seconds, double usual, double low, double high) {
        /** Returns how many seconds more than usual the batch spent; negative for fewer. */
        public double more() {
            return seconds - usual;
        }
    }

    private WhereTimeWent(Batch batch, String against, int others, TemperatureUnit reader, List<Step> steps) {
        this.batch = batch;
        this.against = against;
        this.others = others;
        this.reader = reader;
        this.steps = List.copyOf(steps);
    }

    /**
     * Holds a batch against the others of its lot and probe.
     *
     * @throws LogbookException if the logbook has no such batch, or others have a bean temperature and the batch has none
     */
    public static WhereTimeWent of(Batch batch, Logbook logbook) {
        if (NoCurve.of(logbook.batch(batch.name())) && Peers.of(logbook).isEmpty()) {
            return new WhereTimeWent(batch, "no batch has a bean temperature", 0, logbook.readerUnit(), List.of());
        }
        Peers peers = Peers.of(batch, logbook);
        Phases own = peers.member(batch.name()).orElseThrow();
        List<FirstPassages> others = peers.others(batch.name()).stream()
                .flatMap(phases -> FirstPassages.of(phases).stream())
                .toList();
        Optional<FirstPassages> climb = FirstPassages.of(own);
        List<Step> steps = new ArrayList<>();
        if (climb.isPresent() && others.size() >= FEWEST) {
            double low = Math.max(
                    climb.get().from(),
                    Robust.median(
                            others.stream().mapToDouble(FirstPassages::from).toArray()));
            double high = climb.get().to();
            double[] edges = Stretches.edges(low, high);
            for (int k = 1; k < edges.length; k++) {
                double from = edges[k - 1];
                double to = edges[k];
                double[] theirs = others.stream()
                        .mapToDouble(other -> other.passage(to) - other.passage(from))
                        .filter(Double::isFinite)
                        .toArray();
                if (theirs.length >= FEWEST) {
                    steps.add(new Step(
                            from,
                            to,
                            climb.get().passage(to) - climb.get().passage(from),
                            Robust.median(theirs),
                            Robust.quantile(theirs, 0.25),
                            Robust.quantile(theirs, 0.75)));
                }
            }
        }
        return new WhereTimeWent(batch, peers.words(), others.size(), logbook.readerUnit(), steps);
    }

    /** Returns the steps of temperature, from the lowest up; empty if there are too few batches to hold this one against. */
    public List<Step> steps() {
        return steps;
    }

    /** Returns what is drawn. */
    public Plot plot() {
        int n = steps.size();
        int points = n == 0 ? 0 : n + 1;
        double[] edges = new double[points];
        double[] own = new double[points];
        double[] usual = new double[points];
        for (int k = 0; k < n; k++) {
            edges[k] = steps.get(k).from();
            own[k] = steps.get(k).seconds();
            usual[k] = steps.get(k).usual();
        }
        if (n > 0) {
            edges[n] = steps.get(n - 1).to();
            own[n] = own[n - 1];
            usual[n] = usual[n - 1];
        }
        // The band of quartiles runs in steps too: two positions for each step.
        double[] twice = IntStream.range(0, 2 * n)
                .mapToDouble(i ->
                        i % 2 == 0 ? steps.get(i / 2).from() : steps.get(i / 2).to())
                .toArray();
        double[] low = IntStream.range(0, 2 * n)
                .mapToDouble(i -> steps.get(i / 2).low())
                .toArray();
        double[] high = IntStream.range(0, 2 * n)
                .mapToDouble(i -> steps.get(i / 2).high())
                .toArray();
        return Plot.of(
                        "Seconds that batch " + batch.name() + " spent in each step",
                        Axis.of("bean temperature", Unit.TEMPERATURE, reader),
                        Axis.number("time spent in each step", "s").fromZero())
                .with(Band.of("middle half of the others", twice, low, high))
                .with(Line.steps("batch " + batch.name(), edges, own)
                        .withWeight(Weight.STRONG)
                        .withColour(Colour.VERMILLION))
                .with(Line.steps("middle of " + others + " others", edges, usual)
                        .withColour(Colour.BLUE))
                .withEmptySentence("There are too few other batches of its kind (" + others + ", " + FEWEST
                        + " are needed) to say what is usual.")
                .withNote("Held against " + others + " other batches: " + against + ".")
                .withNote(sentence());
    }

    private String sentence() {
        List<Step> known =
                steps.stream().filter(step -> Double.isFinite(step.more())).toList();
        if (known.isEmpty()) {
            return "";
        }
        double sum = known.stream().mapToDouble(Step::more).sum();
        double[] bySize = known.stream().mapToDouble(Step::more).toArray();
        int most = IntStream.range(0, bySize.length)
                .reduce((a, b) -> Math.abs(bySize[b]) > Math.abs(bySize[a]) ? b : a)
                .orElse(0);
        Step largest = known.get(most);
        return String.format(
                Locale.ROOT,
                "From %s to %s it took %s %s than usual; most of all %s, where it was %s %s.",
                Stretches.whole(known.get(0).from(), reader),
                Stretches.whole(known.get(known.size() - 1).to(), reader),
                Stretches.length(sum),
                sum < 0 ? "less" : "more",
                Stretches.between(largest.from(), largest.to(), reader),
                Stretches.length(largest.more()),
                largest.more() < 0 ? "faster" : "slower");
    }

    private Table table() {
        return Table.titled("Seconds in each step of bean temperature")
                .withNumber("from", Unit.TEMPERATURE.withDigits(0), reader, steps, Step::from)
                .withNumber("to", Unit.TEMPERATURE.withDigits(0), reader, steps, Step::to)
                .withNumber("batch " + batch.name(), "s", 0, steps, Step::seconds)
                .withNumber("usual", "s", 0, steps, Step::usual)
                .withNumber("lower quartile", "s", 0, steps, Step::low)
                .withNumber("upper quartile", "s", 0, steps, Step::high)
                .withNumber("more than usual", "s", 0, steps, Step::more)
                .withRowsShown(Math.max(1, steps.size()));
    }

    /** Returns the answer in three sentences: how much longer or shorter it took, where most of all, what to do next. */
    public InShort inShort() {
        return NoCurve.of(batch)
                ? NoCurve.inShort("Where the time of batch " + batch.name() + " went cannot be told.")
                : TimeInShort.of(batch.name(), steps, others, reader);
    }

    @Override
    public Showable shownAs() {
        Report page = Report.titled("Where the time of batch " + batch.name() + " went")
                .add(inShort())
                .add(plot());
        return steps.isEmpty()
                ? page
                : page.fold(Report.titled("How this was worked out").add(table()));
    }

    @Override
    public Optional<String> svg() {
        return plot().svg();
    }

    @Override
    public String toString() {
        return steps.isEmpty()
                ? "Where the time of batch " + batch.name() + " went: too few other batches to say what is usual"
                : "Where the time of batch " + batch.name() + " went, beside " + others + " others: " + sentence();
    }
}
