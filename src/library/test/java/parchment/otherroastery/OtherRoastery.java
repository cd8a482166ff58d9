package parchment.otherroastery;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * Describes a roastery whose logbooks are drawn with known truth. Equal descriptions with equal seeds give the same files.
 *
 * @param name the logbook's name
 * @param seed fixes every number that is drawn
 * @param days when is roasted
 * @param lots what is roasted, with its true quality
 * @param drop how the drop is chosen
 * @param logger what reads and how
 * @param panel who tastes
 * @param faults what is wrong on purpose
 */
public record OtherRoastery(
        String name,
        long seed,
        RoastDays days,
        List<OtherLot> lots,
        DropHabit drop,
        ReadingLogger logger,
        TastingPanel panel,
        PlantedFaults faults) {
    /** What is scored, in this order. */
    public static final List<String> ATTRIBUTES = List.of("sweetness", "acidity", "body");

    public OtherRoastery {
        lots = List.copyOf(lots);
    }

    /** Returns 60 days of 3 batches of three lots with a best drop for sweetness, and nothing wrong. */
    public static OtherRoastery ordinary() {
        Beans beans = Beans.ordinary();
        return new OtherRoastery(
                "Lock-keeper's roastery (invented)",
                1,
                RoastDays.of(60, 3),
                List.of(
                        OtherLot.named("Amber", beans).with("sweetness", TrueCourse.peak(6.8, 207.5, -0.035)),
                        OtherLot.named("Birch", beans.with(0.114, -1.0))
                                .with("sweetness", TrueCourse.peak(6.2, 208.5, -0.035)),
                        OtherLot.named("Cove", beans.with(0.131, 1.2))
                                .with("sweetness", TrueCourse.peak(6.5, 206.5, -0.035))),
                DropHabit.ordinary(),
                ReadingLogger.ordinary(),
                TastingPanel.ordinary(),
                PlantedFaults.none());
    }

    public OtherRoastery withSeed(long other) {
        return new OtherRoastery(name, other, days, lots, drop, logger, panel, faults);
    }

    public OtherRoastery withDays(RoastDays other) {
        return new OtherRoastery(name, seed, other, lots, drop, logger, panel, faults);
    }

    public OtherRoastery withLots(List<OtherLot> others) {
        return new OtherRoastery(name, seed, days, others, drop, logger, panel, faults);
    }

    /** Returns the same with one attribute of every lot following the same course, but for the lots' own levels. */
    public OtherRoastery withEveryLot(String attribute, TrueCourse course) {
        return withLots(lots.stream()
                .map(lot -> {
                    double level = lot.courses().get(attribute).level();
                    return lot.with(
                            attribute,
                            new TrueCourse(
                                    course.kind(),
                                    level,
                                    course.center(),
                                    course.perDegree(),
                                    course.bend(),
                                    course.perTenSeconds()));
                })
                .toList());
    }

    public OtherRoastery withDrop(DropHabit other) {
        return new OtherRoastery(name, seed, days, lots, other, logger, panel, faults);
    }

    public OtherRoastery withLogger(ReadingLogger other) {
        return new OtherRoastery(name, seed, days, lots, drop, other, panel, faults);
    }

    public OtherRoastery withPanel(TastingPanel other) {
        return new OtherRoastery(name, seed, days, lots, drop, logger, other, faults);
    }

    public OtherRoastery withFaults(PlantedFaults other) {
        return new OtherRoastery(name, seed, days, lots, drop, logger, panel, other);
    }

    /** Returns what is true of the logbook, without writing it. */
    public Truth truth() {
        Roasting roasting = new Roasting(this);
        return Truth.of(this, roasting, roasting.all());
    }

    /**
     * Writes the logbook into a folder.
     *
     * @return what is true of it
     */
    public Truth writeTo(Path folder) throws IOException {
        Roasting roasting = new Roasting(this);
        List<RoastedBatch> batches = roasting.all();
        new WrittenLogbook(this, roasting, batches).writeTo(folder);
        return Truth.of(this, roasting, batches);
    }

    /**
     * Returns how a batch was roasted, second by second.
     *
     * <p>{@code Course.of(roastery.course("Q007").start(), hand)} is what the same beans on the same day would have done in another hand.
     *
     * @throws java.util.NoSuchElementException if there is no such batch
     */
    public Course course(String batch) {
        return new Roasting(this)
                .all().stream()
                        .filter(roasted -> roasted.name().equals(batch))
                        .findFirst()
                        .orElseThrow()
                        .course();
    }

    Draws draws(String what) {
        return Draws.of(seed, what);
    }
}
