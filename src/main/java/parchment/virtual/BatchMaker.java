package parchment.virtual;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Roasts one planned batch under the conditions of its day, and writes down what logger and person write down. */
final class BatchMaker {
    /** Metal that is still missing at the day's first and second batch after a warm-up, °C. */
    private static final double FIRST_COLD = 6;

    private static final double SECOND_COLD = 2;
    /** Loss of draught per day since the ducts, of flame per day since the burner were cleaned (assumptions). */
    private static final double DUCTS_PER_DAY = 0.0012;

    private static final double BURNER_PER_DAY = 0.00015;
    /** Points lost per month in store: acidity most, the others by their order (assumption). */
    private static final double AGEING = 0.04;
    /** Standard deviation of a batch's flavour around its surface, and what one of hidden state is worth, points. */
    private static final double BATCH_FLAVOUR = 0.2;

    private static final double HIDDEN_FLAVOUR = 0.2;

    private final Story story;
    private final long seed;

    BatchMaker(Story story, long seed) {
        this.story = story;
        this.seed = seed;
    }

    VirtualBatch make(PlannedBatch plan, Story.Operator operator) {
        Chance chance = Chance.of(seed, "batch " + plan.name());
        LocalDate day = plan.roastedAt().toLocalDate();
        Conditions conditions = conditions(day);
        double hidden = chance.normalWithin(0, 1, 2.5);
        GreenBeans beans = plan.lot()
                .beans()
                .withMoisture(plan.lot().moisture(day))
                .varied(
                        chance.normalWithin(0, 0.7, 2.5),
                        StrictMath.exp(0.03 * chance.normal(0, 1)),
                        StrictMath.exp(0.05 * chance.normal(0, 1)));
        double cold = plan.positionInDay() == 1
                ? FIRST_COLD - 0.3 * (plan.warmUp() - 35)
                : plan.positionInDay() == 2 ? SECOND_COLD : 0;
        Charge charge = new Charge(
                plan.greenMass(),
                conditions.room().temperature() - 1,
                plan.chargeReading(),
                Charge.ORDINARY_METAL - cold + chance.normal(0, 1.5));
        double push = Chance.of(seed, "push " + day).normal(0, 0.02);
        Habit habit = operator.habit();
        SimulatedRoast roast = RoastSimulator.of(
                        story.machine().worn(conditions.flameFactor(), conditions.draughtFactor()), conditions.probes())
                .withRoom(conditions.room())
                .withDisturbance(Disturbance.drawn(chance, 0.012, 0.02))
                .roast(beans, charge, roaster(plan, habit, hidden, push, chance));
        double pressedLate = chance.between(-0.5, 1.5);
        VirtualBatch unscored = new VirtualBatch(
                plan,
                operator.name(),
                conditions,
                roast,
                story.logger().log(roast, pressedLate, chance),
                WrittenMarks.written(roast, habit, pressedLate, chance),
                hidden,
                List.of(),
                roast.roastedMass() + chance.normal(0, 0.004));
        return new VirtualBatch(
                plan,
                operator.name(),
                conditions,
                roast,
                unscored.curve(),
                unscored.marks(),
                hidden,
                flavour(unscored, chance),
                unscored.cooledMass());
    }

    /** A drop drawn by chance is followed as drawn; otherwise feel has its say. */
    private static Roaster roaster(PlannedBatch plan, Habit habit, double hidden, double push, Chance chance) {
        double felt = plan.plan() == PlannedBatch.Plan.CHANCE ? 0 : hidden;
        return new HabitualRoaster(habit, plan.meantDrop(), felt, push, chance);
    }

    Conditions conditions(LocalDate day) {
        Chance chance = Chance.of(seed, "weather " + day);
        double season = StrictMath.cos(2 * StrictMath.PI * (day.getDayOfYear() - 205) / 365.25);
        Room room = new Room(
                20 + 4.5 * season + chance.normalWithin(0, 1, 2),
                StrictMath.min(0.95, 0.60 + 0.08 * season + chance.normalWithin(0, 0.06, 2)),
                1014 + chance.normalWithin(0, 7, 2.5));
        double flame =
                (1 - BURNER_PER_DAY * story.daysSince(Stories.BURNER, day)) * (1 + chance.normalWithin(0, 0.015, 2));
        // A warm room pulls less in the chimney.
        double draught = (1 - DUCTS_PER_DAY * StrictMath.min(180, story.daysSince(Stories.DUCTS, day)))
                * (1 - 0.004 * (room.temperature() - 20))
                * (1 + chance.normalWithin(0, 0.03, 2));
        int period = story.probePeriod(day);
        return new Conditions(
                room, flame, draught, story.probes().get(period - 1).probes(), period);
    }

    private List<Double> flavour(VirtualBatch batch, Chance chance) {
        VirtualLot lot = batch.plan().lot();
        double months = StrictMath.max(0, lot.age(batch.plan().roastedAt().toLocalDate())) / 30.4;
        double general = chance.normal(0, BATCH_FLAVOUR) + HIDDEN_FLAVOUR * batch.hidden();
        List<Double> flavour = new ArrayList<>();
        for (int a = 0; a < story.surfaces().size(); a++) {
            FlavourSurface surface = story.surfaces().get(a);
            double ageing = AGEING * months / (1 + 0.5 * a);
            flavour.add(surface.points(batch.endTemperature(), batch.browningTime(), batch.developmentTime())
                    + lot.flavour().get(a)
                    - ageing
                    + general
                    + chance.normal(0, BATCH_FLAVOUR / 2));
        }
        return flavour;
    }
}
