package parchment.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Places the names of spans in one row over the plot, each centred on its band and none over another. */
final class SpanNames {
    static final double SIZE = 13;
    private static final double GAP = 8;

    /** One name and the place of its left end. */
    record Placed(String words, double left) {
        double right() {
            return left + TextWidth.of(words, SIZE);
        }

        boolean covers(double place) {
            return place > left - 2 && place < right() + 2;
        }
    }

    private SpanNames() {}

    /** Returns the names of the spans that are seen, from left to right. */
    static List<Placed> place(List<Span> spans, Scale across, double rightEdge) {
        List<Placed> placed = new ArrayList<>();
        double free = 0;
        for (Span span : spans.stream()
                .filter(span -> !span.label().isBlank())
                .sorted(Comparator.comparingDouble(Span::from))
                .toList()) {
            double from = across.placeInside(span.from());
            double to = across.placeInside(span.to());
            if (to - from < 1) {
                continue;
            }
            String words = TextWidth.fit(span.label(), SIZE, 200);
            double left = Math.max(free, (from + to - TextWidth.of(words, SIZE)) / 2);
            placed.add(new Placed(words, left));
            free = left + TextWidth.of(words, SIZE) + GAP;
        }
        // What was pushed over the right edge is pushed back, and its neighbours with it.
        double end = rightEdge;
        for (int i = placed.size() - 1; i >= 0; i--) {
            Placed name = placed.get(i);
            if (name.right() > end) {
                placed.set(i, new Placed(name.words(), end - TextWidth.of(name.words(), SIZE)));
            }
            end = placed.get(i).left() - GAP;
        }
        return placed;
    }
}
