package parchment.virtual;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.virtual.chance.Chance;
import parchment.virtual.chance.Seed;
import parchment.virtual.people.Cupper;
import parchment.virtual.people.GivenScore;
import parchment.virtual.written.VirtualBatch;
import parchment.virtual.written.VirtualCupping;

/** Cups batches: draws codes and places, and lets each cupper score each cup with bias, scale, halo, sequence and noise. */
final class Panel {
    private static final double LOWEST = 0;
    private static final double HIGHEST = 10;

    private final Story story;
    private final Story.Cuppings held;
    private final List<Cupper> cuppers;
    private final int attributes;
    private final Seed seed;

    private Panel(Story story, List<Cupper> cuppers, Seed seed) {
        this.story = story;
        this.held = story.cuppings();
        this.cuppers = List.copyOf(cuppers);
        this.attributes = story.surfaces().size();
        this.seed = seed;
    }

    /** Draws what the story does not say about its cuppers. */
    static Panel of(Story story, Seed seed) {
        List<Cupper> cuppers = new ArrayList<>();
        for (Story.CupperGiven given : story.cuppers()) {
            Cupper drawn = Cupper.drawn(given.name(), story.surfaces().size(), seed.stream("cupper " + given.name()));
            cuppers.add(given.given().apply(drawn));
        }
        return new Panel(story, cuppers, seed);
    }

    List<Cupper> cuppers() {
        return cuppers;
    }

    /** A cup on the table. */
    private record Cup(VirtualBatch batch, int number, String code, List<Double> truth) {}

    /** Cups the given batches, this many cups of each, by the cuppers present. */
    VirtualCupping cup(
            String name,
            LocalDate day,
            List<VirtualBatch> batches,
            int cups,
            List<Cupper> present,
            VirtualCupping.Blind blind,
            VirtualCupping.Talk talk) {
        Chance chance = seed.stream("cupping " + name);
        List<Cup> table = table(batches, cups, day, blind, chance);
        double[] shifts = normals(chance, held.tableShift());
        List<GivenScore> scores = new ArrayList<>();
        for (Cupper cupper : present) {
            scores.addAll(score(name, cupper, chance.shuffled(table), shifts, blind, chance));
        }
        if (talk == VirtualCupping.Talk.SCORED_AFTER) {
            scores = afterTalk(scores);
        }
        List<GivenScore> written = new ArrayList<>();
        for (GivenScore score : scores) {
            written.add(with(score, score.points().stream().map(this::written).toList()));
        }
        return new VirtualCupping(name, day, blind, talk, written);
    }

    private List<Cup> table(
            List<VirtualBatch> batches, int cups, LocalDate day, VirtualCupping.Blind blind, Chance chance) {
        List<Integer> codes = new ArrayList<>();
        for (int code = 100; code < 1000; code++) {
            codes.add(code);
        }
        List<Integer> drawn = chance.shuffled(codes);
        List<Cup> table = new ArrayList<>();
        for (VirtualBatch batch : batches) {
            long rest = ChronoUnit.DAYS.between(batch.plan().roastedAt().toLocalDate(), day);
            for (int number = 1; number <= cups; number++) {
                String code = blind == VirtualCupping.Blind.YES
                        ? drawn.get(table.size()).toString()
                        : "";
                List<Double> truth = new ArrayList<>();
                for (int a = 0; a < attributes; a++) {
                    truth.add(batch.flavour().get(a)
                            - story.taste().rest() * StrictMath.abs(rest - 5)
                            + chance.normal(0, story.taste().cup()));
                }
                table.add(new Cup(batch, number, code, truth));
            }
        }
        return table;
    }

    private List<GivenScore> score(
            String cupping,
            Cupper cupper,
            List<Cup> order,
            double[] shifts,
            VirtualCupping.Blind blind,
            Chance chance) {
        double[] own = normals(chance, held.cupperShift());
        List<GivenScore> scores = new ArrayList<>();
        double before = 0;
        for (int i = 0; i < order.size(); i++) {
            Cup cup = order.get(i);
            double general = general(cup) + chance.normal(0, cupper.impression());
            List<Double> taste = ownTaste(cupper, cup.batch());
            // Whoever sees which batch it is also tastes what they hoped for: a higher drop is expected to be rounder.
            double hope = blind == VirtualCupping.Blind.NO
                    ? held.hope() * (cup.batch().dropReading() - 203)
                    : 0;
            List<Double> points = new ArrayList<>();
            for (int a = 0; a < attributes; a++) {
                double seen = (1 - cupper.halo()) * (cup.truth().get(a) - 5) + cupper.halo() * general;
                points.add(5
                        + cupper.scale() * seen
                        + cupper.bias()
                        + cupper.attributeBias().get(a)
                        + taste.get(a)
                        + shifts[a]
                        + own[a]
                        + hope
                        - cupper.contrast() * before
                        - cupper.fatigue() * i
                        + chance.normal(0, cupper.noise()));
            }
            scores.add(new GivenScore(
                    cupping, cupper.name(), cup.batch().name(), cup.code(), cup.number(), i + 1, points));
            before = general;
        }
        return scores;
    }

    /** Drawn from a stream of its own, so that it is the same at every table. */
    private List<Double> ownTaste(Cupper cupper, VirtualBatch batch) {
        Chance chance = seed.stream("taste of " + cupper.name() + " for " + batch.name());
        List<Double> taste = new ArrayList<>();
        for (int a = 0; a < attributes; a++) {
            taste.add(chance.normal(0, cupper.ownTaste()));
        }
        return taste;
    }

    /** The mean of a cup's attributes above the middle. */
    private double general(Cup cup) {
        double sum = 0;
        for (double points : cup.truth()) {
            sum += points - 5;
        }
        return sum / attributes;
    }

    private List<GivenScore> afterTalk(List<GivenScore> scores) {
        Map<String, double[]> sums = new LinkedHashMap<>();
        Map<String, Integer> counts = new LinkedHashMap<>();
        for (GivenScore score : scores) {
            double[] sum = sums.computeIfAbsent(score.batch(), b -> new double[attributes]);
            for (int a = 0; a < attributes; a++) {
                sum[a] += score.points().get(a);
            }
            counts.merge(score.batch(), 1, Integer::sum);
        }
        List<GivenScore> moved = new ArrayList<>();
        for (GivenScore score : scores) {
            double[] sum = sums.getOrDefault(score.batch(), new double[attributes]);
            int count = counts.getOrDefault(score.batch(), 1);
            List<Double> points = new ArrayList<>();
            for (int a = 0; a < attributes; a++) {
                points.add((1 - held.agreement()) * score.points().get(a) + held.agreement() * sum[a] / count);
            }
            moved.add(with(score, points));
        }
        return moved;
    }

    private static GivenScore with(GivenScore score, List<Double> points) {
        return new GivenScore(
                score.cupping(),
                score.cupper(),
                score.batch(),
                score.blindCode(),
                score.cup(),
                score.position(),
                points);
    }

    private double written(double points) {
        return StrictMath.max(LOWEST, StrictMath.min(HIGHEST, StrictMath.rint(points / held.step()) * held.step()));
    }

    private double[] normals(Chance chance, double spread) {
        double[] drawn = new double[attributes];
        for (int i = 0; i < attributes; i++) {
            drawn[i] = chance.normal(0, spread);
        }
        return drawn;
    }
}
