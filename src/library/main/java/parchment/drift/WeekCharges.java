package parchment.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import parchment.display.answer.FirstFew;

/**
 * Tells of the batches of a week whose charge too few others are of what their own pages say: what could be held against others, and what
 * could not.
 */
final class WeekCharges {
    private static final int TOLD_ONE_BY_ONE = 3;

    private WeekCharges() {}

    /** Returns the batches of such a charge. */
    static List<Usual> odd(Week week) {
        return week.batches().stream()
                .filter(usual -> usual.oddCharge().isPresent())
                .toList();
    }

    /** Returns what is said of them; one by one where they are few. */
    static List<String> of(Week week) {
        List<Usual> odd = odd(week).stream()
                .filter(usual -> usual.verdict()
                        != Usual.Verdict.CANNOT_TELL) // Told with the others of which nothing can be told.
                .toList();
        List<String> sentences = new ArrayList<>();
        if (odd.size() <= TOLD_ONE_BY_ONE) {
            odd.forEach(usual -> sentences.add(
                    usual.inShort().found() + " " + usual.inShort().howSure()));
            return sentences;
        }
        sentences.add(odd.size()
                + " batches were of a charge that too few others are of, so only some numbers of them could be held against others: "
                + FirstFew.of(odd.stream().map(usual -> usual.batch().name()).collect(Collectors.toList())) + ".");
        return sentences;
    }

    /** Returns the word for a batch against its lot; of another charge it is said with what could be looked at. */
    static String word(Usual usual) {
        String word = switch (usual.verdict()) {
            case LIKE_THE_OTHERS -> "as usual";
            case A_LITTLE_UNLIKE_THE_OTHERS -> "a little unlike";
            case UNLIKE_THE_OTHERS -> "unlike";
            case CANNOT_TELL -> "cannot tell";
        };
        return usual.oddCharge()
                .map(charge -> (usual.verdict() == Usual.Verdict.LIKE_THE_OTHERS ? "in part " + word : word) + ", "
                        + charge.size().replaceFirst("^a ", ""))
                .orElse(word);
    }
}
