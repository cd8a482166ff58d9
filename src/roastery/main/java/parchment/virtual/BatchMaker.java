package parchment.virtual;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import parchment.virtual.chance.Chance;
import parchment.virtual.chance.Seed;
import parchment.virtual.people.FlavourSurface;
import parchment.virtual.people.Habit;
import parchment.virtual.physics.Charge;
import parchment.virtual.physics.Disturbance;
import parchment.virtual.physics.GreenBeans;
import parchment.virtual.physics.RoastSimulator;
import parchment.virtual.physics.Roaster;
import parchment.virtual.physics.Room;
import parchment.virtual.physics.SimulatedRoast;
import parchment.virtual.written.Conditions;
import parchment.virtual.written.PlannedBatch;
import parchment.virtual.written.VirtualBatch;
import parchment.virtual.written.VirtualLot;
import parchment.virtual.written.WrittenMarks;

/** Roasts one planned batch under the conditions of its day, and writes down what logger and person write down. */
final class BatchMaker {
    /** Metal that is still missing at the day's first and second batch after a warm-up, °C. */
    private static final double FIRST_COLD = 6;

    private static final double SECOND_COLD = 2;
    /** Work after which ducts, and after which the burner, are as new. */
    private static final String DUCTS = "ducts cleaned";

    private static final String BURNER = "burner cleaned";
    /** Longest time for which ducts go on clogging, days. */
    private static final long CLOGGED = 180;

    private final Story story;
    private final Seed seed;

    BatchMaker(Story story, Seed seed) {
        this.story = story;
        this.seed = seed;
    }

    VirtualBatch make(PlannedBatch plan, Story.Operator operator) {
        Chance chance = seed.stream("batch " + plan.name());
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
        double push = seed.stream("push " + day).normal(0, 0.02);
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
        Chance chance = seed.stream("weather " + day);
        Story.Weather weather = story.weather();
        double season = StrictMath.cos(2 * StrictMath.PI * (day.getDayOfYear() - weather.warmestDay()) / 365.25);
        Room room = new Room(
                weather.temperature() + weather.season() * season + chance.normalWithin(0, weather.dayToDay(), 2),
                StrictMath.max(
                        0.1,
                        StrictMath.min(
                                0.95,
                                weather.humidity()
                                        + weather.humiditySeason() * season
                                        + chance.normalWithin(0, 0.06, 2))),
                weather.pressure() + chance.normalWithin(0, 7, 2.5));
        double flame = StrictMath.max(0.5, 1 - story.wear().flamePerDay() * story.daysSince(BURNER, day))
                * (1 + chance.normalWithin(0, weather.supply(), 2));
        // A warm room pulls less in the chimney.
        double draught = StrictMath.max(
                        0.2, 1 - story.wear().draughtPerDay() * StrictMath.min(CLOGGED, story.daysSince(DUCTS, day)))
                * (1 - 0.004 * (room.temperature() - 20))
                * (1 + chance.normalWithin(0, weather.chimney(), 2));
        int period = story.probePeriod(day);
        return new Conditions(
                room, flame, draught, story.probes().get(period - 1).probes(), period);
    }

    private List<Double> flavour(VirtualBatch batch, Chance chance) {
        VirtualLot lot = batch.plan().lot();
        double months = StrictMath.max(0, lot.age(batch.plan().roastedAt().toLocalDate())) / 30.4;
        double general = chance.normal(0, story.taste().batch()) + story.taste().hidden() * batch.hidden();
        List<Double> flavour = new ArrayList<>();
        for (int a = 0; a < story.surfaces().size(); a++) {
            FlavourSurface surface = story.surfaces().get(a);
            // The first attribute fades most, the others by their order (assumption).
            double ageing = story.taste().ageing() * months / (1 + 0.5 * a);
            flavour.add(surface.points(batch.endTemperature(), batch.browningTime(), batch.developmentTime())
                    + lot.flavour().get(a)
                    - ageing
                    + general
                    + chance.normal(0, story.taste().batch() / 2));
        }
        return flavour;
    }
}
