package parchment.phase;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.phase.found.Source;
import parchment.quantity.Unit;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.physics.SimulatedRoast;
import parchment.virtual.physics.SimulatedRoast.Trace;
import parchment.virtual.written.VirtualBatch;

/**
 * Measures how often the intervals of marks that are found on a curve hold the truth, for roasts of two kinds: those of the virtual roastery
 * and those of {@link OtherRoast}.
 *
 * <p>Run {@link #main} for the table of docs/measurements/marks.md; the tests hold a short version.
 */
final class MarkErrorStudy {
    /** The marks that are found. */
    static final List<MarkKind> FOUND = List.of(MarkKind.CHARGE, MarkKind.TURNING_POINT, MarkKind.DROP);

    static final double NORMAL_90 = 1.6449;

    /** What a probe reads from charge on, and when what happened. */
    record Truth(DoubleUnaryOperator course, double turningPoint, double drop) {}

    /** How the logger reads. */
    record Reading(double interval, double noise, double memory, double step) {
        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%.0f s, %.1f °C", interval, noise);
        }
    }

    /** What became of one kind of mark; seconds. */
    record Cell(
            String what,
            Reading reading,
            MarkKind kind,
            int batches,
            int found,
            double mean,
            double root,
            double error,
            double within90) {
        String row() {
            return String.format(
                    Locale.ROOT,
                    "| %s | %s | %s | %d | %d | %.2f | %.2f | %.2f | %.1f ± %.1f |",
                    what,
                    reading,
                    kind.words(),
                    batches,
                    found,
                    mean,
                    root,
                    error,
                    100 * within90,
                    100 * Math.sqrt(within90 * (1 - within90) / Math.max(1, found)));
        }
    }

    private MarkErrorStudy() {}

    /** Roasts of the virtual roastery; after the drop the probe falls towards cooler air by a lag and a depth that are drawn. */
    static List<Truth> virtual(long seed, int batches) {
        List<Truth> truths = new ArrayList<>();
        Random random = new Random(seed);
        for (VirtualBatch batch : VirtualRoastery.harbour()
                .withSeed(seed)
                .withBatches(batches)
                .run()
                .batches()) {
            SimulatedRoast roast = batch.roast();
            double lag = 8 + 32 * random.nextDouble();
            double depth = 30 + 80 * random.nextDouble();
            double creep = 0.02 * random.nextGaussian();
            DoubleUnaryOperator course = t -> t < 0
                    ? roast.at(Trace.BEAN_READING, 0) + creep * t
                    : t <= roast.drop()
                            ? roast.at(Trace.BEAN_READING, t)
                            : roast.at(Trace.BEAN_READING, roast.drop())
                                    - depth * (1 - Math.exp(-(t - roast.drop()) / lag));
            truths.add(new Truth(course, turn(roast), roast.drop()));
        }
        return truths;
    }

    /** The samples are a second apart; a parabola through the lowest three says where between them. */
    private static double turn(SimulatedRoast roast) {
        int i = (int) Math.round(roast.turningPoint());
        double a = roast.sample(Trace.BEAN_READING, i - 1);
        double b = roast.sample(Trace.BEAN_READING, i);
        double c = roast.sample(Trace.BEAN_READING, i + 1);
        return i + 0.5 * (a - c) / (a - 2 * b + c);
    }

    static List<Truth> other(long seed, int batches) {
        Random random = new Random(seed);
        return IntStream.range(0, batches)
                .mapToObj(i -> new OtherRoast(random))
                .map(roast -> new Truth(roast.course(), roast.turningPoint, roast.drop))
                .toList();
    }

    /** Logs roasts with a clock that starts at any time, writes no mark, and asks for them. */
    static List<Cell> run(String what, List<Truth> truths, Reading reading, long seed) {
        Random random = new Random(seed);
        List<Batch> batches = new ArrayList<>();
        double[] zero = new double[truths.size()];
        for (int i = 0; i < zero.length; i++) {
            Truth truth = truths.get(i);
            zero[i] = 100 + 200 * random.nextDouble();
            batches.add(Batch.named(String.format(Locale.ROOT, "%04d", i))
                    .curve(Quantity.BEAN_TEMPERATURE, logged(truth, reading, zero[i], random))
                    .build());
        }
        List<Phases> all = Phases.of(Logbook.of(LogbookContents.ofBatches(what, batches)));
        Map<MarkKind, List<double[]>> off = new EnumMap<>(MarkKind.class);
        for (int i = 0; i < zero.length; i++) {
            Phases phases = all.get(i);
            for (MarkKind kind : FOUND) {
                double truth = zero[i]
                        + switch (kind) {
                            case TURNING_POINT -> truths.get(i).turningPoint();
                            case DROP -> truths.get(i).drop();
                            default -> 0;
                        };
                phases.mark(kind)
                        .filter(mark -> mark.source() == Source.FOUND)
                        .ifPresent(mark -> off.computeIfAbsent(kind, key -> new ArrayList<>())
                                .add(new double[] {
                                    phases.chargeOnLogger() + mark.seconds() - truth, mark.standardError()
                                }));
            }
        }
        return FOUND.stream()
                .map(kind -> cell(what, reading, kind, zero.length, off.getOrDefault(kind, List.of())))
                .toList();
    }

    private static Curve logged(Truth truth, Reading reading, double zero, Random random) {
        double start = -30 - 30 * random.nextDouble();
        double end = truth.drop() + 8 + 30 * random.nextDouble();
        double keep = Math.pow(reading.memory(), reading.interval() / 2);
        double wander = reading.noise() * random.nextGaussian();
        int n = 1 + (int) ((end - start) / reading.interval());
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            double t = start + i * reading.interval();
            wander = keep * wander + Math.sqrt(1 - keep * keep) * reading.noise() * random.nextGaussian();
            x[i] = zero + t;
            y[i] = reading.step() * Math.rint((truth.course().applyAsDouble(t) + wander) / reading.step());
        }
        return Curve.of("bean temperature", Unit.TEMPERATURE, x, y);
    }

    private static Cell cell(String what, Reading reading, MarkKind kind, int batches, List<double[]> off) {
        int n = off.size();
        double mean = off.stream().mapToDouble(o -> o[0]).sum() / n;
        double root = Math.sqrt(off.stream().mapToDouble(o -> o[0] * o[0]).sum() / n);
        double error = Math.sqrt(off.stream().mapToDouble(o -> o[1] * o[1]).sum() / n);
        double within =
                off.stream().filter(o -> Math.abs(o[0]) <= NORMAL_90 * o[1]).count() / (double) n;
        return new Cell(what, reading, kind, batches, n, mean, root, error, within);
    }

    static final List<Reading> READINGS = List.of(
            new Reading(1, 0.1, 0.5, 0.1),
            new Reading(1, 0.4, 0.5, 0.1),
            new Reading(1, 0.8, 0.3, 0.1),
            new Reading(2, 0.1, 0.5, 0.1),
            new Reading(2, 0.2, 0.5, 0.1),
            new Reading(2, 0.8, 0.3, 0.1),
            new Reading(5, 0.1, 0.3, 0.1),
            new Reading(5, 0.4, 0.3, 0.1),
            new Reading(10, 0.1, 0, 0.1),
            new Reading(10, 0.4, 0, 0.1),
            new Reading(10, 0.8, 0, 0.1));

    /** Prints the table; the arguments are the number of roasts of each kind (default 240) and the first seed (default 3000). */
    public static void main(String[] args) {
        int batches = args.length > 0 ? Integer.parseInt(args[0]) : 240;
        long seed = args.length > 1 ? Long.parseLong(args[1]) : 3000;
        System.out.println(
                "| roasts | a reading every, noise | mark | logged | found | mean off, s | root mean square off, s"
                        + " | root mean square of the standard error, s | 90 % interval holds, % |");
        System.out.println("|---|---|---|---|---|---|---|---|---|");
        for (Map.Entry<String, List<Truth>> kind : Map.of(
                        "virtual roastery", virtual(seed, batches), "other equations", other(seed, batches))
                .entrySet()) {
            for (Reading reading : READINGS) {
                run(kind.getKey(), kind.getValue(), reading, seed).stream()
                        .map(Cell::row)
                        .forEach(System.out::println);
            }
        }
    }
}
