package parchment.drift;

import java.util.List;
import java.util.Optional;
import parchment.display.answer.InShort;
import parchment.display.answer.Sentence;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.Problem;

/** Tells of a batch whose green mass was written and could not be read: it is then held against batches of every charge, which says less. */
final class MassNotRead {
    private MassNotRead() {}

    /** Returns what was found in place of the green mass; empty if it has one, if none was written, or if none of the others has one. */
    static Optional<Problem> of(Batch batch, List<Batch> others, Logbook logbook) {
        boolean theyHave =
                others.stream().anyMatch(other -> other.conditions().greenMass().isPresent());
        return batch.conditions().greenMass().isPresent() || !theyHave
                ? Optional.empty()
                : logbook.whole().problems().of(batch.name()).list().stream()
                        .filter(problem -> problem.column().startsWith("green mass"))
                        .findFirst();
    }

    /** Returns the answer in three sentences. */
    static InShort inShort(Usual usual, Problem problem, String reason) {
        String beside = switch (usual.verdict()) {
            case CANNOT_TELL -> "whether it is like the others of its lot cannot be told";
            case LIKE_THE_OTHERS -> "beside batches of every charge it is like the others";
            case A_LITTLE_UNLIKE_THE_OTHERS -> "beside batches of every charge it is a little unlike: " + reason;
            case UNLIKE_THE_OTHERS -> "beside batches of every charge it is unlike: " + reason;
        };
        return new InShort(
                "The green mass of batch " + usual.batch().name() + " could not be read: found " + problem.found()
                        + ".",
                Sentence.of(beside) + ".",
                "Mend it in " + problem.file() + (problem.line() > 0 ? ", line " + problem.line() : "")
                        + ", and ask again.");
    }
}
