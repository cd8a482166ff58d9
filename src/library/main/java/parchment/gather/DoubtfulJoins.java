package parchment.gather;

import java.util.List;
import parchment.sheet.Words;

/**
 * Asks about joins that are doubtful: each alone where they are few, else in one question about those that have a name in common. Where none has, one question has no use,
 * for both its answers keep all of them apart.
 */
final class DoubtfulJoins {
    /** More than this are asked about in one question. */
    static final int ASKED_ONE_BY_ONE = 3;

    /** As many are asked about one by one where one question has no use: often one answer settles another. */
    static final int MOST_QUESTIONS = 20;

    private DoubtfulJoins() {}

    /** Returns those that are put together. */
    static List<Join> putTogether(List<Join> doubtful, GatherQuestions questions) {
        List<Join> named = doubtful.stream().filter(Join::joinedUnlessTold).toList();
        boolean alone = doubtful.size() <= ASKED_ONE_BY_ONE || named.isEmpty() && doubtful.size() <= MOST_QUESTIONS;
        if (alone) {
            return doubtful.stream().filter(join -> isAnswered(join, questions)).toList();
        }
        if (named.isEmpty()) {
            Join first = doubtful.get(0);
            questions.leaveOut(doubtful.size()
                    + " joins are doubtful, and none of them has a name or number in common: all are kept apart. Those kept apart become a batch of the recording and"
                    + " another of the row. Each is answered with its key, such as " + first.key() + "="
                    + first.roast().shown() + ".");
            return named;
        }
        return isAnsweredYes(doubtful, named, questions) ? named : List.of();
    }

    private static boolean isAnswered(Join join, GatherQuestions questions) {
        String proposal = join.joinedUnlessTold() ? join.roast().shown() : JoinAnswers.APART;
        return !questions
                .ask(
                        join.key(),
                        "Is the recording " + Words.quote(join.curve().name()) + " the row "
                                + Words.quote(join.roast().shown()) + "? For it: " + join.because() + "."
                                + (join.but().isEmpty() ? "" : " Against it: " + join.but() + ".")
                                + " Answer with the row's name, another row's, or " + JoinAnswers.APART + ".",
                        proposal,
                        text -> !text.isBlank(),
                        JoinAnswers.APART + ", or the name of a row that no other recording has",
                        1)
                .equals(JoinAnswers.APART);
    }

    private static boolean isAnsweredYes(List<Join> doubtful, List<Join> named, GatherQuestions questions) {
        Join first = doubtful.get(0);
        int others = doubtful.size() - named.size();
        return questions.askYes(
                "joins.doubtful",
                doubtful.size() + " joins are doubtful, the first of them "
                        + Words.quote(first.curve().name()) + " with "
                        + Words.quote(first.roast().shown())
                        + ". Yes puts together the " + named.size() + " that have a name or number in common"
                        + (others == 0 ? "" : " and keeps " + others + " apart") + "; no keeps all " + doubtful.size()
                        + " apart. Those kept apart become a batch of the recording and another of the row. Each can be answered alone with its key, such as "
                        + first.key() + ". Put them together?",
                "yes",
                doubtful.size());
    }
}
