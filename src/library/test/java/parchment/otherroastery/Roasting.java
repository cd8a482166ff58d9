package parchment.otherroastery;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Roasts every batch of a scenario. */
final class Roasting {
    /** How much of a probe's move, or of another machine's other reading, this person takes out by colour and smell. */
    private static final double FOLLOWS_COLOUR = 0.5;

    private static final double USUAL_GAS = 75;

    private final OtherRoastery scenario;
    private final RoastDays days;
    private final PlantedFaults faults;
    private final Set<Integer> cracksAfterDrop;
    private final Set<Integer> hot;
    private final Set<Integer> wrongCharge;

    Roasting(OtherRoastery scenario) {
        this.scenario = scenario;
        this.days = scenario.days();
        this.faults = scenario.faults();
        this.cracksAfterDrop = chosen("cracks after drop", faults.cracksAfterDrop());
        this.hot = chosen("hot probe", faults.hotProbe());
        this.wrongCharge = chosen("wrong charge", faults.wrongCharges());
    }

    private Set<Integer> chosen(String what, int count) {
        return scenario.draws(what).shuffled(days.days() * days.batchesEach()).stream()
                .limit(count)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Returns the numbers, from 0, of the batches with a fault, by the fault's name. */
    Map<String, Set<Integer>> planted() {
        return Map.of("crack after drop", cracksAfterDrop, "hot probe", hot, "wrong charge", wrongCharge);
    }

    /** The probe of a machine on a roast day; the last day's is the one that counts at the end. */
    Probe probe(int machine, int day) {
        if (machine == 1) {
            return Probe.ordinary().moved(1.4, 0.9);
        }
        return day >= movedOnDay() ? Probe.ordinary().moved(faults.probeMoved(), faults.lagFactor()) : Probe.ordinary();
    }

    /** The first roast day, from 0, with the moved probe; beyond the last if it is never moved. */
    int movedOnDay() {
        return faults.probeMoved() == 0 ? Integer.MAX_VALUE : (int) Math.round(faults.movedAfter() * days.days());
    }

    static LocalDate date(OtherRoastery scenario, int day) {
        int gap = scenario.days().gap();
        return scenario.days()
                .first()
                .plusDays((long) gap * day + scenario.draws("date " + day).below(Math.max(1, gap - 1)));
    }

    List<RoastedBatch> all() {
        List<RoastedBatch> batches = new ArrayList<>();
        double gasDay = 0;
        for (int day = 0; day < days.days(); day++) {
            Draws ofDay = scenario.draws("day " + day);
            gasDay = 0.6 * gasDay + ofDay.normal(0.010);
            Weather weather = weather(day, gasDay, ofDay);
            for (int place = 0; place < days.batchesEach(); place++) {
                batches.add(batch(batches.size(), day, place, weather));
            }
        }
        return batches;
    }

    /** What all batches of a day share. */
    private record Weather(
            LocalDate date,
            double room,
            double humidity,
            double gasFactor,
            double meant,
            Roaster.Person person,
            double late,
            Map<String, Double> points) {}

    private Weather weather(int day, double gasDay, Draws draws) {
        LocalDate date = date(scenario, day);
        double season = Math.sin(2 * Math.PI * (date.getDayOfYear() - 110) / 365.25);
        Roaster.Person person = Roaster.Person.ALL.get(draws.happens(0.65) ? 0 : 1);
        Map<String, Double> points = new LinkedHashMap<>();
        OtherRoastery.ATTRIBUTES.forEach(
                attribute -> points.put(attribute, draws.normal(scenario.panel().daySpread())));
        return new Weather(
                date,
                19 + 4.5 * season + draws.normal(1.3),
                52 - 6 * season + draws.normal(5),
                1 + gasDay,
                draws.normal(scenario.drop().daySpread()),
                person,
                draws.happens(person.lateDays()) ? draws.between(10, 25) : 0,
                points);
    }

    private RoastedBatch batch(int number, int day, int place, Weather weather) {
        Draws draws = scenario.draws("batch " + number);
        int machine = days.machines() == 2 ? number % 2 : 0;
        OtherLot lot = lot(day, draws);
        double mass = 5 + 0.25 * (draws.below(3) - 1) + draws.normal(0.03);
        double mood = draws.normal(1);
        DropHabit habit = scenario.drop();
        boolean byChance = habit.choice() == DropHabit.Choice.CHANCE;
        double own = byChance ? 2.0 * (draws.below(5) - 2) : weather.meant() + draws.normal(habit.batchSpread());
        Probe probe = probe(machine, day);
        double meant = habit.center()
                + own
                + FOLLOWS_COLOUR * (probe.offset() - Probe.ordinary().offset());
        boolean written = byChance || habit.plan() == DropHabit.Plan.WRITTEN;
        meant = written ? Math.rint(2 * meant) / 2 : meant;

        Roaster.Person person = weather.person();
        double gas = USUAL_GAS
                + habit.gas(own, draws)
                + (habit.choice() == DropHabit.Choice.LOCKSTEP ? 0 : person.gas() + 4 * (mass - 5));
        double charge = Roaster.charge(person, mass, weather.room()) + draws.normal(1.2);
        // The drum is coldest at the day's first batch and gains over the afternoon.
        double drumAbove = 16 - 13 * Math.exp(-place / days.machines() / 1.2) + draws.normal(1.5);
        double green = weather.room() - 1 + draws.normal(0.5);
        Course course = Course.of(
                new Course.Start(
                        machine == 0 ? TwoNodeDrum.ordinary() : TwoNodeDrum.heavy(),
                        lot.beans(),
                        mass,
                        charge,
                        drumAbove,
                        green,
                        weather.room(),
                        weather.gasFactor(),
                        probe,
                        probe(machine, days.days() - 1)),
                new Roaster(person, gas, habit.choice(), meant + habit.reaction() * mood));
        double readsHigh = hot.contains(number) ? PlantedFaults.HOT : 0;
        double loss = course.massLoss()
                + lot.ageingPerHundredDays()
                        * (weather.date().toEpochDay() - arrived(lot).toEpochDay())
                        / 100
                + draws.normal(0.0025);
        return new RoastedBatch(
                name(number),
                day,
                machine,
                time(weather.date(), place, draws),
                lot,
                person,
                course,
                new RoastedBatch.Conditions(mass, charge, green, weather.room(), weather.humidity(), readsHigh),
                written ? OptionalDouble.of(meant) : OptionalDouble.empty(),
                written(number, course, person, weather.late(), charge + readsHigh, mass * (1 - loss), draws),
                loss,
                points(lot, course, weather, mood, draws),
                mood);
    }

    private RoastedBatch.Written written(
            int number,
            Course course,
            Roaster.Person person,
            double late,
            double charge,
            double roastedMass,
            Draws draws) {
        double yellowing = Math.rint((course.yellow() + draws.normal(5)) / 5) * 5;
        double drop = Math.rint(course.drop() + draws.between(-1, 1.5));
        double crack = Math.rint(
                course.cracked(RoastedBatch.FIRST_POP) + Math.max(0, person.crackLate() + draws.normal(3)) + late);
        crack = Math.min(crack, drop - 8);
        int after = 1 + draws.below(5);
        return new RoastedBatch.Written(
                Math.rint(charge) + (wrongCharge.contains(number) ? PlantedFaults.WRONG_CHARGE : 0),
                draws.happens(0.08) ? Double.NaN : yellowing,
                cracksAfterDrop.contains(number) ? drop + after : crack,
                drop,
                Math.rint(100 * roastedMass) / 100);
    }

    private Map<String, Double> points(OtherLot lot, Course course, Weather weather, double mood, Draws draws) {
        double bean = course.bean(course.drop());
        double development = course.drop() - course.cracked(RoastedBatch.FIRST_POP);
        Map<String, Double> points = new LinkedHashMap<>();
        for (String attribute : OtherRoastery.ATTRIBUTES) {
            points.put(
                    attribute,
                    lot.courses().get(attribute).points(bean, development)
                            + weather.points().get(attribute)
                            + scenario.drop().hiddenInScore() * mood
                            + draws.normal(scenario.panel().batchSpread()));
        }
        return points;
    }

    private OtherLot lot(int day, Draws draws) {
        double share = (double) day / days.days();
        List<OtherLot> there = scenario.lots().stream()
                .filter(lot -> share >= lot.from() && share < lot.to())
                .toList();
        if (there.isEmpty()) {
            throw new IllegalArgumentException("On roast day " + (day + 1) + " of " + days.days()
                    + " no lot is there. Give the lots times that leave no gap.");
        }
        return there.get(draws.below(there.size()));
    }

    /** A lot arrives twelve days before it may be roasted. */
    LocalDate arrived(OtherLot lot) {
        return days.first().plusDays(Math.round(lot.from() * days.spanDays()) - 12);
    }

    static String name(int number) {
        return String.format(Locale.ROOT, "Q%03d", number + 1);
    }

    private static LocalDateTime time(LocalDate date, int place, Draws draws) {
        return date.atTime(15, 5).plusMinutes(24L * place + draws.below(6));
    }
}
