package parchment.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import parchment.logbook.Logbook;

/** Joins the scores of an attribute to several measures of each batch at once; a batch that lacks one of them is left out. */
final class JointFrame {
    private final ModelFrame material;
    private final List<Measure> measures;

    private JointFrame(ModelFrame material, List<Measure> measures) {
        this.material = material;
        this.measures = List.copyOf(measures);
    }

    static JointFrame of(String attribute, Logbook logbook, List<Measure> measures) {
        Map<String, ModelFrames.Reading> readings =
                new LinkedHashMap<>(measures.get(0).readings());
        readings.replaceAll((batch, reading) -> {
            for (Measure measure : measures) {
                ModelFrames.Reading other = measure.readings().getOrDefault(batch, ModelFrames.Reading.NONE);
                if (!Double.isFinite(other.value())) {
                    return new ModelFrames.Reading(Double.NaN, Double.NaN, other.whyMissing());
                }
            }
            return reading;
        });
        return new JointFrame(ModelFrames.of(attribute, logbook, readings), measures);
    }

    /** Returns the joined scores; their measure is the first. */
    ModelFrame material() {
        return material;
    }

    List<Measure> measures() {
        return measures;
    }

    /** Returns one measure of each batch. */
    double[] values(int measure) {
        return readings(measure).mapToDouble(ModelFrames.Reading::value).toArray();
    }

    /**
     * Returns the mean of one measure over the batches, of a temperature as readings on today's probe; batches of which that is not known are
     * not in it, unless it is known of none.
     */
    double center(int measure) {
        double[] today = readings(measure)
                .mapToDouble(ModelFrames.Reading::today)
                .filter(Double::isFinite)
                .toArray();
        return Arrays.stream(today.length == 0 ? values(measure) : today)
                .average()
                .orElse(Double.NaN);
    }

    /** Returns the standard error of that mean that comes from how well each earlier probe period's place is known; 0 on today's probe. */
    double centerError(int measure) {
        Map<String, double[]> periods = new TreeMap<>();
        readings(measure).filter(reading -> Double.isFinite(reading.today())).forEach(reading -> {
            double[] sum = periods.computeIfAbsent(reading.period(), key -> new double[2]);
            sum[0] += reading.sharedError();
            sum[1]++;
        });
        double known = periods.values().stream().mapToDouble(sum -> sum[1]).sum();
        double squares = periods.values().stream()
                .mapToDouble(sum -> sum[0] / known * sum[0] / known)
                .sum();
        return known == 0 ? 0 : Math.sqrt(squares);
    }

    private Stream<ModelFrames.Reading> readings(int measure) {
        Map<String, ModelFrames.Reading> readings = measures.get(measure).readings();
        return material.batches().stream().map(batch -> readings.getOrDefault(batch.name(), ModelFrames.Reading.NONE));
    }

    /** Returns the joined scores with one number per batch in place of the measure. */
    ModelFrame with(double[] perBatch) {
        return material.changed(batch -> batch.withMeasure(perBatch[batch.position()], Double.NaN));
    }

    /** Returns each batch's distance from the mean of its lot and probe period, one list per measure. */
    List<double[]> within() {
        List<double[]> within = new ArrayList<>();
        for (int k = 0; k < measures.size(); k++) {
            within.add(with(values(k)).within());
        }
        return within;
    }

    /** Returns the mean of one measure in each batch's lot and probe period, from the mean of all batches. */
    double[] lotMeans(int measure) {
        double[] values = values(measure);
        ModelFrame with = with(values);
        double[] within = with.within();
        double center = with.center();
        double[] means = new double[values.length];
        for (int i = 0; i < means.length; i++) {
            means[i] = values[i] - within[i] - center;
        }
        return means;
    }
}
