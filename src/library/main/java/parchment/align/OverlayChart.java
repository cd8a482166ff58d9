package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.chart.Axis;
import parchment.chart.Plot;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.display.Showable;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.contents.LogbookException;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.sheet.Words;
import parchment.stats.warp.Warp;

/**
 * Lays the bean temperatures of many batches over each other on one clock.
 *
 * <pre>{@code
 * OverlayChart.of(logbook, Clock.SINCE_FIRST_CRACK_START)
 * }</pre>
 *
 * <p>On the clock of the bean temperature the picture turns: how long after charge each batch first reached a temperature. A batch
 * that lacks the mark its clock starts at is left out and counted. Readings that cleaning left out are not used, and gaps are not
 * bridged.
 *
 * <pre>{@code
 * OverlayChart.of(logbook, Clock.SINCE_FIRST_CRACK_START)
 * }</pre>
 */
public final class OverlayChart implements ShownAs {
    private static final double STEP_SECONDS = 5;
    private static final double STEP_CELSIUS = 1;

    private final List<Batch> batches;
    private final Clock clock;
    private final TemperatureUnit reader;
    private final Optional<String> highlight;
    private final List<String> notes;
    private final Crowd crowd;

    private OverlayChart(
            List<Batch> batches,
            Clock clock,
            TemperatureUnit reader,
            Optional<String> highlight,
            List<String> notes,
            Crowd crowd) {
        this.batches = batches;
        this.clock = clock;
        this.reader = reader;
        this.highlight = highlight;
        this.notes = notes;
        this.crowd = crowd;
    }

    /** Returns a logbook's batches on a clock, with the latest batch set off. */
    public static OverlayChart of(Logbook logbook, Clock clock) {
        return of(logbook.batches(), clock, logbook.readerUnit(), ProbeChanges.sentences(logbook));
    }

    /** Returns batches on a clock, with the last of them set off. */
    public static OverlayChart of(List<Batch> batches, Clock clock) {
        TemperatureUnit reader =
                batches.isEmpty() ? TemperatureUnit.CELSIUS : batches.get(0).readerUnit();
        return of(batches, clock, reader, List.of());
    }

    private static OverlayChart of(List<Batch> batches, Clock clock, TemperatureUnit reader, List<String> notes) {
        List<String> names = new ArrayList<>();
        List<List<Curve>> roasts = new ArrayList<>();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        List<Phases> all = batches.stream().map(Phases::of).toList();
        boolean plain = clock.zero().isPresent() || clock == Clock.BY_BEAN_TEMPERATURE;
        Optional<ClockMatches> matches = plain ? Optional.empty() : Optional.of(ClockMatches.of(all, clock));
        for (int i = 0; i < all.size(); i++) {
            Batch batch = batches.get(i);
            int position = i;
            List<Curve> pieces = matches.isEmpty()
                    ? pieces(all.get(i), clock)
                    : matches.flatMap(known -> known.warp(position))
                            .map(warp -> warped(all.get(position), warp))
                            .orElse(List.of());
            for (Curve piece : pieces) {
                double[] across = clock == Clock.BY_BEAN_TEMPERATURE ? piece.values() : piece.seconds();
                low = Math.min(low, Arrays.stream(across).min().orElse(low));
                high = Math.max(high, Arrays.stream(across).max().orElse(high));
            }
            names.add(batch.name());
            roasts.add(pieces);
        }
        double step = clock == Clock.BY_BEAN_TEMPERATURE ? STEP_CELSIUS : STEP_SECONDS;
        Crowd crowd = new Crowd(low <= high ? Crowd.grid(low, high, step) : new double[0]);
        Optional<String> last = Optional.empty();
        for (int i = 0; i < names.size(); i++) {
            double[] values = clock == Clock.BY_BEAN_TEMPERATURE
                    ? firstPassages(roasts.get(i), crowd.grid())
                    : heights(roasts.get(i), crowd.grid());
            if (crowd.add(names.get(i), values)) {
                last = Optional.of(names.get(i));
            }
        }
        return new OverlayChart(List.copyOf(batches), clock, reader, last, notes, crowd);
    }

    /** Returns the bean temperature from charge to drop on the clock, in pieces between gaps; none if it cannot be laid on it. */
    private static List<Curve> pieces(Phases phases, Clock clock) {
        Optional<Mark> zero = phases.mark(clock.needed());
        Optional<CleanCurve> clean = phases.clean();
        if (zero.isEmpty() || clean.isEmpty()) {
            return List.of();
        }
        double drop = phases.mark(MarkKind.DROP).map(Mark::seconds).orElse(Double.POSITIVE_INFINITY);
        return clean.get().between(0, drop).withZeroAt(zero.get().seconds()).pieces();
    }

    /** Returns the bean temperature from charge to drop on a clock that is stretched and pressed. */
    private static List<Curve> warped(Phases phases, Warp warp) {
        return phases.clean().map(clean -> clean.between(warp.from(), warp.to()).pieces()).orElse(List.of()).stream()
                .map(piece -> Curve.of(piece.name(), piece.unit(), warp.at(piece.seconds()), piece.values()))
                .toList();
    }

    private static double[] heights(List<Curve> pieces, double[] grid) {
        double[] heights = missing(grid.length);
        for (Curve piece : pieces) {
            for (int i = 0; i < grid.length; i++) {
                int after = piece.position(grid[i]);
                if (after < piece.size() && piece.secondsAt(after) == grid[i]) {
                    heights[i] = piece.valueAt(after);
                } else if (after > 0 && after < piece.size()) {
                    double from = piece.secondsAt(after - 1);
                    double share = (grid[i] - from) / (piece.secondsAt(after) - from);
                    heights[i] = piece.valueAt(after - 1) + share * (piece.valueAt(after) - piece.valueAt(after - 1));
                }
            }
        }
        return heights;
    }

    /** Returns when each temperature was first reached from below after the lowest reading. */
    private static double[] firstPassages(List<Curve> pieces, double[] grid) {
        double[] passages = missing(grid.length);
        double lowest = pieces.stream()
                .mapToDouble(piece -> Arrays.stream(piece.values()).min().orElse(Double.POSITIVE_INFINITY))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        boolean rising = false;
        double reached = lowest;
        int next = 0;
        for (Curve piece : pieces) {
            for (int i = 0; i < piece.size(); i++) {
                double value = piece.valueAt(i);
                rising |= value == lowest;
                if (!rising || value <= reached) {
                    continue;
                }
                while (next < grid.length && grid[next] <= value) {
                    // A temperature passed inside a gap has no time of its own.
                    if (grid[next] > reached && i > 0) {
                        double before = piece.valueAt(i - 1);
                        double share = Math.max(0, (grid[next] - before) / (value - before));
                        passages[next] = piece.secondsAt(i - 1) + share * (piece.secondsAt(i) - piece.secondsAt(i - 1));
                    }
                    next++;
                }
                reached = value;
            }
        }
        return passages;
    }

    private static double[] missing(int length) {
        double[] missing = new double[length];
        Arrays.fill(missing, Double.NaN);
        return missing;
    }

    /** Returns the same chart with temperatures on another scale. */
    public OverlayChart in(TemperatureUnit unit) {
        return new OverlayChart(batches, clock, unit, highlight, notes, crowd);
    }

    /**
     * Returns the same chart with another batch set off.
     *
     * @throws LogbookException if the chart has no batch of that name
     */
    public OverlayChart withHighlight(String batch) {
        return new OverlayChart(batches, clock, reader, Optional.of(Highlight.in(batches, batch)), notes, crowd);
    }

    /** Returns what is drawn. */
    public Plot plot() {
        boolean turned = clock == Clock.BY_BEAN_TEMPERATURE;
        Axis temperature = Axis.of("bean temperature", Unit.TEMPERATURE, reader);
        Axis across = turned ? temperature : Axis.clock(clock.words());
        Axis upwards = turned ? Axis.clock("time since charge") : temperature;
        Plot plot = Plot.of(title(), across, upwards)
                .with(crowd.layers(highlight))
                .withEmptySentence("No batch has both a bean temperature and a "
                        + clock.needed().words() + " to start the clock at.")
                .withNote(used());
        for (String note : notes) {
            plot = plot.withNote(note);
        }
        return plot;
    }

    private String title() {
        return (crowd.size() == 1
                        ? "Bean temperature of one batch"
                        : "Bean temperature of " + crowd.size() + " batches")
                + (clock == Clock.BY_BEAN_TEMPERATURE ? ": when each was reached" : ", " + clock.words());
    }

    private String used() {
        int left = batches.size() - crowd.size();
        String without = left == 0
                ? "."
                : "; " + left + (left == 1 ? " lacks" : " lack") + " a bean temperature or the "
                        + clock.needed().words() + " and " + (left == 1 ? "is" : "are") + " left out.";
        return crowd.size() + " of " + Words.count(batches.size(), "batch", "batches") + ", from charge to drop"
                + without + LeftOutNames.of(batches.stream().map(Batch::name).toList(), crowd.names()) + crowd.note();
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
