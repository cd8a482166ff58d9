package parchment.pipeline;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import parchment.logbook.Logbook;
import parchment.virtual.Scenario;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.written.VirtualBatch;

/** The named cells that the virtual roastery can make, with the same names as on the other one. */
final class VirtualCells {
    private static final LocalDate MOVED = LocalDate.of(2025, 4, 8);
    /** Bean temperature at which sweetness is best: 206 °C + 0.03 / (2 x 0.03). */
    private static final double BEST = 206.5;

    private static final String NO_MOVE = "";
    private static final String MOVE = """
            [probe: 2025-04-08]
            bean lag [s] = 42
            offset [°C] = -2.8
            """;
    private static final String PEAK = """
            destination = 0.03
            destination squared = -0.03
            """;
    private static final String FLAT = """
            surface = flat
            """;

    private VirtualCells() {}

    static List<Cell> all() {
        return OtherCells.all().stream()
                .filter(cell ->
                        List.of("moved-probe", "unmoved-probe", "no-effect").contains(cell.name()))
                .map(cell -> new Cell(cell.name(), cell.words(), cell.counts(), question(cell.name())))
                .toList();
    }

    private static Cell.Question question(String name) {
        return switch (name) {
            case "moved-probe" -> (seed, folder) -> best(roastery(MOVE, PEAK, seed), folder, MOVED);
            case "unmoved-probe" -> (seed, folder) -> best(roastery(NO_MOVE, PEAK, seed), folder, LocalDate.MIN);
            default ->
                (seed, folder) -> {
                    roastery(NO_MOVE, FLAT, seed).write(folder);
                    return OtherCells.nothing(Answers.line(Answers.ask(OtherCells.ASKED, Logbook.open(folder))));
                };
        };
    }

    private static VirtualRoastery roastery(String move, String sweetness, long seed) {
        String text = """
                [roastery]
                name = Ropewalk roastery (invented)
                letters = R
                first day = 2025-01-07
                batches = 180
                roast days = weekdays
                days off [%] = 50
                fewest batches a day = 3
                most batches a day = 3

                [machine: the ropewalk drum]

                [probe: 2025-01-01]

                MOVE
                [roaster: Wen]
                habit = steady
                feel [°C] = 0

                [roaster: Ottla]
                habit = pushes early
                share [%] = 40
                feel [°C] = 0

                [recipe: usual]
                drop [°C] = 203
                varied [°C] = 2.6

                [lot: Grey Tern]
                arrived = 2024-12-02

                [lot: Thrift]
                arrived = 2024-12-20
                moisture [%] = 10.4
                flavour = sweetness 0.4

                [attribute: sweetness]
                level = 6
                SWEETNESS
                [attribute: acidity]
                surface = flat

                [attribute: body]
                surface = flat

                [flavour]
                ageing = 0
                hidden = 0

                [cupper: Abe]
                [cupper: Brix]
                [cupper: Cara]

                [cuppings]
                share [%] = 100
                cups = 1
                codes left out [%] = 0
                talk first [%] = 0
                """;
        return VirtualRoastery.of(Scenario.of(text.replace("MOVE", move).replace("SWEETNESS", sweetness), "ropewalk"))
                .withSeed(seed);
    }

    private static Map<String, Double> best(VirtualRoastery roastery, Path folder, LocalDate probeSince)
            throws IOException {
        VirtualLogbook truth = roastery.run();
        truth.writeTo(folder);
        List<VirtualBatch> since = truth.batches().stream()
                .filter(batch -> !batch.plan().roastedAt().toLocalDate().isBefore(probeSince))
                .toList();
        double best = reading(since, BEST);
        Logbook logbook = Logbook.open(folder);
        String lot = logbook.lots().get(0).name();
        Answers.Best answer = Answers.best(Answers.ask(OtherCells.ASKED, logbook), lot);
        Map<String, Double> values = OtherCells.best(answer, best, best);
        values.put("own held", OtherCells.yes(answer.holds(top(truth.batches(), lot, probeSince))));
        return values;
    }

    /**
     * Returns where the square through a lot's noise-free sweetness over the reading at the drop has its top. What was read before the probe moved
     * is brought to the later probe by what the two read on the average at one temperature of the beans.
     */
    private static double top(List<VirtualBatch> batches, String lot, LocalDate probeSince) {
        List<VirtualBatch> own = batches.stream()
                .filter(batch -> batch.plan().lot().name().equals(lot))
                .toList();
        double earlier = aboveTheBeans(own, batch -> isBefore(batch, probeSince));
        double later = aboveTheBeans(own, batch -> !isBefore(batch, probeSince));
        double[] readings = own.stream()
                .mapToDouble(batch -> batch.dropReading() + (isBefore(batch, probeSince) ? later - earlier : 0))
                .toArray();
        double middle = Arrays.stream(readings).average().orElseThrow();
        double[][] rows = new double[own.size()][];
        double[] sweetness = new double[own.size()];
        for (int i = 0; i < rows.length; i++) {
            double x = readings[i] - middle;
            rows[i] = new double[] {x, x * x};
            sweetness[i] = own.get(i).flavour().get(0);
        }
        OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
        fit.newSampleData(sweetness, rows);
        double[] curve = fit.estimateRegressionParameters();
        return middle - curve[1] / (2 * curve[2]);
    }

    private static boolean isBefore(VirtualBatch batch, LocalDate day) {
        return batch.plan().roastedAt().toLocalDate().isBefore(day);
    }

    private static double aboveTheBeans(List<VirtualBatch> batches, Predicate<VirtualBatch> which) {
        return batches.stream()
                .filter(which)
                .mapToDouble(batch -> batch.dropReading() - batch.endTemperature())
                .average()
                .orElse(0);
    }

    /** Returns the reading at which the beans' own temperature, by its line on the reading at the drop, is such a temperature. */
    private static double reading(List<VirtualBatch> batches, double bean) {
        double x = batches.stream()
                .mapToDouble(VirtualBatch::dropReading)
                .average()
                .orElseThrow();
        double y = batches.stream()
                .mapToDouble(VirtualBatch::endTemperature)
                .average()
                .orElseThrow();
        double products = 0;
        double squares = 0;
        for (VirtualBatch batch : batches) {
            products += (batch.dropReading() - x) * (batch.endTemperature() - y);
            squares += (batch.dropReading() - x) * (batch.dropReading() - x);
        }
        return x + (bean - y) * squares / products;
    }
}
