package parchment.lesson;

import static parchment.feature.Features.dropTime;
import static parchment.feature.Features.firstCrackTime;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.align.Nearest;
import parchment.align.SpreadSplit;
import parchment.align.WhereTimeWent;
import parchment.lesson.QuestionList.Words;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.quantity.Unit;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Seed;

/** Lesson three: one clock for many batches. */
final class TheSameClock implements LessonPlan {
    /** A batch is asked about only if its answer does not hang on a hair, s. */
    private static final double CLEAR = 4;

    private static final double CLEARLY_SLOWER = 15;

    @Override
    public String title() {
        return "The same clock";
    }

    @Override
    public String goal() {
        return "Afterwards you can lay many batches on one clock, say which clock answers which question, and find where a batch lost"
                + " its time.";
    }

    @Override
    public VirtualRoastery roastery(Seed seed, long draw) {
        return VirtualRoastery.harbour().withSeed(seed).withBatches(44);
    }

    @Override
    public LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind) {
        Batch asked = asked(logbook);
        Once<WhereTimeWent> where = Once.of(() -> WhereTimeWent.of(asked, logbook));
        Once<SpreadSplit> split = Once.of(() -> SpreadSplit.of(logbook));
        QuestionList questions = new QuestionList(logbook.readerUnit())
                .word(
                        "clock",
                        "Two batches are to be compared when their beans are at the same bean temperature, whenever that was. Which"
                                + " clock lays them so? (time, marks or temperature)",
                        () -> List.of("temperature", "bean temperature"),
                        List.of("time", "marks", "temperature", "bean temperature"),
                        new Words(
                                "Look at what stands along the bottom of each picture.",
                                "One of the three pictures has no seconds at the bottom at all.",
                                "On that clock the batches can only differ in how fast they were rising there: the pace."))
                .number(
                        "pace",
                        "How much of the spread of the drop time is pace, in per cent?",
                        () -> split.value().marks().stream()
                                .filter(mark -> mark.kind() == MarkKind.DROP)
                                .mapToDouble(SpreadSplit.OfMark::paceShare)
                                .sum(),
                        0.006,
                        Unit.SHARE,
                        new Words(
                                "It stands in the first sentence over the tables.",
                                "The sentence names two shares that make 100 together; the first is pace.",
                                "The rest is that batches were dropped hotter or colder."))
                .number(
                        "stretch",
                        "In which stretch did the batch lose most time against the others? Give the temperature at which it begins.",
                        () -> slowest(where.value()).from(),
                        0.6,
                        Unit.TEMPERATURE,
                        new Words(
                                "Look down the last column, 'more than usual', for its largest number.",
                                "The answer is in the first column of that row.",
                                "Seconds more than the middle one of the other batches, where the beans were at the same temperature."))
                .word(
                        "slower",
                        "Over the whole climb, was the batch slower or faster than usual?",
                        () -> List.of(total(where.value()) > 0 ? "slower" : "faster"),
                        List.of("slower", "faster"),
                        new Words(
                                "Add up the last column in your head: are most of the numbers above zero or below?",
                                "Above zero means more seconds than usual.",
                                "Where and how much are different questions; the table answers both."))
                .word(
                        "nearest",
                        "Which batch of the same lot went the most similar way?",
                        () -> List.of(Nearest.to(asked, logbook)
                                .ofSameLot()
                                .get(0)
                                .batch()
                                .name()),
                        logbook.batches().stream().map(Batch::name).toList(),
                        new Words(
                                "The nearest of the same lot stands first in the table.",
                                "Give the name from the first row, as in H012.",
                                "It spent its seconds at nearly the same temperatures. That says nothing yet about the cup."));
        return new LessonMaterial(Map.of("tonight", asked.name()), questions.all());
    }

    /** The newest batch that was clearly slower or faster, most of all in one stretch, with a neighbour of its own lot. */
    private static Batch asked(Logbook logbook) {
        Measures measures = Measures.of(logbook, dropTime(), firstCrackTime());
        List<Batch> newestFirst = logbook.batches().stream()
                .filter(measures::hasAll)
                .sorted(Comparator.comparing(Batch::name).reversed())
                .toList();
        return newestFirst.stream()
                .filter(batch -> clear(WhereTimeWent.of(batch, logbook)))
                .filter(batch -> !Nearest.to(batch, logbook).ofSameLot().isEmpty())
                .findFirst()
                .orElseThrow(
                        () -> new NoSuchElementException("No batch of this seed fits the lesson. Take another seed."));
    }

    private static boolean clear(WhereTimeWent where) {
        List<Double> more = where.steps().stream()
                .map(WhereTimeWent.Step::more)
                .filter(Double::isFinite)
                .sorted(Comparator.reverseOrder())
                .toList();
        return more.size() > 3 && more.get(0) - more.get(1) >= CLEAR && StrictMath.abs(total(where)) >= CLEARLY_SLOWER;
    }

    private static double total(WhereTimeWent where) {
        return where.steps().stream()
                .mapToDouble(WhereTimeWent.Step::more)
                .filter(Double::isFinite)
                .sum();
    }

    private static WhereTimeWent.Step slowest(WhereTimeWent where) {
        List<WhereTimeWent.Step> steps = where.steps();
        int best = IntStream.range(0, steps.size())
                .filter(i -> Double.isFinite(steps.get(i).more()))
                .boxed()
                .max(Comparator.comparingDouble(i -> steps.get(i).more()))
                .orElseThrow();
        return steps.get(best);
    }
}
