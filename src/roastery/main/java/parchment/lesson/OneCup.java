package parchment.lesson;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import parchment.lesson.QuestionList.Words;
import parchment.logbook.Logbook;
import parchment.quantity.Unit;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Seed;
import parchment.virtual.written.VirtualBatch;

/** Lesson four: how little one cup says. */
final class OneCup implements LessonPlan {
    private static final String ATTRIBUTE = "sweetness";

    @Override
    public String title() {
        return "One cup is not evidence";
    }

    @Override
    public String goal() {
        return "Afterwards you can say how far two cups of one and the same batch lie apart, and state a difference between two batches"
                + " as an interval.";
    }

    @Override
    public VirtualRoastery roastery(Seed seed, long draw) {
        return VirtualRoastery.harbour().withSeed(seed).withBatches(40);
    }

    @Override
    public LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind) {
        CupPair pair = CupPair.in(logbook, ATTRIBUTE).stream()
                .filter(found -> StrictMath.abs(found.difference()) >= 0.2)
                .filter(found -> found.disagreeing() >= 1)
                .min(Comparator.comparing(CupPair::a).thenComparing(CupPair::b))
                .orElseThrow(() ->
                        new NoSuchElementException("No two batches of this seed fit the lesson. Take another seed."));
        QuestionList questions = new QuestionList(logbook.readerUnit())
                .number(
                        "same batch",
                        "What is the largest difference, in points, that one cupper made between two cups of the same batch?",
                        pair::largestWithin,
                        0.01,
                        Unit.POINTS,
                        new Words(
                                "Go cupper by cupper: each tasted cup 1 and cup 2 of batch A, and cup 1 and cup 2 of batch B.",
                                "Compare only two rows with the same cupper and the same batch; the scores go in quarters of a point.",
                                "Same batch, same cupper, same table, and still that far apart: that is what one cup is worth."))
                .number(
                        "mean A",
                        "What is the mean score of batch A?",
                        pair::meanA,
                        0.011,
                        Unit.POINTS,
                        new Words(
                                "The means stand in the notes under the table.",
                                "Take the mean of the batch that the lesson calls A; its name stands at the top of this page.",
                                "A mean of all cups, which wobbles less than any one of them."))
                .number(
                        "difference",
                        "How many points is the mean of A above the mean of B? (below zero if it is lower)",
                        pair::difference,
                        0.016,
                        Unit.POINTS,
                        new Words(
                                "Mean of A minus mean of B, in that order.",
                                "If B has the higher mean, your answer begins with a minus sign.",
                                "That is the best single guess. The question is how far off it may be."))
                .number(
                        "other way",
                        "How many cuppers would have said the opposite, or nothing, from their first cups alone?",
                        () -> (double) pair.disagreeing(),
                        0.1,
                        Unit.COUNT,
                        new Words(
                                "For each cupper compare cup 1 of A with cup 1 of B, and nothing else.",
                                "Count the cuppers whose first cups point the other way than the two means do, or are equal.",
                                "Had that cupper been alone with one cup of each, the story told afterwards would have been another."))
                .yesOrNo(
                        "enough",
                        "Would one cup of each, tasted by you alone, settle such a question? (yes or no)",
                        () -> false,
                        new Words(
                                "Compare the difference of the means with the difference within one batch that you found first.",
                                "If two cups of the same batch differ by as much, what does a difference between two batches show?",
                                "It would take several cups and several people, blind; and then an interval, not a number."))
                .claim(
                        "A minus B",
                        "If these cuppers tasted without end: by how many points would A be above B in sweetness?",
                        ClaimQuestion.Scale.POINTS,
                        () -> 3.0,
                        behind.map(all -> () -> {
                            TrueFlavour truth = TrueFlavour.of(all);
                            return truth.points(ATTRIBUTE, named(all, pair.a()))
                                    - truth.points(ATTRIBUTE, named(all, pair.b()));
                        }),
                        pair::telling,
                        "A good interval is about as wide on both sides as cuppers differ among themselves, divided by the square root of"
                                + " their number, times two. If it holds zero, 'cannot tell which' is the honest answer.");
        Map<String, String> roles = new LinkedHashMap<>();
        roles.put("A", pair.a());
        roles.put("B", pair.b());
        return new LessonMaterial(roles, questions.all());
    }

    private static VirtualBatch named(VirtualLogbook all, String name) {
        List<VirtualBatch> found = all.batches().stream()
                .filter(batch -> batch.name().equals(name))
                .toList();
        return found.get(0);
    }
}
