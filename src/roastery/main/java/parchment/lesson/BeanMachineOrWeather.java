package parchment.lesson;

import static parchment.feature.Features.firstCrackTemperature;
import static parchment.feature.Features.firstCrackTime;
import static parchment.feature.Features.roomTemperature;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import parchment.drift.ProbeShifts;
import parchment.feature.Feature;
import parchment.lesson.QuestionList.Words;
import parchment.lesson.sheet.Grade;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbeChange;
import parchment.quantity.Unit;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Chance;
import parchment.virtual.chance.Seed;
import parchment.virtual.physics.Probes;
import parchment.virtual.physics.SimulatedRoast;
import parchment.virtual.physics.SimulatedRoast.Trace;
import parchment.virtual.written.VirtualBatch;

/** Lesson eight: something drifted; was it the bean, the machine or the weather? */
final class BeanMachineOrWeather implements LessonPlan {
    private static final double LEVEL = 0.9;
    private static final LocalDate CLEANED = LocalDate.of(2024, 10, 7);
    /** A lot whose reading at first crack fell by less did not step, °C: by chance it was 1.1 at most in sixty autumns. */
    private static final double STEP = 1.5;
    /** An interval that is narrower says something, even if it holds zero, °C. */
    private static final double NARROW = 2.5;

    private static final String LOW_ORCHARD = "Low Orchard";
    private static final String CINDER_RIDGE = "Cinder Ridge";

    @Override
    public String title() {
        return "Drift: bean, machine or weather";
    }

    @Override
    public String goal() {
        return "Afterwards you can hold a change in the readings against lots, season and upkeep, and say what it is likeliest a change of.";
    }

    @Override
    public VirtualRoastery roastery(Seed seed, long draw) {
        return Suspect.drawn(draw)
                .roastery()
                .withSeed(seed)
                .startingOn(LocalDate.of(2024, 7, 16)
                        .plusWeeks(Chance.of(draw, "first week").below(4)));
    }

    @Override
    public LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind) {
        Once<Measures> measures =
                Once.of(() -> Measures.of(logbook, firstCrackTemperature(), firstCrackTime(), roomTemperature()));
        Once<Optional<ProbeChange>> written = Once.of(() -> ProbeShifts.of(logbook).changes().stream()
                .filter(change -> change.on().equals(CLEANED))
                .findFirst());
        QuestionList questions = new QuestionList(logbook.readerUnit())
                .word(
                        "written",
                        "What does the upkeep say was done on 7 October? (two words)",
                        () -> List.of("probe cleaned"),
                        List.of("probe cleaned", "probe moved", "ducts cleaned", "burner cleaned", "nothing"),
                        new Words(
                                "Look at the calendar: the lowest row shows work on the machine.",
                                "Each entry stands above its line, with its date.",
                                "That is what was written. What it did to the readings, if anything, the batches must say."))
                .number(
                        "clock",
                        "By how many seconds did first crack come later from 7 October on? (below zero if it came earlier)",
                        () -> later(logbook, measures.value(), firstCrackTime()),
                        1.1,
                        Unit.SECONDS,
                        new Words(
                                "The table above, the row of the first crack time, the last column.",
                                "With its sign: a minus in front means earlier.",
                                "That is the clock. Now the thermometer."))
                .number(
                        "room",
                        "By how many degrees did the room change? (below zero if it became colder)",
                        () -> later(logbook, measures.value(), roomTemperature()),
                        0.11,
                        Unit.TEMPERATURE_STEP,
                        new Words(
                                "The same table, the row of the room's temperature, the last column.",
                                "With its sign: below zero if autumn was colder.",
                                "Autumn is colder everywhere. The question is whether that much is enough."))
                .number(
                        "low orchard",
                        "Low Orchard alone: by how many degrees did the reading at first crack change? (below zero if it fell)",
                        () -> later(logbook.ofLot(LOW_ORCHARD), measures.value(), firstCrackTemperature()),
                        0.11,
                        Unit.TEMPERATURE_STEP,
                        new Words(
                                "The table by lots, the row with Low Orchard, the last column.",
                                "With its sign, and its decimal as it stands there.",
                                "Now the same for the other lot: a sack changes its own batches only."))
                .number(
                        "cinder ridge",
                        "And Cinder Ridge alone?",
                        () -> later(logbook.ofLot(CINDER_RIDGE), measures.value(), firstCrackTemperature()),
                        0.11,
                        Unit.TEMPERATURE_STEP,
                        new Words(
                                "The table by lots, the row with Cinder Ridge, the last column.",
                                "With its sign, and its decimal as it stands there.",
                                "Two lots, one probe. Hold the two numbers beside each other."))
                .word(
                        "reason",
                        "What is the likeliest reason that first crack is elsewhere: bean, machine or weather?",
                        () -> List.of(likeliest(logbook, measures.value()).word()),
                        Suspect.words(),
                        new Words(
                                "A probe that sits elsewhere reads every lot otherwise. Other beans show in their own lot only.",
                                "If the reading hardly changed in either lot, look at the clock and at the room.",
                                "That is what these batches say. Whether it is so, the envelope tells."))
                .claim(
                        "probe",
                        "By how many degrees did the work on the probe change the reading at first crack? (below zero if it fell)",
                        ClaimQuestion.Scale.DEGREES,
                        () -> 10.0,
                        behind.map(all -> () -> shift(all)),
                        () -> written.value()
                                        .filter(BeanMachineOrWeather::saysSomething)
                                        .isPresent()
                                ? Grade.Telling.CAN_TELL
                                : Grade.Telling.CANNOT_TELL,
                        behind.map(Suspect::behind).map(Suspect::opened).orElse("")
                                + " The book said the same for everybody in this course.");
        return new LessonMaterial(Map.of(), questions.all());
    }

    private static boolean saysSomething(ProbeChange change) {
        return change.offsets().stream()
                .map(offset -> offset.interval(LEVEL))
                .anyMatch(interval -> !interval.contains(0) || interval.upper() - interval.lower() < NARROW);
    }

    /** Returns whom the batches speak against: one lot's step is the bean's, every lot's is the machine's, nobody's the weather's. */
    static Suspect likeliest(Logbook logbook) {
        return likeliest(logbook, Measures.of(logbook, firstCrackTemperature()));
    }

    private static Suspect likeliest(Logbook logbook, Measures measures) {
        boolean low = later(logbook.ofLot(LOW_ORCHARD), measures, firstCrackTemperature()) < -STEP;
        boolean cinder = later(logbook.ofLot(CINDER_RIDGE), measures, firstCrackTemperature()) < -STEP;
        return low && cinder ? Suspect.MACHINE : low || cinder ? Suspect.BEAN : Suspect.WEATHER;
    }

    /** Returns the mean from the day on, less the mean before it. */
    private static double later(Logbook logbook, Measures measures, Feature feature) {
        return mean(logbook, measures, feature, day -> !day.isBefore(CLEANED))
                - mean(logbook, measures, feature, day -> day.isBefore(CLEANED));
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
        return batch.roastDay();
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
