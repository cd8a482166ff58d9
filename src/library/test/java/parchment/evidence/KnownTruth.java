package parchment.evidence;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import parchment.feature.kind.Role;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.BatchPlan;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.logbook.written.Upkeep;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Draws logbooks whose truth is known: scores that follow the drop temperature by a stated slope or peak, with lots, roast days,
 * batches, cuppers and cuppings that differ by stated spreads. Numbers are invented.
 *
 * <p>Everything in one place so that a simulated condition can be named whole. Fields are set on a fresh object and not changed
 * after {@link #draw}.
 */
final class KnownTruth {
    int days = 20;
    int batchesPerDay = 4;
    int lots = 3;
    int cuppers = 3;
    int cupsEach = 1;
    int daysPerCupping = 2;
    double slope = 0.15;
    double bend = 0;
    double center = 205;
    double dropSpread = 3;
    double dayShareOfDrop = 0.3;
    double lotSpreadOfDrop = 0;
    double measureError = 0.3;
    double lotSpread = 0.5;
    double daySpread = 0.3;
    double batchSpread = 0.2;
    double cupperSpread = 0.5;
    double cuppingSpread = 0.3;
    double sittingSpread = 0.1;
    double cupSpread = 0.5;
    double drift = 0;
    double driftOfDrop = 0;

    /** How far the scores swing over the dates, one and a half swings in all. */
    double season = 0;

    boolean byChance = false;
    Cupping.Said blind = Cupping.Said.YES;
    Cupping.Said beforeDiscussion = Cupping.Said.YES;
    TemperatureUnit reader = TemperatureUnit.CELSIUS;
    double cuppedShare = 1;

    /** The first roast day after the probe was moved, counted from 0; never if it is as large as the number of days. */
    int probeMovedOnDay = Integer.MAX_VALUE;

    double probeShift = 2.5;

    /** How strongly a hidden state of the beans moves both the drop and the score, in spreads of the drop and in points. */
    double hiddenInDrop = 0;

    double hiddenInScore = 0;

    /** How the drop of the next roast day goes with today's score, in points per spread of the days: something nothing can cause. */
    double nextDayInScore = 0;

    /** Only batches dropped at this temperature or above are cupped. */
    double leastCuppedDrop = Double.NEGATIVE_INFINITY;

    /** Only batches whose truth was at least this good are cupped, in points. */
    double leastCuppedTruth = Double.NEGATIVE_INFINITY;

    /** Whether each lot is roasted in one stretch of the calendar only, one lot after the other. */
    boolean lotsInTurn = false;

    /** Makes a fresh condition, so that logbooks can be drawn side by side and changed one by one. */
    interface Maker {
        KnownTruth make();
    }

    /** How the gas moved with the drop inside days, from -1 to 1. */
    double gasWithDrop = 0;

    /** What a step of the gas by its own spread does to the score. */
    double gasInScore = 0;

    /** The standard error with which the move of the probe is known; NaN if it is not known at all. */
    double shiftError = Double.NaN;

    /** How far each lot's course lies above the others' along the drop, in °C; empty if all are one. */
    double[] lotOffset = {};

    /** Roast days added after the others, of one lot, with as many batches as said at the given drops in an order by chance. */
    int moreDays = 0;

    int morePerDay = 0;

    double[] moreDrops = {};

    /** A drawn logbook with the drop temperatures as they would be read, and the gas of each batch in percent. */
    record Drawn(Logbook logbook, Measure measure, Map<String, Double> gas) {
        List<CollinearFeatures.Other> others() {
            return List.of(new CollinearFeatures.Other("gas in development", gas, "", Role.CONTROL));
        }
    }

    Drawn draw(long seed) {
        Random random = new Random(seed);
        double[] lotEffect = normals(random, lots, lotSpread);
        double[] lotDrop = normals(random, lots, lotSpreadOfDrop);
        double[] cupperEffect = normals(random, cuppers, cupperSpread);
        int cuppings = (days + daysPerCupping - 1) / daysPerCupping;
        double[] cuppingEffect = normals(random, cuppings, cuppingSpread);
        double[] sittingEffect = normals(random, cuppings * cuppers, sittingSpread);
        List<Batch> batches = new ArrayList<>();
        List<CupScores> cups = new ArrayList<>();
        List<Cupping> sessions = new ArrayList<>();
        Map<String, ModelFrames.Reading> readings = new LinkedHashMap<>();
        Map<String, Double> planned = new LinkedHashMap<>();
        Map<String, Double> gas = new LinkedHashMap<>();
        Random gasRandom = new Random(seed + 77_000_000);
        // Neighbouring seeds begin alike, so the seed is scattered first.
        double shiftOff =
                Double.isNaN(shiftError) ? 0 : shiftError * new Random(0x9E3779B97F4A7C15L * (seed + 1)).nextGaussian();
        LocalDate start = LocalDate.of(2024, 3, 4);
        for (int c = 0; c < cuppings; c++) {
            sessions.add(new Cupping("C" + (c + 1), blind, beforeDiscussion, Map.of()));
        }
        double[] dayDrops = normals(random, days + 1, dropSpread * Math.sqrt(dayShareOfDrop));
        for (int day = 0; day < days; day++) {
            LocalDate date = start.plusDays(3L * day + day % 2);
            double when = days < 2 ? 0 : (double) day / (days - 1) - 0.5;
            double dayDrop = dayDrops[day];
            double dayEffect = random.nextGaussian() * daySpread
                    + drift * when
                    + season * Math.sin(3 * Math.PI * when)
                    + nextDayInScore * dayDrops[day + 1];
            for (int place = 0; place < batchesPerDay; place++) {
                String name = String.format(Locale.ROOT, "B%03d", batches.size() + 1);
                int drawnLot = random.nextInt(lots);
                int lot = lotsInTurn ? day * lots / days : drawnLot;
                double own = random.nextGaussian() * dropSpread * Math.sqrt(1 - dayShareOfDrop);
                double drop = center
                        + lotDrop[lot]
                        + (byChance ? Math.rint((dayDrop + own) / 2) * 2 : dayDrop + own)
                        + driftOfDrop * when;
                double ownGas = gasWithDrop
                                * (drop - center - lotDrop[lot] - dayDrop)
                                / (dropSpread * Math.sqrt(1 - dayShareOfDrop))
                        + Math.sqrt(1 - gasWithDrop * gasWithDrop) * gasRandom.nextGaussian()
                        + (gasWithDrop == 0 ? 0 : gasWithDrop * dayDrop / dropSpread);
                gas.put(name, Math.rint(2 * (50 + 5 * ownGas)) / 2);
                double hidden = random.nextGaussian();
                drop += hiddenInDrop * hidden;
                double mass = 2 + 0.1 * random.nextGaussian();
                double batchEffect = random.nextGaussian() * batchSpread;
                Batch.Builder batch = Batch.named(name)
                        .roastedAt(OffsetDateTime.of(date.atTime(9 + place / 3, 20 * (place % 3)), ZoneOffset.UTC))
                        .lot("Lot " + (char) ('A' + lot))
                        .machine("drum one")
                        .readerUnit(reader)
                        .conditions(new BatchConditions(
                                Optional.of(Mass.kilograms(mass)),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.of(Temperature.celsius(20 + random.nextGaussian())),
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                Optional.empty()));
                if (byChance) {
                    planned.put(name, drop);
                    batch.plan(new BatchPlan(Optional.of(Temperature.celsius(drop)), BatchPlan.PlannedBy.CHANCE));
                }
                batches.add(batch.build());
                double read = drop + (day >= probeMovedOnDay ? probeShift : 0) + random.nextGaussian() * measureError;
                ModelFrames.Reading reading = new ModelFrames.Reading(read, measureError);
                boolean earlier = probeMovedOnDay < days && day < probeMovedOnDay;
                readings.put(
                        name,
                        earlier
                                ? reading.onTodaysProbe(
                                        read + probeShift + shiftOff,
                                        Double.isNaN(shiftError) ? 0 : shiftError,
                                        "before")
                                : reading);
                double good = 6 + slope * (drop - center) + lotEffect[lot] + batchEffect;
                if (random.nextDouble() >= cuppedShare || drop < leastCuppedDrop || good < leastCuppedTruth) {
                    continue;
                }
                int cupping = day / daysPerCupping;
                LocalDate tasted = start.plusDays(3L * (daysPerCupping * (cupping + 1) - 1) + 5);
                for (int cupper = 0; cupper < cuppers; cupper++) {
                    for (int cup = 0; cup < cupsEach; cup++) {
                        double x = drop - center - (lotOffset.length > 0 ? lotOffset[lot] : 0);
                        double score = 6
                                + slope * x
                                + bend * x * x
                                + hiddenInScore * hidden
                                + gasInScore * ownGas
                                + lotEffect[lot]
                                + dayEffect
                                + batchEffect
                                + cupperEffect[cupper]
                                + cuppingEffect[cupping]
                                + sittingEffect[cupping * cuppers + cupper]
                                + random.nextGaussian() * cupSpread;
                        cups.add(new CupScores(
                                "C" + (cupping + 1),
                                tasted,
                                "cupper " + (cupper + 1),
                                name,
                                Optional.empty(),
                                Optional.of(Integer.toString(cup + 1)),
                                OptionalInt.empty(),
                                Map.of("sweetness", score),
                                Optional.empty()));
                    }
                }
            }
        }
        more(
                new Random(seed + 88_000_000),
                new Added(batches, cups, sessions, readings),
                cupperEffect,
                lotEffect[0],
                start);
        Logbook logbook = Logbook.of(LogbookContents.ofBatches("known truth", batches).toBuilder()
                .readerUnit(reader)
                .cups(cups)
                .cuppings(sessions)
                .upkeep(
                        probeMovedOnDay < days
                                ? List.of(new Upkeep(
                                        "drum one",
                                        start.plusDays(3L * probeMovedOnDay + probeMovedOnDay % 2),
                                        "probe moved",
                                        Optional.empty()))
                                : List.of())
                .build());
        return new Drawn(logbook, new Measure("drop temperature", Unit.TEMPERATURE, reader, readings, planned), gas);
    }

    private record Added(
            List<Batch> batches,
            List<CupScores> cups,
            List<Cupping> sessions,
            Map<String, ModelFrames.Reading> readings) {}

    /** Adds days on which the drop was set by a plan; each day's batches are cupped together. */
    private void more(Random random, Added to, double[] cupperEffect, double lotEffect, LocalDate start) {
        for (int day = 0; day < moreDays; day++) {
            LocalDate date = start.plusDays(3L * (days + day) + 1);
            String cupping = "M" + (day + 1);
            to.sessions().add(new Cupping(cupping, blind, beforeDiscussion, Map.of()));
            double level = 6 + lotEffect + random.nextGaussian() * daySpread + random.nextGaussian() * cuppingSpread;
            double[] sitting = normals(random, cuppers, sittingSpread);
            List<Double> drops = new ArrayList<>();
            for (int place = 0; place < morePerDay; place++) {
                drops.add(moreDrops[place % moreDrops.length]);
            }
            Collections.shuffle(drops, random);
            for (int place = 0; place < morePerDay; place++) {
                String name = "M" + (day + 1) + "-" + (place + 1);
                double drop = drops.get(place) + random.nextGaussian() * 0.3;
                to.batches()
                        .add(Batch.named(name)
                                .roastedAt(
                                        OffsetDateTime.of(date.atTime(9 + place / 3, 20 * (place % 3)), ZoneOffset.UTC))
                                .lot("Lot A")
                                .machine("drum one")
                                .readerUnit(reader)
                                .build());
                to.readings()
                        .put(name, new ModelFrames.Reading(drop + random.nextGaussian() * measureError, measureError));
                double x = drop - center;
                double quality = level + slope * x + bend * x * x + random.nextGaussian() * batchSpread;
                for (int cupper = 0; cupper < cuppers; cupper++) {
                    for (int cup = 0; cup < cupsEach; cup++) {
                        to.cups()
                                .add(new CupScores(
                                        cupping,
                                        date.plusDays(3),
                                        "cupper " + (cupper + 1),
                                        name,
                                        Optional.empty(),
                                        Optional.of(Integer.toString(cup + 1)),
                                        OptionalInt.empty(),
                                        Map.of(
                                                "sweetness",
                                                quality
                                                        + cupperEffect[cupper]
                                                        + sitting[cupper]
                                                        + random.nextGaussian() * cupSpread),
                                        Optional.empty()));
                    }
                }
            }
        }
    }

    /** Returns the logbook with a second attribute whose scores are those of sweetness. */
    static Logbook twice(Logbook logbook, String second) {
        return Logbook.of(logbook.contents().toBuilder()
                .cups(logbook.cups().stream()
                        .map(cup -> cup.withScores(
                                Map.of("sweetness", cup.score("sweetness"), second, cup.score("sweetness"))))
                        .toList())
                .build());
    }

    /** Returns the joined scores of a drawn logbook. */
    static ModelFrame material(Drawn drawn) {
        return ModelFrames.of("sweetness", drawn.logbook(), drawn.measure().readings());
    }

    private static double[] normals(Random random, int count, double spread) {
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = random.nextGaussian() * spread;
        }
        return values;
    }
}
