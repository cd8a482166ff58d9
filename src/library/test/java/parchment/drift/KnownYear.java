package parchment.drift;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.BatchPlan;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;

/** Draws logbooks whose mass losses age, drift, follow the season and wander from day to day as is known. */
final class KnownYear {
    static final String LOT = "lot 3";
    static final String REFERENCE = "kept frozen";

    int months = 30;
    int lots = 6;
    /** Months over which a lot is roasted. */
    int life = 10;
    /** Change per 100 days since arrival, the mean over lots and their spread. */
    double ageing = -0.006;

    double ageingSpread = 0.002;
    /** Change per 100 days of the machine. */
    double drift = 0.003;
    /** Mid-January against mid-July. */
    double season = 0.008;

    /** How far the room is warmer in mid-July than in mid-January, in °C; it moves nothing. 0: not written. */
    double roomSwing;
    /** Standard deviation of the drop that is aimed at, in °C; a degree more loses 0.2 % more. 0: not written. */
    double aimSpread;

    double neighbours;
    double daySpread = 0.003;
    double batchSpread = 0.006;
    /** Months of the year in which there is roasting. */
    List<Integer> months12 = List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12);

    /**
     * A drawn logbook and the truth of its lot of interest.
     *
     * @param ageing of the lot per 100 days
     * @param sum slope per 100 days of all that moved the lot: ageing, drift of the machine, time of year
     */
    record Drawn(Logbook logbook, double ageing, double sum) {}

    Drawn draw(long seed) {
        Random random = new Random(seed * 104729 + 7);
        LocalDate start = LocalDate.of(2022, 3, 1);
        LocalDate end = start.plusMonths(months);
        double[] level = new double[lots];
        double[] slope = new double[lots];
        LocalDate[] arrival = new LocalDate[lots];
        List<Lot> known = new ArrayList<>();
        double step = lots > 1 ? (months - life) / (double) (lots - 1) : 0;
        for (int l = 0; l < lots; l++) {
            level[l] = 0.14 + 0.01 * random.nextGaussian();
            slope[l] = ageing + ageingSpread * random.nextGaussian();
            arrival[l] = start.plusDays(Math.round(30.44 * step * l));
            known.add(lot("lot " + (l + 1), arrival[l]));
        }
        known.add(lot(REFERENCE, start));
        List<Batch> batches = new ArrayList<>();
        double[] sums = new double[5];
        double ofDay = 0;
        int number = 0;
        for (LocalDate day = start; day.isBefore(end); day = day.plusDays(4 + random.nextInt(5))) {
            double fresh = random.nextGaussian() * daySpread;
            ofDay = batches.isEmpty() ? fresh : neighbours * ofDay + Math.sqrt(1 - neighbours * neighbours) * fresh;
            if (!months12.contains(day.getMonthValue())) {
                continue;
            }
            double date = day.toEpochDay();
            double dayOfYear = (date % 365.25 + 365.25) % 365.25;
            double common = drift * (date - start.toEpochDay()) / 100
                    + season / 2 * Math.cos(2 * Math.PI * (dayOfYear - 15) / 365.25)
                    + ofDay;
            List<Integer> there = new ArrayList<>();
            for (int l = 0; l < lots; l++) {
                if (!day.isBefore(arrival[l]) && day.isBefore(arrival[l].plusDays(Math.round(30.44 * life)))) {
                    there.add(l);
                }
            }
            for (int b = 0; b < 4; b++) {
                boolean reference = there.isEmpty() || b == 3;
                int l = reference ? -1 : there.get(random.nextInt(there.size()));
                if (l == 2) {
                    double age = (date - arrival[l].toEpochDay()) / 100;
                    double moved = slope[l] * age + common - ofDay;
                    double[] one = {1, age, moved, age * age, age * moved};
                    for (int k = 0; k < one.length; k++) {
                        sums[k] += one[k];
                    }
                }
                double mass = 2 + 0.1 * random.nextGaussian();
                double aim = aimSpread == 0 ? 0 : 205 + aimSpread * random.nextGaussian();
                double room = 18 - roomSwing / 2 * Math.cos(2 * Math.PI * (dayOfYear - 15) / 365.25);
                double loss = (reference ? 0.13 : level[l] + slope[l] * (date - arrival[l].toEpochDay()) / 100)
                        + common
                        + 0.01 * (mass - 2)
                        + (aimSpread == 0 ? 0 : 0.002 * (aim - 205))
                        + batchSpread * random.nextGaussian();
                batches.add(Batch.named(String.format("B%04d", ++number))
                        .roastedAt(day.atTime(LocalTime.of(9 + b, 0)).atOffset(ZoneOffset.UTC))
                        .lot(reference ? REFERENCE : "lot " + (l + 1))
                        .machine("drum")
                        .plan(
                                aimSpread == 0
                                        ? BatchPlan.NOT_WRITTEN
                                        : new BatchPlan(
                                                Optional.of(Temperature.celsius(aim)), BatchPlan.PlannedBy.CHOICE))
                        .conditions(new BatchConditions(
                                Optional.of(Mass.kilograms(mass)),
                                Optional.of(Mass.kilograms(mass * (1 - loss))),
                                Optional.empty(),
                                Optional.empty(),
                                roomSwing == 0
                                        ? Optional.empty()
                                        : Optional.of(Temperature.celsius(room + 2 * roomOfDay(day))),
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                Optional.empty()))
                        .build());
            }
        }
        Logbook logbook = Logbook.of(LogbookContents.ofBatches("drawn", batches).toBuilder()
                .lots(known)
                .build());
        double sum = (sums[4] - sums[1] * sums[2] / sums[0]) / (sums[3] - sums[1] * sums[1] / sums[0]);
        return new Drawn(logbook, slope[2], sum);
    }

    /** What the room differs by on a day, like a standard normal number. */
    private static double roomOfDay(LocalDate day) {
        return new Random(day.toEpochDay() * 31 + 5).nextGaussian();
    }

    private static Lot lot(String name, LocalDate arrived) {
        return new Lot(
                name,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(arrived),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Map.of());
    }
}
