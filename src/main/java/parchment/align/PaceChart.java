package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.chart.Axis;
import parchment.chart.Plot;
import parchment.curve.SmoothCurve;
import parchment.curve.Smoothed;
import parchment.display.Showable;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookException;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Draws how fast many batches moved along the temperature: the rate of rise at each bean temperature after the turning point.
 *
 * <p>Along the clock a slow start shifts everything that follows; along the temperature the same stretch of the roast lies under the
 * same place of the axis, whenever it came. Each batch is a thin line; the median of all and the middle half stand over them, and one
 * batch is set off.
 *
 * <p>The rate comes from local quadratic regression of the cleaned readings ({@link SmoothCurve}) and is missing across gaps. A
 * temperature that was passed more than once counts when it was first reached.
 */
public final class PaceChart implements Showable {
    /** Says which way the speed is told. */
    public enum Speed {
        /** Degrees per minute: high is fast. */
        RATE_OF_RISE,
        /** Seconds for each degree: high is slow. */
        SECONDS_PER_DEGREE
    }

    /** Degrees Celsius between the positions at which batches are compared. */
    private static final double STEP = 1;
    /** A rate below this, in degrees Celsius per minute, gives seconds per degree that would hide all others. */
    private static final double LEAST_RATE = 3;
    /** A rate with a larger standard error, in degrees Celsius per minute, is not drawn: at the ends of a curve it says little. */
    private static final double LARGEST_ERROR = 2.5;
    /** The standard error of a rate, in degrees Celsius per minute, at which the batches are still told apart. */
    private static final double WANTED_ERROR = 0.7;
    /** Seconds to either side beyond which the shape of a roast would be smoothed away; common practice, no source. */
    private static final double LARGEST_BANDWIDTH = 60;

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
        double bandwidth = bandwidth(all);
        List<double[]> points = new ArrayList<>();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Phases phases : all) {
            double[] rising = rising(phases, bandwidth);
            for (int i = 0; i < rising.length; i += 2) {
                low = Math.min(low, rising[i]);
                high = Math.max(high, rising[i]);
            }
            points.add(rising);
        }
        Crowd crowd = new Crowd(low <= high ? Crowd.grid(low, high, STEP) : new double[0]);
        Optional<String> last = Optional.empty();
        for (int i = 0; i < all.size(); i++) {
            String name = batches.get(i).name();
            if (crowd.add(name, onGrid(points.get(i), crowd.grid()))) {
                last = Optional.of(name);
            }
        }
        return new PaceChart(List.copyOf(batches), reader, Speed.RATE_OF_RISE, last, bandwidth, notes, crowd);
    }

    /**
     * Returns the seconds to either side over which all batches are smoothed: the usual ones, or as many more as bring the usual
     * standard error of a rate to {@value #WANTED_ERROR} °C/min. The error of a local slope falls with the bandwidth to the power 1.5.
     */
    private static double bandwidth(List<Phases> all) {
        double[] errors = all.stream()
                .flatMap(phases -> phases.bean().stream())
                .mapToDouble(PaceChart::usualError)
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        double usual = errors.length == 0 ? 0 : errors[errors.length / 2];
        double wanted = SmoothCurve.BANDWIDTH_SECONDS * Math.pow(usual / WANTED_ERROR, 2 / 3.0);
        double rounded = 5 * Math.ceil(wanted / 5);
        return Math.max(SmoothCurve.BANDWIDTH_SECONDS, Math.min(LARGEST_BANDWIDTH, rounded));
    }

    /** Returns the median standard error of a few rates along a curve, in degrees Celsius per minute. */
    private static double usualError(SmoothCurve smooth) {
        double[] seconds = smooth.clean().kept().seconds();
        double[] errors = new double[9];
        for (int i = 0; i < errors.length; i++) {
            int reading = (int) Math.round((i + 1) * (seconds.length - 1) / 10.0);
            errors[i] = seconds.length == 0
                    ? Double.NaN
                    : smooth.at(seconds[reading]).slopeStandardError();
        }
        double[] known = Arrays.stream(errors).filter(Double::isFinite).sorted().toArray();
        return known.length == 0 ? Double.NaN : known[known.length / 2];
    }

    /** Returns temperature and rate in turns, from the lowest reading on, for readings that reach a new highest temperature. */
    private static double[] rising(Phases phases, double bandwidth) {
        Optional<SmoothCurve> smooth =
                phases.bean().map(bean -> bean.bandwidthSeconds() < bandwidth ? bean.withBandwidth(bandwidth) : bean);
        if (smooth.isEmpty()) {
            return new double[0];
        }
        // A drop that was written a little late would add readings of the emptying drum.
        double end = phases.mark(MarkKind.DROP)
                .map(drop -> drop.seconds() - 2 * drop.standardError())
                .orElse(Double.POSITIVE_INFINITY);
        List<Smoothed> readings = smooth.get().atReadings();
        int lowest = 0;
        for (int i = 1; i < readings.size(); i++) {
            lowest = readings.get(i).value() < readings.get(lowest).value() ? i : lowest;
        }
        double[] rising = new double[2 * readings.size()];
        int size = 0;
        double reached = Double.NEGATIVE_INFINITY;
        for (Smoothed at : readings.subList(Math.min(lowest, readings.size()), readings.size())) {
            boolean told = at.slope() > 0 && at.slopeStandardError() <= LARGEST_ERROR && at.seconds() <= end;
            if (at.value() > reached && told) {
                rising[size++] = at.value();
                rising[size++] = at.slope();
                reached = at.value();
            }
        }
        return Arrays.copyOf(rising, size);
    }

    /** Returns the rates at the temperatures of a grid, straight between neighbouring readings that are close enough. */
    private static double[] onGrid(double[] rising, double[] grid) {
        double[] rates = new double[grid.length];
        Arrays.fill(rates, Double.NaN);
        int at = 0;
        for (int i = 0; i < grid.length; i++) {
            while (at + 2 < rising.length && rising[at + 2] < grid[i]) {
                at += 2;
            }
            // Neighbours more than a few degrees apart have a gap between them, which nothing may bridge.
            if (at + 3 < rising.length && rising[at] <= grid[i] && rising[at + 2] - rising[at] < 4 * STEP) {
                double share = (grid[i] - rising[at]) / (rising[at + 2] - rising[at]);
                rates[i] = rising[at + 1] + share * (rising[at + 3] - rising[at + 1]);
            }
        }
        return rates;
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
                        "%d of %d batches, from each batch's turning point to its drop%s",
                        crowd.size(),
                        batches.size(),
                        left == 0
                                ? "."
                                : "; " + left + (left == 1 ? " has" : " have")
                                        + " no bean temperature whose rate of rise could be told, and "
                                        + (left == 1 ? "is" : "are")
                                        + " left out.")
                + crowd.note()
                + cutOff();
    }

    private String cutOff() {
        String error = Unit.RATE_OF_RISE.withDigits(1).formatStep(LARGEST_ERROR, reader);
        String rates = String.format(
                Locale.ROOT,
                " Rates are taken over %.0f s to either side; those with a standard error above %s are not drawn",
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
    public String text() {
        return plot().text();
    }

    @Override
    public Optional<String> html() {
        return plot().html();
    }

    @Override
    public Optional<String> svg() {
        return plot().svg();
    }

    @Override
    public String toString() {
        return title();
    }
}
