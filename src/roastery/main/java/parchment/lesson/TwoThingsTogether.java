package parchment.lesson;

import static parchment.feature.Features.developmentTime;
import static parchment.feature.Features.dropTemperature;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.evidence.CollinearFeatures;
import parchment.evidence.DestinationOrPath;
import parchment.evidence.Evidence;
import parchment.evidence.PathContrast;
import parchment.evidence.finding.Verdict;
import parchment.lesson.QuestionList.Words;
import parchment.lesson.sheet.Grade;
import parchment.logbook.Logbook;
import parchment.quantity.Unit;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Chance;
import parchment.virtual.chance.Seed;
import parchment.virtual.people.FlavourSurface;
import parchment.virtual.written.VirtualBatch;

/** Lesson six: two things that moved together. */
final class TwoThingsTogether implements LessonPlan {
    private static final String ATTRIBUTE = "bitterness";
    private static final double TEN_SECONDS = 10;
    private static final List<String> COMPARISONS =
            List.of("added time", "swapped time", "faster finish", "later drop", "slower start");

    @Override
    public String title() {
        return "Two things that moved together";
    }

    @Override
    public String goal() {
        return "Afterwards you can tell when two explanations have moved together in a logbook, and say which batches would take them"
                + " apart.";
    }

    @Override
    public VirtualRoastery roastery(Seed seed, long draw) {
        VirtualRoastery roastery = VirtualRoastery.harbour()
                .withSeed(seed)
                .startingOn(LocalDate.of(2024, 1, 9))
                .withBatches(52);
        // For one half of the students the degrees do it, for the other half the seconds.
        boolean degrees = Chance.of(draw, "degrees or seconds").below(2) == 0;
        return roastery.withSurfaces(roastery.surfaces().stream()
                .map(surface -> surface.attribute().equals(ATTRIBUTE) ? oneSided(surface, degrees) : surface)
                .toList());
    }

    private static FlavourSurface oneSided(FlavourSurface surface, boolean degrees) {
        return new FlavourSurface(
                surface.attribute(), surface.level(), degrees ? 0.2 : 0, 0, 0, degrees ? 0 : 0.9, 0, 0);
    }

    @Override
    public LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind) {
        Once<Evidence> byDrop = Once.of(() -> Evidence.of(ATTRIBUTE, dropTemperature(), logbook));
        Once<Evidence> byTime = Once.of(() -> Evidence.of(ATTRIBUTE, developmentTime(), logbook));
        Once<DestinationOrPath> both = Once.of(() -> DestinationOrPath.of(ATTRIBUTE, logbook));
        QuestionList questions = new QuestionList(logbook.readerUnit())
                .word(
                        "by degrees",
                        "Asked about the drop temperature alone: what is the verdict?",
                        () -> List.of(byDrop.value().verdict().words()),
                        QuestionList.VERDICTS,
                        new Words(
                                "Open 'How this was worked out' below the picture: it is the first thing there.",
                                "Copy it as it stands: strong, suggestive, too small to matter, nothing seen or cannot tell.",
                                "Maren reads this page and says: it is the degrees."))
                .word(
                        "by seconds",
                        "Asked about the development time alone: what is the verdict?",
                        () -> List.of(byTime.value().verdict().words()),
                        QuestionList.VERDICTS,
                        new Words(
                                "The same place of the second answer.",
                                "Copy it as it stands: strong, suggestive, too small to matter, nothing seen or cannot tell.",
                                "Tomas reads this page and says: it is the seconds. Each page alone could convince you."))
                .number(
                        "correlation",
                        "How closely did development time move with drop temperature inside lots? (the correlation, from -1 to 1)",
                        () -> byDrop.value().movedTogether().companions().stream()
                                .filter(found ->
                                        found.name().equals(developmentTime().name()))
                                .mapToDouble(CollinearFeatures.Companion::correlation)
                                .findFirst()
                                .orElse(Double.NaN),
                        0.021,
                        Unit.NONE,
                        new Words(
                                "Find 'development time' in the sentence or the table, and the number beside it.",
                                "The number stands in brackets after the word 'correlation'; 1 would be: always together.",
                                "Whoever roasts on gets hotter and longer at once. The logbook rarely saw one without the other."))
                .number(
                        "left open",
                        "Of the five comparisons, how many have the verdict 'cannot tell'?",
                        () -> (double) both.value().contrasts().stream()
                                .filter(contrast -> contrast.verdict() == Verdict.CANNOT_TELL)
                                .count(),
                        0.1,
                        Unit.COUNT,
                        new Words(
                                "Look down the column 'verdict' of the table of comparisons.",
                                "There are five rows; count those with the words 'cannot tell'.",
                                "With both in one model each must show what it did while the other stood still, and that happened rarely."))
                .word(
                        "which pair",
                        "Which comparison asks what a hotter drop does while the development time stays as it is?",
                        () -> List.of("faster finish"),
                        COMPARISONS,
                        new Words(
                                "Read the column that says what changes and what stays.",
                                "Hotter after the same seconds means that the beans rose faster at the end.",
                                "Hotter in the same time: that is a pair of batches you could roast on purpose."))
                .claim(
                        "ten seconds more",
                        "Ten seconds more of development, with the drop temperature and the first crack as they were ('added time'): by how"
                                + " many points does bitterness change?",
                        ClaimQuestion.Scale.POINTS,
                        () -> 0.8,
                        behind.map(all -> () -> tenSeconds(all)),
                        () -> added(both.value()).verdict() == Verdict.CANNOT_TELL
                                ? Grade.Telling.CANNOT_TELL
                                : Grade.Telling.CAN_TELL,
                        "Either the degrees or the seconds did it, and the batches at hand hardly ever had one without the other. Two pairs"
                                + " of batches, roasted on purpose, say more than fifty that were not.");
        return new LessonMaterial(Map.of(), questions.all());
    }

    private static PathContrast added(DestinationOrPath both) {
        return both.contrast("added time");
    }

    private static double tenSeconds(VirtualLogbook all) {
        TrueFlavour truth = TrueFlavour.of(all);
        return all.batches().stream()
                .mapToDouble(batch -> more(truth, batch))
                .average()
                .orElse(Double.NaN);
    }

    private static double more(TrueFlavour truth, VirtualBatch batch) {
        return truth.fromRoasting(
                        ATTRIBUTE, batch.endTemperature(), batch.browningTime(), batch.developmentTime() + TEN_SECONDS)
                - truth.fromRoasting(ATTRIBUTE, batch);
    }
}
