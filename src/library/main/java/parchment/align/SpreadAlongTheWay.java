package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.TemperatureUnit;

/** Splits the spread of the drop time into the stretches of temperature in which it arose. */
final class SpreadAlongTheWay {
    private SpreadAlongTheWay() {}

    static List<SpreadSplit.OfStep> of(List<Phases> all, TemperatureUnit reader) {
        List<FirstPassages> climbs = new ArrayList<>();
        List<Double> drops = new ArrayList<>();
        for (Phases phases : all) {
            Optional<FirstPassages> climb = FirstPassages.of(phases);
            Optional<Mark> drop = phases.mark(MarkKind.DROP);
            if (climb.isPresent() && drop.isPresent()) {
                climbs.add(climb.get());
                drops.add(drop.get().seconds());
            }
        }
        double[] range = climbs.isEmpty()
                ? new double[0]
                : SharedStretch.of(
                        climbs.stream().mapToDouble(FirstPassages::from).toArray(),
                        climbs.stream().mapToDouble(FirstPassages::to).toArray(),
                        1);
        double[] edges = range.length == 0 ? new double[0] : Stretches.edges(range[0], range[range.length - 1]);
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < climbs.size(); i++) {
            double[] passages = climbs.get(i).passages(edges);
            if (SharedStretch.whole(passages)) {
                rows.add(parts(passages, drops.get(i)));
            }
        }
        if (rows.size() < Crowd.LEAST || edges.length < 2) {
            return List.of();
        }
        double[] whole =
                rows.stream().mapToDouble(row -> Arrays.stream(row).sum()).toArray();
        List<SpreadSplit.OfStep> steps = new ArrayList<>();
        for (int k = 0; k <= edges.length; k++) {
            int part = k;
            double[] values = rows.stream().mapToDouble(row -> row[part]).toArray();
            steps.add(new SpreadSplit.OfStep(
                    words(edges, k, reader),
                    Arrays.stream(values).average().orElse(Double.NaN),
                    Math.sqrt(SpreadSplit.variance(values)),
                    SpreadSplit.covariance(values, whole) / SpreadSplit.variance(whole)));
        }
        return steps;
    }

    private static double[] parts(double[] passages, double drop) {
        double[] parts = new double[passages.length + 1];
        parts[0] = passages[0];
        for (int k = 1; k < passages.length; k++) {
            parts[k] = passages[k] - passages[k - 1];
        }
        parts[passages.length] = drop - passages[passages.length - 1];
        return parts;
    }

    private static String words(double[] edges, int part, TemperatureUnit reader) {
        if (part == 0) {
            return "from charge to " + Stretches.whole(edges[0], reader);
        }
        return part == edges.length
                ? "from " + Stretches.whole(edges[part - 1], reader) + " to the drop"
                : Stretches.between(edges[part - 1], edges[part], reader);
    }
}
