package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import parchment.chart.Axis;
import parchment.chart.Boundary;
import parchment.chart.Colour;
import parchment.chart.Layer;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.chart.Weight;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.MarkKind;
import parchment.logbook.contents.LogbookException;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.stats.warp.Warp;

/**
 * Draws a batch's own clock against the reference clock: how far it ran ahead or behind, stage by stage.
 *
 * <p>Across is the reference clock, upwards the lead of the batch's own clock over it: a line at zero is a batch that kept the pace of
 * the reference; a line that rises is losing time there, a line that falls is making it up. The marks stand where the reference has
 * them.
 *
 * <pre>{@code
 * WarpChart.of(OneClock.of(logbook, Clock.BY_ALL_MARKS))
 * }</pre>
 */
public final class WarpChart implements ShownAs {
    private static final int POINTS = 200;
    /** Seconds below which a shift is the rounding of a clock that shifts nothing. */
    private static final double ROUNDING = 1e-3;

    private final OneClock one;
    private final String batch;
    private final Optional<Warp> warp;

    private WarpChart(OneClock one, String batch, Optional<Warp> warp) {
        this.one = one;
        this.batch = batch;
        this.warp = warp;
    }

    /**
     * Returns the warp of the batch that is set off, the last unless told otherwise; with no batch on the clock it says so.
     */
    public static WarpChart of(OneClock one) {
        return one.highlight()
                .map(batch -> of(one, batch))
                .orElseGet(() -> new WarpChart(one, "(none)", Optional.empty()));
    }

    /**
     * Returns the warp of one batch.
     *
     * @throws LogbookException if the batch is not laid on the clock
     */
    public static WarpChart of(OneClock one, String batch) {
        return new WarpChart(one, batch, Optional.of(one.warp(batch)));
    }

    /**
     * Returns the map from the batch's seconds since charge to the reference clock.
     *
     * @throws LogbookException if no batch is on the clock
     */
    public Warp warp() {
        return warp.orElseThrow(() -> new LogbookException("No batch is on the clock '"
                + one.clock().words()
                + "', so there is no warp: it takes a bean temperature and the marks the clock is set by."));
    }

    /** Returns by how many seconds the batch is later than the reference when the reference clock shows a time. */
    public double behind(double referenceSeconds) {
        return warp().inverse().at(referenceSeconds) - referenceSeconds;
    }

    /** Returns what is drawn. */
    public Plot plot() {
        if (!isShifted()) {
            return bare().withEmptySentence(sentence());
        }
        Warp own = warp();
        double[] reference = positions(own);
        List<Layer> layers = new ArrayList<>();
        for (OneClock.Laid other : one.laid()) {
            if (!other.name().equals(batch)) {
                other.warp()
                        .ifPresent(w -> layers.add(Line.of("one batch each", positions(w), behind(w))
                                .withWeight(Weight.FAINT)
                                .withName("batch " + other.name())));
            }
        }
        layers.add(Line.of("batch " + batch, reference, behind(own))
                .withWeight(Weight.STRONG)
                .withColour(Colour.VERMILLION));
        layers.addAll(marks(own));
        return bare().with(layers)
                .withNote(sentence())
                .withNote(
                        "Above zero the batch is later than the reference at the same stage. Where the line rises it loses"
                                + " time, where it falls it gains.");
    }

    private Plot bare() {
        String clock = one.clock() == Clock.BY_BEAN_TEMPERATURE
                ? "time at which the middle batch passed the same temperature"
                : one.clock().words();
        return Plot.of(
                "The clock of batch " + batch + " against the reference",
                Axis.clock(clock),
                Axis.number("behind the reference", "s"));
    }

    /** Tells whether this clock moves any batch at all: that since charge leaves each where it is. */
    private boolean isShifted() {
        return one.laid().stream()
                .flatMap(laid -> laid.warp().stream())
                .anyMatch(each -> Arrays.stream(behind(each)).anyMatch(seconds -> Math.abs(seconds) > ROUNDING));
    }

    private static double[] positions(Warp warp) {
        double[] positions = new double[POINTS + 1];
        double from = warp.imageFrom();
        double to = warp.imageTo();
        Arrays.setAll(positions, k -> k == POINTS ? to : from + (to - from) * k / POINTS);
        return positions;
    }

    private static double[] behind(Warp warp) {
        Warp back = warp.inverse();
        return Arrays.stream(positions(warp)).map(at -> back.at(at) - at).toArray();
    }

    private List<Layer> marks(Warp own) {
        Map<Double, MarkKind> at = new TreeMap<>();
        Optional<Phases> phases = one.laid().stream()
                .filter(laid -> laid.name().equals(batch))
                .map(OneClock.Laid::phases)
                .findFirst();
        phases.ifPresent(known -> {
            for (Mark mark : known.marks()) {
                boolean inner = mark.kind() != MarkKind.CHARGE && mark.kind() != MarkKind.TURNING_POINT;
                if (inner && mark.seconds() > own.from() && mark.seconds() <= own.to()) {
                    at.put(own.at(mark.seconds()), mark.kind());
                }
            }
        });
        List<Layer> layers = new ArrayList<>();
        at.forEach((seconds, kind) -> layers.add(Boundary.at(kind.words(), seconds)));
        return layers;
    }

    private String sentence() {
        if (warp.isEmpty()) {
            return "No batch is on the clock '" + one.clock().words() + "', so there is none to compare.";
        }
        if (!isShifted()) {
            return "On the clock '" + one.clock().words()
                    + "' no batch is shifted, so there is nothing to compare. Take the clock of all marks.";
        }
        WarpInShort.Farthest farthest = farthest(warp());
        return String.format(
                Locale.ROOT,
                "Batch %s is farthest from the reference at %s: %.0f s %s.",
                batch,
                new parchment.quantity.Elapsed(farthest.at()),
                Math.abs(farthest.behind()),
                farthest.behind() < 0 ? "ahead of it" : "behind it");
    }

    private WarpInShort.Farthest farthest(Warp own) {
        double[] behind = behind(own);
        int farthest = 0;
        for (int k = 1; k < behind.length; k++) {
            farthest = Math.abs(behind[k]) > Math.abs(behind[farthest]) ? k : farthest;
        }
        return new WarpInShort.Farthest(positions(own)[farthest], behind[farthest]);
    }

    /** Returns the answer in three sentences: where the batch was farthest ahead or behind, what that rests on, what to do next. */
    public InShort inShort() {
        return warp.isPresent() && isShifted()
                ? WarpInShort.of(
                        one.clock(), batch, farthest(warp()), one.laid().size())
                : WarpInShort.cannotTell(one.clock(), one.laid().size());
    }

    @Override
    public Showable shownAs() {
        return Report.titled("The clock of batch " + batch).add(inShort()).add(plot());
    }

    @Override
    public Optional<String> svg() {
        return plot().svg();
    }

    @Override
    public String toString() {
        return "Warp of batch " + batch + " to " + one.clock().words() + ". " + sentence();
    }
}
