package parchment.lesson;

import static parchment.feature.Features.dropTemperature;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.evidence.Evidence;
import parchment.lesson.QuestionList.Words;
import parchment.lesson.sheet.Grade;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;
import parchment.virtual.Scenario;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Chance;
import parchment.virtual.chance.Seed;

/** Lesson five: what the drop temperature, drawn by chance, did to the score. */
final class DropAndScore implements LessonPlan {
    private static final String ATTRIBUTE = "sweetness";
    /** A summer in which the harbour roastery draws its drops by chance. */
    private static final LocalDate SUMMER = LocalDate.of(2024, 5, 7);

    /** About fifteen roast days, of which the answer needs fifteen to be called strong: some summers have them, some lack one. */
    private static final int BATCHES = 60;

    @Override
    public String title() {
        return "Drop temperature and score";
    }

    @Override
    public String goal() {
        return "Afterwards you can read a verdict, a slope with its interval and what stands behind it, and state a claim about your own"
                + " question.";
    }

    @Override
    public VirtualRoastery roastery(Seed seed, long draw) {
        VirtualRoastery roastery = VirtualRoastery.of(blindSummer())
                .withSeed(seed)
                .startingOn(SUMMER)
                .withBatches(BATCHES);
        Chance chance = Chance.of(draw, "what a degree does");
        // A third of the students meets a rise, a third a fall, and a third nearly nothing.
        double middle = chance.pick(List.of(-0.22, 0.0, 0.22));
        double perDegree = middle + chance.between(-0.05, 0.05);
        return TrueFlavour.tilted(roastery, ATTRIBUTE, perDegree);
    }

    @Override
    public LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind) {
        Once<Evidence> answer = Once.of(() -> Evidence.of(ATTRIBUTE, dropTemperature(), logbook));
        QuestionList questions = new QuestionList(logbook.readerUnit())
                .number(
                        "slip",
                        "What did the slip of the first batch say, in degrees?",
                        () -> slip(logbook.batches().get(0)),
                        0.26,
                        Unit.TEMPERATURE,
                        new Words(
                                "The table above, its first row.",
                                "Not the drop temperature, which is what the probe read, but the planned one beside it.",
                                "The roaster aims at the slip and misses it by a little. The miss is the roaster's; the slip is not."))
                .yesOrNo(
                        "smell",
                        "One morning Tomas smells that a batch will be sweet. Can that decide what is planned for it? (yes or no)",
                        () -> false,
                        new Words(
                                "When is the slip drawn, and when is there something to smell?",
                                "The slip comes first, and nobody looks into the tin.",
                                "Nothing about the day, the beans or the mood of the roaster could decide which batch was meant to be hot."))
                .word(
                        "verdict",
                        "What is the verdict? (strong, suggestive, too small to matter, nothing seen or cannot tell)",
                        () -> List.of(answer.value().verdict().words()),
                        QuestionList.VERDICTS,
                        new Words(
                                "Open 'How this was worked out' below the picture: it is the first thing there.",
                                "Copy the words as they stand there, one of the five.",
                                "The reasons stand right behind it, the decisive one first."))
                .number(
                        "roast days",
                        "How many roast days stand behind the answer?",
                        () -> (double) answer.value().roastDays(),
                        0.1,
                        Unit.COUNT,
                        new Words(
                                "Look for the sentence that lists batches, roast days, cuppings and scores.",
                                "It is the number before the words 'roast days'; it is much smaller than the number of scores.",
                                "Batches of one day share their weather and their table, so days count, not cups."))
                .number(
                        "slope",
                        "By how many points did sweetness change with one degree more at the drop?",
                        () -> answer.value().claim().perStep().estimate(),
                        0.011,
                        Unit.POINTS,
                        new Words(
                                "Look for the sentence with the words 'as drawn by chance', and mind the sign.",
                                "A fall begins with a minus sign; the interval's two ends stand behind it.",
                                "One number. Never repeat it without its interval."))
                .yesOrNo(
                        "holds zero",
                        "Does the 90 % interval of that slope hold zero? (yes or no)",
                        () -> holdsZero(answer.value()),
                        new Words(
                                "Look at the signs of the interval's two ends.",
                                "If one end is below zero and the other above, zero lies between them.",
                                "If it holds zero, a rise and a fall are both still possible; if not, the direction is clear."))
                .yesOrNo(
                        "outside",
                        "Can this logbook say what dropping at 230 °C (446 °F) would do? (yes or no)",
                        () -> false,
                        new Words(
                                "Run the cell that asks, and read what it answers.",
                                "Between which temperatures did this roastery ever drop?",
                                "Nothing was ever tried there. A line drawn on beyond the batches is a wish."))
                .claim(
                        "per degree",
                        "By how many points does one degree more at the drop change sweetness, for these cuppers?",
                        ClaimQuestion.Scale.POINTS_PER_DEGREE,
                        () -> 0.6,
                        behind.map(all -> () -> TrueFlavour.of(all)
                                .slope(
                                        ATTRIBUTE,
                                        Measures.of(logbook, dropTemperature()).byBatch(dropTemperature()))),
                        () -> holdsZero(answer.value()) ? Grade.Telling.CANNOT_TELL : Grade.Telling.CAN_TELL,
                        "Because chance chose the drops, this is about what a degree does, not only about what went along with it. It holds"
                                + " for these lots, these cuppers, this probe, and the temperatures that were tried.");
        return new LessonMaterial(Map.of(), questions.all());
    }

    /** Returns the harbour roastery with codes on every table and every score written before anybody speaks, as Maren asks in the story. */
    private static Scenario blindSummer() {
        Scenario harbour = Scenario.named("harbour");
        return Scenario.of(
                harbour.text() + "\n[cuppings]\ncodes left out [%] = 0\ntalk first [%] = 0\n", harbour.name());
    }

    private static double slip(Batch batch) {
        return batch.plan().dropTemperature().map(Temperature::celsius).orElse(Double.NaN);
    }

    private static boolean holdsZero(Evidence evidence) {
        return !(evidence.interval().lower() > 0 || evidence.interval().upper() < 0);
    }
}
