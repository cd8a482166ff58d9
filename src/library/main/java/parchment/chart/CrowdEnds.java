package parchment.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** Tells how far the bulk of a crowd of thin lines reaches along one axis, and which few run far beyond it. */
final class CrowdEnds {
    /** Fewest lines that have a bulk; common practice, no source. */
    private static final int FEWEST = 10;
    /** Share of the lines that may run past an edge; always one at least. */
    private static final double SHARE = 0.02;
    /** Lines that would stretch the axis by less than this share of it are drawn whole. */
    private static final double WORTH_CUTTING = 0.25;

    private static final double MARGIN = 0.05;
    private static final int MOST_NAMES = 6;

    private record Ends(String name, double low, double high) {}

    private final List<Ends> lines;
    private final double low;
    private final double high;
    private final boolean cutsLow;
    private final boolean cutsHigh;

    private CrowdEnds(List<Ends> lines) {
        this.lines = lines;
        List<Double> lows = lines.stream().map(Ends::low).sorted().toList();
        List<Double> highs =
                lines.stream().map(Ends::high).sorted(Comparator.reverseOrder()).toList();
        int odd = lines.size() < FEWEST ? 0 : (int) Math.max(1, Math.floor(SHARE * lines.size()));
        double bulk = lines.isEmpty() ? 0 : highs.get(odd) - lows.get(odd);
        cutsLow = bulk > 0 && lows.get(0) < lows.get(odd) - WORTH_CUTTING * bulk;
        cutsHigh = bulk > 0 && highs.get(0) > highs.get(odd) + WORTH_CUTTING * bulk;
        low = lines.isEmpty() ? Double.NaN : cutsLow ? lows.get(odd) - MARGIN * bulk : lows.get(0);
        high = lines.isEmpty() ? Double.NaN : cutsHigh ? highs.get(odd) + MARGIN * bulk : highs.get(0);
    }

    static CrowdEnds across(List<Line> crowd) {
        return of(crowd, Layer.Reach::lowX, Layer.Reach::highX);
    }

    static CrowdEnds upwards(List<Line> crowd) {
        return of(crowd, Layer.Reach::lowY, Layer.Reach::highY);
    }

    private static CrowdEnds of(
            List<Line> crowd, ToDoubleFunction<Layer.Reach> low, ToDoubleFunction<Layer.Reach> high) {
        List<Ends> ends = new ArrayList<>();
        for (Line line : crowd) {
            Layer.Reach reach = new Layer.Reach();
            line.reach(reach);
            if (!reach.isEmpty()) {
                ends.add(new Ends(line.name(), low.applyAsDouble(reach), high.applyAsDouble(reach)));
            }
        }
        return new CrowdEnds(ends);
    }

    void reachAcross(Layer.Reach reach) {
        reach.x(low);
        reach.x(high);
    }

    void reachUpwards(Layer.Reach reach) {
        reach.y(low);
        reach.y(high);
    }

    /** Returns a sentence for each end of the axis that lines run past because it was set by the bulk of them. */
    List<String> beyond(Scale scale, String beforeLow, String afterHigh) {
        List<String> sentences = new ArrayList<>();
        Axis axis = scale.axis();
        if (cutsLow && axis.fixedLow().isEmpty()) {
            List<String> out = lines.stream()
                    .filter(line -> axis.shown(line.low()) < scale.low())
                    .map(Ends::name)
                    .toList();
            sentence(out, beforeLow, axis.format(kept(axis, scale.low()))).ifPresent(sentences::add);
        }
        if (cutsHigh && axis.fixedHigh().isEmpty()) {
            List<String> out = lines.stream()
                    .filter(line -> axis.shown(line.high()) > scale.high())
                    .map(Ends::name)
                    .toList();
            sentence(out, afterHigh, axis.format(kept(axis, scale.high()))).ifPresent(sentences::add);
        }
        return sentences;
    }

    /** Returns the kept position behind a shown one; what an axis shows is the kept number times a factor, moved by another. */
    private static double kept(Axis axis, double shown) {
        return (shown - axis.shown(0)) / (axis.shown(1) - axis.shown(0));
    }

    private static Optional<String> sentence(List<String> out, String where, String edge) {
        if (out.isEmpty()) {
            return Optional.empty();
        }
        String names =
                out.stream().filter(name -> !name.isBlank()).limit(MOST_NAMES).collect(Collectors.joining(", "));
        int more = out.size() - MOST_NAMES;
        return Optional.of(
                out.size() + " of the thin lines " + (out.size() == 1 ? "runs " : "run ") + where + " " + edge
                        + ", the picture's edge" + (names.isEmpty() ? "" : ": " + names)
                        + (more > 0 ? " and " + more + " more" : "") + ".");
    }
}
