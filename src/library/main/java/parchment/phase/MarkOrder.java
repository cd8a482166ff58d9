package parchment.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import parchment.logbook.MarkKind;
import parchment.phase.found.Mark;
import parchment.phase.found.Source;

/** Tells which marks stand in an order in which a roast cannot happen, and whether that is more than their errors. */
final class MarkOrder {
    private MarkOrder() {}

    /** Returns every two marks of which the one that comes first in a roast was put later, in the order of their kinds. */
    static List<List<Mark>> wrong(Map<MarkKind, Mark> marks) {
        List<List<Mark>> wrong = new ArrayList<>();
        MarkKind[] kinds = MarkKind.values();
        for (int i = 0; i < kinds.length; i++) {
            for (int j = i + 1; j < kinds.length; j++) {
                Mark first = marks.get(kinds[i]);
                Mark second = marks.get(kinds[j]);
                // First crack may fade into the second.
                boolean mayOverlap = kinds[i] == MarkKind.FIRST_CRACK_END && kinds[j] == MarkKind.SECOND_CRACK_START;
                if (first != null && second != null && !mayOverlap && first.seconds() > second.seconds()) {
                    wrong.add(List.of(first, second));
                }
            }
        }
        return wrong;
    }

    /** Whether the first of two marks lies after the second by more than both may be off. */
    static boolean isBeyondErrors(Mark first, Mark second) {
        return first.seconds() - second.seconds() > MarkFinder.ERRORS_APART * joint(first, second);
    }

    /** Whether a mark lies after the drop by more than both may be off; a drop that is only assumed contradicts nothing. */
    static boolean isAfterTheDrop(Mark mark, @Nullable Mark drop) {
        return drop != null
                && mark.kind() != MarkKind.DROP
                && drop.source() != Source.ASSUMED
                && isBeyondErrors(mark, drop);
    }

    /** Returns the marks that stand in the wrong order with one of them by more than both may be off, in the order of their kinds. */
    static List<Mark> against(Mark mark, Map<MarkKind, Mark> marks) {
        return wrong(marks).stream()
                .filter(pair -> pair.contains(mark) && isBeyondErrors(pair.get(0), pair.get(1)))
                .map(pair -> pair.get(0).equals(mark) ? pair.get(1) : pair.get(0))
                .toList();
    }

    static double joint(Mark first, Mark second) {
        return Math.hypot(first.standardError(), second.standardError());
    }
}
