package parchment.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.display.answer.Sentence;
import parchment.logbook.MarkKind;
import parchment.phase.found.Mark;
import parchment.phase.found.Source;
import parchment.quantity.Elapsed;

/** Questions marks that contradict each other or the curve, and says what was done with them; the roaster knows what was meant. */
final class MarkDoubts {
    /** A mark that is questioned, and why, in a sentence or two. */
    record Doubt(MarkKind kind, String why) {}

    private MarkDoubts() {}

    static List<Doubt> about(Map<MarkKind, Mark> marks, Map<MarkKind, Mark> setAside, Optional<CleanCurve> clean) {
        List<Doubt> doubts = new ArrayList<>();
        setAside.values().forEach(mark -> doubts.add(new Doubt(mark.kind(), aside(mark, marks, setAside))));
        MarkOrder.wrong(marks)
                .forEach(pair -> doubts.add(new Doubt(pair.get(0).kind(), kept(pair.get(0), pair.get(1)))));
        clean.ifPresent(curve -> afterTheEnd(marks, curve, doubts));
        return List.copyOf(doubts);
    }

    private static String aside(Mark mark, Map<MarkKind, Mark> marks, Map<MarkKind, Mark> setAside) {
        Mark drop = marks.get(MarkKind.DROP);
        if (mark.kind() == MarkKind.DROP) {
            return String.format(
                    Locale.ROOT,
                    "The drop is written at %s, but the curve falls from %s on (%.0f s %s), further off than both may be. The curve's"
                            + " drop is used; please check the row: the two clocks may differ.",
                    mark.at(),
                    drop == null ? "elsewhere" : drop.at(),
                    drop == null ? 0 : Math.abs(drop.seconds() - mark.seconds()),
                    drop != null && drop.seconds() > mark.seconds() ? "later" : "earlier");
        }
        if (drop != null && MarkOrder.isAfterTheDrop(mark, drop)) {
            return String.format(
                    Locale.ROOT,
                    "%s is written at %s, %.0f s after the drop at %s (%s): more than both may be off. It is set aside; please check"
                            + " the batch's row.",
                    Sentence.of(mark.kind().words()),
                    mark.at(),
                    mark.seconds() - drop.seconds(),
                    drop.at(),
                    drop.source().words());
        }
        String others = String.join(
                " and ",
                MarkOrder.against(mark, setAside).stream()
                        .filter(other -> other.kind() != MarkKind.DROP && !MarkOrder.isAfterTheDrop(other, drop))
                        .map(other -> other.kind().words() + " at " + other.at())
                        .toList());
        return String.format(
                Locale.ROOT,
                "%s is written at %s, in the wrong order with %s by more than both may be off. Which is right cannot be told: they"
                        + " are set aside; please check the batch's row.",
                Sentence.of(mark.kind().words()),
                mark.at(),
                others);
    }

    private static String kept(Mark first, Mark second) {
        return String.format(
                Locale.ROOT,
                "%s at %s (%s) lies %.0f s after %s at %s (%s), no more than both may be off (%.0f s and %.0f s). Both are kept;"
                        + " please check %s.",
                Sentence.of(first.kind().words()),
                first.at(),
                first.source().words(),
                first.seconds() - second.seconds(),
                second.kind().words(),
                second.at(),
                second.source().words(),
                first.standardError(),
                second.standardError(),
                first.kind().words());
    }

    private static void afterTheEnd(Map<MarkKind, Mark> marks, CleanCurve clean, List<Doubt> doubts) {
        Curve kept = clean.kept();
        double last = kept.secondsAt(kept.size() - 1);
        for (Mark mark : marks.values()) {
            if (mark.source() == Source.WRITTEN && mark.seconds() > last + Math.max(5, 3 * mark.standardError())) {
                doubts.add(new Doubt(
                        mark.kind(),
                        String.format(
                                Locale.ROOT,
                                "%s is written at %s, but the log ends at %s: there is no reading then.",
                                Sentence.of(mark.kind().words()),
                                mark.at(),
                                Elapsed.seconds(last))));
            }
        }
    }
}
