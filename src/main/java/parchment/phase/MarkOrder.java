package parchment.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import parchment.logbook.MarkKind;

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

    static double joint(Mark first, Mark second) {
        return Math.hypot(first.standardError(), second.standardError());
    }
}
