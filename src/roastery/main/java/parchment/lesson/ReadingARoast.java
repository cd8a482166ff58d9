package parchment.lesson;

import static parchment.feature.Features.dropTemperature;
import static parchment.feature.Features.dropTime;
import static parchment.feature.Features.massLoss;
import static parchment.feature.Features.turningPointTime;

import java.util.Map;
import java.util.Optional;
import parchment.lesson.QuestionList.Words;
import parchment.lesson.sheet.Grade;
import parchment.logbook.Logbook;
import parchment.quantity.Unit;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Chance;
import parchment.virtual.chance.Seed;

/** Lesson one: a roast as numbers with units, and what a reading is a reading of. */
final class ReadingARoast implements LessonPlan {
    @Override
    public String title() {
        return "Reading a roast as numbers";
    }

    @Override
    public String goal() {
        return "Afterwards you can open a logbook, read one batch off its picture and its table, and say what a probe's reading is"
                + " not.";
    }

    @Override
    public VirtualRoastery roastery(Seed seed, long draw) {
        return VirtualRoastery.harbour()
                .withSeed(seed)
                .withBatches(20 + Chance.of(draw, "number of batches").below(9));
    }

    @Override
    public LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind) {
        Measures measures = Measures.of(logbook, dropTemperature(), dropTime(), turningPointTime(), massLoss());
        String tonight = measures.newest(batch -> true).name();
        QuestionList questions = new QuestionList(logbook.readerUnit())
                .number(
                        "batches",
                        "How many batches does the logbook hold?",
                        () -> (double) logbook.batches().size(),
                        0.1,
                        Unit.COUNT,
                        new Words(
                                "Look at the first line of what the logbook shows.",
                                "It is the number in front of the word 'batches'.",
                                "The logbook says so itself; each result here says how many batches stand behind it."))
                .number(
                        "turning point",
                        "How many seconds after charge is the turning point?",
                        () -> measures.value(tonight, turningPointTime()),
                        2.5,
                        Unit.SECONDS,
                        new Words(
                                "In the table of marks, find the row 'turning point' and its time.",
                                "A time such as 1:23 is one minute and 23 seconds; you can also write it as 1:23.",
                                "That is the lowest reading. The beans have been getting warmer since charge: it is the probe that"
                                        + " needed this long to stop cooling."))
                .number(
                        "drop time",
                        "How long did the roast take, from charge to drop?",
                        () -> measures.value(tonight, dropTime()),
                        2.5,
                        Unit.SECONDS,
                        new Words(
                                "The drop is the last mark of the table.",
                                "Its time since charge is the length of the roast; write it as it stands there, minutes and seconds.",
                                "All times count from charge, when the green coffee went in."))
                .number(
                        "drop temperature",
                        "At which bean temperature was the batch dropped?",
                        () -> measures.value(tonight, dropTemperature()),
                        0.35,
                        Unit.TEMPERATURE,
                        new Words(
                                "The row 'drop' has a column for the bean temperature.",
                                "Write it with its one decimal, as in 204.5; the clock time stands in another column.",
                                "That is what the bean probe showed at the drop; the small number beside it says how far the reading"
                                        + " itself may be off."))
                .number(
                        "mass loss",
                        "How much of its mass did the batch lose, in per cent?",
                        () -> measures.value(tonight, massLoss()),
                        0.0015,
                        Unit.SHARE,
                        new Words(
                                "In the table of numbers, find the batch's row and the column 'mass loss'.",
                                "The batch's name stands in the first column; the loss is between 10 and 20 per cent.",
                                "Weighed before and after: mostly water, and some of the bean itself."))
                .word(
                        "hottest",
                        "Which batch was dropped at the highest bean temperature?",
                        () -> measures.highest(dropTemperature(), 0.06),
                        logbook.batches().stream().map(batch -> batch.name()).toList(),
                        new Words(
                                "Press on the heading 'drop temperature' to sort the table, or look down the column.",
                                "Unfold the rest of the table first: the hottest may be among the rows that are folded away.",
                                "Whether it was too hot is not a question that a temperature can answer."))
                .yesOrNo(
                        "colder",
                        "Between charge and turning point the reading falls. Do the beans get colder? (yes or no)",
                        () -> false,
                        new Words(
                                "The beans came from a store room. How warm were they then, and how warm is the drum?",
                                "Something else than the beans gets colder in that minute: it was as hot as the drum before the beans"
                                        + " fell on it.",
                                "The beans only get warmer. The probe was hot and now lies in cold beans: the reading shows the probe."))
                .claim(
                        "true temperature",
                        "How much hotter than the probe's reading were the beans themselves at the drop? State an interval, or that it"
                                + " cannot be told.",
                        ClaimQuestion.Scale.DEGREES,
                        () -> 20.0,
                        behind.map(all -> () -> all.batches().stream()
                                .filter(batch -> batch.name().equals(tonight))
                                .mapToDouble(batch -> batch.endTemperature() - batch.dropReading())
                                .sum()),
                        () -> Grade.Telling.CANNOT_TELL,
                        "No reading of one probe says how far that probe is from the beans. So a temperature is good for comparing"
                                + " batches on the same probe, and for nothing else.");
        return new LessonMaterial(Map.of("tonight", tonight), questions.all());
    }
}
