package parchment.lesson;

import static parchment.feature.Features.browningTime;
import static parchment.feature.Features.developmentRatio;
import static parchment.feature.Features.developmentTime;
import static parchment.feature.Features.dropTime;
import static parchment.feature.Features.dryingTime;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import parchment.lesson.QuestionList.Words;
import parchment.lesson.sheet.Grade;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Seed;
import parchment.virtual.written.VirtualBatch;

/** Lesson two: marks and phases, and what a mark is worth. */
final class PhasesAndMarks implements LessonPlan {
    private static final String MAREN = "Maren";
    private static final String TOMAS = "Tomas";
    private static final double LATE = 10;

    @Override
    public String title() {
        return "Phases, and what a mark is worth";
    }

    @Override
    public String goal() {
        return "Afterwards you can read the phases of a batch, say by how many seconds a mark may be off, and what that does to the"
                + " development ratio.";
    }

    @Override
    public VirtualRoastery roastery(Seed seed, long draw) {
        return VirtualRoastery.harbour().withSeed(seed).withBatches(44);
    }

    @Override
    public LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind) {
        Measures measures =
                Measures.of(logbook, dryingTime(), browningTime(), developmentTime(), developmentRatio(), dropTime());
        Batch tonight = measures.newest(batch -> by(MAREN, batch)
                && batch.writtenMark(MarkKind.FIRST_CRACK_START).isPresent()
                && batch.writtenMark(MarkKind.YELLOWING).isPresent());
        String name = tonight.name();
        QuestionList questions = new QuestionList(logbook.readerUnit())
                .number(
                        "development",
                        "How many seconds did the development phase last?",
                        () -> measures.value(name, developmentTime()),
                        2.5,
                        Unit.SECONDS,
                        new Words(
                                "In the table of phases, read the length of the row 'development'.",
                                "2:12 means two minutes and twelve seconds; you may write it so.",
                                "From the start of first crack to the drop."))
                .number(
                        "development ratio",
                        "What share of the whole roast was that, in per cent?",
                        () -> measures.value(name, developmentRatio()),
                        0.003,
                        Unit.SHARE,
                        new Words(
                                "The share stands in the same row.",
                                "It is the development time divided by the time from charge to drop, times 100.",
                                "A share goes up when development gets longer, and just as well when what came before gets shorter."))
                .number(
                        "seconds of error",
                        "By how many seconds may the mark 'first crack start' be off, by the table (one standard error)?",
                        () -> Phases.of(tonight)
                                .mark(MarkKind.FIRST_CRACK_START)
                                .map(mark -> mark.standardError())
                                .orElse(Double.NaN),
                        0.6,
                        Unit.SECONDS,
                        new Words(
                                "The column with the sign ± of the table of marks.",
                                "It stands in the row 'first crack start', before the words that say who wrote the mark.",
                                "In about two of three roasts the mark is that close; in one of three it is further off."))
                .number(
                        "ratio if late",
                        "If first crack had really started ten seconds before it was written, what would the development ratio be, in"
                                + " per cent?",
                        () -> (measures.value(name, developmentTime()) + LATE) / measures.value(name, dropTime()),
                        0.004,
                        Unit.SHARE,
                        new Words(
                                "The development phase would be ten seconds longer; the roast as a whole would not.",
                                "Add ten seconds to the development time and divide by the seconds from charge to drop, times 100.",
                                "Ten seconds of the pen move the ratio by more than a point: as much as people argue about."))
                .word(
                        "whose pen",
                        "Who of the two writes times to the nearest five seconds? (Maren or Tomas)",
                        () -> List.of(fives(logbook, TOMAS) >= fives(logbook, MAREN) ? TOMAS : MAREN),
                        List.of(MAREN, TOMAS),
                        new Words(
                                "Look at the last digit of each time in the two lists.",
                                "Whoever rounds has times that end in 0 or 5 only.",
                                "A time that ends in 0 or 5 each time was rounded; that alone puts it off by up to two seconds or so."))
                .claim(
                        "lateness",
                        "How many seconds after the very first pop does Maren write first crack, on average? State an interval, or that"
                                + " it cannot be told.",
                        ClaimQuestion.Scale.SECONDS,
                        () -> 40.0,
                        behind.map(all -> () -> lateness(all)),
                        () -> Grade.Telling.CANNOT_TELL,
                        "A logbook tells where somebody writes a mark, never how late: nobody wrote down the pop itself. A pen that is"
                                + " always as late does no harm as long as you compare batches of the same pen.");
        return new LessonMaterial(Map.of("tonight", name), questions.all());
    }

    private static boolean by(String operator, Batch batch) {
        return batch.operator().filter(operator::equals).isPresent();
    }

    /** Share of a person's written marks that end in 0 or 5. */
    private static double fives(Logbook logbook, String operator) {
        return logbook.batches().stream()
                .filter(batch -> by(operator, batch))
                .flatMap(batch -> Stream.of(MarkKind.YELLOWING, MarkKind.FIRST_CRACK_START)
                        .map(batch::writtenMark))
                .flatMap(Optional::stream)
                .mapToDouble(mark -> seconds(mark) % 5 == 0 ? 1 : 0)
                .average()
                .orElse(0);
    }

    private static long seconds(Elapsed mark) {
        return Math.round(mark.seconds());
    }

    private static double lateness(VirtualLogbook all) {
        return all.batches().stream()
                .filter(batch -> batch.operator().equals(MAREN))
                .mapToDouble(PhasesAndMarks::late)
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
    }

    private static double late(VirtualBatch batch) {
        return batch.marks().firstCrackStart() - batch.roast().firstCrackStart();
    }
}
