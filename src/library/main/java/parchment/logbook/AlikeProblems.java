package parchment.logbook;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import parchment.logbook.written.Problem;

/**
 * Collects problems that are alike and of many files, or expect a name of its own each: the first {@value ProblemLog#ALIKE_KEPT} one by one, and the
 * rest as a count, so that a folder of a hundred thousand files gives a list that can be read.
 */
final class AlikeProblems {
    private final Problem like;
    private final List<Problem> list = new ArrayList<>();
    private int more;

    /** Begins with none; the rest will be told as a problem of the given place and kind. */
    AlikeProblems(String place, String column, String expected, String done) {
        this.like = new Problem(place, 0, column, "", expected, done);
    }

    /** Adds a problem, whose words are only worked out if it is one of the first. */
    void add(Supplier<Problem> problem) {
        if (list.size() < ProblemLog.ALIKE_KEPT) {
            list.add(problem.get());
        } else {
            more++;
        }
    }

    List<Problem> toList() {
        List<Problem> all = new ArrayList<>(list);
        if (more > 0) {
            String found = more + " more like the " + ProblemLog.ALIKE_KEPT + " before";
            all.add(new Problem(like.file(), 0, like.column(), found, like.expected(), like.done()));
        }
        return all;
    }
}
