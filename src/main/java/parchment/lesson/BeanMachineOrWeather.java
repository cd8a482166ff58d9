package parchment.lesson;

import static parchment.feature.Features.firstCrackTemperature;
import static parchment.feature.Features.roomTemperature;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import parchment.drift.ProbeChange;
import parchment.drift.ProbeShifts;
import parchment.feature.Feature;
import parchment.lesson.QuestionList.Words;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.Unit;
import parchment.virtual.Chance;
import parchment.virtual.Probes;
import parchment.virtual.Seed;
import parchment.virtual.SimulatedRoast;
import parchment.virtual.SimulatedRoast.Trace;
import parchment.virtual.VirtualBatch;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;

/** Lesson eight: something drifted; was it the bean, the machine or the weather? */
final class BeanMachineOrWeather implements LessonPlan {
    private static final double LEVEL = 0.9;
    private static final LocalDate MOVED = LocalDate.of(2024, 10, 7);

    @Override
    public String title() {
        return "Drift: bean, machine or weather";
    }

    @Override
    public String goal() {
        return "Afterwards you can hold a step in the readings against lots, season and upkeep, and say what it is a step of.";
    }

    @Override
    public VirtualRoastery roastery(Seed seed, long draw) {
        return VirtualRoastery.harbour()
                .withSeed(seed)
                .startingOn(LocalDate.of(2024, 7, 2)
                        .plusWeeks(Chance.of(draw, "first week").below(6)))
                .withBatches(68);
    }

    @Override
    public LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind) {
        Once<Measures> measures = Once.of(() -> Measures.of(logbook, firstCrackTemperature(), roomTemperature()));
        Once<Optional<ProbeChange>> found = Once.of(() -> ProbeShifts.of(logbook).changes().stream()
                .filter(change -> change.on().equals(MOVED))
                .findFirst());
        QuestionList questions = new QuestionList(logbook.readerUnit())
                .number(
                        "before",
                        "Before 7 October: at which bean temperature did first crack start, on average over all batches?",
                        () -> mean(logbook, measures.value(), firstCrackTemperature(), day -> day.isBefore(MOVED)),
                        0.11,
                        Unit.TEMPERATURE,
                        new Words(
                                "The first row of the table above, column 'before'.",
                                "Write the number as it stands there, with its decimal.",
                                "A mean over batches of all lots that were in store."))
                .number(
                        "after",
                        "And from 7 October on?",
                        () -> mean(logbook, measures.value(), firstCrackTemperature(), day -> !day.isBefore(MOVED)),
                        0.11,
                        Unit.TEMPERATURE,
                        new Words(
                                "The first row of the table above, column 'after'.",
                                "Write the number as it stands there, with its decimal.",
                                "Beans do not read calendars. Something else is different."))
                .word(
                        "written",
                        "What does the upkeep say was done on 7 October? (two words)",
                        () -> List.of("probe moved"),
                        List.of("probe moved", "ducts cleaned", "burner cleaned", "nothing"),
                        new Words(
                                "Look at the calendar: the lowest row shows work on the machine.",
                                "Each entry stands above its line, with its date.",
                                "Somebody wrote it down. Without that line you would be guessing."))
                .yesOrNo(
                        "season",
                        "Was the room colder after 7 October than before, on average? (yes or no)",
                        () -> mean(logbook, measures.value(), roomTemperature(), day -> !day.isBefore(MOVED))
                                < mean(logbook, measures.value(), roomTemperature(), day -> day.isBefore(MOVED)),
                        new Words(
                                "The table above has a row for the room's temperature as well.",
                                "Compare the two: summer against autumn.",
                                "So the weather moved too. But weather creeps, and this was a step between one roast day and the next."))
                .word(
                        "reason",
                        "A step that shows in every lot from one day on: what is its likeliest reason, bean, machine or weather?",
                        () -> List.of("machine", "the machine"),
                        List.of("bean", "machine", "the machine", "weather"),
                        new Words(
                                "A new lot would change its own batches only. Did all lots change on one day?",
                                "Weather comes slowly. What comes in one night, for all lots, and stands in the upkeep?",
                                "The probe sits elsewhere. The beans may roast just as before; they are only read otherwise."))
                .claim(
                        "probe",
                        "By how many degrees did the reading at first crack rise because of the moved probe? (below zero if it fell)",
                        ClaimQuestion.Scale.DEGREES,
                        () -> 10.0,
                        behind.map(all -> () -> shift(all)),
                        () -> found.value()
                                        .filter(BeanMachineOrWeather::leavesNoDoubt)
                                        .isPresent()
                                ? Grade.Telling.CAN_TELL
                                : Grade.Telling.CANNOT_TELL,
                        "From that day on every temperature in the logbook is on another scale. Comparing across it compares two probes.");
        return new LessonMaterial(Map.of(), questions.all());
    }

    private static boolean leavesNoDoubt(ProbeChange change) {
        return change.offsets().stream()
                .filter(offset -> offset.name().contains("first crack"))
                .anyMatch(offset -> !offset.interval(LEVEL).contains(0));
    }

    private static double mean(Logbook logbook, Measures measures, Feature feature, Predicate<LocalDate> when) {
        return logbook.batches().stream()
                .filter(batch -> day(batch).filter(when).isPresent())
                .mapToDouble(batch -> measures.value(batch.name(), feature))
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
    }

    private static Optional<LocalDate> day(Batch batch) {
        return batch.roastedAt().map(at -> at.toLocalDate());
    }

    /** What the newer probe would have read at the first pop, less what the older would have, over all batches. */
    private static double shift(VirtualLogbook all) {
        List<VirtualBatch> batches = all.batches();
        Probes older = batches.get(0).conditions().probes();
        Probes newer = batches.get(batches.size() - 1).conditions().probes();
        return batches.stream()
                .mapToDouble(batch -> atFirstPop(batch, newer) - atFirstPop(batch, older))
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
    }

    /** Lets a probe follow the same beans and air: what it sees comes late, by its lag. */
    private static double atFirstPop(VirtualBatch batch, Probes probes) {
        SimulatedRoast roast = batch.roast();
        double pop = roast.firstCrackStart();
        if (Double.isNaN(pop)) {
            return Double.NaN;
        }
        double cover = probes.cover(batch.plan().greenMass());
        double reading = roast.sample(Trace.BEAN_READING, 0);
        for (int i = 0; i < roast.size() && i * roast.step() < pop; i++) {
            double seen = cover * roast.sample(Trace.BEAN, i)
                    + (1 - cover) * roast.sample(Trace.AIR, i)
                    + probes.beanOffset();
            reading += (seen - reading) * -StrictMath.expm1(-roast.step() / probes.beanLag());
        }
        return reading;
    }
}
