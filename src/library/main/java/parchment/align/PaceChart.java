package parchment.align;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.chart.Axis;
import parchment.chart.Plot;
import parchment.curve.SmoothCurve;
import parchment.display.Showable;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.phase.Phases;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.sheet.Words;

/**
 * Draws how fast many batches moved along the temperature: the rate of rise at each bean temperature after the turning point.
 *
 * <pre>{@code
 * PaceChart.of(logbook)
 * }</pre>
 *
 * <p>Along the clock a slow start shifts everything that follows; along the temperature the same stretch of the roast lies under the
 * same place of the axis, whenever it came. Each batch is a thin line; the median of all and the middle half stand over them, and one
 * batch is set off.
 *
 * <p>The rate comes from local quadratic regression of the cleaned readings ({@link SmoothCurve}) and is missing across gaps. A
 * temperature that was passed more than once counts when it was first reached.
 *
 * <pre>{@code
 * PaceChart.of(logbook)
 * }</pre>
 */
public final class PaceChart implements ShownAs {
    /** Says which way the speed is told. */
    public enum Speed {
        /** Degrees per minute: high is fast. */
        RATE_OF_RISE,
        /** Seconds for each degree: high is slow. */
        SECONDS_PER_DEGREE
    }

    /** A rate below this, in degrees Celsius per minute, gives seconds per degree that would hide all others. */
    private static final double LEAST_RATE = 3;

    private final List<Batch> batches;
    private final TemperatureUnit reader;
    private final Speed speed;
    private final Optional<String> highlight;
    private final double bandwidth;
    private final List<String> notes;
    private final Crowd crowd;

    private PaceChart(
            List<Batch> batches,
            TemperatureUnit reader,
            Speed speed,
            Optional<String> highlight,
            double bandwidth,
            List<String> notes,
            Crowd crowd) {
        this.batches = batches;
        this.reader = reader;
        this.speed = speed;
        this.highlight = highlight;
        this.bandwidth = bandwidth;
        this.notes = notes;
        this.crowd = crowd;
    }

    /** Returns the pace chart of a logbook, with the latest batch set off. */
    public static PaceChart of(Logbook logbook) {
        return of(logbook.batches(), logbook.readerUnit(), ProbeChanges.sentences(logbook));
    }

    /** Returns the pace chart of batches, with the last of them set off. */
    public static PaceChart of(List<Batch> batches) {
        TemperatureUnit reader =
                batches.isEmpty() ? TemperatureUnit.CELSIUS : batches.get(0).readerUnit();
        return of(batches, reader, List.of());
    }

    private static PaceChart of(List<Batch> batches, TemperatureUnit reader, List<String> notes) {
        List<Phases> all = batches.stream().map(Phases::of).toList();
        double bandwidth = RatesByTemperature.bandwidth(all);
        List<double[]> points = new ArrayList<>();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Phases phases : all) {
            double[] rising = RatesByTemperature.rising(phases, bandwidth);
            for (int i = 0; i < rising.length; i += 2) {
                low = Math.min(low, rising[i]);
                high = Math.max(high, rising[i]);
            }
            points.add(rising);
        }
        Crowd crowd = new Crowd(low <= high ? Crowd.grid(low, high, RatesByTemperature.STEP) : new double[0]);
        Optional<String> last = Optional.empty();
        for (int i = 0; i < all.size(); i++) {
            String name = batches.get(i).name();
            if (crowd.add(name, RatesByTemperature.onGrid(points.get(i), crowd.grid()))) {
                last = Optional.of(name);
            }
        }
        return new PaceChart(List.copyOf(batches), reader, Speed.RATE_OF_RISE, last, bandwidth, notes, crowd);
    }

    /** Returns the same chart with temperatures on another scale. */
    public PaceChart in(TemperatureUnit unit) {
        return new PaceChart(batches, unit, speed, highlight, bandwidth, notes, crowd);
    }

    /** Returns the same chart with the speed told the other way. */
    public PaceChart with(Speed other) {
        return new PaceChart(batches, reader, other, highlight, bandwidth, notes, crowd);
    }

    /**
     * Returns the same chart with another batch set off.
     *
     * @throws LogbookException if the chart has no batch of that name
     */
    public PaceChart withHighlight(String batch) {
        return new PaceChart(
                batches, reader, speed, Optional.of(Highlight.in(batches, batch)), bandwidth, notes, crowd);
    }

    /** Returns what is drawn. */
    public Plot plot() {
        Axis across = Axis.of("bean temperature", Unit.TEMPERATURE, reader);
        boolean rate = speed == Speed.RATE_OF_RISE;
        Axis upwards = rate
                ? Axis.of("rate of rise", Unit.RATE_OF_RISE, reader)
                : Axis.number("time for each degree", "s per " + reader.symbol());
        Crowd shown = rate ? crowd : crowd.each(this::secondsPerDegree);
        Plot plot = Plot.of(title(), across, upwards.fromZero())
                .with(shown.layers(highlight))
                .withEmptySentence(
                        "No batch has a bean temperature whose rate of rise could be told, so there is no pace to draw.");
        plot = plot.withNote(used());
        for (String note : notes) {
            plot = plot.withNote(note);
        }
        return plot;
    }

    private double secondsPerDegree(double celsiusPerMinute) {
        return celsiusPerMinute < LEAST_RATE ? Double.NaN : 60 / reader.stepFromCelsius(celsiusPerMinute);
    }

    private String title() {
        return crowd.size() == 1 ? "Pace of one batch" : "Pace of " + crowd.size() + " batches";
    }

    private String used() {
        int left = batches.size() - crowd.size();
        return String.format(
                        Locale.ROOT,
                        "%d of %s, from each batch's turning point to its drop%s",
                        crowd.size(),
                        Words.count(batches.size(), "batch", "batches"),
                        left == 0
                                ? "."
                                : "; " + left + (left == 1 ? " has" : " have")
                                        + " no bean temperature whose rate of rise could be told, and "
                                        + (left == 1 ? "is" : "are")
                                        + " left out.")
                + LeftOutNames.of(batches.stream().map(Batch::name).toList(), crowd.names())
                + crowd.note()
                + cutOff();
    }

    private String cutOff() {
        String error = Unit.RATE_OF_RISE.withDigits(1).formatStep(RatesByTemperature.LARGEST_ERROR, reader);
        String rates = String.format(
                Locale.ROOT,
                " Rates are taken over %.0f s to either side; those that may be off by more than %s are not drawn",
                bandwidth,
                error);
        return speed == Speed.RATE_OF_RISE
                ? rates + "."
                : rates
                        + String.format(
                                Locale.ROOT,
                                ", nor anything slower than %.0f s per %s.",
                                60 / reader.stepFromCelsius(LEAST_RATE),
                                reader.symbol());
    }

    @Override
    public Showable shownAs() {
        return plot();
    }

    @Override
    public String toString() {
        return title();
    }
}
