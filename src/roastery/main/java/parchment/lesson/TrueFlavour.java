package parchment.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.people.Cupper;
import parchment.virtual.people.FlavourSurface;
import parchment.virtual.written.VirtualBatch;

/** Knows what the cuppers of a virtual logbook would score on average if they tasted without end: the truth that claims are graded by. */
final class TrueFlavour {
    private final VirtualLogbook behind;

    private TrueFlavour(VirtualLogbook behind) {
        this.behind = behind;
    }

    static TrueFlavour of(VirtualLogbook behind) {
        return new TrueFlavour(behind);
    }

    /** Returns a surface on which how a batch was roasted makes no difference. */
    static FlavourSurface flat(FlavourSurface surface) {
        return new FlavourSurface(surface.attribute(), surface.level(), 0, 0, 0, 0, 0, 0);
    }

    /** Returns the roastery with one attribute tilted: so many points per degree at the middle of what is tried, and only a little bent. */
    static VirtualRoastery tilted(VirtualRoastery roastery, String attribute, double perDegree) {
        return roastery.withSurfaces(roastery.surfaces().stream()
                .map(surface -> surface.attribute().equals(attribute) ? tilted(surface, perDegree) : surface)
                .toList());
    }

    private static FlavourSurface tilted(FlavourSurface surface, double perDegree) {
        return new FlavourSurface(
                surface.attribute(),
                surface.level(),
                perDegree,
                -0.004,
                surface.browning(),
                surface.development(),
                0,
                0);
    }

    /** Returns what the cuppers would score a batch on average, give or take a constant that is the same for every batch. */
    double points(String attribute, VirtualBatch batch) {
        return tasted(attribute, batch.flavour());
    }

    /** Returns the same as far as it comes from how the batch was roasted: without the lot's, the season's and the batch's own flavour. */
    double fromRoasting(String attribute, VirtualBatch batch) {
        return fromRoasting(attribute, batch.endTemperature(), batch.browningTime(), batch.developmentTime());
    }

    /** Returns the same for any end temperature (°C), browning and development time (s). */
    double fromRoasting(String attribute, double endTemperature, double browning, double development) {
        return tasted(
                attribute,
                behind.surfaces().stream()
                        .map(surface -> surface.points(endTemperature, browning, development))
                        .toList());
    }

    /** A cupper spreads scores by a scale and lets a share of the cup's general level into each attribute. */
    private double tasted(String attribute, List<Double> flavour) {
        double own = flavour.get(behind.attributes().indexOf(attribute));
        double general =
                flavour.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
        return behind.cuppers().stream()
                .mapToDouble(cupper -> points(cupper, own, general))
                .average()
                .orElse(Double.NaN);
    }

    private static double points(Cupper cupper, double own, double general) {
        return cupper.scale() * ((1 - cupper.halo()) * own + cupper.halo() * general);
    }

    /**
     * Returns the slope inside lots, by least squares, of what comes from how the batches were roasted on a number of theirs.
     *
     * @param measure the number by batch; batches without it are left out
     */
    double slope(String attribute, Map<String, Double> measure) {
        List<VirtualBatch> batches = behind.batches().stream()
                .filter(batch -> Double.isFinite(measure.getOrDefault(batch.name(), Double.NaN)))
                .toList();
        List<Double> x = insideLots(batches, batch -> measure.getOrDefault(batch.name(), Double.NaN));
        List<Double> y = insideLots(batches, batch -> fromRoasting(attribute, batch));
        double both = IntStream.range(0, x.size())
                .mapToDouble(i -> x.get(i) * y.get(i))
                .sum();
        return both / x.stream().mapToDouble(value -> value * value).sum();
    }

    private static List<Double> insideLots(List<VirtualBatch> batches, ToDoubleFunction<VirtualBatch> number) {
        List<Double> inside = new ArrayList<>();
        for (VirtualBatch batch : batches) {
            double mean = batches.stream()
                    .filter(other -> other.plan().lot().equals(batch.plan().lot()))
                    .mapToDouble(number)
                    .average()
                    .orElse(Double.NaN);
            inside.add(number.applyAsDouble(batch) - mean);
        }
        return inside;
    }
}
