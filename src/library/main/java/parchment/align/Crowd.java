package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import parchment.chart.Band;
import parchment.chart.Colour;
import parchment.chart.Layer;
import parchment.chart.Line;
import parchment.chart.Weight;

/**
 * Lays many batches over each other on a shared grid: thin lines, their median, the middle half, and one batch set off.
 *
 * <p>The median and the band stand only where at least {@value #LEAST} batches and three quarters of all have a value: towards the
 * ends the few that remain are no longer the same crowd, and a median of them would bend for that reason alone.
 */
final class Crowd {
    /** Fewest batches from which a quartile is told; common practice, no source. */
    static final int LEAST = 5;
    /** Most batches that are named at the ends of their lines. */
    static final int NAMED = 6;

    private final double[] grid;
    private final Map<String, double[]> batches = new LinkedHashMap<>();

    /** Makes a crowd over positions that all batches share. */
    Crowd(double[] grid) {
        this.grid = grid.clone();
    }

    /** Returns positions a step apart that cover a range, on whole multiples of the step. */
    static double[] grid(double from, double to, double step) {
        int first = (int) Math.ceil(from / step - 1e-9);
        int last = (int) Math.floor(to / step + 1e-9);
        double[] grid = new double[Math.max(0, last - first + 1)];
        for (int i = 0; i < grid.length; i++) {
            grid[i] = (first + i) * step;
        }
        return grid;
    }

    /** Adds a batch; returns whether it has a value anywhere. */
    boolean add(String batch, double[] values) {
        boolean any = Arrays.stream(values).anyMatch(Double::isFinite);
        if (any) {
            batches.put(batch, values);
        }
        return any;
    }

    /** Returns the same batches with every value changed. */
    Crowd each(DoubleUnaryOperator change) {
        Crowd changed = new Crowd(grid);
        batches.forEach((batch, values) ->
                changed.batches.put(batch, Arrays.stream(values).map(change).toArray()));
        return changed;
    }

    Set<String> names() {
        return Collections.unmodifiableSet(batches.keySet());
    }

    int size() {
        return batches.size();
    }

    double[] grid() {
        return grid.clone();
    }

    /** Returns a share's quantile of the batches at each position, NaN where there are too few. */
    double[] quantile(double share) {
        double[] quantiles = new double[grid.length];
        for (int i = 0; i < grid.length; i++) {
            int position = i;
            double[] there = batches.values().stream()
                    .mapToDouble(values -> values[position])
                    .filter(Double::isFinite)
                    .sorted()
                    .toArray();
            quantiles[i] = there.length < Math.max(LEAST, 0.75 * batches.size()) ? Double.NaN : quantile(there, share);
        }
        return quantiles;
    }

    /** Returns a quantile of sorted values, straight between neighbours (type 7 of Hyndman and Fan 1996). */
    private static double quantile(double[] sorted, double share) {
        double place = share * (sorted.length - 1);
        int below = (int) Math.floor(place);
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }

    /** Returns what is drawn, from the bottom to the top. */
    List<Layer> layers(Optional<String> highlight) {
        return batches.size() <= NAMED ? named(highlight) : crowded(highlight);
    }

    private List<Layer> named(Optional<String> highlight) {
        List<Layer> layers = new ArrayList<>();
        batches.forEach((batch, values) -> layers.add(Line.of("batch " + batch, grid, values)
                .withWeight(highlight.filter(batch::equals).isPresent() ? Weight.STRONG : Weight.NORMAL)));
        return layers;
    }

    private List<Layer> crowded(Optional<String> highlight) {
        List<Layer> layers = new ArrayList<>();
        List<Layer> setOff = new ArrayList<>();
        batches.forEach((batch, values) -> {
            if (highlight.filter(batch::equals).isPresent()) {
                setOff.add(Line.of("batch " + batch, grid, values)
                        .withWeight(Weight.STRONG)
                        .withColour(Colour.VERMILLION));
            } else {
                layers.add(Line.of("one batch each", grid, values)
                        .withWeight(Weight.FAINT)
                        .withName("batch " + batch));
            }
        });
        layers.add(Band.of("middle half of the batches", grid, quantile(0.25), quantile(0.75)));
        // The first line of a picture is drawn without dashes: the batch that the picture sets off.
        layers.addAll(setOff);
        layers.add(Line.of("middle of " + batches.size() + " batches", grid, quantile(0.5))
                .withColour(Colour.BLUE));
        return layers;
    }

    /** Returns what the band and the median are, or nothing where the batches are too few for them. */
    String note() {
        return batches.size() <= NAMED
                ? ""
                : " The band holds the middle half of the batches at each place; it and the middle line stand where three quarters of"
                        + " the batches have a value.";
    }
}
