package parchment.lesson;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import parchment.evidence.Screen;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.lesson.QuestionList.Words;
import parchment.lesson.sheet.Grade;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Chance;
import parchment.virtual.chance.Seed;
import parchment.virtual.people.FlavourSurface;

/** Lesson seven: the best of many looks, and luck. */
final class FortyLooks implements LessonPlan {
    private static final LocalDate SUMMER = LocalDate.of(2024, 5, 7);
    private static final double ONE_IN_TWENTY = 0.05;
    /** Standard errors that an interval about nothing in particular is wide. */
    private static final double SAYING_NOTHING = 8;

    @Override
    public String title() {
        return "The best of forty looks";
    }

    @Override
    public String goal() {
        return "Afterwards you can say how far the best of many looks gets by luck alone, and when a pattern is worth a question of its"
                + " own.";
    }

    @Override
    public VirtualRoastery roastery(Seed seed, long draw) {
        VirtualRoastery roastery =
                VirtualRoastery.harbour().withSeed(seed).startingOn(SUMMER).withBatches(56);
        // For two of three students nothing about the roast changes the cup at all; for the third, one thing does.
        boolean nothing = Chance.of(draw, "anything to find").below(3) > 0;
        return roastery.withSurfaces(roastery.surfaces().stream()
                .map(surface -> !nothing && surface.attribute().equals("acidity")
                        ? acidity(surface)
                        : TrueFlavour.flat(surface))
                .toList());
    }

    private static FlavourSurface acidity(FlavourSurface surface) {
        return new FlavourSurface(surface.attribute(), surface.level(), -0.3, 0, 0, 0, 0, 0);
    }

    @Override
    public LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind) {
        Once<Screen> screen = Once.of(() -> Screen.of(logbook));
        QuestionList questions = new QuestionList(logbook.readerUnit())
                .number(
                        "looks",
                        "How many looks were taken?",
                        () -> (double) screen.value().looks().size(),
                        0.1,
                        Unit.COUNT,
                        new Words(
                                "The first sentence counts them.",
                                "Attributes times features; the number stands before the word 'looks'.",
                                "Nobody would count them that way after a week of trying things out. One should."))
                .number(
                        "by luck",
                        "If nothing at all were going on, and each look alone were wrong once in twenty: how many of them would seem to"
                                + " have found something?",
                        () -> screen.value().looks().size() * ONE_IN_TWENTY,
                        1.01,
                        Unit.COUNT,
                        new Words(
                                "One in twenty of all looks.",
                                "Divide the number of looks by 20.",
                                "So many discoveries from nothing. That is why the line is drawn for the best of all looks together."))
                .number(
                        "luck line",
                        "How far from zero does the best of that many looks get on shuffled batches in 1 of 20? (the luck line)",
                        () -> screen.value().luckLine(),
                        0.02,
                        Unit.NONE,
                        new Words(
                                "The first sentence says what the best of that many reaches.",
                                "It is the number after the word 'reaches', a little above 3.",
                                "A single look, asked before looking, would only have to pass about 1.7 for the same odds."))
                .number(
                        "furthest",
                        "How far from zero is the furthest look? (slope over its error, with its sign)",
                        () -> screen.value().looks().get(0).statistic(),
                        0.011,
                        Unit.NONE,
                        new Words(
                                "The furthest look is the first row of the table.",
                                "Column 'slope over its error'; copy the minus sign if there is one.",
                                "Compare it with the luck line, not with zero."))
                .yesOrNo(
                        "finding",
                        "Does any look stand above the luck line? (yes or no)",
                        () -> !screen.value().aboveTheLine().isEmpty(),
                        new Words(
                                "The last column of the table says above or below.",
                                "Is the furthest look, without its sign, larger than the luck line?",
                                "Above the line is a reason to ask; below it is what luck alone would show."));
        Once<Screen.Look> best = Once.of(() -> screen.value().looks().get(0));
        questions.claim(
                "best look",
                "One step of the furthest look's feature (the column 'per' says how much that is): by how many points does it really"
                        + " change the score?",
                ClaimQuestion.Scale.POINTS,
                () -> SAYING_NOTHING
                        * StrictMath.abs(best.value().perStep() / best.value().statistic()),
                behind.map(all -> () -> truth(all, logbook, best.value())),
                () -> screen.value().aboveTheLine().isEmpty() ? Grade.Telling.CANNOT_TELL : Grade.Telling.CAN_TELL,
                "The best of many looks seems larger than it is, because it is the one that luck helped most. Ask it once more, on new"
                        + " batches, before you roast by it.");
        return new LessonMaterial(Map.of(), questions.all());
    }

    private static double truth(VirtualLogbook all, Logbook logbook, Screen.Look look) {
        Feature feature = Features.named(look.feature());
        BatchTable table = BatchTable.of(logbook, feature);
        double[] values = table.values(feature);
        Map<String, Double> byBatch = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i++) {
            byBatch.put(table.batches().get(i).name(), values[i]);
        }
        Unit unit = feature.unit();
        double celsius = unit.shownStep(unit.naturalStep(), TemperatureUnit.CELSIUS);
        double step = unit.naturalStep() * celsius / unit.shownStep(unit.naturalStep(), logbook.readerUnit());
        return TrueFlavour.of(all).slope(look.attribute(), byBatch) * step;
    }
}
