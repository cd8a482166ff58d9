package parchment.lesson;

import static parchment.feature.Features.dropTemperature;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.evidence.Evidence;
import parchment.lesson.QuestionList.Words;
import parchment.lesson.sheet.Grade;
import parchment.logbook.Logbook;
import parchment.quantity.Unit;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Chance;
import parchment.virtual.chance.Seed;

/** Lesson nine: plan five batches, have them roasted and cupped, state a claim, open the envelope. */
final class FiveBatches implements LessonPlan {
    private static final String ATTRIBUTE = "sweetness";
    /** Points per °C that five batches and five cuppers can hardly tell from nothing. */
    private static final double HARDLY_ANYTHING = 0.06;

    @Override
    public String title() {
        return "Five batches of your own";
    }

    @Override
    public String goal() {
        return "Afterwards you have planned batches that can answer a question, stated what you believe as an interval, and seen how far"
                + " you were off.";
    }

    @Override
    public VirtualRoastery roastery(Seed seed, long draw) {
        VirtualRoastery roastery = VirtualRoastery.harbour()
                .withSeed(seed)
                .startingOn(LocalDate.of(2024, 2, 6))
                .withBatches(28);
        Chance chance = Chance.of(draw, "what a degree does");
        double perDegree = chance.pick(List.of(-0.22, 0.0, 0.22)) + chance.between(-0.05, 0.05);
        return TrueFlavour.tilted(roastery, ATTRIBUTE, perDegree);
    }

    @Override
    public LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind) {
        Once<Measures> drops = Once.of(() -> Measures.of(logbook, dropTemperature()));
        Once<Evidence> before = Once.of(() -> Evidence.of(ATTRIBUTE, dropTemperature(), logbook));
        Once<Double> truth = Once.of(() -> behind.map(all ->
                        TrueFlavour.of(all).slope(ATTRIBUTE, drops.value().byBatch(dropTemperature())))
                .orElse(Double.NaN));
        QuestionList questions = new QuestionList(logbook.readerUnit())
                .word(
                        "before",
                        "What is the verdict of the logbook as it stands?",
                        () -> List.of(before.value().verdict().words()),
                        QuestionList.VERDICTS,
                        new Words(
                                "Open 'How this was worked out' below the picture: it is the first thing there.",
                                "Copy it as it stands: strong, suggestive, too small to matter, nothing seen or cannot tell.",
                                "Whatever it says: somebody chose these drops while smelling the beans."))
                .number(
                        "lowest",
                        "What is the lowest bean temperature at which this roastery has dropped?",
                        () -> logbook.batches().stream()
                                .mapToDouble(batch -> drops.value().value(batch.name(), dropTemperature()))
                                .filter(Double::isFinite)
                                .min()
                                .orElse(Double.NaN),
                        0.35,
                        Unit.TEMPERATURE,
                        new Words(
                                "Sort the table by 'drop temperature'.",
                                "The smallest number of that column; unfold the rest of the table if it is folded away.",
                                "Below it nothing was ever tried. A plan that stays inside what was tried asks less of luck."))
                .yesOrNo(
                        "one lot",
                        "Should the five batches all be of one lot? (yes or no)",
                        () -> true,
                        new Words(
                                "If two batches differ in the lot and in the drop, which of the two made the difference?",
                                "With five batches there is room for one difference only.",
                                "One difference at a time. With more batches you could have pairs in several lots."))
                .yesOrNo(
                        "coldest first",
                        "Is it a good plan to roast the coldest drop first, then the next, and the hottest last? (yes or no)",
                        () -> false,
                        new Words(
                                "What else changes from the first batch of a day to the last?",
                                "The drum gets warmer with every batch. If the drops go up with it, which of the two was it?",
                                "Draw the order by lot, so that the warming drum does not move together with what you ask."))
                .claim(
                        "per degree",
                        "By how many points does one degree more at the drop change sweetness, for these cuppers?",
                        ClaimQuestion.Scale.POINTS_PER_DEGREE,
                        () -> 0.6,
                        behind.map(all -> truth::value),
                        () -> StrictMath.abs(truth.value()) < HARDLY_ANYTHING
                                ? Grade.Telling.CANNOT_TELL
                                : Grade.Telling.CAN_TELL,
                        "Five batches far apart, of one lot, in an order drawn by lot, cupped blind, can say more than a winter of habit.");
        return new LessonMaterial(Map.of(), questions.all());
    }
}
