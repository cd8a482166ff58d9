package parchment.card;

import java.util.ArrayList;
import java.util.List;
import parchment.align.Clock;
import parchment.align.OverlayChart;
import parchment.chart.Marker;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.Temperature;

/** Lays the bean temperatures of some batches over one another on today's probe, with the marks that a roaster hears and sees. */
final class LaidOver {
    private static final int HEIGHT = 300;

    /** The marks that are drawn, each in a shape of its own. */
    private enum Shown {
        YELLOWING(MarkKind.YELLOWING, Marker.TRIANGLE),
        FIRST_CRACK(MarkKind.FIRST_CRACK_START, Marker.DIAMOND),
        DROP(MarkKind.DROP, Marker.SQUARE);

        private final MarkKind kind;
        private final Marker marker;

        Shown(MarkKind kind, Marker marker) {
            this.kind = kind;
            this.marker = marker;
        }
    }

    private LaidOver() {}

    /** Tells whether there is a path of the batch to draw; where there is none, another's would be the last and be set off in its place. */
    static boolean isDrawn(Batch batch, Logbook logbook) {
        return TodaysReadings.of(logbook)
                .today(batch)
                .filter(moved -> !OverlayChart.of(List.of(moved), Clock.SINCE_CHARGE)
                        .plot()
                        .isEmpty())
                .isPresent();
    }

    /**
     * Draws batches, with the last of them set off.
     *
     * @param marked the batches whose marks are drawn
     */
    static Plot of(List<Batch> batches, List<Batch> marked, Logbook logbook) {
        TodaysReadings readings = TodaysReadings.of(logbook);
        List<Batch> moved = batches.stream()
                .flatMap(batch -> readings.today(batch).stream())
                .toList();
        Plot plot = OverlayChart.of(moved, Clock.SINCE_CHARGE)
                .in(logbook.readerUnit())
                .plot()
                .withHeight(HEIGHT)
                .withEmptySentence("No bean temperature was logged of these batches, so there is no path to draw.");
        if (moved.size() < batches.size() && !moved.isEmpty()) {
            int without = batches.size() - moved.size();
            plot = plot.withNote(without + (without == 1 ? " more batch has" : " more batches have")
                    + " no bean temperature, or none that is known on today's probe.");
        }
        List<String> names = moved.stream().map(Batch::name).toList();
        List<Phases> phases = Phases.of(logbook.whole()).stream()
                .filter(one -> marked.stream()
                        .anyMatch(b -> b.name().equals(one.batch().name())))
                .filter(one -> names.contains(one.batch().name()))
                .toList();
        for (Shown shown : Shown.values()) {
            plot = plot.with(points(shown, phases, readings));
        }
        return plot;
    }

    private static List<Points> points(Shown shown, List<Phases> phases, TodaysReadings readings) {
        List<Mark> marks = new ArrayList<>();
        List<Double> celsius = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (Phases one : phases) {
            one.mark(shown.kind)
                    .filter(mark -> mark.beanTemperature().isPresent())
                    .ifPresent(mark -> {
                        marks.add(mark);
                        celsius.add(readings.today(
                                one.batch(),
                                mark.beanTemperature().map(Temperature::celsius).orElse(Double.NaN)));
                        names.add(one.batch().name());
                    });
        }
        return marks.isEmpty()
                ? List.of()
                : List.of(Points.of(
                                shown.kind.words(),
                                marks.stream().mapToDouble(Mark::seconds).toArray(),
                                celsius.stream().mapToDouble(c -> c).toArray())
                        .withNames(names)
                        .withMarker(shown.marker));
    }
}
