package parchment.learning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.curve.CleanCurve;
import parchment.curve.SmoothCurve;
import parchment.display.Progress;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.stats.warp.DistanceTable;
import parchment.stats.warp.DynamicTimeWarping;
import parchment.stats.warp.StepPattern;
import parchment.stats.warp.Window;

/**
 * What kinds of roast are found on: the rate of rise of the batches of one machine, from when the probe tells of the beans to the drop,
 * and how far each two are apart.
 *
 * <p>A rate is the same on a probe that reads some degrees higher, so batches before and after a move of the probe stay together.
 *
 * @param machine the machine, empty if none is written
 * @param batches the batches with a rate over the whole way
 * @param rates degrees Celsius per minute, every five seconds from {@link #FROM} on
 * @param distances how far each two batches are apart, in degrees Celsius per minute on average, once up to half a minute of early or late is forgiven
 * @param withoutRate batches of the machine that have no rate over the whole way
 * @param ofOtherMachines batches of other machines
 */
record RatePaths(
        String machine,
        List<Phases> batches,
        List<double[]> rates,
        float[][] distances,
        int withoutRate,
        int ofOtherMachines) {
    /** Seconds after charge from which the probe tells of the beans; common practice, no source. */
    static final double FROM = 90;

    static final double STEP = 5;
    /** Seconds to either side over which rates are taken: what matters for a kind lasts longer. */
    private static final double BANDWIDTH = 40;
    /** Samples, half a minute, by which one batch may be early or late; common practice, no source. */
    private static final int RADIUS = 6;

    private static final int FEWEST_SAMPLES = 30;
    /** Samples in a row that may be missing inside the way or at its end: half a minute. */
    private static final int MOST_MISSING = 6;

    static RatePaths of(Logbook logbook) {
        Map<String, List<Phases>> byMachine = new LinkedHashMap<>();
        for (Phases phases : Phases.of(logbook)) {
            if (phases.bean().isPresent()) {
                byMachine
                        .computeIfAbsent(phases.batch().machine().orElse(""), key -> new ArrayList<>())
                        .add(phases);
            }
        }
        String machine = byMachine.keySet().stream()
                .reduce((a, b) -> byMachine.getOrDefault(b, List.of()).size()
                                > byMachine.getOrDefault(a, List.of()).size()
                        ? b
                        : a)
                .orElse("");
        List<Phases> own = byMachine.getOrDefault(machine, List.of());
        int others = byMachine.values().stream().mapToInt(List::size).sum() - own.size();
        List<Optional<double[]>> read;
        try (Progress progress = Progress.of(own.size(), "reading rates of rise")) {
            read = own.parallelStream()
                    .map(phases -> {
                        Optional<double[]> found = rates(phases);
                        progress.step();
                        return found;
                    })
                    .toList();
        }
        List<Phases> batches = IntStream.range(0, own.size())
                .filter(i -> read.get(i).isPresent())
                .mapToObj(own::get)
                .toList();
        List<double[]> rates = read.stream().flatMap(Optional::stream).toList();
        return new RatePaths(machine, batches, rates, distances(rates), own.size() - batches.size(), others);
    }

    private static Optional<double[]> rates(Phases phases) {
        Optional<SmoothCurve> bean = phases.bean();
        Optional<Mark> drop = phases.mark(MarkKind.DROP);
        if (bean.isEmpty() || drop.isEmpty()) {
            return Optional.empty();
        }
        SmoothCurve smooth =
                bean.get().withBandwidth(Math.max(BANDWIDTH, bean.get().bandwidthSeconds()));
        double last = Math.min(drop.get().seconds(), lastReading(smooth));
        int samples = (int) Math.floor((last - FROM) / STEP) + 1;
        if (samples < FEWEST_SAMPLES || drop.get().seconds() - last > STEP * MOST_MISSING) {
            return Optional.empty();
        }
        double[] rates = IntStream.range(0, samples)
                .mapToDouble(k -> smooth.slopeAt(FROM + STEP * k).value())
                .toArray();
        return bridged(rates) ? Optional.of(rates) : Optional.empty();
    }

    private static double lastReading(SmoothCurve smooth) {
        CleanCurve clean = smooth.clean();
        return clean.kept().secondsAt(clean.kept().size() - 1);
    }

    /** Draws a straight line over short gaps; says whether no rate is missing then. */
    private static boolean bridged(double[] rates) {
        int before = -1;
        for (int k = 0; k < rates.length; k++) {
            if (Double.isFinite(rates[k])) {
                if (before >= 0 && k - before - 1 <= MOST_MISSING) {
                    for (int j = before + 1; j < k; j++) {
                        rates[j] = rates[before] + (rates[k] - rates[before]) * (j - before) / (k - before);
                    }
                }
                before = k;
            }
        }
        return Arrays.stream(rates).allMatch(Double::isFinite);
    }

    private static float[][] distances(List<double[]> rates) {
        int n = rates.size();
        float[][] out = new float[n][n];
        if (n < 2) {
            return out;
        }
        DistanceTable table = DynamicTimeWarping.of(StepPattern.SYMMETRIC2)
                .withWindow(Window.slantedBand(RADIUS))
                .distances(rates);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                out[i][j] = (float) (table.distance(i, j) / (rates.get(i).length + rates.get(j).length));
                out[j][i] = out[i][j];
            }
        }
        return out;
    }
}
