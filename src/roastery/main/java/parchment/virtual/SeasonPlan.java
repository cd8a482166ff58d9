package parchment.virtual;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.display.Interruption;
import parchment.display.answer.Spelling;
import parchment.virtual.chance.Chance;
import parchment.virtual.chance.Seed;
import parchment.virtual.written.PlannedBatch;
import parchment.virtual.written.VirtualLot;

/** Settles when, by whom and from which lots an invented roastery roasts; nothing is roasted yet. */
final class SeasonPlan {
    /** A batch that is to be roasted, and by whom. */
    record Turn(PlannedBatch plan, Story.Operator operator) {}

    private final Story story;
    private final Seed seed;

    SeasonPlan(Story story, Seed seed) {
        this.story = story;
        this.seed = seed;
    }

    /** Returns the first batches, oldest first; fewer do not change when more are asked for. */
    List<Turn> turns(int batches) {
        List<Turn> turns = new ArrayList<>();
        LocalDate day = story.start();
        Interruption caller = Interruption.ofCaller();
        while (turns.size() < batches) {
            caller.check();
            addDay(day, turns, batches);
            day = nextDay(day);
        }
        return turns;
    }

    private void addDay(LocalDate day, List<Turn> turns, int batches) {
        Chance chance = seed.stream("day " + day);
        Story.Operator operator = operator(chance);
        Story.Calendar calendar = story.calendar();
        int size = calendar.smallestDay() + chance.below(calendar.largestDay() - calendar.smallestDay() + 1);
        double warmUp = StrictMath.rint(chance.normalWithin(35, 6, 2));
        LocalTime clock = LocalTime.of(8, 30).plusMinutes(chance.below(90));
        boolean drawn = !day.isBefore(story.chanceFrom()) && !day.isAfter(story.chanceTo());
        for (int position = 1; position <= size && turns.size() < batches; position++) {
            VirtualLot lot = lot(day, chance);
            Story.Recipe recipe = chance.pick(recipes(lot));
            double chosen = chance.normal(recipe.drop(), recipe.spread());
            // Drawn before the charge from an even grid; nothing about the day or the beans enters.
            double meant = drawn ? 197 + chance.below(12) : StrictMath.rint(chosen * 2) / 2;
            boolean written = chance.happens(story.writing().planWritten());
            PlannedBatch.Plan how =
                    drawn ? PlannedBatch.Plan.CHANCE : written ? PlannedBatch.Plan.CHOICE : PlannedBatch.Plan.UNWRITTEN;
            double mass = mass(chance);
            PlannedBatch plan = new PlannedBatch(
                    name(story, turns.size() + 1),
                    day.atTime(clock),
                    lot,
                    recipe.name(),
                    mass,
                    chance.normalWithin(usualCharge(mass), 1.8, 2.5),
                    meant,
                    how,
                    position,
                    warmUp);
            turns.add(new Turn(plan, operator));
            clock = clock.plusMinutes(17 + chance.below(9) + (chance.happens(0.1) ? 25 : 0));
        }
    }

    /** Returns the turns of a plan, as many a day as the roastery usually roasts at most, from the next roast day on. */
    List<Turn> turns(RoastPlan plan, LocalDate last) {
        List<Turn> turns = new ArrayList<>();
        LocalDate day = last;
        LocalTime clock = LocalTime.of(9, 0);
        int position = story.calendar().largestDay();
        double warmUp = 35;
        for (RoastPlan.Line line : plan.lines()) {
            position++;
            if (position > story.calendar().largestDay()) {
                day = nextDay(day);
                clock = LocalTime.of(9, 0);
                position = 1;
            }
            double mass = line.greenMass().orElse(story.calendar().usualMass());
            turns.add(new Turn(
                    new PlannedBatch(
                            line.batch(),
                            day.atTime(clock),
                            lot(line, day),
                            "planned",
                            mass,
                            line.chargeReading().orElse(usualCharge(mass)),
                            line.dropReading(),
                            PlannedBatch.Plan.CHOICE,
                            position,
                            warmUp),
                    new Story.Operator(line.habit(), line.path(), 1)));
            clock = clock.plusMinutes(22);
        }
        return turns;
    }

    private VirtualLot lot(RoastPlan.Line line, LocalDate day) {
        List<VirtualLot> there =
                story.lots().stream().filter(lot -> lot.isThere(day)).toList();
        List<String> names = there.stream().map(VirtualLot::name).toList();
        return there.stream()
                .filter(lot -> lot.name().equalsIgnoreCase(line.lot()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(line.place() + ": there is no lot '" + line.lot()
                        + "' in store on " + day + "." + Spelling.question(line.lot(), names) + " In store: "
                        + String.join(", ", names) + "."));
    }

    /** Returns the recipes for a lot; all of them if none is meant for it. */
    private List<Story.Recipe> recipes(VirtualLot lot) {
        List<Story.Recipe> fitting =
                story.recipes().stream().filter(recipe -> recipe.takes(lot)).toList();
        return fitting.isEmpty() ? story.recipes() : fitting;
    }

    static String name(Story story, int number) {
        return String.format(Locale.ROOT, "%s%03d", story.prefix(), number);
    }

    /** Returns the reading at which a batch of this many kilograms is usually charged, °C. */
    static double usualCharge(double mass) {
        return 183 + 8 * (mass - 2.1);
    }

    private double mass(Chance chance) {
        Story.Calendar calendar = story.calendar();
        double usual = chance.happens(0.1)
                ? calendar.smallMass()
                : chance.happens(0.35) ? calendar.largeMass() : calendar.usualMass();
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
        if (there.isEmpty()) {
            throw new IllegalArgumentException(
                    "No lot is in store on " + day + ", and more batches are asked for. Ask for"
                            + " fewer batches, let a lot arrive by then, or let one arrive again.");
        }
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

    /** By Tuesdays: a Friday now and then, and a week off now and then. By weekdays: a day off now and then. */
    LocalDate nextDay(LocalDate day) {
        Chance chance = seed.stream("calendar " + day);
        Story.Calendar calendar = story.calendar();
        if (calendar.rhythm() == Story.Calendar.Rhythm.WEEKDAYS) {
            LocalDate next = nextWeekday(day);
            return chance.happens(calendar.dayOff()) ? nextWeekday(next) : next;
        }
        if (day.getDayOfWeek() != DayOfWeek.FRIDAY && chance.happens(calendar.extraDay())) {
            return day.with(TemporalAdjusters.next(DayOfWeek.FRIDAY));
        }
        LocalDate next = day.with(TemporalAdjusters.next(DayOfWeek.TUESDAY));
        return chance.happens(calendar.dayOff()) ? next.plusWeeks(1) : next;
    }

    private static LocalDate nextWeekday(LocalDate day) {
        LocalDate next = day.plusDays(1);
        while (next.getDayOfWeek() == DayOfWeek.SATURDAY || next.getDayOfWeek() == DayOfWeek.SUNDAY) {
            next = next.plusDays(1);
        }
        return next;
    }
}
