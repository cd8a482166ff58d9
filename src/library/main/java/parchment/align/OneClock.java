package parchment.align;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import parchment.chart.Plot;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.phase.Phases;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.Words;
import parchment.stats.warp.CurveGroup;
import parchment.stats.warp.SimultaneousBand;
import parchment.stats.warp.Warp;

/**
 * Lays many batches on one clock, with their mean path and a band that is meant to hold the whole true mean at once.
 *
 * <p>On a clock of time the bean temperature is compared; on the clock of the bean temperature and on that of the rate of rise, the rate
 * of rise. Of a logbook only the batches on one probe are taken, the latest that read 20 of them, and the page says so: readings of another
 * probe are not on the same scale. The band counts roast days, not batches: batches of one day share the weather and the roaster's mood. It asks
 * for five days at least. The mean stands over the stretch that 95 of 100 batches reach (along the
 * temperature, 10 °C after its start, as the probe still warms up there); a batch that does not is drawn, counted, and
 * left out of the mean.
 *
 * <pre>{@code
 * OneClock.of(logbook, Clock.BY_ALL_MARKS)
 * OneClock.of(logbook, Clock.BY_BEAN_TEMPERATURE)
 * }</pre>
 */
public final class OneClock implements ShownAs {
    private static final double STEP_SECONDS = 5;

    private final Clock clock;
    private final TemperatureUnit reader;
    private final int asked;
    private final List<Laid> laid;
    private final double[] grid;
    /** First and last position of the common stretch, or -1 where there is none. */
    private final int first;

    private final int last;
    private final List<String> notes;
    private final Optional<String> highlight;
    private final Optional<SimultaneousBand> band;

    /** One batch on the clock: its values at the positions of the grid, NaN where it has none. */
    record Laid(Phases phases, Optional<Warp> warp, double[] values) {
        String name() {
            return phases.batch().name();
        }
    }

    private OneClock(
            Clock clock,
            TemperatureUnit reader,
            int asked,
            List<Laid> laid,
            double[] grid,
            int first,
            int last,
            List<String> notes,
            Optional<String> highlight,
            Optional<SimultaneousBand> band) {
        this.clock = clock;
        this.reader = reader;
        this.asked = asked;
        this.laid = List.copyOf(laid);
        this.grid = grid;
        this.first = first;
        this.last = last;
        this.notes = List.copyOf(notes);
        this.highlight = highlight;
        this.band = band;
    }

    /** Lays the batches of a logbook's latest probe on a clock. */
    public static OneClock of(Logbook logbook, Clock clock) {
        OneProbe probe = OneProbe.of(logbook);
        return of(probe.phases(), clock, logbook.readerUnit(), logbook.batches().size(), probe.notes());
    }

    /** Lays batches on a clock; whether one probe read them all is not known here. */
    public static OneClock of(List<Batch> batches, Clock clock) {
        TemperatureUnit reader =
                batches.isEmpty() ? TemperatureUnit.CELSIUS : batches.get(0).readerUnit();
        return of(batches.stream().map(Phases::of).toList(), clock, reader, batches.size(), List.of());
    }

    static OneClock of(List<Phases> all, Clock clock, TemperatureUnit reader, int asked, List<String> notes) {
        ClockMatches matches = ClockMatches.of(all, clock);
        List<Laid> laid = clock == Clock.BY_BEAN_TEMPERATURE
                ? LaidPaths.alongTemperature(all, matches)
                : LaidPaths.alongTime(all, matches, clock);
        double[] grid = laid.isEmpty() ? new double[0] : LaidPaths.grid(laid, clock);
        List<Laid> onGrid = LaidPaths.onGrid(laid, grid, clock);
        int[] common = LaidPaths.common(onGrid, clock);
        List<String> said = new ArrayList<>(notes);
        said.addAll(matches.notes());
        String without = LeftOutNames.of(
                all.stream().map(one -> one.batch().name()).toList(),
                onGrid.stream().map(Laid::name).collect(Collectors.toSet()));
        if (!without.isEmpty()) {
            said.add(without.strip());
        }
        Optional<SimultaneousBand> band = band(onGrid, common[0], common[1]);
        Optional<String> latest = onGrid.isEmpty()
                ? Optional.empty()
                : Optional.of(onGrid.get(onGrid.size() - 1).name());
        return new OneClock(clock, reader, asked, onGrid, grid, common[0], common[1], said, latest, band);
    }

    private static Optional<SimultaneousBand> band(List<Laid> laid, int first, int last) {
        List<Laid> whole = laid.stream().filter(one -> whole(one, first, last)).toList();
        if (whole.isEmpty() || last <= first) {
            return Optional.empty();
        }
        return Optional.of(SimultaneousBand.ofMean(CurveGroup.of(
                whole.stream()
                        .map(one -> Arrays.copyOfRange(one.values(), first, last + 1))
                        .toList(),
                whole.stream().map(one -> day(one.phases().batch())).toList())));
    }

    private static boolean whole(Laid one, int first, int last) {
        return first >= 0 && SharedStretch.whole(Arrays.copyOfRange(one.values(), first, last + 1));
    }

    /** Returns the roast day as the label of chance; a batch without a date counts as a day of its own. */
    static String day(Batch batch) {
        return batch.roastDay().map(LocalDate::toString).orElse("batch " + batch.name());
    }

    /**
     * Returns the same picture with another batch set off; unless told otherwise it is the last.
     *
     * @throws LogbookException if no batch of that name is on the clock
     */
    public OneClock withHighlight(String batch) {
        String known = Highlight.in(batches(), batch);
        return new OneClock(clock, reader, asked, laid, grid, first, last, notes, Optional.of(known), band);
    }

    /** Returns the same picture with temperatures on another scale. */
    public OneClock in(TemperatureUnit unit) {
        return new OneClock(clock, unit, asked, laid, grid, first, last, notes, highlight, band);
    }

    /** Returns the clock. */
    public Clock clock() {
        return clock;
    }

    /** Returns the batches that are laid on the clock, in the order they were given. */
    public List<Batch> batches() {
        return laid.stream().map(one -> one.phases().batch()).toList();
    }

    /** Returns the batches that the mean is taken of: those with values over the whole common stretch. */
    public List<Batch> averaged() {
        return whole().stream().map(one -> one.phases().batch()).toList();
    }

    List<Laid> whole() {
        return laid.stream().filter(one -> whole(one, first, last)).toList();
    }

    List<Laid> laid() {
        return laid;
    }

    /** Returns the positions of the common stretch: seconds on the clock, or degrees Celsius. */
    public double[] positions() {
        return first < 0 ? new double[0] : Arrays.copyOfRange(grid, first, last + 1);
    }

    /** Returns one batch's values over the common stretch, NaN where it has none. */
    double[] values(Laid one) {
        return first < 0 ? new double[0] : Arrays.copyOfRange(one.values(), first, last + 1);
    }

    /** Returns the mean at each position of the common stretch, in °C or °C/min; empty if there is none. */
    public double[] mean() {
        return band.map(SimultaneousBand::difference).orElse(new double[0]);
    }

    /** Returns the band of the mean; nothing if no batch has values over the common stretch. */
    public Optional<SimultaneousBand> band() {
        return band;
    }

    /**
     * Returns the map from a batch's seconds since charge to the reference clock; on the clock of the bean temperature, to the time at
     * which the middle batch passed the same temperature.
     *
     * @throws LogbookException if the batch is not laid on the clock
     */
    public Warp warp(String batch) {
        return laid.stream()
                .filter(one -> one.name().equals(batch))
                .findFirst()
                .flatMap(Laid::warp)
                .orElseThrow(() -> new LogbookException("Batch '" + batch + "' cannot be laid on the clock '"
                        + clock.words() + "': it lacks a bean temperature or the marks the clock is set by, or it was"
                        + " read by another probe."));
    }

    double[] grid() {
        return grid.clone();
    }

    /** Returns the rows of the grid, from the first to the last of the common stretch. */
    IntStream commonRows() {
        return first < 0 ? IntStream.empty() : IntStream.rangeClosed(first, last);
    }

    TemperatureUnit reader() {
        return reader;
    }

    int asked() {
        return asked;
    }

    List<String> notes() {
        return notes;
    }

    Optional<String> highlight() {
        return highlight;
    }

    /** Returns what is drawn. */
    public Plot plot() {
        return OneClockPicture.plot(this);
    }

    /** Returns the answer in three sentences: where the mean stands half way, how well it is known, what to look at. */
    public InShort inShort() {
        int middle = (first + last) / 2;
        return ClockInShort.of(
                clock,
                asked,
                laid.size(),
                band.map(known -> new ClockInShort.HalfWay(
                        grid[middle],
                        known.difference()[middle - first],
                        known.canTell()
                                ? known.upper()[middle - first] - known.difference()[middle - first]
                                : Double.NaN,
                        whole().size(),
                        roastDays())),
                reader);
    }

    /** Returns of how many roast days the batches of the mean are. */
    long roastDays() {
        return whole().stream().map(one -> day(one.phases().batch())).distinct().count();
    }

    @Override
    public Showable shownAs() {
        return Report.titled("Many batches on one clock").add(inShort()).add(plot());
    }

    @Override
    public Optional<String> svg() {
        return plot().svg();
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%d of %s on one clock (%s), %d of them in the mean",
                laid.size(),
                Words.count(asked, "batch", "batches"),
                clock.words(),
                whole().size());
    }

    static double step() {
        return STEP_SECONDS;
    }
}
