package parchment.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.display.Sentence;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;

/** Questions marks that contradict each other or the curve. Nothing is corrected: the roaster knows what was meant. */
final class MarkDoubts {
    private static final double ERRORS_APART = 3;

    private MarkDoubts() {}

    static List<String> about(Map<MarkKind, Mark> marks, Optional<CleanCurve> clean) {
        List<String> doubts = new ArrayList<>();
        order(marks, doubts);
        clean.ifPresent(curve -> curve(marks, curve, doubts));
        return List.copyOf(doubts);
    }

    private static void order(Map<MarkKind, Mark> marks, List<String> doubts) {
        MarkKind[] kinds = MarkKind.values();
        for (int i = 0; i < kinds.length; i++) {
            for (int j = i + 1; j < kinds.length; j++) {
                Mark earlier = marks.get(kinds[i]);
                Mark later = marks.get(kinds[j]);
                if (earlier == null || later == null || later.seconds() >= earlier.seconds()) {
                    continue;
                }
                // First crack may fade into the second, and may still pop at the drop.
                boolean mayOverlap = kinds[i] == MarkKind.FIRST_CRACK_END;
                if (!mayOverlap) {
                    doubts.add(String.format(
                            Locale.ROOT,
                            "%s at %s (%s) lies after %s at %s (%s): one of them is wrong. Both are kept as they are;"
                                    + " please check the batch's row.",
                            Sentence.of(earlier.kind().words()),
                            earlier.at(),
                            earlier.source().words(),
                            later.kind().words(),
                            later.at(),
                            later.source().words()));
                }
            }
        }
    }

    private static void curve(Map<MarkKind, Mark> marks, CleanCurve clean, List<String> doubts) {
        Curve kept = clean.kept();
        double last = kept.secondsAt(kept.size() - 1);
        for (Mark mark : marks.values()) {
            if (mark.source() == Source.WRITTEN && mark.seconds() > last + Math.max(5, 3 * mark.standardError())) {
                doubts.add(String.format(
                        Locale.ROOT,
                        "%s is written at %s, but the log ends at %s: there is no reading then.",
                        Sentence.of(mark.kind().words()),
                        mark.at(),
                        Elapsed.seconds(last)));
            }
        }
        Mark drop = marks.get(MarkKind.DROP);
        if (drop != null && drop.source() == Source.WRITTEN) {
            OnCurve.drop(clean, 60).ifPresent(found -> {
                double apart = drop.seconds() - found.seconds();
                if (Math.abs(apart) > 2 + ERRORS_APART * Math.hypot(drop.standardError(), found.standardError())) {
                    doubts.add(String.format(
                            Locale.ROOT,
                            "The drop is written at %s, but the curve falls from %s on (%.0f s %s): the two clocks may differ.",
                            drop.at(),
                            Elapsed.seconds(found.seconds()),
                            Math.abs(apart),
                            apart > 0 ? "earlier" : "later"));
                }
            });
        }
    }
}
