package parchment.virtual;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import parchment.display.Progress;

/**
 * Runs an invented roastery for a year or so and returns its logbook together with the truth behind it.
 *
 * <p>{@code VirtualRoastery.harbour().withSeed(7).withBatches(80).run()} is a logbook of 80 batches. Equal settings give equal
 * logbooks, on every machine. The first batches do not change when more are asked for.
 */
public final class VirtualRoastery {
    /** Seed of the committed demo logbooks. */
    public static final long DEMO_SEED = 20240109;

    private final Story story;
    private final long seed;
    private final int batches;

    private VirtualRoastery(Story story, long seed, int batches) {
        this.story = story;
        this.seed = seed;
        this.batches = batches;
    }

    /** Returns the harbour-town roastery with 240 batches: the demo logbook. */
    public static VirtualRoastery harbour() {
        return new VirtualRoastery(Stories.harbour(), DEMO_SEED, 240);
    }

    /** Returns the hillside roastery with 40 batches, awkward on purpose: °F, blanks, one cupper, no environment probe. */
    public static VirtualRoastery hillside() {
        return new VirtualRoastery(Stories.hillside(), DEMO_SEED, 40);
    }

    /** Returns the same roastery with another seed: the same people and lots, other days. */
    public VirtualRoastery withSeed(long other) {
        return new VirtualRoastery(story, other, batches);
    }

    /** Returns the same roastery with another number of batches; the calendar grows with it. */
    public VirtualRoastery withBatches(int number) {
        Checks.positive("number of batches", number);
        return new VirtualRoastery(story, seed, number);
    }

    /** Returns the same roastery opened on another day: the calendar of lots, upkeep and seasons stays where it is. */
    public VirtualRoastery startingOn(LocalDate day) {
        return new VirtualRoastery(story.startingOn(day), seed, batches);
    }

    /**
     * Returns the same roastery with another true flavour.
     *
     * @throws IllegalArgumentException if the surfaces are not of the same attributes in the same order
     */
    public VirtualRoastery withSurfaces(List<FlavourSurface> surfaces) {
        List<String> attributes =
                surfaces.stream().map(FlavourSurface::attribute).toList();
        if (!attributes.equals(story.attributes())) {
            throw new IllegalArgumentException("The roastery scores " + String.join(", ", story.attributes())
                    + ", but the surfaces given are of " + String.join(", ", attributes)
                    + ". Give one surface of each, in that order.");
        }
        return new VirtualRoastery(story.withSurfaces(surfaces), seed, batches);
    }

    /** Returns the true flavour of each attribute. */
    public List<FlavourSurface> surfaces() {
        return story.surfaces();
    }

    /** Roasts and cups everything. */
    public VirtualLogbook run() {
        List<VirtualBatch> roasted = new ArrayList<>();
        LocalDate day = story.start();
        try (Progress progress = Progress.of(batches, "roasting invented batches")) {
            while (roasted.size() < batches) {
                roastDay(day, roasted, progress);
                day = nextDay(day);
            }
        }
        List<Cupper> cuppers = new ArrayList<>();
        for (String name : story.cuppers()) {
            cuppers.add(Cupper.drawn(name, story.surfaces().size(), Chance.of(seed, "cupper " + name)));
        }
        Panel panel = new Panel(cuppers, story.surfaces().size(), seed);
        return new VirtualLogbook(story, seed, roasted, cuppers, new CuppingCalendar(story, panel, seed).hold(roasted));
    }

    private void roastDay(LocalDate day, List<VirtualBatch> roasted, Progress progress) {
        Chance chance = Chance.of(seed, "day " + day);
        BatchMaker maker = new BatchMaker(story, seed);
        Story.Operator operator = operator(chance);
        int size = story.smallestDay() + chance.below(story.largestDay() - story.smallestDay() + 1);
        double warmUp = StrictMath.rint(chance.normalWithin(35, 6, 2));
        LocalTime clock = LocalTime.of(8, 30).plusMinutes(chance.below(90));
        boolean drawn = !day.isBefore(story.chanceFrom()) && !day.isAfter(story.chanceTo());
        for (int position = 1; position <= size && roasted.size() < batches; position++) {
            VirtualLot lot = lot(day, chance);
            Story.Recipe recipe = chance.pick(story.recipes());
            double chosen = chance.normal(recipe.drop(), recipe.spread());
            // Drawn before the charge from an even grid; nothing about the day or the beans enters.
            double meant = drawn ? 197 + chance.below(12) : StrictMath.rint(chosen * 2) / 2;
            boolean written = chance.happens(story.writing().planWritten());
            PlannedBatch.Plan how =
                    drawn ? PlannedBatch.Plan.CHANCE : written ? PlannedBatch.Plan.CHOICE : PlannedBatch.Plan.UNWRITTEN;
            double mass = mass(chance);
            PlannedBatch plan = new PlannedBatch(
                    String.format(java.util.Locale.ROOT, "%s%03d", story.prefix(), roasted.size() + 1),
                    day.atTime(clock),
                    lot,
                    recipe.name(),
                    mass,
                    chance.normalWithin(183 + 8 * (mass - 2.1), 1.8, 2.5),
                    meant,
                    how,
                    position,
                    warmUp);
            roasted.add(maker.make(plan, operator));
            progress.step();
            clock = clock.plusMinutes(17 + chance.below(9) + (chance.happens(0.1) ? 25 : 0));
        }
    }

    /** Mostly two kilograms or so; now and then a small batch. */
    private static double mass(Chance chance) {
        double usual = chance.happens(0.1) ? 1.4 : chance.happens(0.35) ? 2.4 : 2.1;
        return StrictMath.rint(usual * 1000 + chance.normalWithin(0, 6, 2)) / 1000;
    }

    private Story.Operator operator(Chance chance) {
        double place = chance.share();
        for (Story.Operator operator : story.operators()) {
            place -= operator.share();
            if (place < 0) {
                return operator;
            }
        }
        return story.operators().get(0);
    }

    private VirtualLot lot(LocalDate day, Chance chance) {
        List<VirtualLot> there =
                story.lots().stream().filter(lot -> lot.isThere(day)).toList();
        double total = there.stream().mapToDouble(VirtualLot::share).sum();
        double place = chance.share() * total;
        for (VirtualLot lot : there) {
            place -= lot.share();
            if (place < 0) {
                return lot;
            }
        }
        return there.get(there.size() - 1);
    }

    /** A roast day each Tuesday, a Friday now and then, and a week off now and then. */
    private LocalDate nextDay(LocalDate day) {
        Chance chance = Chance.of(seed, "calendar " + day);
        if (day.getDayOfWeek() != DayOfWeek.FRIDAY && chance.happens(0.12)) {
            return day.with(TemporalAdjusters.next(DayOfWeek.FRIDAY));
        }
        LocalDate next = day.with(TemporalAdjusters.next(DayOfWeek.TUESDAY));
        return chance.happens(0.2) ? next.plusWeeks(1) : next;
    }
}
