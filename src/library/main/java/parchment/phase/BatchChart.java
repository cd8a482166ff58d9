package parchment.phase;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.chart.Axis;
import parchment.chart.Boundary;
import parchment.chart.Line;
import parchment.chart.Panels;
import parchment.chart.Plot;
import parchment.chart.Span;
import parchment.chart.Weight;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.display.Showable;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.found.Phase;
import parchment.phase.found.Source;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Draws one batch: its temperatures from charge to drop, its controls in panels below, its marks and its phases.
 *
 * <pre>{@code
 * BatchChart.of(logbook.lastWithCurve())
 * }</pre>
 *
 * <p>Marks stand in words with their standard error in seconds. Readings that cleaning left out are not drawn, and a gap in the
 * readings is a gap in the line. The rate of rise is not here: it has its own picture along the temperature, the pace chart.
 */
public final class BatchChart implements ShownAs {
    /** Seconds shown before charge and after the drop, so that both marks stand inside the picture. */
    private static final double MARGIN = 15;

    private static final Axis CLOCK = Axis.clock("time since charge");

    private final Phases phases;
    private final TemperatureUnit reader;

    private BatchChart(Phases phases, TemperatureUnit reader) {
        this.phases = phases;
        this.reader = reader;
    }

    /** Returns the picture of a batch, with temperatures on the scale its logbook is written in. */
    public static BatchChart of(Batch batch) {
        return of(Phases.of(batch));
    }

    /** Returns the picture of a batch whose marks and phases were found before. */
    public static BatchChart of(Phases phases) {
        return new BatchChart(phases, phases.batch().readerUnit());
    }

    /** Returns the same picture with temperatures on another scale. */
    public BatchChart in(TemperatureUnit unit) {
        return new BatchChart(phases, unit);
    }

    /** Returns what is drawn. */
    public Panels panels() {
        List<Plot> plots = new ArrayList<>();
        plots.add(temperatures());
        plots.addAll(controls());
        Panels panels = Panels.stacked(title(), plots);
        for (String sentence : notes()) {
            panels = panels.withNote(sentence);
        }
        return panels;
    }

    private String title() {
        Batch batch = phases.batch();
        StringBuilder title = new StringBuilder("Batch ").append(batch.name());
        batch.lot().ifPresent(lot -> title.append(", ").append(lot));
        batch.roastDay().ifPresent(day -> title.append(", ").append(day));
        return title.toString();
    }

    private Plot temperatures() {
        Plot plot = Plot.of("", CLOCK, Axis.of("temperature", Unit.TEMPERATURE, reader))
                .withEmptySentence("No temperature was logged for this batch.");
        for (Phase phase : phases.list()) {
            plot = plot.with(
                    Span.of(phase.name(), phase.start().seconds(), phase.end().seconds()));
        }
        Optional<Line> bean = phases.clean()
                .map(clean -> line(Quantity.BEAN_TEMPERATURE, clean).withWeight(Weight.STRONG));
        Optional<Line> air = phases.curve(Quantity.AIR_TEMPERATURE)
                .map(curve -> line(Quantity.AIR_TEMPERATURE, CleanCurve.of(curve)));
        plot = plot.with(bean.stream().toList()).with(air.stream().toList());
        return plot.with(phases.marks().stream()
                .map(mark -> new Boundary(mark.kind().words(), mark.seconds(), mark.standardError()))
                .toList());
    }

    private Line line(Quantity quantity, CleanCurve clean) {
        List<Double> seconds = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (Curve piece : shown(clean).pieces()) {
            for (int i = 0; i < piece.size(); i++) {
                seconds.add(piece.secondsAt(i));
                values.add(piece.valueAt(i));
            }
            seconds.add(Double.NaN);
            values.add(Double.NaN);
        }
        return Line.of(quantity.words(), array(seconds), array(values));
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private CleanCurve shown(CleanCurve clean) {
        return clean.between(first(), last());
    }

    private double first() {
        return -MARGIN;
    }

    private double last() {
        return phases.mark(MarkKind.DROP).map(drop -> drop.seconds() + MARGIN).orElse(Double.POSITIVE_INFINITY);
    }

    /** Returns a panel for each unit that a control is written in, since different scales cannot share an axis. */
    private List<Plot> controls() {
        Map<String, List<Quantity>> byUnit = new LinkedHashMap<>();
        for (Quantity quantity : Quantity.values()) {
            if (quantity.isControl()) {
                control(quantity)
                        .ifPresent(
                                curve -> byUnit.computeIfAbsent(curve.unit().symbol(reader), unit -> new ArrayList<>())
                                        .add(quantity));
            }
        }
        List<Plot> plots = new ArrayList<>();
        byUnit.forEach((unit, quantities) -> {
            String label = quantities.size() == 1 ? quantities.get(0).words() : "setting";
            Plot plot = Plot.of("", CLOCK, Axis.number(label, unit).fromZero()).withHeight(80);
            for (Quantity quantity : quantities) {
                Curve curve = control(quantity).orElseThrow();
                plot = plot.with(Line.steps(quantity.words(), curve.seconds(), curve.values()));
            }
            plots.add(plot);
        });
        return plots;
    }

    private Optional<Curve> control(Quantity quantity) {
        return phases.curve(quantity)
                .map(curve -> curve.between(first(), last()))
                .filter(curve -> !curve.isEmpty());
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (!phases.marks().isEmpty()) {
            notes.add("The time of a mark lies within its ± about two times in three. " + sources());
        }
        if (phases.clean().isPresent() && phases.curve(Quantity.AIR_TEMPERATURE).isEmpty()) {
            notes.add("No air temperature was logged.");
        }
        if (controls().isEmpty()) {
            notes.add("No control was logged.");
        }
        notes.addAll(phases.missing());
        notes.addAll(phases.questions());
        return notes;
    }

    /** Says of each source which marks come from it. */
    private String sources() {
        Map<Source, List<String>> bySource = new LinkedHashMap<>();
        phases.marks()
                .forEach(mark -> bySource.computeIfAbsent(mark.source(), source -> new ArrayList<>())
                        .add(mark.kind().words()));
        List<String> parts = new ArrayList<>();
        bySource.forEach((source, marks) -> parts.add(String.join(", ", marks) + ": " + source.words()));
        String sentence = String.join("; ", parts) + ".";
        return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
    }

    @Override
    public Showable shownAs() {
        return panels();
    }

    @Override
    public String toString() {
        return "Picture of " + title().substring(0, 1).toLowerCase(Locale.ROOT) + title().substring(1);
    }
}
